import type { IsoDate } from "@/lib/kernel/isoDate";
import { AXIS_STEPS, type AxisStepKind } from "@/lib/schema/axisStep";

/** A step that is done, when and by whom. */
export interface StepDone {
  readonly on: IsoDate;
  readonly by: string;
}

/** An axis with the steps it has done in a project. */
export interface SteppedAxis {
  readonly id: string;
  readonly code: string;
  readonly name: string | null;
  readonly machineCode: string;
  readonly machineName: string;
  /** From 1; 0 stays as it is and counts nowhere. */
  readonly round: number;
  /** Its record says whether it is validated and accepted. */
  readonly hasRecord: boolean;
  readonly steps: Readonly<Partial<Record<AxisStepKind, StepDone>>>;
}

export interface AxisStepsFile {
  readonly projectId: string;
  readonly siteId: string;
  readonly axes: readonly SteppedAxis[];
}

/** An axis that was not changed, and why. */
export interface LeftAxis {
  readonly axis: string;
  readonly reason: string;
}

const WORDS = {
  surveyed: "Surveyed",
  engineered: "Engineered",
  wired: "Wired",
  powered: "Powered",
  tuned: "Tuned",
  validated: "Validated",
  accepted: "Accepted",
} satisfies Record<AxisStepKind, string>;

/** The steps in their order, with their words. */
export const axisStepChoices = AXIS_STEPS.map((step) => ({ step, word: WORDS[step] }));

/** The word of a step. */
export const axisStepWord = (step: AxisStepKind): string => WORDS[step];

export interface StepTotal {
  readonly step: AxisStepKind;
  readonly word: string;
  readonly done: number;
  readonly total: number;
}

/** How many axes of the project have done each step by the day. */
export function stepTotals(axes: readonly SteppedAxis[], asOf: IsoDate): StepTotal[] {
  const counted = axes.filter(({ round }) => round > 0);
  return axisStepChoices.map(({ step, word }) => ({
    ...{ step, word, total: counted.length },
    done: counted.filter(({ steps }) => (steps[step]?.on ?? "9") <= asOf).length,
  }));
}
