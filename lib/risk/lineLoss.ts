import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { LineInput, LineResult } from "@/lib/risk/evaluation";
import { horizonLoss } from "@/lib/risk/horizonLoss";
import { lineStops, type PoolOnLine, type PoolStops } from "@/lib/risk/lineStops";
import { isUnidentified } from "@/lib/risk/poolOutlook";
import { lineScore, STAGE_PART } from "@/lib/risk/score";

/** Loss of a pool on the line with failure rate and no-spare chance at one end of their spans. */
function lossAt(end: "low" | "high", pool: PoolOnLine, stops: PoolStops): number {
  const noSpare = pool.result.noSpare[end];
  const { costWithSpare, costWithoutSpare } = stops;
  return (
    pool.units *
    pool.failure[end] *
    stops.stopShare *
    ((1 - noSpare) * (costWithSpare ?? 0) + noSpare * (costWithoutSpare ?? 0))
  );
}

const total = (values: readonly (number | null)[]): number =>
  values.reduce<number>((sum, value) => sum + (value ?? 0), 0);

function moneyOf(line: LineInput, pools: readonly PoolOnLine[], stops: readonly PoolStops[]) {
  if (line.costPerHour === null) return { stopLoss: null, baseLoss: null, shortageLoss: null };
  const baseLoss = total(stops.map((stop) => stop.baseLoss));
  const shortageLoss = total(stops.map((stop) => stop.shortageLoss));
  const at = (end: "low" | "high") => total(pools.map((pool, i) => lossAt(end, pool, stops[i] as PoolStops)));
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

function scoreOf(line: LineInput, stops: readonly PoolStops[], { pools, assumptions }: LineContext) {
  const weights = {
    ...assumptions.weights,
    tolerableHours: (line.bufferHours ?? 0) + assumptions.tolerableBeyondBuffer,
    horizonYears: assumptions.horizonMonths / 12,
  };
  const scored = stops.map((stop, i) => ({
    id: stop.poolId,
    failureRate: stop.failuresPerYear * stop.stopShare,
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

const lossOf = ({ baseLoss, shortageLoss }: PoolStops): number => (baseLoss ?? 0) + (shortageLoss ?? 0);

/**
 * What each pool's loss would lose were everything unknown of the line's pools at its best; never below zero.
 *
 * Below it could come where repair is quicker than an order: a part that can be ordered is ordered all the same.
 */
function unknownLosses(
  line: LineInput,
  stops: readonly PoolStops[],
  { pools, best, assumptions }: LineContext,
): number[] {
  if (!best || best.every((pool, i) => pool.result === pools[i]?.result)) return stops.map(() => 0);
  const { stops: atBest } = lineStops(line, best, assumptions.transferHours);
  return stops.map((stop, i) => Math.max(0, lossOf(stop) - lossOf(atBest[i] as PoolStops)));
}

export interface LineContext {
  readonly pools: readonly PoolOnLine[];
  /** The same were everything unknown of them at its best; nothing is unknown when absent. */
  readonly best?: readonly PoolOnLine[];
  readonly assumptions: Assumptions;
}

/**
 * Stop loss, score and their derivation for one line.
 *
 * Loss per year = sum over pools of failures * stop share * [(1 - noSpare) * cost with spare + noSpare * cost without].
 */
export function lineLoss(line: LineInput, context: LineContext): LineResult {
  const { pools, assumptions } = context;
  const { stops, standIns } = lineStops(line, pools, assumptions.transferHours);
  const { score, scoreParts, shares } = scoreOf(line, stops, context);
  const empty = firstEmpty(pools);
  const money = line.costPerHour !== null;
  const unknown = money ? unknownLosses(line, stops, context) : [];
  return {
    lineId: line.id,
    score,
    scoreParts,
    ...moneyOf(line, pools, stops),
    unknownLoss: money ? total(unknown) : null,
    horizonLoss: money ? horizonLoss(pools, stops, assumptions) : null,
    stopsPerYear: total(stops.map((stop) => stop.failuresPerYear * stop.stopShare)),
    ...(standIns.length > 0 ? { standIns } : {}),
    depletionP80: empty.day,
    depletionPoolId: empty.poolId,
    worstStage: worstStage(pools),
    pools: stops.map((stop, i) => {
      const { stagePart, sparesPart, repairPart, failureChance, share } = shares[
        i
      ] as (typeof shares)[number];
      const unknownLoss = unknown[i] ?? null;
      return { ...stop, unknownLoss, stagePart, sparesPart, repairPart, failureChance, share };
    }),
    assumed: assumedOf(line, pools),
  };
}
