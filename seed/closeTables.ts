import type { IsoDate } from "@/lib/kernel/isoDate";
import type { CutoverCaution } from "@/lib/schema/cutover";

export interface CutoverRow {
  readonly id: string;
  readonly projectId: string;
  readonly name: string;
  /** RFC 3339 instants in UTC. */
  readonly startsAt: string;
  readonly productionAt: string;
  readonly restoreHours: number;
  readonly marginHours: number;
  readonly restoreTestedOn: IsoDate | null;
  readonly restoreTestedBy: string;
}

export interface CutoverStepRow {
  readonly id: string;
  readonly cutoverId: string;
  readonly title: string;
  readonly afterHours: number;
  readonly hours: number;
  readonly who: string;
  readonly phone: string;
  readonly needs: string;
  readonly caution: CutoverCaution | "";
  readonly startedAt: string | null;
  readonly endedAt: string | null;
}

export interface OpenPointRow {
  readonly id: string;
  readonly projectId: string;
  readonly what: string;
  readonly owner: string;
  readonly raisedOn: IsoDate;
  readonly dueOn: IsoDate | null;
  readonly blocks: boolean;
  readonly doneOn: IsoDate | null;
  readonly doneBy: string | null;
}

export interface ProjectRiskRow {
  readonly id: string;
  readonly projectId: string;
  readonly what: string;
  readonly chanceLow: number | null;
  readonly chanceHigh: number | null;
  readonly effectLow: string | null;
  readonly effectHigh: string | null;
  readonly action: string;
  readonly owner: string;
  readonly state: "open" | "happened" | "over";
}

export interface RemovedUnitRow {
  readonly id: string;
  readonly projectId: string;
  readonly positionId: string;
  readonly partId: string;
  readonly serial: string;
  readonly revision: string;
  readonly removedOn: IsoDate;
  readonly result: "usable" | null;
  readonly testedBy: string;
  readonly how: string;
  readonly testedOn: IsoDate | null;
  readonly bin: string;
}

export interface FittedUnitRow {
  readonly id: string;
  readonly projectId: string;
  readonly positionId: string;
  readonly partId: string;
  readonly serial: string;
  readonly revision: string;
  readonly firmware: string;
  readonly added: boolean;
  readonly fittedOn: IsoDate;
}
