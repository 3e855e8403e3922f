import type { IsoDate } from "@/lib/kernel/isoDate";
import type { WorkDays } from "@/lib/projects/workCalendar";

/** Days on which a line stands still, both included. */
export interface WindowDays {
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
}

interface Wanted {
  /** Working days the task takes. */
  readonly days: number;
  readonly work: WorkDays;
}

/** Whether a task lies in one window as a whole. */
export type WindowPlace =
  | { readonly lies: "inside" }
  | { readonly lies: "outside"; readonly nextStart: IsoDate | null };

/**
 * Holds a task against the windows: it lies inside when its first and last day are days of one window.
 *
 * @returns When outside, the first day from its own start on at which all its working days lie in one window.
 */
export function windowPlace(
  { start, finish }: { readonly start: IsoDate; readonly finish: IsoDate },
  windows: readonly WindowDays[],
  { days, work }: Wanted,
): WindowPlace {
  if (windows.some(({ startsOn, endsOn }) => startsOn <= start && finish <= endsOn))
    return { lies: "inside" };
  const inTime = [...windows].sort((a, b) => (a.startsOn < b.startsOn ? -1 : 1));
  for (const { startsOn, endsOn } of inTime) {
    const place = work.placeOf(startsOn > start ? startsOn : start);
    if (work.dayAt(place + days - 1) <= endsOn) return { lies: "outside", nextStart: work.dayAt(place) };
  }
  return { lies: "outside", nextStart: null };
}
