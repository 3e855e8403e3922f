import type { IsoDate } from "@/lib/kernel/isoDate";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import { type AxisEntries, judgeAxis } from "@/lib/retrofit/judgeAxis";
import { AXIS_STEPS, type AxisStepKind } from "@/lib/schema/axisStep";

/** Steps that follow from the record of an axis where it has one, and are not marked by hand then. */
export const STEPS_OF_RECORD: readonly AxisStepKind[] = ["validated", "accepted"];

export type StepDays = Readonly<Partial<Record<AxisStepKind, IsoDate>>>;

/** Why an axis cannot be marked with a step on a day; null is nothing stands in the way. */
export function markHindrance(done: StepDays, step: AxisStepKind, on: IsoDate): string | null {
  const before = AXIS_STEPS.slice(0, AXIS_STEPS.indexOf(step));
  const open = before.find((one) => done[one] === undefined);
  if (open !== undefined) return `is not ${open} yet`;
  const later = before.find((one) => (done[one] ?? on) > on);
  if (later !== undefined) return `was ${later} only on ${done[later]}`;
  const next = AXIS_STEPS.slice(AXIS_STEPS.indexOf(step) + 1).find((one) => (done[one] ?? on) < on);
  return next === undefined ? null : `was ${next} before that day, on ${done[next]}`;
}

/** Why a step cannot be taken back; null is it can. */
export function unmarkHindrance(done: StepDays, step: AxisStepKind): string | null {
  const later = AXIS_STEPS.slice(AXIS_STEPS.indexOf(step) + 1).find((one) => done[one] !== undefined);
  return later === undefined ? null : `is ${later} already`;
}

/** A step as it follows from a record; null is not done. */
export interface RecordedStep {
  readonly on: IsoDate;
  readonly by: string;
}

/** The safety checks of a record: those two people answer for. */
const SAFETY = new Set(axisChecks.filter(({ twoNames }) => twoNames).map(({ id }) => id));

/**
 * Whether an axis is validated, by its record: every check two people answer for is passed, or does not apply to it
 * where another of them is passed. The day is the last of theirs.
 */
export function validatedByRecord(entries: AxisEntries): RecordedStep | null {
  const checks = judgeAxis(entries).checks.filter(({ check }) => SAFETY.has(check.id));
  const passed = checks.filter(({ verdict }) => verdict.state === "passed");
  const isDone = checks.every(({ verdict }) => ["passed", "not-applicable"].includes(verdict.state));
  const on = passed
    .map(({ entry }) => entry.on ?? "")
    .sort()
    .at(-1);
  if (!isDone || !on) return null;
  const names = passed.flatMap(({ entry }) => [entry.by, entry.witness]).filter((name) => name !== "");
  return { on, by: [...new Set(names)].join(" and ") };
}
