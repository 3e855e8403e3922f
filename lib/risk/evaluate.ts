import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput, GroupResult, LineResult, PoolInput, PoolResult } from "@/lib/risk/evaluation";
import { type GroupRates, groupRates } from "@/lib/risk/groupRates";
import { lineLoss, type PoolOnLine } from "@/lib/risk/lineLoss";
import { poolOutlook } from "@/lib/risk/poolOutlook";
import { kendallTauB } from "@/lib/risk/rankAgreement";
import { restorationTimes } from "@/lib/risk/restorationTimes";

/** Name of this way of computing; goes with every stored result and changes when a figure may. */
export const ENGINE = "ebbline-2";

function byId<T extends { readonly id: string }>(name: string, list: readonly T[]): Map<string, T> {
  const map = new Map(list.map((entry) => [entry.id, entry]));
  if (map.size !== list.length) throw new RangeError(`${name} must each have an own id, got ${list.length}`);
  return map;
}

/** Units by line and pool, in the order first met. */
function unitsByLine(input: GroupInput): Map<string, Map<string, number>> {
  const pools = byId("pools", input.pools);
  const out = new Map<string, Map<string, number>>(input.lines.map(({ id }) => [id, new Map()]));
  for (const { lineId, poolId, units } of input.installed) {
    const line = out.get(lineId);
    if (!line) throw new RangeError(`lineId of installed must be a line, got ${lineId}`);
    if (!pools.has(poolId)) throw new RangeError(`poolId of installed must be a pool, got ${poolId}`);
    if (!(Number.isFinite(units) && units >= 0))
      throw new RangeError(`units must be finite and >= 0, got ${units}`);
    line.set(poolId, (line.get(poolId) ?? 0) + units);
  }
  return out;
}

function unitsByPool(byLine: ReadonlyMap<string, ReadonlyMap<string, number>>): Map<string, number> {
  const out = new Map<string, number>();
  for (const pools of byLine.values())
    for (const [poolId, units] of pools) out.set(poolId, (out.get(poolId) ?? 0) + units);
  return out;
}

function requireAssumptions({ horizonMonths, months }: Assumptions): void {
  const whole = Number.isSafeInteger(horizonMonths) && Number.isSafeInteger(months);
  if (!(whole && horizonMonths >= 1 && horizonMonths <= months))
    throw new RangeError(`horizonMonths must be 1 to ${months}, got ${horizonMonths}`);
}

/** Kendall's tau-b between loss and score; null when there are no two lines to tell apart. */
function agreementOf(lines: readonly LineResult[]): number | null {
  const known = lines.flatMap(({ stopLoss, score }) => (stopLoss ? [{ loss: stopLoss.mean, score }] : []));
  const losses = known.map(({ loss }) => loss);
  const scores = known.map(({ score }) => score);
  if (new Set(losses).size < 2 || new Set(scores).size < 2) return null;
  return kendallTauB(losses, scores);
}

function groupLoss(lines: readonly LineResult[]): GroupResult["stopLoss"] {
  const sum = { mean: 0, low: 0, high: 0 };
  for (const { stopLoss } of lines) {
    sum.mean += stopLoss?.mean ?? 0;
    sum.low += stopLoss?.low ?? 0;
    sum.high += stopLoss?.high ?? 0;
  }
  return sum;
}

interface Known {
  readonly pools: ReadonlyMap<string, PoolInput>;
  readonly results: ReadonlyMap<string, PoolResult>;
  readonly rates: GroupRates;
  readonly timesOf: ReturnType<typeof restorationTimes>;
}

function poolsOnLine(siteId: string, units: ReadonlyMap<string, number>, known: Known): PoolOnLine[] {
  return [...units].map(([poolId, count]) => {
    const pool = known.pools.get(poolId) as PoolInput;
    const result = known.results.get(poolId) as PoolResult;
    return {
      result,
      units: count,
      failure: known.rates.failureAt(pool, siteId),
      times: known.timesOf(pool, result),
    };
  });
}

/**
 * Evaluates the whole group at once: every pool's spares are shared by all lines and sites that use it.
 *
 * Same input and assumptions give the same result to the last bit. A line's base and shortage parts are the sums of
 * its pools' in their order, its loss the sum of the two, the group's loss the sum of the lines' in theirs. Spans put
 * all uncertain rates at their 5 % points, or all at their 95 % points, at once: wider than a simulation would give,
 * and without the spread of hours, cost and counts.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function evaluate(input: GroupInput, assumptions: Assumptions): GroupResult {
  requireAssumptions(assumptions);
  byId("lines", input.lines);
  const byLine = unitsByLine(input);
  const byPool = unitsByPool(byLine);
  const rates = groupRates(input, assumptions);
  const pools = input.pools.map((pool) =>
    poolOutlook(pool, { asOf: input.asOf, units: byPool.get(pool.id) ?? 0, rates, assumptions }),
  );
  const known: Known = {
    pools: byId("pools", input.pools),
    results: new Map(pools.map((result) => [result.poolId, result])),
    rates,
    timesOf: restorationTimes(input, assumptions),
  };
  const lines = input.lines.map((line) => {
    const units = byLine.get(line.id) ?? new Map<string, number>();
    return lineLoss(line, { pools: poolsOnLine(line.siteId, units, known), assumptions });
  });
  return {
    engine: ENGINE,
    asOf: input.asOf,
    lines,
    pools,
    stopLoss: groupLoss(lines),
    agreement: agreementOf(lines),
  };
}
