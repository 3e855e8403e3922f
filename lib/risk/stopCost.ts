import { requireNumber, requireShare } from "@/lib/kernel/requireNumber";
import type { StopCostTerms } from "@/lib/risk/expectedStopCost";

/** What one stop costs, EUR, by where it comes from; the three add up to the total. */
export interface StopCost {
  /** By any stop at all. */
  readonly fixed: number;
  /** By its hours beyond the buffer that overtime does not recover. */
  readonly hourly: number;
  /** By the steps it has passed. */
  readonly steps: number;
  readonly total: number;
}

/**
 * Cost of one stop of a known length, EUR.
 *
 * C(D) = fixed + C_h * r * max(0, D - buffer) + steps with D > step; a step is passed only beyond its hour.
 *
 * @param hours Length of the stop, D, hours >= 0.
 * @throws {RangeError} naming the argument and its value.
 */
export function stopCost(hours: number, terms: StopCostTerms): StopCost {
  requireNumber(hours, "hours", { least: 0 });
  const perHour = requireNumber(terms.costPerHour, "costPerHour", { least: 0 });
  const buffer = requireNumber(terms.bufferHours, "bufferHours", { least: 0 });
  const share = requireShare(terms.unrecoveredShare, "unrecoveredShare");
  const fixed = requireNumber(terms.fixed ?? 0, "fixed", { least: 0 });
  const hourly = perHour * share * Math.max(0, hours - buffer);
  const steps = (terms.steps ?? [])
    .filter((step) => hours > step.afterHours)
    .reduce((sum, step) => sum + requireNumber(step.cost, "cost of a step", { least: 0 }), 0);
  return { fixed, hourly, steps, total: fixed + hourly + steps };
}
