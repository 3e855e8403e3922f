import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { LineInput, LinePoolResult, LineResult, PoolResult, Span } from "@/lib/risk/evaluation";
import { expectedStopCost } from "@/lib/risk/expectedStopCost";
import { isUnidentified } from "@/lib/risk/poolOutlook";
import type { RestorationTimes } from "@/lib/risk/restorationTimes";
import { lineScore, STAGE_PART } from "@/lib/risk/score";

/** One pool as the line meets it. */
export interface PoolOnLine {
  readonly result: PoolResult;
  readonly units: number;
  /** Failures per unit-year at the line's site. */
  readonly failure: Span;
  readonly times: RestorationTimes;
}

interface Costs {
  readonly withSpare: number;
  readonly withoutSpare: number;
}

type Stops = Pick<LinePoolResult, "poolId" | "units" | "failuresPerYear" | "noSpare"> &
  Pick<LinePoolResult, "hoursWithSpare" | "hoursWithoutSpare" | "costWithSpare" | "costWithoutSpare"> &
  Pick<LinePoolResult, "baseLoss" | "shortageLoss">;

/** A spare that lies only at other sites has to travel before it helps. */
function transferOf({ result }: PoolOnLine, line: LineInput, hours: number): number {
  const here = result.usableBySite[line.siteId]?.usable ?? 0;
  return here === 0 && result.usable > 0 ? hours : 0;
}

/** The quicker of two ways is taken: round a spare that is too far, and never worse without one than with one. */
function ways(near: number, viaOtherSite: number, around: number) {
  const without = Math.max(near, around);
  return { withSpare: Math.min(viaOtherSite, without), withoutSpare: without };
}

function costsOf(line: LineInput, { times }: PoolOnLine, delayHours: number): Costs | null {
  if (line.costPerHour === null) return null;
  const terms = {
    costPerHour: line.costPerHour,
    bufferHours: line.bufferHours ?? 0,
    unrecoveredShare: line.unrecoveredShare,
  };
  const cost = (restoration: RestorationTimes["withSpare"], delay: number) =>
    expectedStopCost({ restoration, delayHours: delay }, terms);
  return ways(cost(times.withSpare, 0), cost(times.withSpare, delayHours), cost(times.withoutSpare, 0));
}

function stopsOf(line: LineInput, pool: PoolOnLine, transferHours: number): Stops {
  const delay = transferOf(pool, line, transferHours);
  const costs = costsOf(line, pool, delay);
  const failuresPerYear = pool.units * pool.failure.mean;
  const noSpare = pool.result.noSpare.mean;
  const near = pool.times.hoursWithSpare;
  const hours = ways(near, near + delay, pool.times.hoursWithoutSpare);
  return {
    ...{ poolId: pool.result.poolId, units: pool.units, failuresPerYear, noSpare },
    hoursWithSpare: hours.withSpare,
    hoursWithoutSpare: hours.withoutSpare,
    costWithSpare: costs?.withSpare ?? null,
    costWithoutSpare: costs?.withoutSpare ?? null,
    baseLoss: costs && failuresPerYear * (1 - noSpare) * costs.withSpare,
    shortageLoss: costs && failuresPerYear * noSpare * costs.withoutSpare,
  };
}

/** Loss of a pool on the line with failure rate and no-spare chance at one end of their spans. */
function lossAt(end: "low" | "high", pool: PoolOnLine, stops: Stops): number {
  const noSpare = pool.result.noSpare[end];
  const { costWithSpare, costWithoutSpare } = stops;
  return (
    pool.units *
    pool.failure[end] *
    ((1 - noSpare) * (costWithSpare ?? 0) + noSpare * (costWithoutSpare ?? 0))
  );
}

const total = (values: readonly (number | null)[]): number =>
  values.reduce<number>((sum, value) => sum + (value ?? 0), 0);

function moneyOf(line: LineInput, pools: readonly PoolOnLine[], stops: readonly Stops[]) {
  if (line.costPerHour === null) return { stopLoss: null, baseLoss: null, shortageLoss: null };
  const baseLoss = total(stops.map((stop) => stop.baseLoss));
  const shortageLoss = total(stops.map((stop) => stop.shortageLoss));
  const at = (end: "low" | "high") => total(pools.map((pool, i) => lossAt(end, pool, stops[i] as Stops)));
  const mean = baseLoss + shortageLoss;
  return {
    stopLoss: { mean, low: Math.min(mean, at("low")), high: Math.max(mean, at("high")) },
    baseLoss,
    shortageLoss,
  };
}

function firstEmpty(pools: readonly PoolOnLine[]): { day: IsoDate | null; poolId: string | null } {
  let first: { day: IsoDate | null; poolId: string | null } = { day: null, poolId: null };
  for (const { result } of pools) {
    const day = result.depletionP80;
    if (day !== null && (first.day === null || day < first.day)) first = { day, poolId: result.poolId };
  }
  return first;
}

function worstStage(pools: readonly PoolOnLine[]): LineResult["worstStage"] {
  const stages = pools.map(({ result }) => result.stage);
  return stages.reduce(
    (worst, stage) => (STAGE_PART[stage] > STAGE_PART[worst] ? stage : worst),
    stages[0] ?? "undated",
  );
}

function assumedOf(line: LineInput, pools: readonly PoolOnLine[]): string[] {
  const out: string[] = [];
  if (line.costPerHour === null) out.push("Cost per hour not known: no loss in money.");
  if (line.bufferHours === null) out.push("Buffer not known: taken as 0 hours.");
  const unread = pools.filter(({ result }) => isUnidentified(result.poolId));
  const units = unread.reduce((sum, pool) => sum + pool.units, 0);
  if (units > 0) out.push(`${units} units not identified: their spares are not known.`);
  return out;
}

function scoreOf(line: LineInput, stops: readonly Stops[], { pools, assumptions }: LineContext) {
  const weights = {
    ...assumptions.weights,
    tolerableHours: (line.bufferHours ?? 0) + assumptions.tolerableBeyondBuffer,
    horizonYears: assumptions.horizonMonths / 12,
  };
  const scored = stops.map((stop, i) => ({
    id: stop.poolId,
    failureRate: stop.failuresPerYear,
    stage: (pools[i] as PoolOnLine).result.stage,
    noSpare: stop.noSpare,
    hoursDown: (1 - stop.noSpare) * stop.hoursWithSpare + stop.noSpare * stop.hoursWithoutSpare,
  }));
  const { score, shares } = lineScore(scored, weights);
  const scoreParts = { stage: 0, spares: 0, repair: 0 };
  for (const { share, severity, stagePart, sparesPart, repairPart } of shares) {
    const unit = severity === 0 ? 0 : (score * share) / severity;
    scoreParts.stage += unit * weights.stage * stagePart;
    scoreParts.spares += unit * weights.spares * sparesPart;
    scoreParts.repair += unit * weights.repair * repairPart;
  }
  return { score, scoreParts, shares };
}

export interface LineContext {
  readonly pools: readonly PoolOnLine[];
  readonly assumptions: Assumptions;
}

/**
 * Stop loss, score and their derivation for one line.
 *
 * Loss per year = sum over pools of failures * [(1 - noSpare) * cost with spare + noSpare * cost without].
 */
export function lineLoss(line: LineInput, context: LineContext): LineResult {
  const { pools, assumptions } = context;
  const stops = pools.map((pool) => stopsOf(line, pool, assumptions.transferHours));
  const { score, scoreParts, shares } = scoreOf(line, stops, context);
  const empty = firstEmpty(pools);
  return {
    lineId: line.id,
    score,
    scoreParts,
    ...moneyOf(line, pools, stops),
    stopsPerYear: total(stops.map((stop) => stop.failuresPerYear)),
    depletionP80: empty.day,
    depletionPoolId: empty.poolId,
    worstStage: worstStage(pools),
    pools: stops.map((stop, i) => {
      const { stagePart, sparesPart, repairPart, failureChance, share } = shares[
        i
      ] as (typeof shares)[number];
      return { ...stop, stagePart, sparesPart, repairPart, failureChance, share };
    }),
    assumed: assumedOf(line, pools),
  };
}
