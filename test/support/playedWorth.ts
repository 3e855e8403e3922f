import { lineAhead } from "@/lib/portfolio/lineAhead";
import { doneIn } from "@/lib/portfolio/planEffects";
import type { Candidate } from "@/lib/portfolio/planSlots";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";
import type { PoolResult } from "@/lib/risk/evaluation";
import { leavingByPool } from "@/lib/risk/leavingByPool";
import { simulatePool } from "@/lib/risk/simulatePool";
import type { EvaluatedPool } from "@/lib/risk/stages";

export interface PlayTerms {
  /** Pools to play; the others stay as computed. */
  readonly pools: readonly string[];
  readonly runs: number;
  readonly seed: number;
}

type Chosen = readonly number[];

function effectsOn({ effects, candidates }: PlanEvaluator, poolId: string, chosen: Chosen) {
  return chosen.flatMap((index) =>
    (effects[index] ?? [])
      .filter((effect) => effect.poolId === poolId)
      .map((effect) => ({ ...effect, lineId: (candidates[index] as Candidate).line.lineId })),
  );
}

/** A pool under a plan with its no-spare chances played event by event, as the share of runs that found no spare. */
function playedPool(
  { evaluator, chosen }: { readonly evaluator: PlanEvaluator; readonly chosen: Chosen },
  poolId: string,
  terms: PlayTerms,
): PoolResult {
  const { input, ground, pools } = evaluator.staged;
  const { pool, result } = pools.get(poolId) as EvaluatedPool;
  const mine = effectsOn(evaluator, poolId, chosen);
  const leaves = mine.flatMap((one) => one.leaves.map((leave) => ({ lineId: one.lineId, leave })));
  const installed = input.installed.map((row) => {
    const own = leaves.filter(({ lineId }) => row.poolId === poolId && row.lineId === lineId);
    return own.length === 0
      ? row
      : { ...row, leaves: [...(row.leaves ?? []), ...own.map(({ leave }) => leave)] };
  });
  const seen = {
    pool: { ...pool, arrivals: [...(pool.arrivals ?? []), ...mine.flatMap(({ arrivals }) => arrivals)] },
    ...{ asOf: input.asOf, units: ground.units.get(poolId) ?? 0, removal: result.removal },
    leaving: leavingByPool({ ...input, installed }).get(poolId) ?? [],
    assumptions: ground.assumptions,
  };
  const months = Array.from({ length: ground.assumptions.months }, (_, m) => m + 1);
  const shares = simulatePool(seen, { months, runs: terms.runs, seed: terms.seed });
  const first = evaluator.pool(poolId, chosen).noSpareByMonth[0]?.mean ?? 0;
  const flat = (mean: number) => ({ mean, low: mean, high: mean });
  return { ...result, noSpareByMonth: [first, ...shares].map(flat) };
}

/** Horizon loss of the group under a plan, with the shelves of some pools played and everything else as evaluated. */
export function playedLoss(evaluator: PlanEvaluator, chosen: Chosen, terms: PlayTerms): number {
  const { staged, candidates, effects } = evaluator;
  const played = new Map(terms.pools.map((id) => [id, playedPool({ evaluator, chosen }, id, terms)]));
  return staged.input.lines.reduce((sum, line) => {
    const done = chosen
      .filter((index) => (candidates[index] as Candidate).line.lineId === line.id)
      .map((index) => ({
        candidate: candidates[index] as Candidate,
        at: doneIn(candidates[index] as Candidate, staged.input.asOf),
        gone: (effects[index] ?? []).flatMap(({ poolId, leaves }) =>
          leaves.map(({ units }) => ({ poolId, units })),
        ),
      }));
    const { loss, residual, work, yearly } = lineAhead({
      ...{ line, done, evaluated: staged.pools, ground: staged.ground },
      poolOf: (poolId) => played.get(poolId) ?? evaluator.pool(poolId, chosen),
    });
    return sum + (loss ?? 0) + residual + work + yearly;
  }, 0);
}

/** Pools that some plans take units out of and put none in: what simulation can play. */
export function playable({ effects }: PlanEvaluator, plans: readonly Chosen[]): string[] {
  const touched = plans.flat().flatMap((index) => effects[index] ?? []);
  const added = new Set(touched.filter((one) => one.added > 0).map(({ poolId }) => poolId));
  const left = touched.filter(({ leaves, poolId }) => leaves.length > 0 && !added.has(poolId));
  return [...new Set(left.map(({ poolId }) => poolId))].sort();
}
