import type { IsoDate } from "@/lib/kernel/isoDate";
import { depletionDay } from "@/lib/spares/depletion";

const MONTHS_PER_YEAR = 12;

/**
 * First day a chance known by month reaches `chance`, in a straight line from month to month.
 *
 * For chances of which only the months are kept; `depletionDay` on the curve itself differs by a few days at most where
 * the curve bends within a month.
 *
 * @param byMonth Chance at month 0, 1, …
 * @returns Null when no month reaches it.
 * @throws {RangeError} naming the argument and its value.
 */
export function coverDay(
  byMonth: readonly number[],
  { chance, asOf }: { readonly chance: number; readonly asOf: IsoDate },
): IsoDate | null {
  const at = (years: number): number => {
    const place = Math.min(byMonth.length - 1, years * MONTHS_PER_YEAR);
    const month = Math.floor(place);
    const from = byMonth[month] as number;
    return from + (place - month) * ((byMonth[month + 1] ?? from) - from);
  };
  return depletionDay(byMonth, { chance, asOf, at });
}
