import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Evidence } from "@/lib/risk/evaluation";
import type { CostMethod } from "@/lib/schema/costMethod";
import type { AxisFactsRow } from "@/seed/panelTables";

export interface SiteRow {
  readonly id: string;
  readonly code: string;
  readonly name: string;
  readonly country: string;
  readonly timeZone: string;
  readonly currency: string;
}

export interface CurrencyRateRow {
  readonly currency: string;
  readonly perEuro: number;
  readonly validFrom: IsoDate;
  readonly source: string;
}

export interface LineRow {
  readonly id: string;
  readonly siteId: string;
  readonly code: string;
  readonly name: string;
  readonly shiftsPerWeek: number;
  readonly inServiceYear: number;
  readonly costPerHour: number;
  readonly costFixed: number | null;
  /** JSON text of the steps; money in the site's currency. */
  readonly costSteps: string;
  readonly costMethod: CostMethod | null;
  readonly costOwner: string | null;
  readonly costApprovedOn: IsoDate | null;
  readonly costValidUntil: IsoDate | null;
  readonly costEvidence: Evidence;
  readonly bufferHours: number;
  readonly note: string | null;
}

export interface ObligationRow {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string | null;
  readonly kind: "safety" | "legal";
  readonly title: string;
  readonly dueOn: IsoDate;
  readonly source: string;
  readonly owner: string | null;
  readonly evidence: Evidence;
  readonly recordedOn: IsoDate;
  readonly doneOn: IsoDate | null;
}

export interface ShutdownWindowRow {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string | null;
  readonly name: string;
  readonly startsOn: IsoDate;
  readonly endsOn: IsoDate;
  readonly usableHours: number | null;
  readonly note: string | null;
}

export interface ContactRow {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string | null;
  readonly role: string;
  readonly phone: string;
  readonly hours: string;
  readonly note: string | null;
}

export interface BackupRow {
  readonly id: string;
  readonly controllerId: string;
  readonly kind: "program" | "parameters" | "operator_panel";
  readonly takenOn: IsoDate;
  readonly keptAt: string;
  readonly verifiedOn: IsoDate | null;
  readonly sourceAvailable: boolean | null;
}

export interface MachineRow {
  readonly id: string;
  readonly lineId: string;
  readonly code: string;
  readonly name: string;
  readonly inServiceYear: number;
  readonly controllerId: string;
}

export interface ControllerRow {
  readonly id: string;
  readonly siteId: string;
  readonly designation: string;
  readonly model: string;
  readonly firmware: number | null;
  readonly firmwareRaw: string | null;
  readonly memoryPercent: number | null;
  /** Hardware letter and level. */
  readonly hardware: string | null;
  readonly axisLimit: number | null;
  readonly readOn: IsoDate | null;
  readonly evidence: Evidence;
  /** The line it leads; null leads none. */
  readonly leadsLineId: string | null;
}

export interface NetworkRow {
  readonly id: string;
  readonly siteId: string;
  readonly name: string;
  readonly kind: "fibre_ring" | "ethernet" | "analogue" | "pulse" | "unknown";
  /** Number of the communication profile family. */
  readonly profileFamily: number | null;
}

export interface AxisRow extends AxisFactsRow {
  readonly id: string;
  readonly machineId: string;
  readonly code: string;
  readonly name: string | null;
  readonly inServiceYear: number;
  readonly networkId: string | null;
  readonly nodeAddress: number | null;
  readonly ringOrder: number | null;
  readonly feedback: string | null;
  readonly countsPerRev: number | null;
  readonly motorRevs: number | null;
  readonly loadRevs: number | null;
  readonly unitsPerLoadRev: number | null;
  readonly travelUnit: string | null;
  readonly evidence: Evidence;
}
