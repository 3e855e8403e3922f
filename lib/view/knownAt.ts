import { firstInstantOf } from "@/lib/intake/localTime";
import { addDays, type IsoDate, isIsoDate } from "@/lib/kernel/isoDate";
import { day } from "@/lib/view/time";
import { UTC } from "@/lib/view/zone";

/** The name in the address under which a page is told to look back. */
export const KNOWN = "known";

/** How far a look back knows: everything recorded until an instant. */
export interface KnownAt {
  /** As it stands in the address: `2026-05-12` or `2026-05-12T14:30`, both in UTC, or with `_Europe/Berlin` behind. */
  readonly text: string;
  readonly day: IsoDate;
  /** IANA zone whose midnight ends the day, and whose clock shows the minute. */
  readonly zone: string;
  /** The last instant that counts, with microseconds, as the database reads it. */
  readonly at: string;
}

const ASKED = /^(\d{4}-\d{2}-\d{2})(?:T((?:[01]\d|2[0-3]):[0-5]\d))?(?:_([\w+\-/]{1,60}))?$/;

/** What an address asks for; null where it asks for nothing that is a day or a minute of one in a zone there is. */
export function readKnownAt(text: string | null | undefined): KnownAt | null {
  const [, date = "", minute, zone = UTC] = ASKED.exec(text ?? "") ?? [];
  if (!text || !isIsoDate(date) || !isZone(zone)) return null;
  return { text, day: date, zone, at: minute ? minuteOf(date, minute, zone) : endOf(date, zone) };
}

/** A day to its end by the clock of a zone. */
export function knownOn(date: IsoDate, zone: string): KnownAt {
  return { text: zone === UTC ? date : `${date}_${zone}`, day: date, zone, at: endOf(date, zone) };
}

/** A minute that the end of summer time repeats counts the first time. */
const minuteOf = (date: IsoDate, minute: string, zone: string) =>
  new Date(firstInstantOf(`${date}T${minute}`, zone)).toISOString().replace("Z", "000Z");

const endOf = (date: IsoDate, zone: string) =>
  new Date(firstInstantOf(`${addDays(date, 1)}T00:00`, zone) - 1).toISOString().replace("Z", "999Z");

function isZone(zone: string): boolean {
  try {
    return new Intl.DateTimeFormat("en-GB", { timeZone: zone }) !== null;
  } catch {
    return false;
  }
}

/** In words: the whole day to its midnight, or the day until a minute, and by whose clock. */
export function knownWords(known: KnownAt): string {
  const minute = knownMinute(known);
  return `${day(known.day)}, ${minute === "" ? "until midnight" : minute} (${known.zone})`;
}

/** The minute asked for, `HH:MM`; empty for the whole day. */
export const knownMinute = ({ text }: KnownAt): string => /T(\d\d:\d\d)/.exec(text)?.[1] ?? "";

/** From when on it is known how the records stood. */
export interface KnownFrom {
  /** RFC 3339. */
  readonly at: string;
  /** `first`: there was nothing on record before; `kept`: there was, and how it stood is not known. */
  readonly since: "first" | "kept";
}

/** Whether it is not known, or there was nothing to be known yet. */
export const isBefore = ({ at }: KnownAt, from: KnownFrom | null): boolean =>
  from !== null && Date.parse(at) < Date.parse(from.at);

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
