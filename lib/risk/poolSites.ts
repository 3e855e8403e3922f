import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { GammaRate } from "@/lib/reliability/rate";
import type {
  GroupInput,
  InstalledInput,
  LineInput,
  LinePoolResult,
  LineResult,
  PoolInput,
} from "@/lib/risk/evaluation";
import { leavingByPool } from "@/lib/risk/leavingByPool";
import type { Ground } from "@/lib/risk/stages";
import { type SupplyCase, supplyOutlook } from "@/lib/risk/supplyOutlook";
import { type WayCosts, wayCosts } from "@/lib/risk/wayCosts";

/** A line as one pool meets it. */
export interface PoolLine {
  readonly line: LineInput;
  /** Stops a year by this pool, units of today. */
  readonly stops: number;
  readonly units: number;
  /** Units that leave, in years from now. */
  readonly leaves: readonly { readonly at: number; readonly units: number }[];
  /** Null without a cost per hour. */
  readonly costs: WayCosts | null;
}

/** One site's part in a pool: what it needs, and on which lines. */
export interface PoolSite {
  readonly siteId: string;
  readonly units: number;
  readonly lines: readonly PoolLine[];
  /** How the site's own removals are made good. */
  readonly cases: readonly SupplyCase[];
}

/** A pool as evaluated. */
export interface SeenPool {
  readonly pool: PoolInput;
  readonly stage: SupplyStage;
  /** What is believed of the removals, per unit-year. */
  readonly removal: GammaRate;
}

/** The lines' results of one pool, by line id. */
export type StopsOnLines = ReadonlyMap<string, Pick<LinePoolResult, "failuresPerYear" | "stopShare">>;

/** The group laid out by pool, so that many pools are looked at in one pass over it. */
export interface GroupByPool {
  readonly ground: Ground;
  readonly lines: ReadonlyMap<string, LineInput>;
  /** Installed rows by pool, in their order. */
  readonly installed: ReadonlyMap<string, readonly InstalledInput[]>;
  readonly stops: ReadonlyMap<string, StopsOnLines>;
}

/** Lays the group out by pool. */
export function groupByPool(
  input: Pick<GroupInput, "lines" | "installed">,
  ground: Ground,
  results: readonly Pick<LineResult, "lineId" | "pools">[],
): GroupByPool {
  const installed = new Map<string, InstalledInput[]>();
  for (const row of input.installed) {
    const list = installed.get(row.poolId);
    if (list) list.push(row);
    else installed.set(row.poolId, [row]);
  }
  const stops = new Map<string, Map<string, LinePoolResult>>();
  for (const { lineId, pools } of results)
    for (const pool of pools) {
      const lines = stops.get(pool.poolId) ?? new Map<string, LinePoolResult>();
      stops.set(pool.poolId, lines.set(lineId, pool));
    }
  return { ground, lines: new Map(input.lines.map((line) => [line.id, line])), installed, stops };
}

function lineOf(line: LineInput, { pool, stage }: SeenPool, { ground, stops }: GroupByPool): PoolLine[] {
  const here = ground.installed.get(line.id)?.get(pool.id);
  const result = stops.get(pool.id)?.get(line.id);
  if (!here || !result) return [];
  const times = ground.timesOf(pool, { stage });
  return [
    {
      ...{ line, units: here.units, leaves: here.leaves },
      stops: result.failuresPerYear * result.stopShare,
      costs: wayCosts(line, times, ground.assumptions.transferHours),
    },
  ];
}

function siteOf(
  { siteId, rows }: { readonly siteId: string; readonly rows: readonly InstalledInput[] },
  seen: SeenPool,
  from: GroupByPool,
): PoolSite {
  const { asOf, assumptions } = from.ground;
  const lines = [...new Set(rows.map(({ lineId }) => lineId))].flatMap((id) => {
    const line = from.lines.get(id);
    return line ? lineOf(line, seen, from) : [];
  });
  const units = lines.reduce((sum, line) => sum + line.units, 0);
  const leaving =
    leavingByPool({ asOf, installed: rows, lines: [], pools: [], experience: [], restorations: [] }).get(
      seen.pool.id,
    ) ?? [];
  const asked = { pool: seen.pool, stage: seen.stage, units, leaving, asOf };
  return { siteId, units, lines, cases: supplyOutlook(asked, assumptions) };
}

/**
 * The sites of a pool: its units, lines and supply, each site for itself.
 *
 * Everything is the evaluation's own (rates, stop shares, dates, planned removals); only the units are those of the
 * site. First the sites with units, in the order they are met, then those with no more than stock.
 */
export function poolSites(seen: SeenPool, from: GroupByPool): PoolSite[] {
  const bySite = new Map<string, InstalledInput[]>();
  for (const row of from.installed.get(seen.pool.id) ?? []) {
    const siteId = from.lines.get(row.lineId)?.siteId;
    if (siteId === undefined) continue;
    const list = bySite.get(siteId);
    if (list) list.push(row);
    else bySite.set(siteId, [row]);
  }
  for (const { siteId } of seen.pool.stock) if (!bySite.has(siteId)) bySite.set(siteId, []);
  return [...bySite].map(([siteId, rows]) => siteOf({ siteId, rows }, seen, from));
}

/** Years a new piece of the pool is under way. */
export function leadYearsOf(pool: PoolInput, { assumptions }: Pick<Ground, "assumptions">): number {
  return pool.leadYears ?? assumptions.classes[pool.itemClass].leadYears;
}
