import { addMonths, daysBetween, type IsoDate, isoDate } from "@/lib/kernel/isoDate";
import { type Language, locale } from "@/lib/kernel/locale";
import { NBSP, NOT_KNOWN, plainNumber, significant } from "@/lib/view/number";

const MONTHS: Readonly<Record<Language, readonly string[]>> = {
  en: ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"],
  de: ["Jan.", "Feb.", "März", "Apr.", "Mai", "Juni", "Juli", "Aug.", "Sept.", "Okt.", "Nov.", "Dez."],
};

/** The month's short name, from a date. */
function monthName(date: IsoDate): string {
  return MONTHS[locale().language][Number(date.slice(5, 7)) - 1] ?? "";
}

/** The day of the month: `3`, in German `3.` */
const dayOfMonth = (date: IsoDate) => Number(date.slice(8, 10)) + (locale().language === "de" ? "." : "");

/** A day that cannot be misread: `3 Apr 2026`, in German `3. Apr. 2026`. */
export function day(date: IsoDate | null): string {
  if (date === null) return NOT_KNOWN;
  isoDate(date);
  return `${dayOfMonth(date)} ${monthName(date)} ${Number(date.slice(0, 4))}`;
}

/** Month and year: `Apr 2026`. */
export function month(date: IsoDate | null): string {
  if (date === null) return NOT_KNOWN;
  isoDate(date);
  return `${monthName(date)} ${Number(date.slice(0, 4))}`;
}

/** Calendar quarter: `Q2 2026`. */
export function quarter(date: IsoDate): string {
  isoDate(date);
  return `Q${Math.ceil(Number(date.slice(5, 7)) / 3)} ${Number(date.slice(0, 4))}`;
}

/** First and last day: `3–14 Apr 2026`, `28 Dec 2026 – 3 Jan 2027`. */
export function dayRange(from: IsoDate, to: IsoDate): string {
  if (from === to) return day(from);
  return from.slice(0, 7) === to.slice(0, 7) ? `${dayOfMonth(from)}–${day(to)}` : `${day(from)} – ${day(to)}`;
}

/** Whole months completed from one day to a later one. */
function monthsCompleted(from: IsoDate, to: IsoDate): number {
  const years = Number(to.slice(0, 4)) - Number(from.slice(0, 4));
  const months = years * 12 + Number(to.slice(5, 7)) - Number(from.slice(5, 7));
  return addMonths(from, months) > to ? months - 1 : months;
}

const plural = (n: number, noun: string) => `${plainNumber(n)} ${noun}${n === 1 ? "" : "s"}`;

function stretch(from: IsoDate, to: IsoDate): string {
  const days = daysBetween(from, to);
  if (days < 14) return plural(days, "day");
  const months = monthsCompleted(from, to);
  if (months < 2) return plural(Math.floor(days / 7), "week");
  return months < 24 ? plural(months, "month") : plural(Math.floor(months / 12), "year");
}

/** How far a day lies from another, whole units completed: `in 5 months`, `3 weeks ago`, `the same day`. */
export function distance(date: IsoDate | null, from: IsoDate): string {
  if (date === null) return NOT_KNOWN;
  if (date === from) return "the same day";
  return date > from ? `in ${stretch(from, date)}` : `${stretch(date, from)} ago`;
}

/** Hours: `3.5 h`, `120 h`, `0.4 h`. */
export function hours(value: number | null): string {
  if (value === null) return NOT_KNOWN;
  const text = Math.abs(value) >= 100 ? plainNumber(value) : significant(value, 2);
  return `${text}${NBSP}h`;
}

/** Months: `1 month`, `18 months`, `2.5 months`. */
export function months(value: number | null): string {
  if (value === null) return NOT_KNOWN;
  const text = Number.isInteger(value) ? plainNumber(value) : plainNumber(value, 1);
  return `${text} ${value === 1 ? "month" : "months"}`;
}

/** Years given, weeks shown while they are the better unit: `9 weeks`, `2.5 years`. */
export function leadTime(years: number | null): string {
  if (years === null) return NOT_KNOWN;
  const weeks = Math.round((years * 365.25) / 7);
  return weeks <= 104 ? plural(weeks, "week") : `${significant(years, 2)} years`;
}

/**
 * An instant on the wall clock of a place: `3 Apr 2026, 14:05`.
 *
 * @param instant  RFC 3339, e.g. `2026-04-03T12:05:00Z`; null is not known.
 * @param timeZone IANA name, e.g. `Europe/Berlin`.
 */
export function moment(instant: string | null, timeZone: string): string {
  if (instant === null) return NOT_KNOWN;
  const parts = new Intl.DateTimeFormat("en-GB", {
    timeZone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
    hourCycle: "h23",
  }).formatToParts(new Date(instant));
  const part = (type: string) => parts.find((p) => p.type === type)?.value ?? "";
  return `${day(`${part("year")}-${part("month")}-${part("day")}`)}, ${part("hour")}:${part("minute")}`;
}
