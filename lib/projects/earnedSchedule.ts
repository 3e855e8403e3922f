import { requireNumber } from "@/lib/kernel/requireNumber";

/** Planned value reached at a time, both counted from the start of the plan. */
export interface PlannedPoint {
  readonly at: number;
  readonly value: number;
}

/**
 * The time at which the plan would have earned what is earned.
 *
 * ES = t(C) + (EV − PV(C)) / (PV(C+1) − PV(C)) · (t(C+1) − t(C)), C the last point with PV ≤ EV: straight between
 * points. What is earned beyond the whole plan is the time at which the plan first reaches its whole.
 *
 * @param points Cumulative, in order of time, values not falling; the first is where the plan starts.
 * @returns Time in the unit of the points; null without points, or when less is earned than the first point holds.
 * @throws {RangeError} when a value falls, a time does not rise or a number is not finite.
 * @see W. Lipke, Schedule is different, 2003 (formula from memory).
 */
export function earnedSchedule(points: readonly PlannedPoint[], earned: number): number | null {
  requireNumber(earned, "earned", { least: 0 });
  let before: PlannedPoint | null = null;
  let found: number | null = null;
  const whole = points.at(-1)?.value ?? 0;
  for (const point of points) {
    requireNumber(point.value, "planned value", { least: before?.value ?? 0 });
    if (before !== null && !(point.at > before.at)) throw new RangeError(`time must rise, got ${point.at}`);
    if (before !== null && found === null && point.value > earned && before.value <= earned)
      found = before.at + ((earned - before.value) / (point.value - before.value)) * (point.at - before.at);
    before = point;
  }
  if (found !== null) return found;
  return earned < whole ? null : (points.find(({ value }) => value >= whole)?.at ?? null);
}
