import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { requireOpenShare } from "@/lib/kernel/requireNumber";

const DAYS_PER_YEAR = 365.25;

/**
 * First day the no-spare chance reaches `chance`: the first month of the grid that does, then bisection to the day.
 *
 * A dip below the chance later on does not undo it; a rise and fall within one month may be missed.
 *
 * @param byMonth Chance at month 0, 1, …; @param options `at` the same chance at any time in years.
 * @returns Null when no month of the grid reaches it.
 * @throws {RangeError} naming the argument and its value.
 */
export function depletionDay(
  byMonth: readonly number[],
  {
    chance,
    asOf,
    at,
  }: { readonly chance: number; readonly asOf: IsoDate; readonly at: (years: number) => number },
): IsoDate | null {
  requireOpenShare(chance, "chance");
  const month = byMonth.findIndex((value) => value >= chance);
  if (month < 0) return null;
  if (month === 0) return asOf;
  let low = Math.floor(((month - 1) / 12) * DAYS_PER_YEAR);
  let high = Math.ceil((month / 12) * DAYS_PER_YEAR);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (at(middle / DAYS_PER_YEAR) >= chance) high = middle;
    else low = middle;
  }
  return addDays(asOf, high);
}
