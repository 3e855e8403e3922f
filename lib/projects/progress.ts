import { addDays, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { requireNumber } from "@/lib/kernel/requireNumber";

export interface Milestone {
  readonly id: string;
  /** Part of the whole it earns when done, >= 0; weights need not sum to 1. */
  readonly weight: number;
  /** Null is not scheduled. */
  readonly dueOn: IsoDate | null;
  /** Null is not done. */
  readonly doneOn: IsoDate | null;
}

export interface Schedule {
  readonly startsOn: IsoDate | null;
  readonly endsOn: IsoDate | null;
  readonly milestones: readonly Milestone[];
}

export interface Progress {
  /** Shares of the whole weight, in [0, 1]; null when there is no weight. */
  readonly planned: number | null;
  readonly earned: number | null;
  /** Share whose milestones have no due day: never planned, so never late. */
  readonly unscheduled: number | null;
  /** Ids of milestones due before the day and not done by it, in the order given. */
  readonly overdue: readonly string[];
  /** Day the work ends at the pace so far; null when it cannot be told. */
  readonly forecastEndOn: IsoDate | null;
}

/** A pace that puts the end further off than this foretells nothing. */
const LONGEST_FORECAST_DAYS = 36_525;

const weigh = (milestones: readonly Milestone[]) => milestones.reduce((sum, { weight }) => sum + weight, 0);

/** Day of the plan, counted from the start, at which it would have earned this weight; straight between milestones. */
function earnedDay(startsOn: IsoDate, scheduled: readonly Milestone[], earned: number): number | null {
  const points = weightByDay(startsOn, scheduled);
  let day = 0;
  let reached = 0;
  for (const point of points) {
    if (point.weight > 0 && reached + point.weight >= earned)
      return day + ((earned - reached) / point.weight) * (Math.max(0, point.day) - day);
    reached += point.weight;
    day = Math.max(day, point.day);
  }
  return null;
}

/** Weight due on each day, counted from the start, in order: milestones of one day are reached together. */
function weightByDay(startsOn: IsoDate, scheduled: readonly Milestone[]) {
  const byDay = new Map<number, number>();
  for (const { dueOn, weight } of scheduled) {
    const day = daysBetween(startsOn, dueOn ?? startsOn);
    byDay.set(day, (byDay.get(day) ?? 0) + weight);
  }
  return [...byDay].map(([day, weight]) => ({ day, weight })).sort((a, b) => a.day - b.day);
}

function lastDone(milestones: readonly Milestone[]): IsoDate | null {
  const days = milestones.flatMap(({ doneOn }) => (doneOn === null ? [] : [doneOn])).sort();
  return days.at(-1) ?? null;
}

function forecastEnd(schedule: Schedule, done: readonly Milestone[], asOf: IsoDate): IsoDate | null {
  const { startsOn, endsOn, milestones } = schedule;
  if (done.length > 0 && done.length === milestones.length) return lastDone(milestones);
  if (startsOn === null || endsOn === null || asOf <= startsOn || endsOn <= startsOn) return null;
  const scheduled = milestones.filter(({ dueOn }) => dueOn !== null);
  const day = earnedDay(startsOn, scheduled, weigh(done));
  if (day === null || day <= 0) return null;
  const days = Math.ceil((daysBetween(startsOn, endsOn) * daysBetween(startsOn, asOf)) / day);
  if (days > LONGEST_FORECAST_DAYS) return null;
  const end = addDays(startsOn, days);
  // Work that is not done cannot end before the day it is looked at.
  return end < asOf ? asOf : end;
}

/**
 * How far a project should be, how far it is, and when it ends at that pace.
 *
 * planned = weight due by the day / all weight; earned = weight done by the day / all weight; a milestone counts whole
 * or not at all. Forecast: earned schedule ES is the day the plan would have earned what is earned;
 * end = start + (planned end - start) * (days since start) / ES.
 *
 * @param asOf Milestones done later count as not done.
 * @throws {RangeError} naming the argument and its value.
 * @see Earned schedule, W. Lipke 2003 (formula from memory).
 */
export function progress(schedule: Schedule, asOf: IsoDate): Progress {
  const { milestones } = schedule;
  for (const { weight } of milestones) requireNumber(weight, "weight", { least: 0 });
  const all = weigh(milestones);
  const share = (part: readonly Milestone[]) => (all > 0 ? weigh(part) / all : null);
  const done = milestones.filter(({ doneOn }) => doneOn !== null && doneOn <= asOf);
  const isDone = new Set(done.map(({ id }) => id));
  return {
    planned: share(milestones.filter(({ dueOn }) => dueOn !== null && dueOn <= asOf)),
    earned: share(done),
    unscheduled: share(milestones.filter(({ dueOn }) => dueOn === null)),
    overdue: milestones
      .filter(({ id, dueOn }) => dueOn !== null && dueOn < asOf && !isDone.has(id))
      .map(({ id }) => id),
    forecastEndOn: forecastEnd(schedule, done, asOf),
  };
}
