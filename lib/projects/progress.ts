import { addDays, daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { requireNumber } from "@/lib/kernel/requireNumber";
import { earnedSchedule, type PlannedPoint } from "@/lib/projects/earnedSchedule";
import { earnedShare } from "@/lib/projects/earningRules";

/** Axes a milestone is earned by, and how many did its step on which day. */
export interface AxisCount {
  readonly total: number;
  readonly done: readonly { readonly on: IsoDate; readonly axes: number }[];
}

export interface Milestone {
  readonly id: string;
  /** Part of the whole it earns when done, >= 0; weights need not sum to 1. */
  readonly weight: number;
  /** Null is not scheduled. */
  readonly dueOn: IsoDate | null;
  /** Null is not done. One that is earned by axes is done when all of them are, whatever stands here. */
  readonly doneOn: IsoDate | null;
  /** Earned axis by axis; without it whole or not at all. */
  readonly axes?: AxisCount | null;
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
  /** Days of the plan that what is earned stands for (earned schedule); null when it cannot be told. */
  readonly earnedDays: number | null;
  /** Day the work ends at the pace so far; null when it cannot be told. */
  readonly forecastEndOn: IsoDate | null;
}

/** A pace that puts the end further off than this foretells nothing. */
const LONGEST_FORECAST_DAYS = 36_525;

const weigh = (milestones: readonly Milestone[]) => milestones.reduce((sum, { weight }) => sum + weight, 0);

/** Axes of the milestone that have done its step by the day. */
const axesDone = ({ done }: AxisCount, asOf: IsoDate) =>
  done.reduce((sum, { on, axes }) => sum + (on <= asOf ? axes : 0), 0);

/** Share of a milestone's weight that is earned by the day, in [0, 1]. */
export function milestoneShare({ doneOn, axes }: Milestone, asOf: IsoDate): number {
  return earnedShare(
    axes
      ? { kind: "axes", done: axesDone(axes, asOf), total: axes.total }
      : { kind: "whole", finished: doneOn !== null && doneOn <= asOf },
  );
}

/** What the plan earns by each due day, counted from the start: milestones of one day are reached together. */
function plannedPoints(startsOn: IsoDate, scheduled: readonly Milestone[]): PlannedPoint[] {
  const byDay = new Map<number, number>([[0, 0]]);
  for (const { dueOn, weight } of scheduled) {
    const day = Math.max(0, daysBetween(startsOn, dueOn ?? startsOn));
    byDay.set(day, (byDay.get(day) ?? 0) + weight);
  }
  let value = 0;
  return [...byDay]
    .sort(([a], [b]) => a - b)
    .map(([at, weight]) => {
      value += weight;
      return { at, value };
    });
}

function lastDone(milestones: readonly Milestone[]): IsoDate | null {
  const days = milestones.flatMap(({ doneOn, axes }) =>
    axes ? axes.done.map(({ on }) => on) : doneOn === null ? [] : [doneOn],
  );
  return days.sort().at(-1) ?? null;
}

interface Earned {
  readonly days: number | null;
  readonly isWhole: boolean;
}

/** Days of the plan in which it would have earned this weight. */
function daysEarned({ startsOn, milestones }: Schedule, weight: number): number | null {
  if (startsOn === null) return null;
  const scheduled = milestones.filter(({ dueOn }) => dueOn !== null);
  return earnedSchedule(plannedPoints(startsOn, scheduled), weight);
}

function forecastEnd(schedule: Schedule, earned: Earned, asOf: IsoDate): IsoDate | null {
  const { startsOn, endsOn, milestones } = schedule;
  if (earned.isWhole) return lastDone(milestones);
  if (startsOn === null || endsOn === null || asOf <= startsOn || endsOn <= startsOn) return null;
  if (earned.days === null || earned.days <= 0) return null;
  const days = Math.ceil((daysBetween(startsOn, endsOn) * daysBetween(startsOn, asOf)) / earned.days);
  if (days > LONGEST_FORECAST_DAYS) return null;
  const end = addDays(startsOn, days);
  // Work that is not done cannot end before the day it is looked at.
  return end < asOf ? asOf : end;
}

/**
 * How far a project should be, how far it is, and when it ends at that pace.
 *
 * Planned value accrues in steps: the whole weight of a milestone on its due day, also of one earned by axes, so a
 * project whose axes go ahead of that day shows ahead. planned = weight due by the day / all weight. Earned: a
 * milestone counts whole on its day and not before; one earned by axes counts weight × (axes that have done its step
 * by the day / its axes), never "percent felt". earned = what counts / all weight. Forecast: earned schedule ES is the
 * day the plan would have earned what is earned; end = start + (planned end - start) * (days since start) / ES.
 *
 * @param asOf What is done later counts as not done.
 * @throws {RangeError} naming the argument and its value.
 * @see Earned schedule, W. Lipke 2003 (formula from memory).
 */
export function progress(schedule: Schedule, asOf: IsoDate): Progress {
  const { milestones } = schedule;
  for (const { weight } of milestones) requireNumber(weight, "weight", { least: 0 });
  const all = weigh(milestones);
  const share = (part: readonly Milestone[]) => (all > 0 ? weigh(part) / all : null);
  const shares = milestones.map((one) => milestoneShare(one, asOf));
  const earned = milestones.reduce((sum, { weight }, i) => sum + weight * (shares[i] ?? 0), 0);
  const isDone = new Set(milestones.filter((_, i) => shares[i] === 1).map(({ id }) => id));
  const isWhole = milestones.length > 0 && isDone.size === milestones.length;
  const earnedDays = all > 0 ? daysEarned(schedule, earned) : null;
  return {
    planned: share(milestones.filter(({ dueOn }) => dueOn !== null && dueOn <= asOf)),
    earned: all > 0 ? earned / all : null,
    unscheduled: share(milestones.filter(({ dueOn }) => dueOn === null)),
    overdue: milestones
      .filter(({ id, dueOn }) => dueOn !== null && dueOn < asOf && !isDone.has(id))
      .map(({ id }) => id),
    earnedDays,
    forecastEndOn: forecastEnd(schedule, { days: earnedDays, isWhole }, asOf),
  };
}
