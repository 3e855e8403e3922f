import type { IsoDate } from "@/lib/kernel/isoDate";
import type { AxisStepKind } from "@/lib/schema/axisStep";

export interface ProjectTaskRow {
  readonly id: string;
  readonly projectId: string;
  readonly code: string;
  readonly sequence: number;
  readonly name: string;
  readonly days: number;
  readonly inWindow: boolean;
  readonly who: string;
  readonly crews: number | null;
  readonly engineers: number | null;
  readonly notBefore: IsoDate | null;
  readonly plannedStart: IsoDate | null;
  readonly plannedFinish: IsoDate | null;
  readonly baselineStart: IsoDate | null;
  readonly baselineFinish: IsoDate | null;
  readonly startedOn: IsoDate | null;
  readonly finishedOn: IsoDate | null;
  readonly milestoneId: string | null;
}

export interface TaskLinkRow {
  readonly taskId: string;
  readonly afterId: string;
  readonly lag: number;
}

export interface ReplanRow {
  readonly id: string;
  readonly projectId: string;
  readonly number: number;
  readonly madeOn: IsoDate;
  readonly madeBy: string;
  readonly reason: string;
  /** JSON text. */
  readonly before: string;
  readonly after: string;
  /** RFC 3339 instant. */
  readonly createdAt: string;
}

export interface ProjectGateRow {
  readonly id: string;
  readonly projectId: string;
  readonly sequence: number;
  readonly name: string;
  readonly taskId: string | null;
  readonly decision: "open" | "passed" | "held";
  readonly decidedOn: IsoDate | null;
  readonly decidedBy: string | null;
  readonly reason: string;
}

export interface GateItemRow {
  readonly id: string;
  readonly gateId: string;
  readonly sequence: number;
  readonly text: string;
  readonly who: string;
  readonly doneOn: IsoDate | null;
  readonly doneBy: string | null;
}

export interface AxisStepRow {
  readonly id: string;
  readonly projectId: string;
  readonly axisId: string;
  readonly step: AxisStepKind;
  readonly doneOn: IsoDate;
  readonly doneBy: string;
  readonly recordedBy: string;
}

export interface ProjectAxisRow {
  readonly projectId: string;
  readonly axisId: string;
  readonly round: number;
}
