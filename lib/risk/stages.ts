import type { Assumptions } from "@/lib/risk/assumptions";
import { bestKnown } from "@/lib/risk/bestKnown";
import type { GroupInput, LineInput, LineResult, PoolInput, PoolResult } from "@/lib/risk/evaluation";
import { groupRates } from "@/lib/risk/groupRates";
import { type InstalledHere, installedByLine } from "@/lib/risk/installedByLine";
import { leavingByPool } from "@/lib/risk/leavingByPool";
import { lineLoss } from "@/lib/risk/lineLoss";
import type { PoolOnLine } from "@/lib/risk/lineStops";
import { type PoolContext, poolOutlook } from "@/lib/risk/poolOutlook";
import { restorationTimes } from "@/lib/risk/restorationTimes";

/** First stage: what every pool and line is evaluated on, and no stock touches. */
export interface Ground {
  readonly asOf: GroupInput["asOf"];
  readonly assumptions: Assumptions;
  /** What each line has installed, by line and pool. */
  readonly installed: ReadonlyMap<string, ReadonlyMap<string, InstalledHere>>;
  /** Units installed in the group, by pool. */
  readonly units: ReadonlyMap<string, number>;
  readonly leaving: PoolContext["leaving"];
  readonly rates: PoolContext["rates"];
  readonly timesOf: ReturnType<typeof restorationTimes>;
}

/** Second stage: a pool on its own. */
export interface EvaluatedPool {
  readonly pool: PoolInput;
  readonly result: PoolResult;
  /** The same were everything unknown of it found at its best; the result itself when nothing is. */
  readonly best: PoolResult;
}

function unitsByPool(byLine: Ground["installed"]): Map<string, number> {
  const out = new Map<string, number>();
  for (const pools of byLine.values())
    for (const [poolId, { units }] of pools) out.set(poolId, (out.get(poolId) ?? 0) + units);
  return out;
}

/** @throws {RangeError} naming the argument and its value. */
export function groundOf(input: GroupInput, assumptions: Assumptions): Ground {
  const installed = installedByLine(input);
  return {
    ...{ asOf: input.asOf, assumptions, installed, units: unitsByPool(installed) },
    leaving: leavingByPool(input),
    rates: groupRates(input, assumptions),
    timesOf: restorationTimes(input, assumptions),
  };
}

function bestOutlook(pool: PoolInput, result: PoolResult, context: PoolContext): PoolResult {
  const { assumptions } = context;
  const best = result.installed > 0 ? bestKnown(pool, context, assumptions) : null;
  if (best === null) return result;
  // Only the mean over the first months is read of it.
  const near = { ...best.assumptions, months: assumptions.horizonMonths };
  return poolOutlook(best.pool, { ...context, assumptions: near });
}

/** A pool depends on the ground and on nothing of another pool but the events of its family. */
export function evaluatePool(pool: PoolInput, ground: Ground): EvaluatedPool {
  const context = { ...ground, units: ground.units.get(pool.id) ?? 0 };
  const result = poolOutlook(pool, context);
  return { pool, result, best: bestOutlook(pool, result, context) };
}

/** Third stage: a line depends on the ground and on the pools it uses. */
export function evaluateLine(
  line: LineInput,
  pools: ReadonlyMap<string, EvaluatedPool>,
  { installed, rates, timesOf, assumptions }: Ground,
): LineResult {
  const used = [...(installed.get(line.id) ?? [])].map(([poolId, here]) => {
    const { pool, result, best } = pools.get(poolId) as EvaluatedPool;
    const failure = rates.failureAt(pool, line.siteId);
    const atSite = rates.seenAt(pool, line.siteId);
    const on: PoolOnLine = { ...here, result, atSite, failure, times: timesOf(pool, result) };
    return { on, best: best === result ? on : { ...on, result: best, times: timesOf(pool, best) } };
  });
  return lineLoss(line, {
    pools: used.map(({ on }) => on),
    best: used.map(({ best }) => best),
    assumptions,
  });
}
