import { addDays, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";

/** A day's place in the week calendar. */
export interface IsoWeek {
  /** The year the week belongs to; it differs from the calendar's in the days around New Year. */
  readonly year: number;
  /** 1 to 53. */
  readonly week: number;
  /** 1 is Monday, 7 is Sunday. */
  readonly weekday: number;
}

/** A Monday; weekdays are counted from it. */
const A_MONDAY: IsoDate = "1970-01-05";

/**
 * The week of a day: weeks begin on Monday, and week 1 is the one with the year's first Thursday.
 *
 * @throws {RangeError} if the date does not exist.
 * @see ISO 8601, week dates (from memory).
 */
export function isoWeek(date: IsoDate): IsoWeek {
  const weekday = (((daysBetween(A_MONDAY, date) % 7) + 7) % 7) + 1;
  const thursday = addDays(date, 4 - weekday);
  const year = Number(thursday.slice(0, 4));
  const week = Math.floor(daysBetween(`${thursday.slice(0, 4)}-01-01`, thursday) / 7) + 1;
  return { year, week, weekday };
}

/** The week of a day as ISO 8601 writes it: `2026-W48`. */
export function isoWeekText(date: IsoDate): string {
  const { year, week } = isoWeek(date);
  return `${String(year).padStart(4, "0")}-W${String(week).padStart(2, "0")}`;
}
