/** A day of the Gregorian calendar as `YYYY-MM-DD`, years 0001 to 9999. Compares in order as text. */
export type IsoDate = string;

const MS_PER_DAY = 86_400_000;
const DAYS_PER_YEAR = 365.25;

interface Parts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

function split(text: string): Parts | null {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (!match) return null;
  return { year: Number(match[1]), month: Number(match[2]), day: Number(match[3]) };
}

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

function daysInMonth(year: number, month: number): number {
  if (month === 2) return isLeap(year) ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/** Tells whether a text is a day that exists, written `YYYY-MM-DD`. */
export function isIsoDate(text: string): boolean {
  const parts = split(text);
  if (!parts) return false;
  const { year, month, day } = parts;
  return year >= 1 && month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
}

/**
 * Takes a text as a date.
 *
 * @throws {RangeError} if it is not an existing day written `YYYY-MM-DD`.
 */
export function isoDate(text: string): IsoDate {
  if (!isIsoDate(text)) throw new RangeError(`date must be an existing day YYYY-MM-DD, got ${text}`);
  return text;
}

function valid(text: string): Parts {
  return split(isoDate(text)) as Parts;
}

function write({ year, month, day }: Parts): IsoDate {
  if (!(year >= 1 && year <= 9999)) throw new RangeError(`year must be 1 to 9999, got ${year}`);
  const pad = (value: number, width: number) => String(value).padStart(width, "0");
  return `${pad(year, 4)}-${pad(month, 2)}-${pad(day, 2)}`;
}

/** Days since 1970-01-01 of the proleptic Gregorian calendar; no clock and no time zone takes part. */
function dayNumber(date: IsoDate): number {
  const { year, month, day } = valid(date);
  const moment = new Date(0);
  moment.setUTCFullYear(year, month - 1, day);
  return Math.round(moment.getTime() / MS_PER_DAY);
}

/**
 * The day a whole number of days later (earlier when negative).
 *
 * @throws {RangeError} if the date does not exist, `days` is not an integer, or the result leaves years 1 to 9999.
 */
export function addDays(date: IsoDate, days: number): IsoDate {
  if (!Number.isSafeInteger(days)) throw new RangeError(`days must be an integer, got ${days}`);
  const moment = new Date((dayNumber(date) + days) * MS_PER_DAY);
  return write({
    year: moment.getUTCFullYear(),
    month: moment.getUTCMonth() + 1,
    day: moment.getUTCDate(),
  });
}

/**
 * The same day of the month a whole number of months later; a day the month lacks becomes its last day.
 *
 * @throws {RangeError} if the date does not exist, `months` is not an integer, or the result leaves years 1 to 9999.
 */
export function addMonths(date: IsoDate, months: number): IsoDate {
  if (!Number.isSafeInteger(months)) throw new RangeError(`months must be an integer, got ${months}`);
  const { year, month, day } = valid(date);
  const count = year * 12 + (month - 1) + months;
  const landing = { year: Math.floor(count / 12), month: (((count % 12) + 12) % 12) + 1 };
  return write({ ...landing, day: Math.min(day, daysInMonth(landing.year, landing.month)) });
}

/** Whole days from one date to another, negative when `to` is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return dayNumber(to) - dayNumber(from);
}

/** Years of 365.25 days from one date to another, negative when `to` is earlier. */
export function yearsBetween(from: IsoDate, to: IsoDate): number {
  return daysBetween(from, to) / DAYS_PER_YEAR;
}
