import { requireCount, requireNumber } from "@/lib/kernel/requireNumber";

/** Units that were in service together from one time to another, in days from the start of the window. */
export interface ServiceStretch {
  readonly fromDay: number;
  readonly untilDay: number;
  readonly units: number;
}

const DAYS_PER_YEAR = 365.25;

/**
 * Unit-years in service from the start of the window to a day: the clock of a pool whose number of units changes.
 *
 * = sum over stretches of units * (min(day, until) - from), where positive, / 365.25. Events at a constant rate per
 * unit come evenly on this clock, however many units there are.
 *
 * @param day Days from the start of the window, >= 0; a part of a day counts.
 * @throws {RangeError} naming the argument and its value.
 */
export function serviceTime(stretches: readonly ServiceStretch[], day: number): number {
  requireNumber(day, "day", { least: 0 });
  let days = 0;
  for (const { fromDay, untilDay, units } of stretches) {
    requireCount(units, "units");
    requireNumber(untilDay, "untilDay", { least: requireNumber(fromDay, "fromDay", { least: 0 }) });
    days += units * Math.max(0, Math.min(day, untilDay) - fromDay);
  }
  return days / DAYS_PER_YEAR;
}
