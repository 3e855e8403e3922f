import { largeFacts, largeFamilies, largeParts, largeStock } from "@/seed/scenarios/large/largeParts";
import { largeEvents, largePlacements, largePositions, largeUnits } from "@/seed/scenarios/large/largePlaces";
import {
  largeAxes,
  largeControllers,
  largeLines,
  largeMachines,
  largeNetworks,
  largePanels,
  largeSites,
} from "@/seed/scenarios/large/largePlant";
import { compatibilityRuleRows } from "@/seed/scenarios/showcase/compatibilityRules";
import { settingRows } from "@/seed/scenarios/showcase/settings";
import { rateRows } from "@/seed/scenarios/showcase/sites";
import type { SeedTables } from "@/seed/tables";

/** A group large enough to measure with: 60 sites, 1,500 lines, 120,000 axes, a million events; made row by row. */
export function large(): SeedTables {
  return {
    Setting: settingRows(),
    CompatibilityRule: compatibilityRuleRows(),
    CurrencyRate: rateRows(),
    Site: largeSites(),
    Line: largeLines(),
    Obligation: [],
    Contact: [],
    ShutdownWindow: [],
    CrewRegion: [],
    CrewRegionSite: [],
    PlanFigure: [],
    ApprovalFreeze: [],
    PlanPrecedence: [],
    RiskAcceptance: [],
    Controller: largeControllers(),
    Backup: [],
    Machine: largeMachines(),
    Panel: largePanels(),
    Network: largeNetworks(),
    Axis: largeAxes(),
    Family: largeFamilies(),
    Part: largeParts(),
    PartAlias: [],
    Successor: [],
    LifecycleFact: largeFacts(),
    Notice: [],
    NoticePart: [],
    Position: largePositions(),
    Unit: largeUnits(),
    Placement: largePlacements(),
    StockLot: largeStock(),
    Event: largeEvents(),
    RepairOrder: [],
    StockCount: [],
    CountLine: [],
    ...NO_PROJECTS,
  };
}

/** No project runs in the large company. */
const NO_PROJECTS = {
  Project: [],
  CostEntry: [],
  BudgetItem: [],
  ChangeOrder: [],
  ChangeAmount: [],
  ClassForecast: [],
  MonthRate: [],
  Milestone: [],
  PlannedRemoval: [],
  AxisRecord: [],
  AxisEntry: [],
  ProjectTask: [],
  TaskLink: [],
  Replan: [],
  ProjectGate: [],
  GateItem: [],
  AxisStep: [],
  ProjectAxis: [],
  Cutover: [],
  CutoverStep: [],
  OpenPoint: [],
  ProjectRisk: [],
  RemovedUnit: [],
  FittedUnit: [],
} as const;
