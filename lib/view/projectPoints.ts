import type { IsoDate } from "@/lib/kernel/isoDate";
import { type Exposure, expectedExposure, type Range, riskExposure } from "@/lib/projects/riskExposure";

export interface OpenPointRow {
  readonly id: string;
  readonly version: number;
  readonly what: string;
  readonly owner: string;
  readonly raisedOn: IsoDate;
  readonly dueOn: IsoDate | null;
  readonly blocks: boolean;
  readonly doneOn: IsoDate | null;
  readonly doneBy: string | null;
}

export type RiskState = "open" | "happened" | "over";

export interface ProjectRiskRow {
  readonly id: string;
  readonly version: number;
  readonly what: string;
  /** In [0, 1]; null is not estimated. */
  readonly chance: Range | null;
  /** Money of the project as decimal text; null is not estimated. */
  readonly effect: { readonly low: string; readonly high: string } | null;
  readonly action: string;
  readonly owner: string;
  readonly state: RiskState;
}

/** Whether an open point should have been done by now. */
export function isLate({ dueOn, doneOn }: OpenPointRow, asOf: IsoDate): boolean {
  return doneOn === null && dueOn !== null && dueOn < asOf;
}

export interface PointCounts {
  readonly open: number;
  readonly late: number;
  readonly blocking: number;
  readonly done: number;
}

/** Points by how they stand. */
export function pointCounts(points: readonly OpenPointRow[], asOf: IsoDate): PointCounts {
  const open = points.filter(({ doneOn }) => doneOn === null);
  return {
    ...{ open: open.length, done: points.length - open.length },
    late: open.filter((point) => isLate(point, asOf)).length,
    blocking: open.filter(({ blocks }) => blocks).length,
  };
}

export const POINT_FILTERS = ["open", "blocking", "late", "done", "all"] as const;
export type PointFilter = (typeof POINT_FILTERS)[number];

/** The points of a filter. */
export function pointsOf(
  points: readonly OpenPointRow[],
  filter: PointFilter,
  asOf: IsoDate,
): readonly OpenPointRow[] {
  switch (filter) {
    case "open":
      return points.filter(({ doneOn }) => doneOn === null);
    case "blocking":
      return points.filter(({ doneOn, blocks }) => doneOn === null && blocks);
    case "late":
      return points.filter((point) => isLate(point, asOf));
    case "done":
      return points.filter(({ doneOn }) => doneOn !== null);
    case "all":
      return points;
    default:
      return filter satisfies never;
  }
}

const estimated = ({ chance, effect }: ProjectRiskRow) => ({
  chance,
  effect: effect && { low: Number(effect.low), high: Number(effect.high) },
});

/** What a risk is expected to cost, money of the project; null is not estimated. */
export const exposureOf = (risk: ProjectRiskRow): Range | null => riskExposure(estimated(risk));

/** What the open risks together are expected to cost. */
export function openExposure(risks: readonly ProjectRiskRow[]): Exposure {
  return expectedExposure(risks.filter(({ state }) => state === "open").map(estimated));
}

export const RISK_STATES: Readonly<Record<RiskState, string>> = {
  open: "may happen",
  happened: "happened",
  over: "can no longer happen",
};
