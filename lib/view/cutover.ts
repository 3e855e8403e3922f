import type { IsoDate } from "@/lib/kernel/isoDate";
import {
  type CutoverTimes,
  type ExpectedCutover,
  expectCutover,
  type FallBack,
  fallBackPoint,
  hoursBetween,
  type Instant,
  type PlannedStep,
} from "@/lib/projects/cutover";
import { NBSP, plainNumber } from "@/lib/view/number";
import { moment } from "@/lib/view/time";

export interface CutoverStepRow extends PlannedStep {
  readonly version: number;
  readonly title: string;
  readonly who: string;
  readonly phone: string;
  readonly needs: string;
  readonly caution: string;
}

export interface CutoverPlan extends CutoverTimes {
  readonly id: string;
  readonly version: number;
  readonly name: string;
  readonly restoreTestedBy: string;
  readonly steps: readonly CutoverStepRow[];
}

/** How a cutover stands at an hour. */
export interface CutoverStanding {
  /** The hour it is reckoned at; null is before anything was written down. */
  readonly at: Instant | null;
  readonly expected: ExpectedCutover;
  readonly fallBack: FallBack;
  /** ahead: it can still be put back · past: no longer · none: there is no fall-back · over: every step is done. */
  readonly point: "ahead" | "past" | "none" | "over";
  readonly done: number;
}

/** The last hour anything was written down for; null is nothing yet. */
export function lastEntry(steps: readonly PlannedStep[]): Instant | null {
  const entries = steps.flatMap(({ startedAt, endedAt }) =>
    [startedAt, endedAt].filter((one) => one !== null),
  );
  return entries.sort().at(-1) ?? null;
}

const LONGEST_AHEAD_HOURS = 12;
const LONGEST_AFTER_HOURS = 24;

const isOver = ({ steps }: CutoverPlan): boolean =>
  steps.length > 0 && steps.every(({ endedAt }) => endedAt !== null);

/** The hour to reckon at: the device's while the cutover is on, else that of the last entry. */
export function reckonAt(plan: CutoverPlan, device: Instant | null): Instant | null {
  const last = lastEntry(plan.steps);
  if (device === null || isOver(plan)) return last;
  const isOn =
    hoursBetween(device, plan.startsAt) <= LONGEST_AHEAD_HOURS &&
    hoursBetween(plan.productionAt, device) <= LONGEST_AFTER_HOURS;
  return isOn ? device : last;
}

/** How a cutover stands at an hour. */
export function cutoverStanding(plan: CutoverPlan, at: Instant | null): CutoverStanding {
  const fallBack = fallBackPoint(plan);
  const isPast = fallBack.at !== null && at !== null && at > fallBack.at;
  return {
    ...{ at, fallBack, expected: expectCutover(plan, plan.steps, at) },
    point: isOver(plan) ? "over" : fallBack.kind !== "tested" ? "none" : isPast ? "past" : "ahead",
    done: plan.steps.filter(({ endedAt }) => endedAt !== null).length,
  };
}

/** Hours and minutes: `3 h 20 min`, `45 min`. */
export function span(hours: number): string {
  const minutes = Math.round(Math.abs(hours) * 60);
  const [whole, rest] = [Math.floor(minutes / 60), minutes % 60];
  const parts = [
    ...(whole > 0 ? [`${plainNumber(whole)}${NBSP}h`] : []),
    ...(rest > 0 || whole === 0 ? [`${rest}${NBSP}min`] : []),
  ];
  return parts.join(" ");
}

/** Says what the fall-back point is, or that there is none and why. */
export function fallBackWords(
  plan: CutoverPlan,
  { fallBack, point, at }: CutoverStanding,
  zone: string,
): string {
  if (point === "over") return "Every step is over; nothing has to be put back.";
  if (fallBack.kind === "unknown")
    return "There is no fall-back: hours to put the old system back, or the margin, are not written down.";
  const hour = moment(fallBack.at, zone);
  if (fallBack.kind === "untested")
    return `There is no fall-back: putting the old system back was never tried, so ${hour} is only arithmetic.`;
  if (fallBack.at < plan.startsAt)
    return `There is no time to fall back: the last hour to begin putting back, ${hour}, lies before the start.`;
  if (point === "past")
    return `Past the fall-back point of ${hour}: the old system can no longer be back before production must start.`;
  const left = at === null ? "" : ` ${span(hoursBetween(at, fallBack.at))} are left until then.`;
  return `Until ${hour} the old system can be put back in time.${left}`;
}

/** The arithmetic of the fall-back point, step by step. */
export function fallBackSteps(plan: CutoverPlan, { fallBack }: CutoverStanding, zone: string) {
  const hours = (value: number | null) => (value === null ? "not known" : span(value));
  return [
    { label: "Production must start", value: moment(plan.productionAt, zone) },
    { label: "less hours to put the old system back", value: hours(plan.restoreHours) },
    { label: "less margin", value: hours(plan.marginHours) },
    { label: "Last hour to begin putting back", value: moment(fallBack.at, zone) },
  ];
}

/** Whether the expected end leaves time before production, in words. */
export function endWords({ expected }: CutoverStanding, zone: string): string {
  const { endsAt, spareHours } = expected;
  const end = `Last step expected to end ${moment(endsAt, zone)}`;
  if (spareHours < 0) return `${end}, ${span(spareHours)} after production must start.`;
  return `${end}, ${span(spareHours)} before production must start.`;
}

export interface StepComparison {
  readonly id: string;
  readonly title: string;
  readonly plannedHours: number;
  /** Null is not over yet. */
  readonly actualHours: number | null;
  /** Its end after its planned end, hours; null is not over yet. */
  readonly lateHours: number | null;
}

/** What was planned against what it took, step by step. */
export function compareSteps({ steps }: CutoverPlan, { expected }: CutoverStanding): StepComparison[] {
  const late = new Map(expected.steps.map(({ id, lateHours }) => [id, lateHours]));
  return steps.map(({ id, title, hours, startedAt, endedAt }) => ({
    ...{ id, title, plannedHours: hours },
    actualHours: startedAt !== null && endedAt !== null ? hoursBetween(startedAt, endedAt) : null,
    lateHours: endedAt === null ? null : (late.get(id) ?? null),
  }));
}

/** A reading of the clock of a place as a field takes it, `2027-01-02T06:00`; empty is none. */
export function clockReading(instant: Instant | null, timeZone: string): string {
  if (instant === null) return "";
  const parts = new Intl.DateTimeFormat("en-CA", {
    ...{ timeZone, year: "numeric", month: "2-digit", day: "2-digit" },
    ...{ hour: "2-digit", minute: "2-digit", hourCycle: "h23" },
  }).formatToParts(new Date(instant));
  const part = (type: string) => parts.find((one) => one.type === type)?.value ?? "";
  return `${part("year")}-${part("month")}-${part("day")}T${part("hour")}:${part("minute")}`;
}

/** The day a cutover begins on, on the clock of a place. */
export function cutoverDay({ startsAt }: CutoverTimes, timeZone: string): IsoDate {
  return clockReading(startsAt, timeZone).slice(0, 10);
}
