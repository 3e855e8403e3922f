import { addDays, daysBetween, type IsoDate, isIsoDate } from "@/lib/kernel/isoDate";

const FIRST_YEAR = 1950;
const LAST_YEAR = 2099;

/** A day that is in the calendar, between 1950 and 2099; null otherwise. */
export function toIsoDate(year: number, month: number, day: number): IsoDate | null {
  if (year < FIRST_YEAR || year > LAST_YEAR) return null;
  const text = `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
  return isIsoDate(text) ? text : null;
}

/**
 * The day of a spreadsheet's day number, counted so that 25569 is 1970-01-01 (the 1900 system; right from
 * 1 March 1900 on). Only 20000 to 73050 (1954 to 2099) is taken: other numbers are something else.
 */
export function fromDayNumber(dayNumber: number): IsoDate | null {
  const whole = Math.floor(dayNumber);
  return whole >= 20_000 && whole <= 73_050 ? addDays("1970-01-01", whole - 25_569) : null;
}

/** Monday of week 1 by ISO 8601, the week that holds 4 January. */
function firstMonday(year: number): IsoDate {
  const fourth = `${year}-01-04`;
  // 25 December 1899 was a Monday.
  return addDays(fourth, -(daysBetween("1899-12-25", fourth) % 7));
}

/** The Monday of a calendar week by ISO 8601; null when the year has no such week. */
export function mondayOfWeek(year: number, week: number): IsoDate | null {
  if (week < 1 || week > 53 || year < FIRST_YEAR || year > LAST_YEAR) return null;
  const monday = addDays(firstMonday(year), (week - 1) * 7);
  return monday < firstMonday(year + 1) ? monday : null;
}

/**
 * Two digits of a year: 69 to 99 are 1969 to 1999, 00 to 68 are 2000 to 2068 (the rule POSIX gives for %y,
 * from memory).
 */
export function fullYear(digits: string): number {
  const year = Number(digits);
  if (digits.length !== 2) return year;
  return year >= 69 ? 1900 + year : 2000 + year;
}
