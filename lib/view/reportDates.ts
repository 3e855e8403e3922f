import { addMonths } from "@/lib/kernel/isoDate";
import { type ReportInput, type ReportPart, unitsByPool } from "@/lib/view/report";

/** A day of supply that lies ahead, for all parts it is said of together. */
export interface DueDate {
  readonly on: string;
  readonly what: "Start the last order by" | "Last order" | "Last shipment" | "Repair ends";
  /** Family or part the day is said of. */
  readonly of: string;
  /** Units at the report's sites. */
  readonly units: number;
  /** The day to start an order has passed while the maker still takes orders. */
  readonly passed: boolean;
}

const AHEAD_MONTHS = 6;

const KINDS = [
  { key: "orderByOn", what: "Start the last order by" },
  { key: "lastOrderOn", what: "Last order" },
  { key: "lastShipOn", what: "Last shipment" },
  { key: "repairUntilOn", what: "Repair ends" },
] as const;

/** What is due within six months, soonest first; a passed order-by day stays while orders are still taken. */
export function dueDates(input: ReportInput): DueDate[] {
  const until = addMonths(input.asOf, AHEAD_MONTHS);
  const units = unitsByPool(input.lines);
  const found = new Map<string, DueDate>();
  for (const part of input.parts)
    for (const { key, what } of KINDS) {
      const on = part[key];
      if (on === null || on > until || !isAhead(part, key, input.asOf)) continue;
      const name = `${on} ${what} ${part.datesOf}`;
      const before = found.get(name)?.units ?? 0;
      const here = before + (units.get(part.id) ?? 0);
      found.set(name, { on, what, of: part.datesOf, units: here, passed: on < input.asOf });
    }
  return [...found.values()].sort((a, b) => (a.on === b.on ? b.units - a.units : a.on < b.on ? -1 : 1));
}

function isAhead(part: ReportPart, key: (typeof KINDS)[number]["key"], asOf: string): boolean {
  const on = part[key];
  if (on !== null && on >= asOf) return true;
  return key === "orderByOn" && part.lastOrderOn !== null && part.lastOrderOn >= asOf;
}
