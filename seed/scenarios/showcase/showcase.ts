import { axisTables, planAxes } from "@/seed/scenarios/showcase/axes";
import { planAxisFacts } from "@/seed/scenarios/showcase/axisFacts";
import { axisRecordTables } from "@/seed/scenarios/showcase/axisRecords";
import { backupRows } from "@/seed/scenarios/showcase/backups";
import { closeTables } from "@/seed/scenarios/showcase/closeTables";
import { compatibilityRuleRows } from "@/seed/scenarios/showcase/compatibilityRules";
import { contactRows } from "@/seed/scenarios/showcase/contacts";
import { machineRows, planControllers } from "@/seed/scenarios/showcase/controllers";
import { countLineRows, stockCountRows } from "@/seed/scenarios/showcase/counts";
import { eventRows } from "@/seed/scenarios/showcase/events";
import { familyRows } from "@/seed/scenarios/showcase/families";
import { layout } from "@/seed/scenarios/showcase/layout";
import { SHOWCASE_SEED } from "@/seed/scenarios/showcase/moment";
import { noticePartRows, noticeRows } from "@/seed/scenarios/showcase/notices";
import { obligationRows } from "@/seed/scenarios/showcase/obligations";
import { panelRows, placedInPanels } from "@/seed/scenarios/showcase/panels";
import { PARTS, partId, partRows } from "@/seed/scenarios/showcase/parts";
import { planInputTables } from "@/seed/scenarios/showcase/planInputs";
import { planPositions } from "@/seed/scenarios/showcase/positions";
import { projectMoneyTables } from "@/seed/scenarios/showcase/projectMoney";
import { costEntryRows, milestoneRows, projectRows } from "@/seed/scenarios/showcase/projects";
import { removalRows } from "@/seed/scenarios/showcase/removals";
import { repairRows } from "@/seed/scenarios/showcase/repairs";
import { scheduleTables } from "@/seed/scenarios/showcase/schedules";
import { settingRows } from "@/seed/scenarios/showcase/settings";
import { shutdownWindowRows } from "@/seed/scenarios/showcase/shutdownWindows";
import { lineRows, rateRows, SITES, siteId, siteRows } from "@/seed/scenarios/showcase/sites";
import { stockRows } from "@/seed/scenarios/showcase/stock";
import { aliasRows, successorRows } from "@/seed/scenarios/showcase/successors";
import { supplyFactRows } from "@/seed/scenarios/showcase/supplyFacts";
import { unitTables } from "@/seed/scenarios/showcase/units";
import type { HeldTables, StockLotRow } from "@/seed/tables";

/** Site and part of each shelf, as `OST/HR-010`. */
function shelvesIn(lots: readonly StockLotRow[]): Set<string> {
  const sites = new Map(SITES.map(({ code }) => [siteId(code), code]));
  const parts = new Map(PARTS.map(({ key }) => [partId(key), key]));
  return new Set(lots.map((lot) => `${sites.get(lot.siteId)}/${parts.get(lot.partId)}`));
}

/** The invented company of six sites: every table from one number, each from a stream of its own. */
export function showcase(seed = SHOWCASE_SEED): HeldTables {
  const machines = layout(seed);
  const controllers = planControllers(seed, machines);
  const axes = planAxes(seed, machines);
  const { positions, motorOf } = planPositions(seed, { machines, controllers, axes });
  const { axes: axisRows, networks } = axisTables(seed, axes, motorOf);
  const facts = planAxisFacts(seed, axes, { rows: axisRows, motorOf });
  const events = eventRows(seed, positions);
  const { units, placements } = unitTables(seed, positions, events);
  const lots = stockRows(seed, positions);
  const records = axisRecordTables(seed, axes, axisRows);
  return {
    Setting: settingRows(),
    CompatibilityRule: compatibilityRuleRows(),
    CurrencyRate: rateRows(),
    Site: siteRows(),
    Line: lineRows(),
    Obligation: obligationRows(),
    Contact: contactRows(),
    ShutdownWindow: shutdownWindowRows(),
    ...planInputTables(),
    Controller: controllers.map(({ row }) => row),
    Backup: backupRows(seed, controllers),
    Machine: machineRows(controllers),
    Panel: panelRows(machines),
    Network: networks,
    Axis: axisRows.map((axis) => ({ ...axis, ...facts.get(axis.id) })),
    Family: familyRows(),
    Part: partRows(),
    PartAlias: aliasRows(shelvesIn(lots)),
    Successor: successorRows(),
    LifecycleFact: supplyFactRows(),
    Notice: noticeRows(),
    NoticePart: noticePartRows(),
    Position: placedInPanels(positions),
    Unit: units,
    Placement: placements,
    StockLot: lots,
    Event: events,
    RepairOrder: repairRows(seed),
    StockCount: stockCountRows(lots),
    CountLine: countLineRows(lots),
    Project: projectRows(),
    CostEntry: costEntryRows(),
    ...projectMoneyTables(),
    Milestone: milestoneRows(),
    PlannedRemoval: removalRows(positions),
    ...records,
    ...scheduleTables(axes, records),
    ...closeTables(seed, positions, { units, placements }),
  };
}
