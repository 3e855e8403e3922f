import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Assumptions } from "@/lib/risk/assumptions";
import { type DrawOptions, drawGroup, type GroupDraws, redrawGroup } from "@/lib/risk/draws/drawRanks";
import { evaluateStaged, reevaluate, type StagedEvaluation } from "@/lib/risk/evaluate";
import type { GroupInput, GroupResult, PoolInput } from "@/lib/risk/evaluation";
import { type LineToStore, linesToStore } from "@/lib/risk/evaluationRows";

/** A share is then within 5 points in 19 of 20 drawings at the worst, and a large group is drawn in some seconds. */
const DRAWS = 400;

/** The whole group, evaluated, drawn and ranked, with the stages a change of some pools starts from. */
export interface EvaluatedGroup {
  readonly staged: StagedEvaluation;
  readonly drawn: GroupDraws;
  readonly lines: readonly LineToStore[];
}

export function evaluateGroup(input: GroupInput, assumptions: Assumptions): EvaluatedGroup {
  const staged = evaluateStaged(input, assumptions);
  return ranked(staged, drawGroup(input, assumptions, drawOptions(staged.result)));
}

/** The group after a change of some pools: what it has in common with before are the same objects. */
export function reevaluateGroup(before: EvaluatedGroup, changed: readonly PoolInput[]): EvaluatedGroup {
  const staged = reevaluate(before.staged, changed);
  const change = { input: staged.input, changed };
  return ranked(staged, redrawGroup(before.drawn, change, drawOptions(staged.result)));
}

function ranked(staged: StagedEvaluation, drawn: GroupDraws): EvaluatedGroup {
  const places = new Map(drawn.places.map((place) => [place.lineId, place]));
  return { staged, drawn, lines: linesToStore(staged.result, places) };
}

function drawOptions({ asOf, lines }: GroupResult): DrawOptions {
  const loss = (id: string) => losses.get(id) ?? 0;
  const losses = new Map(lines.map(({ lineId, stopLoss }) => [lineId, stopLoss?.mean ?? 0]));
  const order = [...losses.keys()].sort((a, b) => loss(b) - loss(a));
  return { draws: DRAWS, seed: seedOf(asOf), order, lines };
}

/** The day as a whole number: who looks at the same day sees the same draws. */
export function seedOf(asOf: IsoDate): number {
  return Number(asOf.replaceAll("-", ""));
}
