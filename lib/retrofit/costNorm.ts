import { requireCount, requireNumber } from "@/lib/kernel/requireNumber";

/** Low, typical and high value of a norm. */
export type Norm = readonly [low: number, typical: number, high: number];

/** Hours and prices behind an estimate; EUR and hours, all of them common practice without a source. */
export interface CostNorms {
  readonly hourlyRate: Norm;
  /** Hours for one axis: survey, engineering, panel, site work, commissioning. */
  readonly hoursPerAxis: Norm;
  /** Hours for one machine whatever its axes: survey, engineering, safety validation. */
  readonly hoursPerMachine: Norm;
  /** Further hours when the controller is replaced and its program converted. */
  readonly hoursPerController: Norm;
  readonly drive: Norm;
  readonly motor: Norm;
  readonly cablesPerAxis: Norm;
  readonly controller: Norm;
  readonly hmi: Norm;
  /** Share on top of the sum. */
  readonly contingency: Norm;
}

export const likelyNorms: CostNorms = {
  hourlyRate: [75, 90, 110],
  hoursPerAxis: [7.8, 16, 35],
  hoursPerMachine: [34, 88, 248],
  hoursPerController: [60, 160, 500],
  drive: [1200, 2200, 4500],
  motor: [800, 1600, 4000],
  cablesPerAxis: [200, 450, 1200],
  controller: [4000, 12_000, 35_000],
  hmi: [1500, 4000, 10_000],
  contingency: [0.08, 0.15, 0.3],
};

export interface RetrofitUnits {
  /** Machines touched. */
  readonly machines: number;
  /** Drives replaced, one an axis. */
  readonly drives: number;
  readonly motors: number;
  readonly controllers: number;
  readonly hmis: number;
  /** Price of the successor drive, EUR; null is not known and takes the norm. */
  readonly drivePrice: number | null;
}

function costAt(units: RetrofitUnits, norms: CostNorms, at: 0 | 1 | 2): number {
  const drive = units.drivePrice ?? norms.drive[at];
  const hours =
    units.drives * norms.hoursPerAxis[at] +
    units.machines * norms.hoursPerMachine[at] +
    units.controllers * norms.hoursPerController[at];
  const goods =
    units.drives * (drive + norms.cablesPerAxis[at]) +
    units.motors * norms.motor[at] +
    units.controllers * norms.controller[at] +
    units.hmis * norms.hmi[at];
  return (hours * norms.hourlyRate[at] + goods) * (1 + norms.contingency[at]);
}

/**
 * Estimates what replacing the units of a line costs, EUR.
 *
 * (hours * hourly rate + goods) * (1 + contingency), with all norms low, typical or high together;
 * mean = (low + 4 * typical + high) / 6, the three-point mean (textbook formula, from memory).
 *
 * @returns low and high are ends of common practice, not 5 % and 95 % points; 0 when nothing is replaced.
 * @throws {RangeError} naming the argument and its value.
 */
export function retrofitCost(units: RetrofitUnits, norms: CostNorms = likelyNorms) {
  const { drivePrice, ...counts } = units;
  for (const [name, count] of Object.entries(counts)) requireCount(count, name);
  if (drivePrice !== null) requireNumber(drivePrice, "drivePrice", { least: 0 });
  const low = costAt(units, norms, 0);
  const typical = costAt(units, norms, 1);
  const high = costAt(units, norms, 2);
  return { mean: (low + 4 * typical + high) / 6, low, typical, high };
}
