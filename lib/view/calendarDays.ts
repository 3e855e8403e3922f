import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import type { DateAhead } from "@/lib/view/datesAhead";
import type { CalendarDay } from "@/lib/view/icalendar";

/** Days this long past are history, and leave the calendar. */
const KEPT_DAYS = 90;

interface Seen {
  readonly asOf: IsoDate;
  /** Address of the installation, without a slash at its end. */
  readonly base: string;
}

/** The dates ahead as entries of a calendar; one that moves keeps its uid. */
export function calendarDays(dates: readonly DateAhead[], { asOf, base }: Seen): CalendarDay[] {
  const since = addDays(asOf, -KEPT_DAYS);
  const uidOf = distinct();
  return dates
    .filter(({ on }) => on >= since)
    .map((date) => ({
      uid: uidOf(`${encodeURIComponent(withoutDay(date))}@ebbline`),
      day: date.on,
      summary: `${date.of}: ${date.what}`,
      description: [
        date.sites.length === 0 ? "" : `Sites: ${date.sites.join(", ")}.`,
        date.units === null ? "" : `Units installed: ${date.units}.`,
        `As known on ${asOf}.`,
      ]
        .filter((line) => line !== "")
        .join("\n"),
      url: `${base}${date.href}`,
      category: date.kind,
    }));
}

/** A key that names its day would make a moved day another entry. */
function withoutDay({ key, on }: DateAhead): string {
  return key.replace(`/${on}`, "");
}

/** Lets each text through once; the second like it gets a number in front. */
function distinct(): (text: string) => string {
  const seen = new Map<string, number>();
  return (text) => {
    const times = (seen.get(text) ?? 0) + 1;
    seen.set(text, times);
    return times === 1 ? text : `${times}-${text}`;
  };
}
