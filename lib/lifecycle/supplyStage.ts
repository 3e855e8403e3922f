import { addMonths, type IsoDate, isoDate } from "@/lib/kernel/isoDate";

/** What is known of a part's supply; null is not known. All days count as still inside. */
export interface LifecycleDates {
  /** Day the discontinuance notice was given. */
  readonly noticeOn: IsoDate | null;
  /** Last day an order is accepted. */
  readonly lastOrderOn: IsoDate | null;
  /** Last day the maker ships. */
  readonly lastShipOn: IsoDate | null;
  /** Last day a repair is accepted. */
  readonly repairUntilOn: IsoDate | null;
  /** Last day an own request must start for the order to leave in time. */
  readonly orderByOn: IsoDate | null;
  /** Day somebody last read the source of these dates; null is nothing sourced. */
  readonly checkedOn: IsoDate | null;
}

/** The stages from easiest to hardest supply; a part without a fresh source stands outside, first. */
export const SUPPLY_STAGES = [
  "undated",
  "open",
  "notice",
  "buy-window",
  "closing",
  "orders-shut",
  "repair-fed",
  "own-stock",
] as const;

export type SupplyStage = (typeof SUPPLY_STAGES)[number];

/** A source not read again for longer than this says nothing any more. */
const SOURCE_VALID_MONTHS = 24;
/** A last order date this near makes it a buy window. */
const BUY_WINDOW_MONTHS = 12;

function afterOrders(dates: LifecycleDates, lastOrderOn: IsoDate, asOf: IsoDate): SupplyStage {
  // Without a ship date nothing is promised beyond the last order.
  const lastShipOn = dates.lastShipOn ?? lastOrderOn;
  if (asOf <= lastShipOn) return "orders-shut";
  if (dates.repairUntilOn !== null && asOf <= dates.repairUntilOn) return "repair-fed";
  return "own-stock";
}

function beforeLastOrder(dates: LifecycleDates, asOf: IsoDate): SupplyStage {
  const announced = dates.noticeOn === null ? dates.lastOrderOn !== null : dates.noticeOn <= asOf;
  if (!announced) return "open";
  if (dates.lastOrderOn === null) return "notice";
  if (dates.orderByOn !== null && dates.orderByOn < asOf) return "closing";
  return dates.lastOrderOn <= addMonths(asOf, BUY_WINDOW_MONTHS) ? "buy-window" : "notice";
}

/**
 * Says, from the buyer's side, how a part can still be had on a day.
 *
 * undated: nothing sourced, or the source last read more than 24 months ago (or after `asOf`) ·
 * open: sourced and no notice yet · notice: last order later than 12 months from now, or not told ·
 * buy-window: last order within 12 months · closing: own order-by day passed, last order not ·
 * orders-shut: after last order, up to last ship · repair-fed: after last ship, up to the end of repair ·
 * own-stock: after that, or no repair known.
 * Every named day is the last good one. A last order date without a notice date counts as announced. A passed
 * order-by day means closing however far the last order is. Without a ship date the last order stands for it;
 * a passed ship date alone shuts orders.
 *
 * @throws {RangeError} naming the date that does not exist.
 * @see JESD48 practice for notice, last order and last ship; IEC 62402 for obsolescent and obsolete (from memory).
 */
export function supplyStage(dates: LifecycleDates, asOf: IsoDate): SupplyStage {
  for (const date of [asOf, ...Object.values(dates)]) if (date !== null) isoDate(date);
  const { checkedOn, lastOrderOn, lastShipOn } = dates;
  if (checkedOn === null || checkedOn > asOf) return "undated";
  if (addMonths(checkedOn, SOURCE_VALID_MONTHS) < asOf) return "undated";
  if (lastOrderOn !== null && lastOrderOn < asOf) return afterOrders(dates, lastOrderOn, asOf);
  if (lastOrderOn === null && lastShipOn !== null && lastShipOn < asOf)
    return afterOrders(dates, lastShipOn, asOf);
  return beforeLastOrder(dates, asOf);
}
