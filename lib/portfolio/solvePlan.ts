import { planCompanions } from "@/lib/portfolio/planCompanions";
import { planConflict } from "@/lib/portfolio/planConflict";
import { planDates } from "@/lib/portfolio/planDates";
import type { Watch } from "@/lib/portfolio/planExchange";
import { type LimitRow, limitRows, usesOf } from "@/lib/portfolio/planLimits";
import type {
  LimitName,
  LimitUse,
  SolvedPlan,
  SolveOutcome,
  SolveProgress,
} from "@/lib/portfolio/planResult";
import { type Candidate, choiceOf } from "@/lib/portfolio/planSlots";
import { type PlanEvaluator, type PlanGroup, planEvaluator } from "@/lib/portfolio/planWorth";
import { prepare, type Searched, searchPlan } from "@/lib/portfolio/searchPlan";

/** How a run is solved. */
export interface SolveTerms {
  /** The model is solved to this share of its bound; 0.005 unless told. */
  readonly gap?: number;
  /** Ceiling of the whole run; a run it stops need not be repeatable. */
  readonly timeLimitSeconds: number;
  /** Whether baseline, curve and break-even values are made too. */
  readonly companions: boolean;
}

/** A clock, and somebody to tell how far the run is. */
export interface SolveWatch extends Watch {
  report(progress: SolveProgress): void;
}

const GAP = 0.005;
/** Share of the time the plan itself may take when companions follow. */
const PLAN_SHARE = 0.6;
const CAPACITIES = new Set<LimitName["kind"]>(["budget", "engineers", "crews", "crew-weeks", "window"]);

/** What there is only so much of, fullest first; what nothing takes of is left out but for the budgets. */
function capacities(limits: readonly LimitRow[], chosen: readonly number[]): LimitUse[] {
  const fullness = ({ used, most }: LimitUse) => (most > 0 ? used / most : used > 0 ? 1 : 0);
  return usesOf(limits, chosen)
    .filter(({ limit, used }) => CAPACITIES.has(limit.kind) && (used > 0 || limit.kind === "budget"))
    .sort((a, b) => fullness(b) - fullness(a));
}

function solved(evaluator: PlanEvaluator, limits: readonly LimitRow[], found: Searched): SolvedPlan {
  const { problem, candidates, staged } = evaluator;
  const { chosen } = found;
  const able = new Set(candidates.map(({ line }) => line.lineId));
  return {
    choices: chosen.map((index) => choiceOf(candidates[index] as Candidate)),
    worth: evaluator.worth(chosen),
    model: found.model,
    exchangeGain: found.value - found.firstValue,
    rounds: found.rounds,
    ended: found.settled ? "settled" : "time-limit",
    limits: capacities(limits, chosen),
    dates: planDates(evaluator, limits, chosen),
    withoutOptions: problem.lines.flatMap(({ lineId }) => (able.has(lineId) ? [] : [lineId])),
    withoutWorth: staged.input.lines.flatMap(({ id, costPerHour }) => (costPerHour === null ? [id] : [])),
  };
}

/**
 * Finds the multi-year plan of most worth within its limits: an exact model of a linearised worth first (HiGHS), then
 * exchange on the true worth of the whole group and the model again at corrected slopes, until nothing improves.
 *
 * Stopped by gap, the same input gives the same plan. It blocks its thread: run it in a worker.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export async function solvePlan(
  group: PlanGroup,
  terms: SolveTerms,
  watch: SolveWatch,
): Promise<SolveOutcome> {
  const say = (step: SolveProgress["step"], done: number, found?: Searched) =>
    watch.report({ step, done, worth: found?.value ?? null, bound: found?.model.bound ?? null });
  say("reading", 0);
  const evaluator = planEvaluator(group);
  const limits = limitRows(group.problem, evaluator.candidates);
  const prepared = prepare(evaluator);
  say("model", 0.1);
  const stopAt = terms.timeLimitSeconds * (terms.companions ? PLAN_SHARE : 1);
  const search = { limits, gap: terms.gap ?? GAP, watch, stopAt };
  const found = await searchPlan(prepared, search);
  if (found === "none-found") return { kind: "none-found" };
  if (found === "infeasible") return { kind: "infeasible", conflict: await planConflict(limits) };
  say("companions", 0.6, found);
  const plan = solved(evaluator, limits, found);
  if (!terms.companions) return { kind: "plan", plan, companions: null };
  const companions = await planCompanions(prepared, found, {
    ...{ ...search, stopAt: terms.timeLimitSeconds },
    report: (share) => say("companions", 0.6 + 0.4 * share, found),
  });
  return { kind: "plan", plan, companions };
}
