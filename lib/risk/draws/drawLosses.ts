import { type SupplyStage, supplyStage } from "@/lib/lifecycle/supplyStage";
import { drawHours, type HoursDraws, takeWays } from "@/lib/risk/draws/drawHours";
import { type Drawing, drawVector, once, type Vector, valueAt } from "@/lib/risk/draws/drawing";
import { drawNoSpare, drawUnidentified, type NoSpareDraws } from "@/lib/risk/draws/drawNoSpare";
import type { LineInput, PoolInput } from "@/lib/risk/evaluation";
import { type GroupRates, groupRates } from "@/lib/risk/groupRates";
import { isUnidentified } from "@/lib/risk/poolOutlook";
import { type UsableCount, usableCount } from "@/lib/spares/usableCount";

/** A pool as a line meets it, draw by draw; hours are already beyond the line's buffer. */
export interface PoolOnLineDraws {
  readonly poolId: string;
  readonly units: number;
  readonly failureRate: Vector;
  readonly noSpare: Vector;
  readonly uncounted: NoSpareDraws["uncounted"];
  readonly hoursWithSpare: Vector;
  readonly hoursWithoutSpare: Vector;
}

/** Everything drawn for one line with a cost per hour. */
export interface LineDraws {
  readonly line: LineInput;
  /** EUR an hour that is lost for good, at the stated cost. */
  readonly perHour: number;
  /** What the stated cost is to be multiplied by; its mean is 1. */
  readonly costFactor: Vector;
  readonly pools: readonly PoolOnLineDraws[];
}

interface Shared {
  readonly drawing: Drawing;
  readonly rates: GroupRates;
  readonly hours: HoursDraws;
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

function drawPools(drawing: Drawing, rates: GroupRates): Map<string, PoolDraws> {
  const { input, assumptions } = drawing;
  const units = new Map<string, number>();
  for (const row of input.installed) units.set(row.poolId, (units.get(row.poolId) ?? 0) + row.units);
  const used = input.pools.filter(({ id }) => units.has(id));
  return new Map(
    used.map((pool) => {
      const { storage, unknownStorageWorks } = assumptions.classes[pool.itemClass];
      const { unprovenWorks, removedUntestedWorks } = assumptions;
      const rules = {
        ...{ asOf: input.asOf, bands: storage, unknownWorks: unknownStorageWorks },
        ...{ unprovenWorks, removedUntestedWorks },
      };
      const count = usableCount(pool.stock, rules);
      const stage = supplyStage(pool.dates, input.asOf);
      const drawn = { pool, stage, count, rules, units: units.get(pool.id) ?? 0 };
      const noSpare = isUnidentified(pool.id) ? null : drawNoSpare(drawing, rates, drawn);
      return [pool.id, { pool, stage, count, noSpare }];
    }),
  );
}

function failureRate({ drawing, rates, rateMemo }: Shared, pool: PoolInput, siteId: string): Vector {
  const name = `failures/${pool.id}/${siteId}`;
  return rateMemo(name, () => {
    const { a, b } = rates.failureBelief(pool, siteId);
    return drawVector(drawing, name, (stream) => stream.gamma(a) / b);
  });
}

function poolOnLine(
  line: LineInput,
  [poolId, units]: readonly [string, number],
  shared: Shared,
): PoolOnLineDraws {
  const { drawing, hours } = shared;
  const drawn = shared.pools.get(poolId);
  if (!drawn) throw new RangeError(`poolId of installed must be a pool, got ${poolId}`);
  const { pool, stage, count } = drawn;
  const buffer = line.bufferHours ?? 0;
  const away = (count.bySite[line.siteId]?.usable ?? 0) === 0 && count.usable > 0;
  const near = hours.withSpare(pool, stage, buffer);
  const via = away ? hours.withSpare(pool, stage, buffer - drawing.assumptions.transferHours) : near;
  const ways = takeWays({ near, via, around: hours.withoutSpare(pool, stage, buffer) });
  return {
    ...{ poolId, units, failureRate: failureRate(shared, pool, line.siteId) },
    noSpare: drawn.noSpare?.noSpare ?? drawUnidentified(drawing, `not identified/${poolId}/${line.id}`),
    uncounted: drawn.noSpare?.uncounted ?? null,
    ...{ hoursWithSpare: ways.withSpare.drawn, hoursWithoutSpare: ways.withoutSpare.drawn },
  };
}

/** Factor e^(s z - s^2 / 2) on a stated cost: lognormal with mean 1, s by how well the cost is known. */
export function costFactor(sigma: number, z: number): number {
  return Math.exp(sigma * z - (sigma * sigma) / 2);
}

/** Draws everything the losses of the lines with a cost per hour rest on, one stream for each uncertain quantity. */
export function drawLines(drawing: Drawing): LineDraws[] {
  const { input, assumptions } = drawing;
  const rates = groupRates(input, assumptions);
  const shared: Shared = {
    ...{ drawing, rates, hours: drawHours(drawing) },
    ...{ pools: drawPools(drawing, rates), rateMemo: once<Vector>() },
  };
  const units = new Map(input.lines.map(({ id }) => [id, new Map<string, number>()]));
  for (const row of input.installed) {
    const line = units.get(row.lineId);
    if (!line) throw new RangeError(`lineId of installed must be a line, got ${row.lineId}`);
    line.set(row.poolId, (line.get(row.poolId) ?? 0) + row.units);
  }
  return input.lines.flatMap((line) => {
    if (line.costPerHour === null) return [];
    const sigma = assumptions.costSpread[line.costEvidence];
    return {
      line,
      perHour: line.costPerHour * line.unrecoveredShare,
      costFactor: drawVector(drawing, `cost/${line.id}`, (stream) => costFactor(sigma, stream.normal())),
      pools: [...(units.get(line.id) ?? [])].map((entry) => poolOnLine(line, entry, shared)),
    };
  });
}

/** What one pool's no-spare chance is set to; the others stay as drawn. */
export interface Fixed {
  readonly poolId: string;
  readonly noSpare: Vector;
}

/** Stop loss of a line, EUR a year, draw by draw: cost factor * cost * sum of units * rate * hours beyond the buffer. */
export function lossDraws({ perHour, costFactor: factor, pools }: LineDraws, fixed: Fixed | null): Vector {
  const out = new Float64Array(factor.length);
  for (const pool of pools) {
    const noSpare = fixed?.poolId === pool.poolId ? fixed.noSpare : pool.noSpare;
    for (let i = 0; i < out.length; i += 1) {
      const none = valueAt(noSpare, i);
      const hours = (1 - none) * valueAt(pool.hoursWithSpare, i) + none * valueAt(pool.hoursWithoutSpare, i);
      out[i] = valueAt(out, i) + pool.units * valueAt(pool.failureRate, i) * hours;
    }
  }
  return out.map((hours, i) => perHour * valueAt(factor, i) * hours);
}
