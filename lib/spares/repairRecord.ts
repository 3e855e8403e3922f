import { daysBetween, type IsoDate } from "@/lib/kernel/isoDate";

/** What a repairer found. */
export type RepairFinding = "repaired" | "no fault found" | "beyond repair";

/** One trip of one unit to a repairer. */
export interface RepairTrip {
  readonly id: string;
  readonly partId: string;
  /** Null is not recorded. */
  readonly serial: string | null;
  readonly repairer: string | null;
  readonly sentOn: IsoDate;
  /** Null is still out. */
  readonly returnedOn: IsoDate | null;
  readonly finding: RepairFinding | null;
}

/** A share that was counted, with the range it may truly have. */
export interface CountedShare {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/** 95 % point of the standard normal: a two-sided 90 % range. */
const Z_90 = 1.6448536269514722;

/**
 * A share k / n with its 90 % range by Wilson's score interval.
 *
 * (k + z²/2 ± z √(k (n - k) / n + z²/4)) / (n + z²), z = 1.645.
 *
 * @param k Whole, 0 to n; @param n Whole, > 0.
 * @see E. B. Wilson, J. Amer. Statist. Assoc. 22 (1927) 209-212 (from memory).
 */
export function shareOf(k: number, n: number): CountedShare {
  if (!(Number.isSafeInteger(k) && Number.isSafeInteger(n) && k >= 0 && n > 0 && k <= n))
    throw new RangeError(`k and n must be whole with 0 <= k <= n and n > 0, got ${k} and ${n}`);
  const z2 = Z_90 ** 2;
  const half = Z_90 * Math.sqrt((k * (n - k)) / n + z2 / 4);
  const middle = k + z2 / 2;
  return {
    mean: k / n,
    low: Math.max(0, (middle - half) / (n + z2)),
    high: Math.min(1, (middle + half) / (n + z2)),
  };
}

/** Days of the trips that ended: the middle one, the shortest and the longest as counted. */
export interface CountedDays {
  readonly median: number;
  readonly shortest: number;
  readonly longest: number;
}

function daysOf(days: readonly number[]): CountedDays | null {
  const sorted = [...days].sort((a, b) => a - b);
  const [shortest, longest] = [sorted[0], sorted.at(-1)];
  if (shortest === undefined || longest === undefined) return null;
  const middle = sorted.length / 2;
  const upper = sorted[Math.floor(middle)] as number;
  const lower = sorted[Math.ceil(middle) - 1] as number;
  return { median: (lower + upper) / 2, shortest, longest };
}

/** How a repairer did with one part. */
export interface RepairRecord {
  readonly partId: string;
  readonly repairer: string | null;
  readonly out: number;
  readonly back: number;
  /** Usable again, of those that came back with a finding. */
  readonly usable: CountedShare | null;
  readonly noFaultFound: CountedShare | null;
  readonly days: CountedDays | null;
  /** Sent again within the days asked for after they came back. */
  readonly again: number;
}

/** The trip of the same unit before each trip, by the id of the later one. */
function tripsBefore(trips: readonly RepairTrip[]): Map<string, RepairTrip> {
  const last = new Map<string, RepairTrip>();
  const before = new Map<string, RepairTrip>();
  for (const trip of [...trips].sort((a, b) => (a.sentOn < b.sentOn ? -1 : 1))) {
    if (trip.serial === null) continue;
    const unit = JSON.stringify([trip.partId, trip.serial]);
    const earlier = last.get(unit);
    if (earlier) before.set(trip.id, earlier);
    last.set(unit, trip);
  }
  return before;
}

/** Days from the return of a usable unit to its next sending; null when it did not come back usable before. */
function daysLasted(before: RepairTrip | undefined, trip: RepairTrip): number | null {
  if (!before?.returnedOn || before.finding === "beyond repair") return null;
  return before.returnedOn > trip.sentOn ? null : daysBetween(before.returnedOn, trip.sentOn);
}

/**
 * Trips of a unit that went out again soon after it had come back as usable.
 *
 * @param within Days from one return to the next sending, >= 0.
 * @returns Days between, by the id of the second trip.
 */
export function soonAgain(trips: readonly RepairTrip[], within: number): ReadonlyMap<string, number> {
  const before = tripsBefore(trips);
  return new Map(
    trips.flatMap((trip): [string, number][] => {
      const days = daysLasted(before.get(trip.id), trip);
      return days === null || days > within ? [] : [[trip.id, days]];
    }),
  );
}

/**
 * How each repairer did with each part: share usable, share without a fault, days away, units back too soon.
 *
 * Shares have their 90 % range; days are as counted, so the longest of few says little. Trips still under way are
 * counted as out and in nothing else, which flatters a repairer who keeps units for long.
 */
export function repairRecords(trips: readonly RepairTrip[], within: number): RepairRecord[] {
  // A repair that did not last counts against whoever made it, not against whoever has the unit now.
  const before = tripsBefore(trips);
  const failed = new Map<string, number>();
  for (const id of soonAgain(trips, within).keys()) {
    const key = keyOf(before.get(id) as RepairTrip);
    failed.set(key, (failed.get(key) ?? 0) + 1);
  }
  const groups = new Map<string, RepairTrip[]>();
  for (const trip of trips) groups.set(keyOf(trip), [...(groups.get(keyOf(trip)) ?? []), trip]);
  return [...groups].map(([key, own]) => recordOf(own, failed.get(key) ?? 0));
}

const keyOf = ({ partId, repairer }: RepairTrip): string => JSON.stringify([partId, repairer]);

function recordOf(trips: readonly RepairTrip[], again: number): RepairRecord {
  const [first] = trips as readonly [RepairTrip, ...RepairTrip[]];
  const back = trips.filter(({ returnedOn }) => returnedOn !== null);
  const found = back.filter(({ finding }) => finding !== null);
  const share = (is: (finding: RepairFinding | null) => boolean) =>
    found.length === 0 ? null : shareOf(found.filter(({ finding }) => is(finding)).length, found.length);
  return {
    ...{ partId: first.partId, repairer: first.repairer, again },
    ...{ out: trips.length - back.length, back: back.length },
    usable: share((finding) => finding !== "beyond repair"),
    noFaultFound: share((finding) => finding === "no fault found"),
    days: daysOf(back.map(({ sentOn, returnedOn }) => daysBetween(sentOn, returnedOn ?? sentOn))),
  };
}
