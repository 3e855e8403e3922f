import type { AxisStepKind } from "@/lib/schema/axisStep";

export interface UsualMilestone {
  readonly name: string;
  /** Percent of the budget it earns. */
  readonly weight: number;
  /** Earned axis by axis as each does this step; null is whole or not at all. */
  readonly axisStep: AxisStepKind | null;
}

/**
 * Steps of a motion retrofit with the percent of the budget each earns; common practice, no source. They sum to 100.
 *
 * A project starts with these and no due days: until its first plan is kept nothing is planned, so nothing is late.
 */
export const defaultMilestones: readonly UsualMilestone[] = [
  { name: "Machines surveyed", weight: 10, axisStep: "surveyed" },
  { name: "Retrofit engineered", weight: 15, axisStep: "engineered" },
  { name: "Parts delivered", weight: 20, axisStep: null },
  { name: "Controllers ready (firmware floor)", weight: 10, axisStep: null },
  { name: "Drives and motors replaced", weight: 20, axisStep: "wired" },
  { name: "Axes declared and scaling restored", weight: 10, axisStep: "powered" },
  { name: "Axes tuned, homing checked against record", weight: 5, axisStep: "tuned" },
  { name: "Safety functions validated", weight: 5, axisStep: "validated" },
  { name: "Line accepted", weight: 5, axisStep: "accepted" },
];
