import { type IsoDate, isIsoDate } from "@/lib/kernel/isoDate";
import { day } from "@/lib/view/time";

/** The name in the address under which a page is told to look back. */
export const KNOWN = "known";

/** How far a look back knows: everything recorded until an instant. */
export interface KnownAt {
  /** As it stands in the address: `2026-05-12` or `2026-05-12T14:30`, in UTC. */
  readonly text: string;
  readonly day: IsoDate;
  /** The last instant that counts, with microseconds, as the database reads it. */
  readonly at: string;
}

const MINUTE = /^(\d{4}-\d{2}-\d{2})T([01]\d|2[0-3]):([0-5]\d)$/;

/** What an address asks for; null where it asks for nothing that is a day or a minute of one. */
export function readKnownAt(text: string | null | undefined): KnownAt | null {
  if (!text) return null;
  if (isIsoDate(text)) return { text, day: text, at: `${text}T23:59:59.999999Z` };
  const [, date = "", hour, minute] = MINUTE.exec(text) ?? [];
  return isIsoDate(date) ? { text, day: date, at: `${date}T${hour}:${minute}:00.000000Z` } : null;
}

/** In words: the whole day, or the day until a minute. */
export function knownWords({ text, day: date }: KnownAt): string {
  const minute = text.slice(date.length + 1);
  return minute === "" ? day(date) : `${day(date)}, ${minute} UTC`;
}

/** Pages that show what was on record then; each starts with one of these. The others always show what is known now. */
const LOOKS_BACK = [
  /^\/home$/,
  /^\/lines(\/[^/]+)?$/,
  /^\/parts(\/(?!merge|numbers)[^/]+)?$/,
  /^\/spares$/,
  /^\/cover$/,
  /^\/plans(\/(?!new|compare|inputs)[^/]+(\/(money|choices))?)?$/,
  /^\/dates$/,
];

/** Whether the page at a path shows what was on record at the instant its address names. */
export function looksBack(path: string): boolean {
  return LOOKS_BACK.some((pattern) => pattern.test(path));
}
