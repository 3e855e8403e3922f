import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { day } from "@/lib/view/time";

const MONDAY = 1;
const HOUR = 5;
const MORNING = 6;

/** When an installation takes its snapshots by itself. */
export interface WeeklyRule {
  /** IANA name of the zone whose clock counts. */
  readonly zone: string;
  /** Day an installation stands at that does not move with the calendar, and so takes none; else null. */
  readonly standsAt: IsoDate | null;
  readonly next: IsoDate;
}

/** The rule in one sentence. */
export function weeklyWords({ zone, standsAt, next }: WeeklyRule): string {
  if (standsAt !== null)
    return `This installation stands at ${day(standsAt)}, so none is taken by itself; where the calendar moves, one is taken every Monday at 05:00.`;
  return `One is taken every Monday at 05:00 (${zone}), the next on ${day(next)}.`;
}

/** Clock of a place at an instant: its day, the day's number in the week (Sunday is 0) and hour. */
function clockAt(instant: string, zone: string) {
  const parts = new Intl.DateTimeFormat("en-GB", {
    timeZone: zone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    hourCycle: "h23",
  }).formatToParts(new Date(instant));
  const part = (type: string) => parts.find((one) => one.type === type)?.value ?? "";
  const date: IsoDate = `${part("year")}-${part("month")}-${part("day")}`;
  const weekday = new Date(`${date}T00:00:00Z`).getUTCDay();
  return { date, weekday, hour: Number(part("hour")) };
}

/** The day at a place. */
export function dayAt(instant: string, zone: string): IsoDate {
  return clockAt(instant, zone).date;
}

/**
 * Whether the week's snapshot is due at the instant, by the clock of the place: Monday from 05:00 to midnight, so that
 * a server that slept at five still takes it that day.
 *
 * @param instant RFC 3339.
 * @param zone    IANA name.
 */
export function isWeeklyDue(instant: string, zone: string): boolean {
  return isMondayFrom(HOUR, instant, zone);
}

/** Whether the week's mails are due: Monday from 06:00, when the week's snapshot is taken. */
export function isMorningDue(instant: string, zone: string): boolean {
  return isMondayFrom(MORNING, instant, zone);
}

/** Whether the month's reports are due: its first day from 06:00. */
export function isMonthMorning(instant: string, zone: string): boolean {
  const { date, hour } = clockAt(instant, zone);
  return date.endsWith("-01") && hour >= MORNING;
}

function isMondayFrom(from: number, instant: string, zone: string): boolean {
  const { weekday, hour } = clockAt(instant, zone);
  return weekday === MONDAY && hour >= from;
}

/** The day at the place on which the weekly snapshot is next taken, later than the instant. */
export function nextWeeklyDay(instant: string, zone: string): IsoDate {
  const { date, weekday, hour } = clockAt(instant, zone);
  const ahead = (MONDAY - weekday + 7) % 7;
  return addDays(date, ahead === 0 && hour >= HOUR ? 7 : ahead);
}
