import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Evidence } from "@/lib/risk/evaluation";
import type { PlanFigureKind } from "@/lib/schema/planInputs";

export interface PlanFigureRow {
  readonly id: string;
  readonly kind: PlanFigureKind;
  readonly siteId: string | null;
  readonly regionId: string | null;
  readonly obligationId: string | null;
  readonly year: number | null;
  readonly value: number;
  readonly currency: string | null;
  readonly source: string;
  readonly owner: string;
  readonly evidence: Evidence;
  readonly statedOn: IsoDate;
}

export interface CrewRegionRow {
  readonly id: string;
  readonly name: string;
}

export interface CrewRegionSiteRow {
  readonly siteId: string;
  readonly regionId: string;
}

export interface ApprovalFreezeRow {
  readonly id: string;
  readonly name: string;
  readonly freezesOn: IsoDate;
  readonly coversFrom: IsoDate;
  readonly coversTo: IsoDate;
  readonly source: string;
  readonly owner: string;
}

export interface PlanPrecedenceRow {
  readonly id: string;
  readonly firstId: string;
  readonly thenId: string;
  readonly reason: string;
  readonly source: string;
  readonly owner: string;
}

export interface RiskAcceptanceRow {
  readonly id: string;
  readonly lineId: string;
  readonly acceptedBy: string;
  readonly acceptedOn: IsoDate;
  readonly until: IsoDate;
  readonly reason: string;
  readonly loss: number | null;
  readonly lossLow: number | null;
  readonly lossHigh: number | null;
  readonly recordedBy: string;
}
