import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Deed } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import type { EvaluationMark } from "@/lib/data/group/evaluationMark";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { readPlanInputs } from "@/lib/data/planInputs";
import { loadLineFacts } from "@/lib/data/planning/loadLineFacts";
import { atSites } from "@/lib/data/scope";
import { readScopeNorms } from "@/lib/data/scopeNorms";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { lineOptions } from "@/lib/portfolio/lineOptions";
import type { PlanProblem } from "@/lib/portfolio/planProblem";
import type { ScopeFacts } from "@/lib/retrofit/scope/scopeFacts";
import type { ScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import type { GroupInput, LineResult } from "@/lib/risk/evaluation";
import { drawnLoss } from "@/lib/view/linePlace";
import { figureAt, type PlanInputs } from "@/lib/view/planInputs";
import { type GroundLine, planProblem } from "@/lib/view/planProblem";

/** What plans of one day are made on. */
export interface PlanGround {
  readonly asOf: IsoDate;
  readonly evaluation: EvaluationMark;
  readonly input: GroupInput;
  readonly inputs: PlanInputs;
  readonly norms: ScopeNorms;
  readonly lines: readonly GroundLine[];
  readonly facts: ReadonlyMap<string, ScopeFacts>;
}

/** Which day, and what the person must be allowed to do at a line. */
export interface GroundQuestion {
  readonly asOf: IsoDate;
  readonly deed: Deed;
}

/** Loads lines with their costed ways, the planning inputs and the group as the evaluation sees it. */
export async function loadPlanGround(actor: Actor, { asOf, deed }: GroundQuestion): Promise<PlanGround> {
  const evaluation = await currentEvaluation(asOf);
  const [rows, inputs, { norms }, input] = await Promise.all([
    readLines(actor, { deed, evaluationId: evaluation.id }),
    readPlanInputs(actor, asOf),
    readScopeNorms(actor),
    loadGroupInput(database(), asOf),
  ]);
  const bare = rows.map(({ line }) => line);
  const facts = await loadLineFacts(actor, bare, { asOf, evaluationId: evaluation.id });
  const pools = new Set(input.pools.map(({ id }) => id));
  const lines = rows.map((row): GroundLine => {
    const { line, place, result, ...ranks } = row;
    const { score, stopLoss } = result as unknown as LineResult;
    const options = optionsOf({ line, facts: facts.get(line.id), inputs, norms, pools });
    const project = line.projects[0]?.code ?? null;
    return {
      ...{
        id: line.id,
        code: line.code,
        name: line.name,
        siteId: line.siteId,
        siteCode: line.site.code,
        ...ranks,
      },
      ...{ score, stopLoss: drawnLoss(stopLoss, place as unknown as LinePlace | null), project },
      options: project === null ? options : { options: [], last: [], none: options.none },
      none: project === null ? options.none : `project ${project} is at work on it`,
    };
  });
  return { asOf, evaluation, input, inputs, norms, lines, facts };
}

/** The problem of a plan of some lines (null: of all) on its ground; what persons decide comes later. */
export function loadPlanProblem(
  _actor: Actor,
  ground: PlanGround,
  lineIds: readonly string[] | null,
): PlanProblem {
  const { asOf, inputs, norms, evaluation } = ground;
  const lines = ground.lines.filter(({ id }) => lineIds === null || lineIds.includes(id));
  const { months } = evaluation.assumptions;
  return planProblem({
    asOf,
    inputs,
    lines,
    windowFill: norms.plain.windowShare,
    months,
    pins: [],
    bans: [],
  });
}

interface LinesQuestion extends Pick<GroundQuestion, "deed"> {
  readonly evaluationId: string;
}

function readLines(actor: Actor, { deed, evaluationId }: LinesQuestion) {
  return database().evaluatedLine.findMany({
    where: { evaluationId, line: atSites(actor, deed) },
    orderBy: { line: { code: "asc" } },
    select: {
      ...{ rankByLoss: true, rankByScore: true, result: true, place: true },
      line: {
        select: {
          ...{ id: true, code: true, name: true, siteId: true, site: { select: { code: true } } },
          projects: {
            where: { status: { in: ["funded", "in_work", "proving"] } },
            select: { code: true },
            orderBy: { code: "asc" },
            take: 1,
          },
        },
      },
    },
  });
}

interface OptionQuestion {
  readonly line: { readonly siteId: string; readonly site: { readonly code: string } };
  readonly facts: ScopeFacts | undefined;
  readonly inputs: PlanInputs;
  readonly norms: ScopeNorms;
  readonly pools: ReadonlySet<string>;
}

function optionsOf({ line, facts, inputs, norms, pools }: OptionQuestion) {
  if (!facts) return { options: [], last: [], none: "nothing is known of its axes" };
  const { siteId, site } = line;
  const stated = (kind: "weekend_hours" | "sign_off_above" | "sign_off_weeks", at: string | null) =>
    figureAt(inputs.figures, { kind, siteId: at });
  const hours = inputs.windows.flatMap((window) =>
    window.siteId === siteId ? (window.usableHours ?? []) : [],
  );
  const above = stated("sign_off_above", null)?.euros ?? null;
  const region = inputs.sites.find(({ id }) => id === siteId)?.regionId;
  return lineOptions({
    ...{ facts, norms, pools, site: site.code },
    crewRegion: inputs.regions.find(({ id }) => id === region)?.name ?? null,
    windowHours: hours.length === 0 ? null : Math.max(...hours),
    weekendHours: stated("weekend_hours", siteId)?.value ?? null,
    signOff: above === null ? null : { above, weeks: stated("sign_off_weeks", null)?.value ?? 0 },
  });
}
