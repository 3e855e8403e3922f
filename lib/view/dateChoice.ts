import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import type { DateAhead } from "@/lib/view/datesAhead";
import { count, plainNumber } from "@/lib/view/number";

/** How far ahead a reader looks, in days; null is without end. */
export const DATE_WINDOWS = [30, 90, 365, null] as const;
export type DateWindow = (typeof DATE_WINDOWS)[number];

/** What a reader looks at of all dates. */
export interface DateChoice {
  readonly asOf: IsoDate;
  readonly within: DateWindow;
  /** Code of a site; null is all of them. */
  readonly site: string | null;
}

/** What the address says of the window; a year unless it says otherwise. */
export function dateWindow(text: string | undefined): DateWindow {
  if (text === "all") return null;
  return DATE_WINDOWS.find((days) => String(days) === text) ?? 365;
}

/** The dates within a window at a site; what is overdue is always within. */
export function chooseDates(dates: readonly DateAhead[], { asOf, within, site }: DateChoice): DateAhead[] {
  const until = within === null ? null : addDays(asOf, within);
  return dates.filter(
    ({ on, sites }) => (until === null || on <= until) && (site === null || sites.includes(site)),
  );
}

/** What the chosen dates come to, in a sentence. */
export function datesLead(dates: readonly DateAhead[], { within, site }: DateChoice): string {
  const overdue = dates.filter((date) => date.overdue).length;
  const window = within === null ? "ahead" : `within the next ${within} days`;
  const place = site === null ? "" : ` at ${site}`;
  const binding = dates.filter(({ kind }) => kind === "safety" || kind === "legal").length;
  return `${count(overdue, "date is", "dates are")} overdue and ${count(dates.length - overdue, "more lies", "more lie")} ${window}${place}; safety and legal dates among them: ${plainNumber(binding)}.`;
}
