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
import { exchange, isLate, type Watch } from "@/lib/portfolio/planExchange";
import { brokenBy, type LimitRow } from "@/lib/portfolio/planLimits";
import type { SolvedPlan } from "@/lib/portfolio/planResult";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";
import { rankAndCut } from "@/lib/portfolio/rankAndCut";
import { relax } from "@/lib/portfolio/relaxedModel";
import { type PoolShortage, shortagesOf } from "@/lib/portfolio/shortage";
import { shortageCuts } from "@/lib/portfolio/shortageCuts";

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
  /** Hears of each plan met that may be better, and of the model's bound once there is one. */
  readonly tell?: (met: Met) => void;
}

/** A plan a search met. */
export interface Met {
  readonly step: "model" | "exchange";
  readonly chosen: readonly number[];
  readonly bound: number | null;
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
const MODEL_SHARE = 0.7;
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

interface ModelTerms {
  readonly slopes: Slopes;
  /** A plan to start from. */
  readonly start?: readonly number[] | undefined;
  /** Hears of each better plan of the model. */
  readonly better?: (chosen: readonly number[]) => void;
}

const takenIn = ({ linear }: Search, values: ArrayLike<number>): number[] =>
  linear.gains.flatMap((_, i) => ((values[i] ?? 0) > 0.5 ? [i] : []));

/** A plan as it is when it keeps every limit to the last digit; what rounding let through is not. */
const keptWithin = ({ linear }: Search, chosen: readonly number[]) =>
  brokenBy(linear.limits, chosen).length === 0 ? chosen : null;

const shareOf = (objective: number, bound: number): number =>
  bound <= objective ? 0 : (bound - objective) / Math.max(Math.abs(objective), 1);

/** A model in parts with a whole plan to start from, and how long its solver may take. */
async function startModel(search: Search, plan: LinearPlan, known: readonly number[] | undefined) {
  const { watch, stopAt } = search;
  const until = watch.seconds() + Math.max(LEAST_SECONDS, MODEL_SHARE * (stopAt - watch.seconds()));
  const left = () => Math.max(LEAST_SECONDS, until - watch.seconds());
  const { model, bound, near } = await relax(plan.model, {
    ...{ cuts: (values) => shortageCuts(plan.losses, values), timeLimitSeconds: left() },
    late: () => isLate(watch, until),
  });
  const met = near && keptWithin(search, takenIn(search, near));
  const start = known && !(met && plan.worthOf(met) > plan.worthOf(known)) ? known : (met ?? undefined);
  // Before the solver has a bound of its own, nothing is worth more than no loss at all.
  const most = Math.min(UNIT * bound, search.linear.evaluator.worth([]).lossWithout);
  return { model, most, start, left };
}

async function solveModel(
  search: Search,
  { slopes, start: known, better }: ModelTerms,
): Promise<Found | NotFound> {
  const { linear, gap, watch, stopAt } = search;
  const plan = linearPlan(linear, slopes);
  const { model, most, start, left } = await startModel(search, plan, known);
  const found = (chosen: readonly number[], bound: number): Found => {
    const objective = plan.worthOf(chosen);
    const least = Math.max(objective, Math.min(most, bound));
    return { chosen, plan, model: { objective, bound: least, gap: shareOf(objective, least) } };
  };
  if (start) better?.(start);
  if (start && shareOf(plan.worthOf(start), most) <= gap) return found(start, most);
  const { status, values, bound } = await solveMixed(model, {
    ...{ gap, timeLimitSeconds: left(), stopped: () => isLate(watch, stopAt) },
    ...(start ? { start: plan.valuesOf(start) } : {}),
    ...(better ? { better: (met: ArrayLike<number>) => better(takenIn(search, met)) } : {}),
  });
  if (status === "infeasible" || (status === "none-found" && !start)) return status;
  const proven = Number.isFinite(bound) ? UNIT * bound : most;
  return found(status === "none-found" ? (start ?? []) : takenIn(search, values), proven);
}

function improve(
  search: Search,
  { plan, chosen, bound }: { plan: LinearPlan; chosen: readonly number[]; bound: number | null },
) {
  const { linear, watch, stopAt, tell } = search;
  const corrected = linearPlan(linear, slopesAt(linear, plan, chosen));
  return exchange(
    {
      ...{ candidates: linear.evaluator.candidates, limits: linear.limits, open: linear.open, watch, stopAt },
      value: (one) => linear.evaluator.objective(one),
      guess: (one) => corrected.worthOf(one),
      better: (one) => tell?.({ step: "exchange", chosen: one, bound }),
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
  const first = await solveModel(search, {
    ...{ slopes: firstSlopes, start: plainStart(evaluator, terms.limits) },
    better: (chosen) => terms.tell?.({ step: "model", chosen, bound: null }),
  });
  if (typeof first === "string") return first;
  const { bound } = first.model;
  terms.tell?.({ step: "exchange", chosen: first.chosen, bound });
  let best = improve(search, { ...first, bound });
  let { plan } = first;
  let rounds = 1;
  for (; rounds < MOST_ROUNDS && best.settled; rounds += 1) {
    const slopes = slopesAt(search.linear, plan, best.chosen);
    const next = await solveModel(search, { slopes, start: best.chosen });
    if (typeof next === "string") break;
    plan = next.plan;
    const tried = improve(search, { ...next, bound });
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
  const found = await solveModel(search, { slopes, start: fits ? known : undefined });
  const starts = [...(typeof found === "string" ? [] : [found.chosen]), ...(fits ? [known] : [])];
  if (starts.length === 0) return null;
  const value = (chosen: readonly number[]) => prepared.evaluator.objective(chosen);
  const best = starts.reduce((a, b) => (value(b) > value(a) ? b : a));
  return improve(search, { plan: linearPlan(linear, slopes), chosen: best, bound: null });
}
