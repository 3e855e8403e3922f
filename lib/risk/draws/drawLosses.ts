import { type SupplyStage, supplyStage } from "@/lib/lifecycle/supplyStage";
import { type Drawing, drawVector, once, type Vector, valueAt } from "@/lib/risk/draws/drawing";
import { drawNoSpare, drawUnidentified, type NoSpareDraws } from "@/lib/risk/draws/drawNoSpare";
import {
  costAt,
  drawStopCosts,
  type StopCostDraws,
  type StopDraws,
  takeWays,
} from "@/lib/risk/draws/drawStopCosts";
import type { StopShareOf } from "@/lib/risk/draws/stopShareOf";
import type { GroupInput, LineInput, PoolInput } from "@/lib/risk/evaluation";
import { costCurve, type StopCostTerms } from "@/lib/risk/expectedStopCost";
import { type GroupRates, groupRates } from "@/lib/risk/groupRates";
import { type InstalledHere, installedByLine } from "@/lib/risk/installedByLine";
import { leavingByPool } from "@/lib/risk/leavingByPool";
import { costTerms } from "@/lib/risk/lineStops";
import { isUnidentified } from "@/lib/risk/poolOutlook";
import { storageRules } from "@/lib/risk/storageRules";
import { type UsableCount, usableCount } from "@/lib/spares/usableCount";

/** A pool as a line meets it, draw by draw. */
export interface PoolOnLineDraws {
  readonly poolId: string;
  /** Units, each as far as its failures stop the line. */
  readonly units: number;
  readonly failureRate: Vector;
  readonly noSpare: Vector;
  readonly uncounted: NoSpareDraws["uncounted"];
  readonly withSpare: StopDraws;
  readonly withoutSpare: StopDraws;
}

/** Everything drawn for one line with a cost per hour. */
export interface LineDraws {
  readonly line: LineInput;
  /** What the stated cost is to be multiplied by; its mean is 1. */
  readonly costFactor: Vector;
  readonly pools: readonly PoolOnLineDraws[];
}

interface Shared {
  readonly drawing: Drawing;
  readonly rates: GroupRates;
  readonly installed: {
    readonly byLine: ReturnType<typeof installedByLine>;
    readonly units: ReadonlyMap<string, number>;
    readonly leaving: ReturnType<typeof leavingByPool>;
  };
  readonly stopCosts: StopCostDraws;
  readonly shareOf: StopShareOf;
  readonly pools: ReadonlyMap<string, PoolDraws>;
  readonly rateMemo: ReturnType<typeof once<Vector>>;
}

interface PoolDraws {
  readonly pool: PoolInput;
  readonly stage: SupplyStage;
  readonly count: UsableCount;
  /** Null for places nobody has read: their chance is drawn line by line. */
  readonly noSpare: NoSpareDraws | null;
}

function drawPool(pool: PoolInput, { drawing, rates, installed }: Omit<Shared, "pools">): PoolDraws {
  const { input, assumptions } = drawing;
  const rules = storageRules(pool.itemClass, input.asOf, assumptions);
  const count = usableCount(pool.stock, rules);
  const stage = supplyStage(pool.dates, input.asOf);
  const base = { units: installed.units.get(pool.id) ?? 0, leaving: installed.leaving.get(pool.id) ?? [] };
  const drawn = { pool, stage, count, rules, ...base };
  const noSpare = isUnidentified(pool.id) ? null : drawNoSpare(drawing, rates, drawn);
  return { pool, stage, count, noSpare };
}

function failureRate({ drawing, rates, rateMemo }: Shared, pool: PoolInput, siteId: string): Vector {
  const name = `failures/${pool.id}/${siteId}`;
  return rateMemo(name, () => {
    const { a, b } = rates.failureBelief(pool, siteId);
    return drawVector(drawing, name, (stream) => stream.gamma(a) / b);
  });
}

interface LineTerms {
  readonly line: LineInput;
  readonly terms: StopCostTerms;
}

function poolOnLine(
  { line, terms }: LineTerms,
  [poolId, { units }]: readonly [string, InstalledHere],
  shared: Shared,
): PoolOnLineDraws {
  const { drawing, stopCosts, shareOf } = shared;
  const { pool, stage, count, noSpare } = shared.pools.get(poolId) as PoolDraws;
  const away = (count.bySite[line.siteId]?.usable ?? 0) === 0 && count.usable > 0;
  const curve = costCurve(terms, 0);
  const near = stopCosts.withSpare(pool, stage, curve);
  const far = () => stopCosts.withSpare(pool, stage, costCurve(terms, drawing.assumptions.transferHours));
  const around = stopCosts.withoutSpare(pool, stage, curve);
  return {
    ...{ poolId, units: units * shareOf(line.id, poolId) },
    failureRate: failureRate(shared, pool, line.siteId),
    noSpare: noSpare?.noSpare ?? drawUnidentified(drawing, `not identified/${poolId}/${line.id}`),
    uncounted: noSpare?.uncounted ?? null,
    ...takeWays({ near, via: away ? far() : near, around }),
  };
}

/** Factor e^(s z - s^2 / 2) on a stated cost: lognormal with mean 1, s by how well the cost is known. */
export function costFactor(sigma: number, z: number): number {
  return Math.exp(sigma * z - (sigma * sigma) / 2);
}

function installedOf(input: GroupInput): Shared["installed"] {
  const units = new Map<string, number>();
  for (const row of input.installed) units.set(row.poolId, (units.get(row.poolId) ?? 0) + row.units);
  return { byLine: installedByLine(input), units, leaving: leavingByPool(input) };
}

function drawLine(line: LineInput, shared: Shared): LineDraws[] {
  const { drawing, installed } = shared;
  const terms = costTerms(line);
  if (terms === null) return [];
  const sigma = drawing.assumptions.costSpread[line.costEvidence];
  return [
    {
      line,
      costFactor: drawVector(drawing, `cost/${line.id}`, (stream) => costFactor(sigma, stream.normal())),
      pools: [...(installed.byLine.get(line.id) ?? [])].map((entry) =>
        poolOnLine({ line, terms }, entry, shared),
      ),
    },
  ];
}

/** The drawn lines, and what they share, from which a change of some pools is drawn without the rest. */
export interface DrawnLines {
  readonly shared: Shared;
  readonly lines: readonly LineDraws[];
  /** Places in `lines` of those that use each pool. */
  readonly users: ReadonlyMap<string, readonly number[]>;
}

function usersByPool(lines: readonly LineDraws[]): DrawnLines["users"] {
  const out = new Map<string, number[]>();
  for (const [place, { pools }] of lines.entries())
    for (const { poolId } of pools) {
      const users = out.get(poolId);
      if (users) users.push(place);
      else out.set(poolId, [place]);
    }
  return out;
}

/** The drawn lines that use a pool. */
export function usersOf({ lines, users }: DrawnLines, poolId: string): LineDraws[] {
  return (users.get(poolId) ?? []).map((place) => lines[place] as LineDraws);
}

/** Draws everything the losses of the lines with a cost per hour rest on, one stream for each uncertain quantity. */
export function drawLines(drawing: Drawing, shareOf: StopShareOf): DrawnLines {
  const { input, assumptions } = drawing;
  const rates = groupRates(input, assumptions);
  const common = {
    ...{ drawing, rates, shareOf, stopCosts: drawStopCosts(drawing), rateMemo: once<Vector>() },
    installed: installedOf(input),
  };
  const used = input.pools.filter(({ id }) => common.installed.units.has(id));
  const shared = { ...common, pools: new Map(used.map((pool) => [pool.id, drawPool(pool, common)])) };
  const lines = input.lines.flatMap((line) => drawLine(line, shared));
  return { shared, lines, users: usersByPool(lines) };
}

/** Draws again what some changed pools touch; all else has streams of its own and stays as drawn. */
export function redrawLines(
  { shared: before, lines, users }: DrawnLines,
  changed: readonly PoolInput[],
  shareOf: StopShareOf,
): DrawnLines {
  const pools = new Map(before.pools);
  const redrawn = [...lines];
  const shared = { ...before, shareOf, pools };
  for (const pool of changed) if (pools.has(pool.id)) pools.set(pool.id, drawPool(pool, before));
  for (const place of new Set(changed.flatMap(({ id }) => users.get(id) ?? [])))
    redrawn.splice(place, 1, ...drawLine((lines[place] as LineDraws).line, shared));
  return { shared, lines: redrawn, users };
}

/** What one pool's no-spare chance is set to; the others stay as drawn. */
export interface Fixed {
  readonly poolId: string;
  readonly noSpare: Vector;
}

/** Stop loss of a line, EUR a year, draw by draw: cost factor * sum of units * rate * cost of a stop. */
export function lossDraws({ costFactor: factor, pools }: LineDraws): Vector {
  const out = new Float64Array(factor.length);
  for (const pool of pools)
    for (let i = 0; i < out.length; i += 1) {
      const none = valueAt(pool.noSpare, i);
      const cost = (1 - none) * costAt(pool.withSpare, i) + none * costAt(pool.withoutSpare, i);
      out[i] = valueAt(out, i) + pool.units * valueAt(pool.failureRate, i) * cost;
    }
  return out.map((cost, i) => valueAt(factor, i) * cost);
}

/** The same with the no-spare chance of one pool set to something else: only what that changes is added to the loss. */
export function lossWith({ costFactor, pools }: LineDraws, loss: Vector, { poolId, noSpare }: Fixed): Vector {
  const pool = pools.find((one) => one.poolId === poolId);
  if (!pool) return loss;
  return loss.map((now, i) => {
    const more = valueAt(noSpare, i) - valueAt(pool.noSpare, i);
    const apart = costAt(pool.withoutSpare, i) - costAt(pool.withSpare, i);
    return now + valueAt(costFactor, i) * pool.units * valueAt(pool.failureRate, i) * more * apart;
  });
}
