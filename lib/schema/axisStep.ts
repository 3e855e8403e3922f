import { z } from "zod";
import { isIsoDate } from "@/lib/kernel/isoDate";

/** What an axis goes through in a retrofit, in order. Common practice, no source. */
export const AXIS_STEPS = [
  "surveyed",
  "engineered",
  "wired",
  "powered",
  "tuned",
  "validated",
  "accepted",
] as const;

export type AxisStepKind = (typeof AXIS_STEPS)[number];

const axes = {
  projectId: z.uuid(),
  axisIds: z.array(z.uuid()).min(1, "Choose at least one axis.").max(1000),
};
const step = z.enum(AXIS_STEPS);

/** Marks axes with a step done on a day by somebody. */
export const markAxes = z.strictObject({
  ...axes,
  step,
  on: z.string().refine(isIsoDate, "Write a day that exists, as 2026-11-30."),
  by: z.string().trim().min(1, "Say who did it.").max(80, "Use at most 80 characters."),
});

/** Takes a step of axes back. */
export const unmarkAxes = z.strictObject({ ...axes, step });

/** Puts axes into a round of the project; 0 leaves them as they are. */
export const setRound = z.strictObject({ ...axes, round: z.int().min(0).max(9) });

export type MarkAxes = z.output<typeof markAxes>;
export type UnmarkAxes = z.output<typeof unmarkAxes>;
export type SetRound = z.output<typeof setRound>;
