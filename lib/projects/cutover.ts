import type { IsoDate } from "@/lib/kernel/isoDate";
import { requireNumber } from "@/lib/kernel/requireNumber";

/** An instant as RFC 3339 text, e.g. `2027-01-02T05:00:00Z`. */
export type Instant = string;

export interface CutoverTimes {
  readonly startsAt: Instant;
  /** Production must run again from here. */
  readonly productionAt: Instant;
  /** Hours to put the old system back; null is not known. */
  readonly restoreHours: number | null;
  /** Hours kept free, should putting back take longer; null is not said. */
  readonly marginHours: number | null;
  /** The day putting back was tried; null is never. */
  readonly restoreTestedOn: IsoDate | null;
}

/**
 * The last hour at which the old system can be put back before production must start.
 *
 * unknown: hours are missing, so there is no such hour · untested: nobody tried it, so it is none, whatever the
 * arithmetic says · tested: it holds as far as the trial did.
 */
export type FallBack =
  | { readonly kind: "unknown"; readonly at: null }
  | { readonly kind: "untested" | "tested"; readonly at: Instant };

const MS_PER_HOUR = 3_600_000;

/** Milliseconds since 1970 of an instant. */
function timeOf(instant: Instant): number {
  const time = Date.parse(instant);
  if (Number.isNaN(time)) throw new RangeError(`instant must be RFC 3339, got ${instant}`);
  return time;
}

const instantOf = (time: number): Instant => new Date(time).toISOString();

/**
 * The fall-back point: production start - (restore hours + margin). Common practice, no source.
 *
 * @throws {RangeError} if an instant or a number of hours is none; hours must be >= 0.
 */
export function fallBackPoint(times: CutoverTimes): FallBack {
  const { restoreHours, marginHours, productionAt, restoreTestedOn } = times;
  if (restoreHours === null || marginHours === null) return { kind: "unknown", at: null };
  const needed =
    requireNumber(restoreHours, "restoreHours", { least: 0 }) +
    requireNumber(marginHours, "marginHours", { least: 0 });
  const at = instantOf(timeOf(productionAt) - needed * MS_PER_HOUR);
  return { kind: restoreTestedOn === null ? "untested" : "tested", at };
}

/** Hours from one instant to another, negative when the second is earlier. */
export function hoursBetween(from: Instant, to: Instant): number {
  return (timeOf(to) - timeOf(from)) / MS_PER_HOUR;
}

/** The instant so many hours later. */
export function hoursAfter(instant: Instant, hours: number): Instant {
  return instantOf(timeOf(instant) + hours * MS_PER_HOUR);
}

export interface PlannedStep {
  readonly id: string;
  /** Planned start, hours after the cutover's. */
  readonly afterHours: number;
  /** Planned duration, > 0. */
  readonly hours: number;
  readonly startedAt: Instant | null;
  readonly endedAt: Instant | null;
}

export interface ExpectedStep {
  readonly id: string;
  readonly state: "to-come" | "running" | "done";
  readonly plannedStart: Instant;
  readonly plannedEnd: Instant;
  /** As it was, or as it is to be expected. */
  readonly start: Instant;
  readonly end: Instant;
  /** Hours its end lies after the plan; negative is before. */
  readonly lateHours: number;
}

export interface ExpectedCutover {
  /** In the order of the plan. */
  readonly steps: readonly ExpectedStep[];
  /** When the last step is expected to end; the planned start when there are no steps. */
  readonly endsAt: Instant;
  /** Hours between that and production; negative is too late. */
  readonly spareHours: number;
}

interface Span {
  readonly step: PlannedStep;
  readonly from: number;
  readonly to: number;
}

/**
 * When each step is to be expected, from what was written down so far.
 *
 * A step waits for every step the plan ends before it begins, and never begins before its planned hour: whoever was
 * called for an hour is there from that hour. A running step takes its planned hours, and is not over before `at`.
 *
 * @param at The hour it is now; null reckons without one.
 * @throws {RangeError} if an instant is none.
 */
export function expectCutover(
  { startsAt, productionAt }: Pick<CutoverTimes, "startsAt" | "productionAt">,
  steps: readonly PlannedStep[],
  at: Instant | null,
): ExpectedCutover {
  const start = timeOf(startsAt);
  const now = at === null ? Number.NEGATIVE_INFINITY : timeOf(at);
  const spans = steps.map((step): Span => {
    const from = start + step.afterHours * MS_PER_HOUR;
    return { step, from, to: from + step.hours * MS_PER_HOUR };
  });
  const byEnd = [...spans].sort((a, b) => a.to - b.to);
  const ends = new Map<string, number>();
  let reached = start;
  let next = 0;
  let last = start;
  const expected = [...spans]
    .sort((a, b) => a.from - b.from || a.to - b.to)
    .map((span) => {
      for (let before = byEnd[next]; before && before.to <= span.from; before = byEnd[next]) {
        reached = Math.max(reached, ends.get(before.step.id) ?? before.to);
        next += 1;
      }
      const found = expectStep(span, reached, now);
      ends.set(span.step.id, found.end);
      last = Math.max(last, found.end);
      return written(span, found);
    });
  return {
    steps: expected,
    endsAt: instantOf(last),
    spareHours: (timeOf(productionAt) - last) / MS_PER_HOUR,
  };
}

function expectStep({ step, from, to }: Span, reached: number, now: number) {
  const { startedAt, endedAt } = step;
  if (startedAt === null) {
    const start = Math.max(from, reached, now);
    return { state: "to-come", start, end: start + (to - from) } as const;
  }
  const start = timeOf(startedAt);
  if (endedAt !== null) return { state: "done", start, end: timeOf(endedAt) } as const;
  return { state: "running", start, end: Math.max(start + (to - from), now) } as const;
}

function written({ step, from, to }: Span, found: ReturnType<typeof expectStep>): ExpectedStep {
  return {
    ...{ id: step.id, state: found.state, plannedStart: instantOf(from), plannedEnd: instantOf(to) },
    ...{ start: instantOf(found.start), end: instantOf(found.end) },
    lateHours: (found.end - to) / MS_PER_HOUR,
  };
}
