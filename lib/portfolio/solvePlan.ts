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
import { type Met, prepare, type Searched, searchPlan } from "@/lib/portfolio/searchPlan";

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

interface Run {
  readonly evaluator: PlanEvaluator;
  readonly limits: readonly LimitRow[];
  readonly watch: SolveWatch;
}

function solved({ evaluator, limits, watch }: Run, found: Searched): SolvedPlan {
  const stopped = watch.stopped?.() ?? false;
  const { problem, candidates, staged } = evaluator;
  const { chosen } = found;
  const able = new Set(candidates.map(({ line }) => line.lineId));
  return {
    choices: chosen.map((index) => choiceOf(candidates[index] as Candidate)),
    worth: evaluator.worth(chosen),
    ...{ model: found.model, worthPerEuro: problem.worthPerEuro },
    exchangeGain: found.value - found.firstValue,
    rounds: found.rounds,
    ended: found.settled ? "settled" : stopped ? "cancelled" : "time-limit",
    limits: capacities(limits, chosen),
    dates: planDates(evaluator, limits, chosen),
    withoutOptions: problem.lines.flatMap(({ lineId }) => (able.has(lineId) ? [] : [lineId])),
    withoutWorth: staged.input.lines.flatMap(({ id, costPerHour }) => (costPerHour === null ? [id] : [])),
  };
}

/** Shares of a run at which its steps begin. */
const BEGINS = { reading: 0, model: 0.1, exchange: 0.4, companions: 0.6 } as const;

/** Tells of a run: its step and the best plan met so far, by its true worth. */
function teller({ report }: SolveWatch, evaluator: PlanEvaluator) {
  let best: { readonly value: number; readonly worth: number } | null = null;
  let bound: number | null = null;
  const say = (step: SolveProgress["step"], share = 0) =>
    report({ step, done: BEGINS[step] + (1 - BEGINS[step]) * share, worth: best?.worth ?? null, bound });
  return {
    say,
    met: ({ step, chosen, bound: known }: Met) => {
      const value = evaluator.objective(chosen);
      if (best === null || value > best.value) best = { value, worth: evaluator.worth(chosen).worth };
      bound = known ?? bound;
      say(step);
    },
  };
}

/**
 * Finds the multi-year plan of most worth within its limits: an exact model of a linearised worth first (HiGHS), then
 * exchange on the true worth of the whole group and the model again at corrected slopes, until nothing improves.
 *
 * Stopped by gap, the same input gives the same plan; stopped by time or by a person it gives the best it met. It blocks
 * its thread: run it in a worker.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export async function solvePlan(
  group: PlanGroup,
  terms: SolveTerms,
  watch: SolveWatch,
): Promise<SolveOutcome> {
  watch.report({ step: "reading", done: 0, worth: null, bound: null });
  const evaluator = planEvaluator(group);
  const limits = limitRows(group.problem, evaluator.candidates);
  const prepared = prepare(evaluator);
  const { say, met } = teller(watch, evaluator);
  say("model");
  const stopAt = terms.timeLimitSeconds * (terms.companions ? PLAN_SHARE : 1);
  const search = { limits, gap: terms.gap ?? GAP, watch, stopAt };
  const found = await searchPlan(prepared, { ...search, tell: met });
  if (found === "none-found") return { kind: "none-found" };
  if (found === "infeasible") return { kind: "infeasible", conflict: await planConflict(limits) };
  say("companions");
  const plan = solved({ evaluator, limits, watch }, found);
  if (!terms.companions || plan.ended === "cancelled") return { kind: "plan", plan, companions: null };
  const companions = await planCompanions(prepared, found, {
    ...{ ...search, stopAt: terms.timeLimitSeconds },
    report: (share) => say("companions", share),
  });
  return { kind: "plan", plan, companions };
}
