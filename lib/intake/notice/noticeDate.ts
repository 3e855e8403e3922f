import { addDays, addMonths, type IsoDate } from "@/lib/kernel/isoDate";

/** The days a notice names. */
export const NOTICE_DATES = ["noticeOn", "lastOrderOn", "lastShipOn", "repairUntilOn"] as const;
export type NoticeDateKind = (typeof NOTICE_DATES)[number];

export type SpanUnit = "day" | "week" | "month" | "year";

/** One way to read a date, and what makes it that way. */
export interface DateReading {
  readonly on: IsoDate;
  readonly how: string;
}

/** So long after (or, below zero, before) another day of the notice. */
export interface RelativeDate {
  readonly count: number;
  readonly unit: SpanUnit;
  readonly base: NoticeDateKind;
}

/** A date found in a text. */
export interface FoundDate {
  /** Which of the days it is; null is not told. */
  readonly kind: NoticeDateKind | null;
  /** The words it was read from. */
  readonly written: string;
  readonly says: { readonly readings: readonly DateReading[] } | RelativeDate;
}

const MONTHS_PER_YEAR = 12;
const DAYS_PER_WEEK = 7;

/**
 * The day so long after a base day: months and years by the calendar, where a day the month lacks becomes its last.
 *
 * @throws {RangeError} when the base does not exist, the count is no whole number or the result leaves the calendar.
 */
export function daySpanAfter(base: IsoDate, { count, unit }: Pick<RelativeDate, "count" | "unit">): IsoDate {
  if (unit === "day") return addDays(base, count);
  if (unit === "week") return addDays(base, count * DAYS_PER_WEEK);
  return addMonths(base, unit === "month" ? count : count * MONTHS_PER_YEAR);
}

/** The ways to read a found date, given the days known; none while the day it counts from is not known. */
export function readingsOf(
  { says }: FoundDate,
  known: Readonly<Partial<Record<NoticeDateKind, IsoDate | null>>>,
): readonly DateReading[] {
  if ("readings" in says) return says.readings;
  const base = known[says.base] ?? null;
  return base === null ? [] : [{ on: daySpanAfter(base, says), how: `counted from ${base}` }];
}

/** What is proposed for one of the days: one way to read it, several to choose from, or none yet. */
export function proposedDay(
  kind: NoticeDateKind,
  found: readonly FoundDate[],
  known: Readonly<Partial<Record<NoticeDateKind, IsoDate | null>>>,
): readonly DateReading[] {
  const all = found.filter((one) => one.kind === kind).flatMap((one) => readingsOf(one, known));
  return all.filter(({ on }, i) => all.findIndex((other) => other.on === on) === i);
}
