import type { IsoDate } from "@/lib/kernel/isoDate";
import type { AxisStepRow } from "@/seed/scheduleTables";

export interface ProjectRow {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string;
  readonly code: string;
  readonly name: string;
  readonly status: "funded" | "in_work" | "proving" | "accepted" | "closed" | "parked";
  readonly currency: string;
  readonly budget: string;
  readonly budgetRate: number | null;
  readonly budgetRatedOn: IsoDate | null;
  readonly forecast: string | null;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  readonly cause: string | null;
}

export interface MilestoneRow {
  readonly id: string;
  readonly projectId: string;
  readonly sequence: number;
  readonly name: string;
  readonly weight: number;
  readonly dueOn: IsoDate | null;
  readonly doneOn: IsoDate | null;
  readonly axisStep: AxisStepRow["step"] | null;
  readonly axisRound: number | null;
}

export interface PlannedRemovalRow {
  readonly id: string;
  readonly projectId: string;
  readonly lineId: string;
  readonly partId: string;
  readonly units: number;
  readonly leavesOn: IsoDate;
  readonly kept: boolean;
}

export interface AxisRecordRow {
  readonly id: string;
  readonly projectId: string;
  readonly axisId: string;
  readonly acceptedOn: IsoDate | null;
  readonly acceptedBy: string | null;
}

export interface AxisEntryRow {
  readonly id: string;
  readonly recordId: string;
  readonly checkId: string;
  readonly asFound: number | null;
  readonly limit: number | null;
  /** Readings as PostgreSQL writes a list, `{0.1,0.2}`. */
  readonly asLeft: string;
  readonly confirmed: boolean | null;
  readonly notApplicable: string;
  readonly instrument: string;
  readonly by: string;
  readonly witness: string;
  readonly on: IsoDate | null;
}
