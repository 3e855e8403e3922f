import { addDays, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import type { RepairTrip } from "@/lib/spares/repairRecord";

/** Sent again within so many days of coming back, a repair is doubted. Own choice of the product, no source. */
export const SOON_DAYS = 180;

/** An order as the repairs page shows it. */
export interface RepairOrder extends RepairTrip {
  readonly siteCode: string;
  readonly part: string;
  readonly description: string;
  readonly reference: string;
  readonly fault: string | null;
  /** The day promised; null is none. */
  readonly dueOn: IsoDate | null;
  /** Days the part usually takes; null is not known. */
  readonly usualDays: number | null;
  readonly cost: string | null;
  readonly costCurrency: string | null;
  readonly warrantyUntilOn: IsoDate | null;
  readonly note: string | null;
  readonly version: number;
  readonly mayChange: boolean;
  /** It was received here, so receiving it can be taken back. */
  readonly mayUndo: boolean;
}

/** An order still out, seen from a day. */
export interface OutOrder extends RepairOrder {
  readonly daysOut: number;
  /** The day it should be back: promised, else by the usual days; null is neither. */
  readonly expectedOn: IsoDate | null;
  /** Days past that day; 0 is not overdue, null is no such day. */
  readonly daysOverdue: number | null;
}

/** What is out on a day, the longest overdue first, then what was out longest. */
export function outOn(orders: readonly RepairOrder[], asOf: IsoDate): OutOrder[] {
  return orders
    .filter(({ sentOn, returnedOn }) => sentOn <= asOf && (returnedOn === null || returnedOn > asOf))
    .map((order) => {
      const { sentOn, dueOn, usualDays } = order;
      const expectedOn = dueOn ?? (usualDays === null ? null : addDays(sentOn, usualDays));
      return {
        ...order,
        expectedOn,
        daysOut: daysBetween(sentOn, asOf),
        daysOverdue: expectedOn === null ? null : Math.max(0, daysBetween(expectedOn, asOf)),
      };
    })
    .sort((a, b) => (b.daysOverdue ?? 0) - (a.daysOverdue ?? 0) || b.daysOut - a.daysOut);
}

/** What came back by a day, the latest first. */
export function backBy(orders: readonly RepairOrder[], asOf: IsoDate): RepairOrder[] {
  const backOn = ({ returnedOn }: RepairOrder) => returnedOn ?? "";
  return orders
    .filter((order) => backOn(order) !== "" && backOn(order) <= asOf)
    .sort((a, b) => (backOn(a) < backOn(b) ? 1 : -1));
}

/** A lot a unit may be sent from. */
export interface SendableLot {
  readonly id: string;
  readonly siteCode: string;
  readonly bin: string;
  readonly part: string;
  readonly words: string;
}
