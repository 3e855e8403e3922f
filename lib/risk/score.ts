import { requireNumber, requireShare } from "@/lib/kernel/requireNumber";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";

/** Stage part of the score: the product's own defaults, from no standard. */
export const STAGE_PART: Readonly<Record<SupplyStage, number>> = {
  open: 0,
  notice: 0.25,
  "buy-window": 0.5,
  undated: 0.5,
  closing: 0.65,
  "orders-shut": 0.75,
  "repair-fed": 0.85,
  "own-stock": 1,
};

export interface ScoredPool {
  readonly id: string;
  /** Failures a year of its units on the line, >= 0. */
  readonly failureRate: number;
  readonly stage: SupplyStage;
  /** Mean no-spare chance over the horizon. */
  readonly noSpare: number;
  /** Mean hours to restore, over stops with and without a spare. */
  readonly hoursDown: number;
}

export interface ScoreWeights {
  /** Weights of the three parts, each >= 0, summing to 1. */
  readonly stage: number;
  readonly spares: number;
  readonly repair: number;
  /** Stop the line can bear, hours, > 0. */
  readonly tolerableHours: number;
  /** Years looked ahead, > 0. */
  readonly horizonYears: number;
}

interface PoolShare {
  readonly id: string;
  /** Share of the score, in [0, 1]; the shares of a line sum to 1 unless the score is 0. */
  readonly share: number;
  readonly failureChance: number;
  readonly stagePart: number;
  readonly sparesPart: number;
  readonly repairPart: number;
  /** Weighted sum of the three parts. */
  readonly severity: number;
}

function requireWeights(weights: ScoreWeights): void {
  for (const name of ["stage", "spares", "repair"] as const) requireShare(weights[name], name);
  const sum = weights.stage + weights.spares + weights.repair;
  if (Math.abs(sum - 1) > 1e-9) throw new RangeError(`stage + spares + repair must be 1, got ${sum}`);
  requireNumber(weights.tolerableHours, "tolerableHours", { least: 0, open: true });
  requireNumber(weights.horizonYears, "horizonYears", { least: 0, open: true });
}

function partsOf(pool: ScoredPool, weights: ScoreWeights) {
  const rate = requireNumber(pool.failureRate, "failureRate", { least: 0 });
  const sparesPart = requireShare(pool.noSpare, "noSpare");
  const hours = requireNumber(pool.hoursDown, "hoursDown", { least: 0 });
  const failureChance = -Math.expm1(-rate * weights.horizonYears);
  const stagePart = STAGE_PART[pool.stage];
  if (stagePart === undefined) throw new RangeError(`stage must be a supply stage, got ${pool.stage}`);
  const repairPart = -Math.expm1(-hours / weights.tolerableHours);
  const severity = weights.stage * stagePart + weights.spares * sparesPart + weights.repair * repairPart;
  return { id: pool.id, failureChance, stagePart, sparesPart, repairPart, severity };
}

/**
 * Risk score of a line, 0 to 100, from supply stage, spares on hand and time to restore.
 *
 * score = 100 (1 - product over pools of (1 - q u)); q = 1 - exp(-failureRate * horizon);
 * u = w1 * stage part + w2 * noSpare + w3 * (1 - exp(-hoursDown / tolerableHours)).
 * A pool's share is ln(1 - q u) over the sum of these. The weights and stage parts are the product's own choice.
 *
 * @param pools The pools with units on the line; none scores 0.
 * @throws {RangeError} naming the argument and its value.
 */
export function lineScore(
  pools: readonly ScoredPool[],
  weights: ScoreWeights,
): { readonly score: number; readonly shares: readonly PoolShare[] } {
  requireWeights(weights);
  const parts = pools.map((pool) => partsOf(pool, weights));
  const logs = parts.map(({ failureChance, severity }) =>
    Math.log1p(-Math.min(failureChance * severity, 1 - 1e-15)),
  );
  const sum = logs.reduce((total, log) => total + log, 0);
  const shares = parts.map((part, i) => ({ ...part, share: sum === 0 ? 0 : (logs[i] as number) / sum }));
  return { score: sum === 0 ? 0 : -100 * Math.expm1(sum), shares };
}
