import {
  firstSlopes,
  type LinearPlan,
  type LinearTerms,
  linearPlan,
  openCandidates,
  ownGains,
  type Slopes,
  slopesAt,
  UNIT,
} from "@/lib/portfolio/linearPlan";
import { solveMixed } from "@/lib/portfolio/mixedModel";
import { exchange, type Watch } from "@/lib/portfolio/planExchange";
import { brokenBy, type LimitRow } from "@/lib/portfolio/planLimits";
import type { SolvedPlan } from "@/lib/portfolio/planResult";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";
import { rankAndCut } from "@/lib/portfolio/rankAndCut";
import { type PoolShortage, shortagesOf } from "@/lib/portfolio/shortage";

/** What a search starts from; it does not depend on the limits. */
export interface Prepared {
  readonly evaluator: PlanEvaluator;
  readonly shortages: readonly PoolShortage[];
  readonly gains: readonly number[];
}

/** How far a search goes. */
export interface SearchTerms {
  readonly limits: readonly LimitRow[];
  /** The model is solved until (bound - objective) / |objective| is at most this. */
  readonly gap: number;
  readonly watch: Watch;
  /** Second of the run at which the search stops. */
  readonly stopAt: number;
}

/** What a search gives. */
export interface Searched {
  readonly chosen: readonly number[];
  readonly value: number;
  readonly model: SolvedPlan["model"];
  /** Value of the model's first plan. */
  readonly firstValue: number;
  readonly rounds: number;
  readonly settled: boolean;
}

export type NotFound = "infeasible" | "none-found";

/** Share of the time there is that the model alone may take. */
const MODEL_SHARE = 0.5;
const MOST_ROUNDS = 5;
const LEAST_SECONDS = 0.5;

/** Looks at the pools and at each candidate alone. */
export function prepare(evaluator: PlanEvaluator): Prepared {
  const shortages = shortagesOf(evaluator);
  return { evaluator, shortages, gains: ownGains(evaluator, shortages) };
}

interface Search extends SearchTerms {
  readonly linear: LinearTerms;
}

interface Found {
  readonly chosen: readonly number[];
  readonly plan: LinearPlan;
  readonly model: SolvedPlan["model"];
}

async function solveModel(
  search: Search,
  slopes: Slopes,
  start?: readonly number[],
): Promise<Found | NotFound> {
  const { linear, gap, watch, stopAt } = search;
  const plan = linearPlan(linear, slopes);
  const timeLimitSeconds = Math.max(LEAST_SECONDS, MODEL_SHARE * (stopAt - watch.seconds()));
  const from = start ? { start: plan.valuesOf(start) } : {};
  const { status, values, ...rest } = await solveMixed(plan.model, { gap, timeLimitSeconds, ...from });
  if (status === "infeasible" || (status === "none-found" && !start)) return status;
  const solved = linear.gains.flatMap((_, i) => ((values[i] ?? 0) > 0.5 ? [i] : []));
  const chosen = status === "none-found" ? (start ?? []) : solved;
  const objective = plan.worthOf(chosen);
  // Before the solver has a bound of its own, nothing is worth more than no loss at all.
  const all = linear.evaluator.worth([]).lossWithout;
  const bound = Math.max(objective, Number.isFinite(rest.bound) ? UNIT * rest.bound : all);
  const share = bound === objective ? 0 : (bound - objective) / Math.max(Math.abs(objective), 1);
  return { chosen, plan, model: { objective, bound, gap: share } };
}

function improve(search: Search, plan: LinearPlan, chosen: readonly number[]) {
  const { linear, watch, stopAt } = search;
  const corrected = linearPlan(linear, slopesAt(linear, plan, chosen));
  return exchange(
    {
      ...{ candidates: linear.evaluator.candidates, limits: linear.limits, open: linear.open, watch, stopAt },
      value: (one) => linear.evaluator.objective(one),
      guess: (one) => corrected.worthOf(one),
    },
    chosen,
  );
}

/** A plan to start from: the ranking cut by the limits, or nothing at all; none when both break a promise. */
function plainStart(evaluator: PlanEvaluator, limits: readonly LimitRow[]): readonly number[] | undefined {
  return [rankAndCut(evaluator, limits), []].find((chosen) => brokenBy(limits, chosen).length === 0);
}

/** The linear model first, then exchange on the true worth and the model again at the plan's own slopes, in turn. */
export async function searchPlan(prepared: Prepared, terms: SearchTerms): Promise<Searched | NotFound> {
  const { evaluator } = prepared;
  const open = openCandidates(evaluator, terms.limits);
  const search: Search = { ...terms, linear: { ...prepared, limits: terms.limits, open } };
  const first = await solveModel(search, firstSlopes, plainStart(evaluator, terms.limits));
  if (typeof first === "string") return first;
  let best = improve(search, first.plan, first.chosen);
  let { plan } = first;
  let rounds = 1;
  for (; rounds < MOST_ROUNDS && best.settled; rounds += 1) {
    const next = await solveModel(search, slopesAt(search.linear, plan, best.chosen), best.chosen);
    if (typeof next === "string") break;
    plan = next.plan;
    const tried = improve(search, plan, next.chosen);
    if (tried.value <= best.value) {
      best = { ...best, settled: tried.settled };
      break;
    }
    best = tried;
  }
  const firstValue = evaluator.objective(first.chosen);
  return { ...best, ...{ model: first.model, firstValue, rounds } };
}

/** What a search near a known plan gives: that plan itself when it fits and nothing better is found. */
export interface NearPlan {
  readonly chosen: readonly number[];
  readonly value: number;
}

/**
 * The best plan within other limits, sought from a plan that is the best within its own: the model once, at that plan's
 * slopes, and exchange from what it gives and from the plan itself where that still fits.
 *
 * @returns Null when nothing fits or time ran out.
 */
export async function searchNear(
  prepared: Prepared,
  terms: SearchTerms,
  known: readonly number[],
): Promise<NearPlan | null> {
  const open = openCandidates(prepared.evaluator, terms.limits);
  const linear: LinearTerms = { ...prepared, limits: terms.limits, open };
  const search: Search = { ...terms, linear };
  const slopes = slopesAt(linear, linearPlan(linear, firstSlopes), known);
  const fits = brokenBy(terms.limits, known).length === 0;
  const found = await solveModel(search, slopes, fits ? known : undefined);
  const starts = [...(typeof found === "string" ? [] : [found.chosen]), ...(fits ? [known] : [])];
  if (starts.length === 0) return null;
  const value = (chosen: readonly number[]) => prepared.evaluator.objective(chosen);
  const best = starts.reduce((a, b) => (value(b) > value(a) ? b : a));
  return improve(search, linearPlan(linear, slopes), best);
}
