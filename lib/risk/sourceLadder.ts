import { requireNumber, requireShare } from "@/lib/kernel/requireNumber";

/** One way to get going again without an own spare. */
export interface LadderStep {
  readonly source: string;
  /** Chance that it is there, in [0, 1]. */
  readonly availability: number;
  /** Hours from stop to running by it. */
  readonly hours: number;
  /** Only while the part can be ordered or repaired; always when absent. */
  readonly needs?: "orders" | "repair";
}

/**
 * Mean hours to running when the steps are tried in order and the first that is there is taken.
 *
 * = sum over i of (product over k < i of (1 - q_k)) * q_i * d_i.
 *
 * @param steps In the order they are tried; the last must be certain (availability 1).
 * @throws {RangeError} naming the argument and its value.
 */
export function ladderHours(steps: readonly LadderStep[]): number {
  if (steps.at(-1)?.availability !== 1)
    throw new RangeError(`availability of the last step must be 1, got ${steps.at(-1)?.availability}`);
  let left = 1;
  let hours = 0;
  for (const step of steps) {
    const found = left * requireShare(step.availability, "availability");
    hours += found * requireNumber(step.hours, "hours", { least: 0 });
    left -= found;
  }
  return hours;
}

/**
 * The steps open to a part, the quickest first: those that need orders or repair only while there are any.
 *
 * Nobody waits for the maker when something quicker is there, so more supply never makes a stop longer. What is slower
 * than a certain step is never taken.
 */
export function openSteps(
  steps: readonly LadderStep[],
  open: { readonly orders: boolean; readonly repair: boolean },
): LadderStep[] {
  const there = steps
    .filter(({ needs }) => needs === undefined || open[needs])
    .sort((left, right) => left.hours - right.hours);
  const certain = there.findIndex(({ availability }) => availability === 1);
  return certain === -1 ? there : there.slice(0, certain + 1);
}
