import { addMonths } from "@/lib/kernel/isoDate";
import { type PartDateKind, partDates } from "@/lib/view/partDates";
import { type ReportInput, unitsByPool } from "@/lib/view/report";

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

const WORDS = {
  "order-by": "Start the last order by",
  "last-order": "Last order",
  "last-ship": "Last shipment",
  "repair-end": "Repair ends",
} as const satisfies Record<PartDateKind, DueDate["what"]>;

/** What is due within six months, soonest first; a passed order-by day stays while orders are still taken. */
export function dueDates(input: ReportInput): DueDate[] {
  const until = addMonths(input.asOf, AHEAD_MONTHS);
  const units = unitsByPool(input.lines);
  const found = new Map<string, DueDate>();
  for (const part of input.parts)
    for (const { kind, on } of partDates(part, input.asOf)) {
      if (on > until) continue;
      const what = WORDS[kind];
      const name = `${on} ${what} ${part.datesOf}`;
      const before = found.get(name)?.units ?? 0;
      const here = before + (units.get(part.id) ?? 0);
      found.set(name, { on, what, of: part.datesOf, units: here, passed: on < input.asOf });
    }
  return [...found.values()].sort((a, b) => (a.on === b.on ? b.units - a.units : a.on < b.on ? -1 : 1));
}
