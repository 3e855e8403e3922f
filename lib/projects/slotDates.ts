import { addDays, addMonths, type IsoDate } from "@/lib/kernel/isoDate";

/** A stretch of time a plan has placed work in. */
export interface SlotDays {
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
}

const WORKING_DAYS_A_WEEK = 5;

/** The days of a quarter by its id, such as 2027-Q3; null is no quarter. */
export function quarterDays(id: string): SlotDays | null {
  const [, year, quarter] = /^(\d{4})-Q([1-4])$/.exec(id) ?? [];
  if (year === undefined || quarter === undefined) return null;
  const startsOn = addMonths(`${year}-01-01`, 3 * (Number(quarter) - 1));
  return { startsOn, endsOn: addDays(addMonths(startsOn, 3), -1) };
}

/**
 * When a project starts and ends by the slots its plan gave it: it ends with the last slot, and starts so many working
 * days before the first as its work needs beforehand, but not before the day it is started.
 *
 * @returns null where the plan placed it in no slot.
 */
export function slotDates(
  slots: readonly SlotDays[],
  { workingDaysBefore, today }: { readonly workingDaysBefore: number; readonly today: IsoDate },
): SlotDays | null {
  const first = slots.map(({ startsOn }) => startsOn).sort()[0];
  const last = slots
    .map(({ endsOn }) => endsOn)
    .sort()
    .at(-1);
  if (first === undefined || last === undefined) return null;
  const wanted = addDays(first, -Math.ceil((workingDaysBefore * 7) / WORKING_DAYS_A_WEEK));
  const [, later = wanted] = [wanted, today].sort();
  const [startsOn = later] = [later, last].sort();
  return { startsOn, endsOn: last };
}
