import { addDays, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";

/** Which days are worked. */
export interface WorkCalendar {
  /** Days of the week, 1 Monday to 7 Sunday (ISO 8601); at least one. */
  readonly weekdays: readonly number[];
  /** Days not worked although their weekday is. */
  readonly holidays: readonly IsoDate[];
}

export const MONDAY_TO_FRIDAY: WorkCalendar = { weekdays: [1, 2, 3, 4, 5], holidays: [] };

const A_MONDAY: IsoDate = "2001-01-01";
const DAYS_A_WEEK = 7;
/** A calendar that rests longer than this has no next working day. */
const LONGEST_REST_DAYS = 400;

/** Day of the week, 1 Monday to 7 Sunday. */
export function weekday(day: IsoDate): number {
  const days = daysBetween(A_MONDAY, day) % DAYS_A_WEEK;
  return ((days + DAYS_A_WEEK) % DAYS_A_WEEK) + 1;
}

/** Working days counted from an origin: the first on or after it is 0. */
export interface WorkDays {
  /** The working day of a place, 0 or above. */
  readonly dayAt: (place: number) => IsoDate;
  /** Place of the first working day on or after a day; a day before the origin has place 0. */
  readonly placeOf: (day: IsoDate) => number;
}

/**
 * Counts working days from an origin; only as many as are asked for are ever made.
 *
 * @throws {RangeError} when the calendar works on no weekday, or rests for more than 400 days on end.
 */
export function workDays(calendar: WorkCalendar, origin: IsoDate): WorkDays {
  if (!calendar.weekdays.some((one) => one >= 1 && one <= DAYS_A_WEEK))
    throw new RangeError("a calendar must work on one weekday at least");
  const worked = new Set(calendar.weekdays);
  const free = new Set(calendar.holidays.map((day) => daysBetween(origin, day)));
  const first = weekday(origin) - 1;
  /** Calendar days from the origin to each working day. */
  const days: number[] = [];
  /** For each calendar day from the origin, the place of the first working day on or after it. */
  const places: number[] = [];
  let rest = 0;
  const extend = () => {
    const after = places.length;
    places.push(days.length);
    rest += 1;
    if (rest > LONGEST_REST_DAYS) throw new RangeError(`no working day in ${rest} days from ${origin}`);
    if (!worked.has(((first + after) % DAYS_A_WEEK) + 1) || free.has(after)) return;
    days.push(after);
    rest = 0;
  };
  return {
    dayAt: (place) => {
      while (days.length <= place) extend();
      return addDays(origin, days[place] ?? 0);
    },
    placeOf: (day) => {
      const after = Math.max(0, daysBetween(origin, day));
      while (places.length <= after) extend();
      return places[after] ?? 0;
    },
  };
}
