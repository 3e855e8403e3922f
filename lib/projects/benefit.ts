import { addMonths, type IsoDate } from "@/lib/kernel/isoDate";
import { requireCount, requireNumber } from "@/lib/kernel/requireNumber";
import { rateInterval } from "@/lib/reliability/rate";
import type { StopCostTerms } from "@/lib/risk/expectedStopCost";
import { stopCost } from "@/lib/risk/stopCost";

/** Months between closing a project and checking its benefit; a year, so that each season is in it once. */
export const CHECK_AFTER_MONTHS = 12;

/** The day the benefit of a project closed on a day is to be checked. */
export function benefitCheckOn(closedOn: IsoDate): IsoDate {
  return addMonths(closedOn, CHECK_AFTER_MONTHS);
}

/** A stretch of days, its last day not in it. */
export interface Stretch {
  readonly from: IsoDate;
  readonly until: IsoDate;
}

/** The year before the work began and the time since closing, at most a year. */
export interface ComparedStretches {
  readonly before: Stretch;
  readonly after: Stretch;
  /** Whether the time after is a whole year: before that it is too early to judge. */
  readonly whole: boolean;
}

/**
 * Which days are compared: as long before the first unit came out as a year has, and from closing on.
 *
 * What happened during the work is in neither: it is no measure of the old state nor of the new one.
 */
export function comparedStretches(
  { beganOn, closedOn }: { readonly beganOn: IsoDate; readonly closedOn: IsoDate },
  asOf: IsoDate,
): ComparedStretches {
  const end = benefitCheckOn(closedOn);
  const until = asOf < end ? (asOf < closedOn ? closedOn : asOf) : end;
  return {
    before: { from: addMonths(beganOn, -CHECK_AFTER_MONTHS), until: beganOn },
    after: { from: closedOn, until },
    whole: asOf >= end,
  };
}

/** One event of the line that counts. */
export interface CountedEvent {
  /** Hours the line stood; null is not known. */
  readonly downtimeHours: number | null;
  /** Whether a drive left its place in it. */
  readonly driveLeft: boolean;
}

export interface Experience {
  readonly events: readonly CountedEvent[];
  /** Drive places times years, >= 0. */
  readonly unitYears: number;
}

/** What a stretch of time was like on the line. */
export interface LivedStretch {
  readonly events: number;
  /** Hours the line stood, of the events that say so. */
  readonly downtimeHours: number;
  /** Events that do not say how long the line stood; they are in no sum. */
  readonly withoutHours: number;
  /** EUR of the stops that say how long they were, at today's cost of a stop; null when that is not known. */
  readonly stopMoney: number | null;
  readonly removals: number;
  readonly unitYears: number;
  /** Drives removed per place and year, with the 5 % and 95 % points; null without unit-years. */
  readonly removalRate: { readonly mean: number; readonly low: number; readonly high: number } | null;
}

/** Shape of Jeffreys' prior for a Poisson rate, Gamma(1/2, 0); from memory. */
const PRIOR_SHAPE = 0.5;

/**
 * Sums a stretch up.
 *
 * The rate is what the stretch alone says, Gamma(removals + 1/2, unit-years) after Jeffreys' prior: the group's records
 * are left out, since the question is what changed on this line. Both stretches are valued at one cost of a stop, so
 * that the difference is one of stops and not of prices.
 *
 * @throws {RangeError} if unit-years or hours are negative.
 */
export function livedStretch({ events, unitYears }: Experience, cost: StopCostTerms | null): LivedStretch {
  requireNumber(unitYears, "unitYears", { least: 0 });
  const hours = events.flatMap(({ downtimeHours }) => downtimeHours ?? []);
  const removals = requireCount(events.filter(({ driveLeft }) => driveLeft).length, "removals");
  return {
    events: events.length,
    downtimeHours: hours.reduce((sum, one) => sum + one, 0),
    withoutHours: events.length - hours.length,
    stopMoney: cost === null ? null : hours.reduce((sum, one) => sum + stopCost(one, cost).total, 0),
    ...{ removals, unitYears },
    removalRate: unitYears === 0 ? null : rateInterval({ a: removals + PRIOR_SHAPE, b: unitYears }, 0.9),
  };
}

export type RateVerdict = "lower" | "higher" | "not-told-apart" | "unknown";

/** Whether drives are removed less often than before: only where the two spans do not touch. */
export function compareRates(before: LivedStretch, after: LivedStretch): RateVerdict {
  if (before.removalRate === null || after.removalRate === null) return "unknown";
  if (after.removalRate.high < before.removalRate.low) return "lower";
  return after.removalRate.low > before.removalRate.high ? "higher" : "not-told-apart";
}

export type BenefitState = "not-closed" | "too-early" | "due" | "checked";

/** How far the check of a project's benefit is. */
export function benefitState(
  closing: { readonly checkOn: IsoDate; readonly checkedOn: IsoDate | null } | null,
  asOf: IsoDate,
): BenefitState {
  if (closing === null) return "not-closed";
  if (closing.checkedOn !== null) return "checked";
  return asOf < closing.checkOn ? "too-early" : "due";
}
