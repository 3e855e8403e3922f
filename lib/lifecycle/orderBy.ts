import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { requireNumber } from "@/lib/kernel/requireNumber";

/** Weeks a house needs before an order leaves it. */
export interface PurchaseCycle {
  readonly quoteWeeks: number;
  readonly approvalWeeks: number;
  readonly purchaseWeeks: number;
}

/** Common practice, no source: quotation 2 to 4 weeks, approval 2 to 6, writing the order 1. */
export const USUAL_CYCLE: PurchaseCycle = { quoteWeeks: 3, approvalWeeks: 5, purchaseWeeks: 1 };

const DAYS_PER_WEEK = 7;

/**
 * Last day a purchase can be started inside the house and still reach the maker's last order day.
 *
 * order by = last order - (quotation + approval + order), in calendar days; part days count whole.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function orderBy(lastOrderOn: IsoDate, cycle: PurchaseCycle): IsoDate {
  const weeks = Object.entries(cycle).reduce((sum, [name, value]) => {
    requireNumber(value, name, { least: 0 });
    return sum + value;
  }, 0);
  return addDays(lastOrderOn, -Math.ceil(weeks * DAYS_PER_WEEK));
}
