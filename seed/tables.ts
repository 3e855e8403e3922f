import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Evidence, ItemClass } from "@/lib/risk/evaluation";
import type { StockState } from "@/lib/spares/usableCount";
import type {
  CutoverRow,
  CutoverStepRow,
  FittedUnitRow,
  OpenPointRow,
  ProjectRiskRow,
  RemovedUnitRow,
} from "@/seed/closeTables";
import type { CountLineRow, RepairOrderRow, StockCountRow } from "@/seed/countTables";
import type {
  BudgetItemRow,
  ChangeAmountRow,
  ChangeOrderRow,
  ClassForecastRow,
  CostEntryRow,
  MonthRateRow,
} from "@/seed/moneyTables";
import type { PanelRow } from "@/seed/panelTables";
import type {
  ApprovalFreezeRow,
  CrewRegionRow,
  CrewRegionSiteRow,
  PlanFigureRow,
  PlanPrecedenceRow,
  RiskAcceptanceRow,
} from "@/seed/planTables";
import type {
  AxisEntryRow,
  AxisRecordRow,
  MilestoneRow,
  PlannedRemovalRow,
  ProjectRow,
} from "@/seed/projectTables";
import type { CompatibilityRuleRow } from "@/seed/ruleTables";
import type {
  AxisStepRow,
  GateItemRow,
  ProjectAxisRow,
  ProjectGateRow,
  ProjectTaskRow,
  ReplanRow,
  TaskLinkRow,
} from "@/seed/scheduleTables";
import type {
  AxisRow,
  BackupRow,
  ContactRow,
  ControllerRow,
  CurrencyRateRow,
  LineRow,
  MachineRow,
  NetworkRow,
  ObligationRow,
  ShutdownWindowRow,
  SiteRow,
} from "@/seed/siteTables";

export type EventKind = "failure" | "no_fault_found" | "removal";

export interface FamilyRow {
  readonly id: string;
  readonly maker: string;
  readonly name: string;
  readonly itemClass: ItemClass;
  readonly description: string;
}

export interface PartRow {
  readonly id: string;
  readonly maker: string;
  readonly number: string;
  readonly description: string;
  readonly itemClass: ItemClass;
  readonly familyId: string;
  readonly price: number | null;
  readonly priceCurrency: string | null;
  readonly pricedOn: IsoDate | null;
  readonly leadWeeks: number | null;
  readonly leadWeeksP80: number | null;
  readonly repairYield: number | null;
  readonly repairTurnaroundDays: number | null;
  /** Rated power of a motor, kW. */
  readonly powerKw: number | null;
  /** Number of the communication profile family a drive speaks. */
  readonly profileFamily: number | null;
}

export interface PartAliasRow {
  readonly id: string;
  readonly partId: string;
  readonly siteId: string | null;
  readonly alias: string;
}

export interface SuccessorRow {
  readonly id: string;
  readonly partId: string;
  readonly successorId: string;
  readonly condition: string;
}

export interface LifecycleFactRow {
  readonly id: string;
  readonly partId: string | null;
  readonly familyId: string | null;
  readonly noticeOn: IsoDate | null;
  readonly lastOrderOn: IsoDate | null;
  readonly lastShipOn: IsoDate | null;
  readonly repairUntilOn: IsoDate | null;
  readonly orderByOn: IsoDate | null;
  readonly source: string;
  readonly checkedOn: IsoDate;
  readonly recordedOn: IsoDate;
  readonly evidence: Evidence;
}

export interface PositionRow {
  readonly id: string;
  readonly machineId: string;
  readonly axisId: string | null;
  readonly panelId: string | null;
  readonly itemClass: ItemClass;
  readonly designation: string;
  readonly partId: string | null;
  readonly evidence: Evidence;
}

export interface UnitRow {
  readonly id: string;
  readonly partId: string;
  readonly serial: string;
  readonly revision: string | null;
  readonly madeYear: number | null;
}

export interface PlacementRow {
  readonly id: string;
  readonly unitId: string;
  readonly positionId: string;
  readonly fromOn: IsoDate | null;
  readonly untilOn: IsoDate | null;
}

export interface StockLotRow {
  readonly id: string;
  readonly siteId: string;
  readonly partId: string;
  readonly bin: string;
  readonly revision: string;
  readonly state: StockState;
  readonly quantity: number | null;
  readonly lastPoweredOn: IsoDate | null;
  readonly countedOn: IsoDate | null;
  readonly reservedFor: string | null;
  readonly note: string | null;
  readonly evidence: Evidence;
}

export interface EventRow {
  readonly id: string;
  readonly siteId: string;
  readonly lineId: string | null;
  readonly machineId: string | null;
  readonly positionId: string | null;
  readonly partId: string | null;
  readonly itemClass: ItemClass | null;
  readonly kind: EventKind;
  /** RFC 3339 instant in UTC. */
  readonly happenedAt: string;
  readonly downtimeHours: number | null;
  readonly logisticHours: number | null;
  readonly spareAtHand: boolean | null;
  readonly source: string;
  readonly reference: string;
  readonly text: string | null;
  readonly commonCause: string | null;
  readonly setAside: string | null;
}

export interface NoticeRow extends Omit<LifecycleFactRow, "partId" | "familyId" | "source"> {
  readonly maker: string;
  readonly document: string;
  readonly patterns: string;
  readonly successor: string;
  readonly note: string;
  readonly quoteWeeks: number;
  readonly approvalWeeks: number;
  readonly purchaseWeeks: number;
  readonly recordedBy: string;
}

export interface NoticePartRow {
  readonly noticeId: string;
  readonly partId: string;
  readonly factId: string;
}

export interface SettingRow {
  readonly key: string;
  /** JSON text. */
  readonly value: string;
}

/** The rows of a scenario, table by table, in the order they can be written: parents first. */
export interface SeedTables {
  readonly Setting: Iterable<SettingRow>;
  readonly CompatibilityRule: Iterable<CompatibilityRuleRow>;
  readonly CurrencyRate: Iterable<CurrencyRateRow>;
  readonly Site: Iterable<SiteRow>;
  readonly Line: Iterable<LineRow>;
  readonly Obligation: Iterable<ObligationRow>;
  readonly Contact: Iterable<ContactRow>;
  readonly ShutdownWindow: Iterable<ShutdownWindowRow>;
  readonly CrewRegion: Iterable<CrewRegionRow>;
  readonly CrewRegionSite: Iterable<CrewRegionSiteRow>;
  readonly PlanFigure: Iterable<PlanFigureRow>;
  readonly ApprovalFreeze: Iterable<ApprovalFreezeRow>;
  readonly PlanPrecedence: Iterable<PlanPrecedenceRow>;
  readonly RiskAcceptance: Iterable<RiskAcceptanceRow>;
  readonly Controller: Iterable<ControllerRow>;
  readonly Backup: Iterable<BackupRow>;
  readonly Machine: Iterable<MachineRow>;
  readonly Panel: Iterable<PanelRow>;
  readonly Network: Iterable<NetworkRow>;
  readonly Axis: Iterable<AxisRow>;
  readonly Family: Iterable<FamilyRow>;
  readonly Part: Iterable<PartRow>;
  readonly PartAlias: Iterable<PartAliasRow>;
  readonly Successor: Iterable<SuccessorRow>;
  readonly LifecycleFact: Iterable<LifecycleFactRow>;
  readonly Notice: Iterable<NoticeRow>;
  readonly NoticePart: Iterable<NoticePartRow>;
  readonly Position: Iterable<PositionRow>;
  readonly Unit: Iterable<UnitRow>;
  readonly Placement: Iterable<PlacementRow>;
  readonly StockLot: Iterable<StockLotRow>;
  readonly Event: Iterable<EventRow>;
  readonly RepairOrder: Iterable<RepairOrderRow>;
  readonly StockCount: Iterable<StockCountRow>;
  readonly CountLine: Iterable<CountLineRow>;
  readonly Project: Iterable<ProjectRow>;
  readonly CostEntry: Iterable<CostEntryRow>;
  readonly BudgetItem: Iterable<BudgetItemRow>;
  readonly ChangeOrder: Iterable<ChangeOrderRow>;
  readonly ChangeAmount: Iterable<ChangeAmountRow>;
  readonly ClassForecast: Iterable<ClassForecastRow>;
  readonly MonthRate: Iterable<MonthRateRow>;
  readonly Milestone: Iterable<MilestoneRow>;
  readonly PlannedRemoval: Iterable<PlannedRemovalRow>;
  readonly AxisRecord: Iterable<AxisRecordRow>;
  readonly AxisEntry: Iterable<AxisEntryRow>;
  readonly ProjectTask: Iterable<ProjectTaskRow>;
  readonly TaskLink: Iterable<TaskLinkRow>;
  readonly Replan: Iterable<ReplanRow>;
  readonly ProjectGate: Iterable<ProjectGateRow>;
  readonly GateItem: Iterable<GateItemRow>;
  readonly AxisStep: Iterable<AxisStepRow>;
  readonly ProjectAxis: Iterable<ProjectAxisRow>;
  readonly Cutover: Iterable<CutoverRow>;
  readonly CutoverStep: Iterable<CutoverStepRow>;
  readonly OpenPoint: Iterable<OpenPointRow>;
  readonly ProjectRisk: Iterable<ProjectRiskRow>;
  readonly RemovedUnit: Iterable<RemovedUnitRow>;
  readonly FittedUnit: Iterable<FittedUnitRow>;
}

export type TableName = keyof SeedTables;

/** A scenario small enough to hold in memory. */
export type HeldTables = {
  readonly [T in TableName]: readonly (SeedTables[T] extends Iterable<infer R> ? R : never)[];
};
