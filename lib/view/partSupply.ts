import { addMonths, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import type { LifecycleDates, SupplyStage } from "@/lib/lifecycle/supplyStage";
import { plainNumber } from "@/lib/view/number";
import { day, distance } from "@/lib/view/time";

/** Months after which a price is old. */
const PRICE_STALE_MONTHS = 24;

type Reason = (dates: LifecycleDates, asOf: IsoDate) => string;

const REASONS: Readonly<Record<SupplyStage, Reason>> = {
  undated: ({ checkedOn }, asOf) =>
    checkedOn === null || checkedOn > asOf
      ? "No source is recorded for its supply."
      : `Its source was last read on ${day(checkedOn)}, more than 24 months ago.`,
  open: ({ checkedOn }) => `The source read on ${day(checkedOn)} tells of no discontinuance.`,
  notice: ({ noticeOn, lastOrderOn }, asOf) => {
    const given = noticeOn === null ? "Notice is out" : `Notice was given on ${day(noticeOn)}`;
    if (lastOrderOn === null) return `${given}; no last order day is told.`;
    return `${given}; the last order is ${day(lastOrderOn)}, ${distance(lastOrderOn, asOf)}.`;
  },
  "buy-window": ({ lastOrderOn, orderByOn }, asOf) => {
    const own =
      orderByOn === null ? "no own order-by day is set" : `the own order-by day is ${day(orderByOn)}`;
    return `The last order is ${day(lastOrderOn)}, ${distance(lastOrderOn, asOf)}; ${own}.`;
  },
  closing: ({ lastOrderOn, orderByOn }) =>
    `The own order-by day ${day(orderByOn)} has passed; the maker takes orders until ${day(lastOrderOn)}.`,
  "orders-shut": ({ lastOrderOn, lastShipOn }) => {
    const order = `The last order was ${lastOrderOn === null ? "not told" : day(lastOrderOn)}`;
    return lastShipOn === null ? `${order}.` : `${order}; what was ordered ships until ${day(lastShipOn)}.`;
  },
  "repair-fed": ({ lastOrderOn, lastShipOn, repairUntilOn }) =>
    `The last shipment was ${day(lastShipOn ?? lastOrderOn)}; repair is accepted until ${day(repairUntilOn)}.`,
  "own-stock": ({ lastOrderOn, lastShipOn, repairUntilOn }) =>
    repairUntilOn === null
      ? `The last shipment was ${day(lastShipOn ?? lastOrderOn)}, and no repair is known.`
      : `Repair ended on ${day(repairUntilOn)}.`,
};

/** Why the part stands in its stage on the day, from its own dates. */
export function stageReason(stage: SupplyStage, dates: LifecycleDates, asOf: IsoDate): string {
  return REASONS[stage](dates, asOf);
}

/** How old a price is: `on 3 Mar 2026, 8 months ago`; null of day is said. */
export function priceAge(pricedOn: IsoDate | null, asOf: IsoDate): string {
  return pricedOn === null
    ? "day of the price not known"
    : `on ${day(pricedOn)}, ${distance(pricedOn, asOf)}`;
}

/** Whether a price is older than 24 months, or of unknown age. */
export function isPriceStale(pricedOn: IsoDate | null, asOf: IsoDate): boolean {
  return pricedOn === null || addMonths(pricedOn, PRICE_STALE_MONTHS) < asOf;
}

/** Typical and long lead time: `9 weeks (80 % within 16 weeks)`. */
export function leadText(weeks: number | null, weeksP80: number | null): string | null {
  if (weeks === null) return null;
  const long = weeksP80 === null ? "" : ` (80 % within ${plainNumber(weeksP80)} weeks)`;
  return `${plainNumber(weeks, Number.isInteger(weeks) ? 0 : 1)} weeks${long}`;
}

/** A promised day that has passed, in words; null when it has not or none was promised. */
export function overdueText(dueOn: IsoDate | null, asOf: IsoDate): string | null {
  if (dueOn === null || dueOn >= asOf) return null;
  const days = daysBetween(dueOn, asOf);
  return `${plainNumber(days)} ${days === 1 ? "day" : "days"} overdue`;
}
