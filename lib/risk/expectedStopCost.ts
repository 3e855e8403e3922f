import { requireNumber, requireShare } from "@/lib/kernel/requireNumber";
import { type Lognormal, lognormalExceeds, meanBeyond } from "@/lib/reliability/lognormal";

export interface StopCostTerms {
  /** EUR for each hour beyond the buffer. */
  readonly costPerHour: number;
  readonly bufferHours: number;
  /** Share of the lost hours overtime cannot recover, in [0, 1]. */
  readonly unrecoveredShare: number;
  /** EUR for any stop at all. */
  readonly fixed?: number;
  /** EUR once a stop lasts longer than so many hours, e.g. a customer who stands. */
  readonly steps?: readonly { readonly afterHours: number; readonly cost: number }[];
}

export interface StopTime {
  readonly restoration: Lognormal;
  /** Hours before it starts, e.g. the way of a spare from another site. */
  readonly delayHours: number;
}

/** What a stop costs by the hours its restoration takes: fixed + perHour * max(0, hours - beyond) + steps passed. */
export interface CostCurve {
  readonly fixed: number;
  /** EUR for each hour beyond `beyond`; a negative `beyond` adds to the hours. */
  readonly perHour: number;
  readonly beyond: number;
  readonly steps: readonly { readonly after: number; readonly cost: number }[];
}

/**
 * The cost of a stop as a function of the hours of restoration, any delay before it taken in.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function costCurve(terms: StopCostTerms, delayHours: number): CostCurve {
  const delay = requireNumber(delayHours, "delayHours", { least: 0 });
  const perHour = requireNumber(terms.costPerHour, "costPerHour", { least: 0 });
  return {
    fixed: requireNumber(terms.fixed ?? 0, "fixed", { least: 0 }),
    perHour: perHour * requireShare(terms.unrecoveredShare, "unrecoveredShare"),
    beyond: requireNumber(terms.bufferHours, "bufferHours", { least: 0 }) - delay,
    steps: (terms.steps ?? []).map(({ afterHours, cost }) => ({
      after: requireNumber(afterHours, "afterHours", { least: 0 }) - delay,
      cost: requireNumber(cost, "cost of a step", { least: 0 }),
    })),
  };
}

/** Mean cost of one stop and what it is made of. */
export interface ExpectedStop {
  /** EUR. */
  readonly cost: number;
  /** E[max(0, D - buffer)]. */
  readonly hoursBeyond: number;
  /** Chance that a stop passes each step, in their order. */
  readonly stepChances: readonly number[];
}

/**
 * Mean cost of one stop, EUR, with its mean hours beyond the buffer and the chance that it passes each step.
 *
 * E C(D) = fixed + C_h * r * E[max(0, D - buffer)] + sum of steps * P(D > step), D = delay + lognormal restoration.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function expectedStop({ restoration, delayHours }: StopTime, terms: StopCostTerms): ExpectedStop {
  const curve = costCurve(terms, delayHours);
  const hoursBeyond = meanBeyond(restoration, curve.beyond);
  const stepChances = curve.steps.map(({ after }) => lognormalExceeds(restoration, after));
  let cost = curve.fixed + curve.perHour * hoursBeyond;
  for (const [i, step] of curve.steps.entries()) cost += step.cost * (stepChances[i] as number);
  return { cost, hoursBeyond, stepChances };
}

/** Mean cost of one stop alone, EUR; see `expectedStop`. */
export function expectedStopCost(time: StopTime, terms: StopCostTerms): number {
  return expectedStop(time, terms).cost;
}
