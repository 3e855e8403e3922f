import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { LossSpan } from "@/lib/risk/draws/linePlace";
import type { ItemClass, LineResult, PoolFigures, Span } from "@/lib/risk/evaluation";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import type { Acceptance } from "@/lib/view/acceptance";
import type { LineCost } from "@/lib/view/lineRanking";
import type { Obligation } from "@/lib/view/obligation";
import type { PlanSummary } from "@/lib/view/plan";
import type { ProjectFile } from "@/lib/view/project";

/** Something somebody should have done before the day of the report. */
export interface LateAction {
  readonly text: string;
  readonly siteCode: string;
  readonly owner: string;
  readonly dueOn: string;
  /** Page it is kept on. */
  readonly href: string;
}

export interface ReportSite {
  readonly id: string;
  readonly code: string;
  readonly name: string;
}

export interface ReportLine {
  readonly code: string;
  readonly name: string;
  readonly siteId: string;
  readonly cost: LineCost | null;
  readonly result: LineResult;
}

/** A part installed at the sites of the report, with the dates in force and what the pool looks like. */
export interface ReportPart {
  readonly id: string;
  readonly number: string;
  readonly itemClass: ItemClass;
  /** What the dates are said of: the family, or the part itself; what they are grouped by. */
  readonly datesOf: string;
  readonly lastOrderOn: string | null;
  readonly orderByOn: string | null;
  readonly lastShipOn: string | null;
  readonly repairUntilOn: string | null;
  readonly pool: PoolFigures;
}

/** What nobody has recorded, counted. */
export interface ReportGaps {
  readonly controllers: number;
  readonly unknownFirmware: number;
  readonly stockLots: number;
  readonly uncounted: number;
}

/** Everything a monthly report is made of, as read. */
export interface ReportInput {
  readonly asOf: string;
  readonly engine: string;
  readonly dataVersion: number;
  /** Set of assumptions the figures were computed with. */
  readonly assumptionSet: AssumptionChoice;
  /** Seed of the draws behind the spans. */
  readonly seed: number;
  /** Sites of the report, by code. */
  readonly sites: readonly ReportSite[];
  /** Sites a report can be had for. */
  readonly choices: readonly ReportSite[];
  readonly wholeGroup: boolean;
  /** Drawn span of the summed stop loss of the report; null where its draws were not added up. */
  readonly drawnTotal: LossSpan | null;
  /** The same of each site alone, by code. */
  readonly drawnSites: Readonly<Record<string, LossSpan>>;
  readonly lines: readonly ReportLine[];
  readonly parts: readonly ReportPart[];
  readonly gaps: ReportGaps;
  /** Safety and legal dates at the report's sites within 24 months or overdue, soonest first. */
  readonly obligations: readonly Obligation[];
  readonly projects: readonly ProjectFile[];
  /** Risks held on lines of the report, or held until a day that is past. */
  readonly acceptances: readonly Acceptance[];
  /** Plans with a line at the report's sites. */
  readonly plans: readonly PlanSummary[];
  /** Actions of reviews that are late, the longest due first. */
  readonly lateActions: readonly LateAction[];
  /** Amounts of some of the sites are left out for the reader. */
  readonly hidesAmounts?: true;
}

/** The money of a report; a sum over nothing known is null. */
export interface ReportLoss {
  /** Low and high are the 5 % and 95 % points of the drawn sum; else every line at one end at once, which is wider. */
  readonly total: Span | null;
  readonly isDrawn: boolean;
  readonly shortage: number | null;
  readonly lines: number;
  readonly costed: number;
  readonly stopsPerYear: number;
}

/** Adds the lines up. */
export function reportLoss({ lines, drawnTotal }: Pick<ReportInput, "lines" | "drawnTotal">): ReportLoss {
  const costed = lines.flatMap(({ result }) => (result.stopLoss === null ? [] : [result]));
  const sum = (value: (result: LineResult) => number) => costed.reduce((all, one) => all + value(one), 0);
  return {
    total:
      costed.length === 0
        ? null
        : {
            mean: sum(({ stopLoss }) => stopLoss?.mean ?? 0),
            low: drawnTotal?.low ?? sum(({ stopLoss }) => stopLoss?.low ?? 0),
            high: drawnTotal?.high ?? sum(({ stopLoss }) => stopLoss?.high ?? 0),
          },
    isDrawn: drawnTotal !== null,
    shortage: costed.length === 0 ? null : sum(({ shortageLoss }) => shortageLoss ?? 0),
    lines: lines.length,
    costed: costed.length,
    stopsPerYear: lines.reduce((all, { result }) => all + result.stopsPerYear, 0),
  };
}

export interface FirstLine {
  readonly line: ReportLine;
  readonly loss: Span;
  /** The pools that cost most, with their share of the line's loss. */
  readonly drivers: readonly { readonly label: string; readonly share: number }[];
}

const DRIVERS_SHOWN = 2;

/** The lines that lose most, with what drives them; lines without a known loss cannot stand here. */
export function firstLines(input: ReportInput, most: number): FirstLine[] {
  const numbers = new Map(input.parts.map(({ id, number }) => [id, number]));
  return input.lines
    .flatMap((line) => (line.result.stopLoss === null ? [] : [{ line, loss: line.result.stopLoss }]))
    .sort((a, b) => b.loss.mean - a.loss.mean || (a.line.code < b.line.code ? -1 : 1))
    .slice(0, most)
    .map(({ line, loss }) => ({ line, loss, drivers: driversOf(line.result, numbers) }));
}

function driversOf({ pools, stopLoss }: LineResult, numbers: ReadonlyMap<string, string>) {
  const whole = stopLoss?.mean ?? 0;
  return pools
    .map(({ poolId, baseLoss, shortageLoss }) => ({
      label: numbers.get(poolId) ?? `unidentified ${poolId.slice(poolId.indexOf(":") + 1).replace("_", " ")}`,
      share: whole > 0 ? ((baseLoss ?? 0) + (shortageLoss ?? 0)) / whole : 0,
    }))
    .sort((a, b) => b.share - a.share)
    .slice(0, DRIVERS_SHOWN)
    .filter(({ share }) => share > 0);
}

/** Units of each pool at the report's sites. */
export function unitsByPool(lines: readonly ReportLine[]): Map<string, number> {
  const units = new Map<string, number>();
  for (const { result } of lines)
    for (const pool of result.pools) units.set(pool.poolId, (units.get(pool.poolId) ?? 0) + pool.units);
  return units;
}

export interface StageCount {
  readonly stage: SupplyStage | "unidentified";
  readonly parts: number;
  readonly units: number;
}

/** Parts and installed units by supply stage, with those nobody has identified. */
export function stageCounts(input: ReportInput): StageCount[] {
  const units = unitsByPool(input.lines);
  const counts = new Map<StageCount["stage"], { parts: number; units: number }>();
  const stages = new Map(input.parts.map(({ id, pool }) => [id, pool.stage]));
  for (const [poolId, here] of units) {
    const stage = stages.get(poolId) ?? "unidentified";
    const { parts, units: before } = counts.get(stage) ?? { parts: 0, units: 0 };
    counts.set(stage, { parts: parts + (stage === "unidentified" ? 0 : 1), units: before + here });
  }
  return [...counts].map(([stage, count]) => ({ stage, ...count }));
}
