import { showcase } from "@/seed/scenarios/showcase/showcase";
import type { HeldTables } from "@/seed/tables";

/** Two sites with two lines each: a running project, a ring, Ethernet and a drive nobody identified. */
const LINES = ["KAR-02", "KAR-03", "THO-01", "THO-04"];

type Row = Readonly<Record<string, unknown>>;

const idsOf = (rows: readonly { readonly id: string }[]): Set<unknown> => new Set(rows.map(({ id }) => id));

/** Rows whose reference is among those kept. */
function of<T extends object>(rows: readonly T[], field: keyof T & string, kept: ReadonlySet<unknown>): T[] {
  return rows.filter((row) => kept.has((row as Row)[field]));
}

function plantOf(all: HeldTables) {
  const lines = all.Line.filter(({ code }) => LINES.includes(code));
  const sites = all.Site.filter(({ id }) => lines.some(({ siteId }) => siteId === id));
  const machines = of(all.Machine, "lineId", idsOf(lines));
  const axes = of(all.Axis, "machineId", idsOf(machines));
  const positions = of(all.Position, "machineId", idsOf(machines));
  const controllers = new Set(machines.map(({ controllerId }) => controllerId));
  const placements = of(all.Placement, "positionId", idsOf(positions));
  return {
    Site: sites,
    Line: lines,
    Controller: of(all.Controller, "id", controllers),
    Backup: of(all.Backup, "controllerId", controllers),
    Machine: machines,
    Panel: of(all.Panel, "machineId", idsOf(machines)),
    Network: of(all.Network, "id", new Set(axes.map(({ networkId }) => networkId))),
    Axis: axes,
    Position: positions,
    Unit: of(all.Unit, "id", new Set(placements.map(({ unitId }) => unitId))),
    Placement: placements,
  };
}

/** A cut of the showcase that loads in a moment, for tests; the catalogue of parts is whole. */
export function small(): HeldTables {
  const all = showcase();
  const plant = plantOf(all);
  const siteIds = idsOf(plant.Site);
  const lineIds = idsOf(plant.Line);
  const isKept = ({ lineId }: { readonly lineId: string | null }) => lineId === null || lineIds.has(lineId);
  const projects = of(all.Project, "lineId", lineIds);
  const currencies = new Set(plant.Site.map(({ currency }) => currency));
  const counts = of(all.StockCount, "siteId", siteIds);
  return {
    ...all,
    ...plant,
    Obligation: of(all.Obligation, "siteId", siteIds).filter(isKept),
    Contact: of(all.Contact, "siteId", siteIds).filter(isKept),
    ShutdownWindow: of(all.ShutdownWindow, "siteId", siteIds),
    CrewRegionSite: of(all.CrewRegionSite, "siteId", siteIds),
    PlanFigure: of(all.PlanFigure, "siteId", new Set([...siteIds, null])).filter(
      ({ obligationId }) => obligationId === null,
    ),
    PlanPrecedence: of(all.PlanPrecedence, "firstId", lineIds),
    RiskAcceptance: of(all.RiskAcceptance, "lineId", lineIds),
    CurrencyRate: of(all.CurrencyRate, "currency", currencies),
    PartAlias: of(all.PartAlias, "siteId", new Set([...siteIds, null])),
    StockLot: of(all.StockLot, "siteId", siteIds),
    Event: of(all.Event, "lineId", lineIds),
    RepairOrder: of(all.RepairOrder, "siteId", siteIds),
    StockCount: counts,
    CountLine: of(all.CountLine, "countId", idsOf(counts)),
    ...projectTables(all, projects),
    MonthRate: of(all.MonthRate, "currency", currencies),
  };
}

/** Everything that hangs on the projects kept. */
function projectTables(all: HeldTables, projects: HeldTables["Project"]) {
  const kept = idsOf(projects);
  const axisRecords = of(all.AxisRecord, "projectId", kept);
  const tasks = of(all.ProjectTask, "projectId", kept);
  const gates = of(all.ProjectGate, "projectId", kept);
  const cutovers = of(all.Cutover, "projectId", kept);
  const changes = of(all.ChangeOrder, "projectId", kept);
  return {
    Project: projects,
    CostEntry: of(all.CostEntry, "projectId", kept),
    BudgetItem: of(all.BudgetItem, "projectId", kept),
    ChangeOrder: changes,
    ChangeAmount: of(all.ChangeAmount, "changeId", idsOf(changes)),
    ClassForecast: of(all.ClassForecast, "projectId", kept),
    Milestone: of(all.Milestone, "projectId", kept),
    PlannedRemoval: of(all.PlannedRemoval, "projectId", kept),
    AxisRecord: axisRecords,
    AxisEntry: of(all.AxisEntry, "recordId", idsOf(axisRecords)),
    ProjectTask: tasks,
    TaskLink: of(all.TaskLink, "taskId", idsOf(tasks)),
    Replan: of(all.Replan, "projectId", kept),
    ProjectGate: gates,
    GateItem: of(all.GateItem, "gateId", idsOf(gates)),
    AxisStep: of(all.AxisStep, "projectId", kept),
    ProjectAxis: of(all.ProjectAxis, "projectId", kept),
    Cutover: cutovers,
    CutoverStep: of(all.CutoverStep, "cutoverId", idsOf(cutovers)),
    OpenPoint: of(all.OpenPoint, "projectId", kept),
    ProjectRisk: of(all.ProjectRisk, "projectId", kept),
    RemovedUnit: of(all.RemovedUnit, "projectId", kept),
    FittedUnit: of(all.FittedUnit, "projectId", kept),
  };
}
