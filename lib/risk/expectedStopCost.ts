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

/**
 * Mean cost of one stop, EUR.
 *
 * E C(D) = fixed + C_h * r * E[max(0, D - buffer)] + sum of steps * P(D > step), D = delay + lognormal restoration.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function expectedStopCost({ restoration, delayHours }: StopTime, terms: StopCostTerms): number {
  const perHour = requireNumber(terms.costPerHour, "costPerHour", { least: 0 });
  const buffer = requireNumber(terms.bufferHours, "bufferHours", { least: 0 });
  const share = requireShare(terms.unrecoveredShare, "unrecoveredShare");
  requireNumber(delayHours, "delayHours", { least: 0 });
  let cost = (terms.fixed ?? 0) + perHour * share * meanBeyond(restoration, buffer - delayHours);
  for (const step of terms.steps ?? [])
    cost += step.cost * lognormalExceeds(restoration, step.afterHours - delayHours);
  return cost;
}
