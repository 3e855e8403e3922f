import { requireNumber, requireShare } from "@/lib/kernel/requireNumber";

/** A low and a high estimate. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

export interface EstimatedRisk {
  /** Chance that it happens, in [0, 1]; null is not estimated. */
  readonly chance: Range | null;
  /** What it would cost, money of the project; null is not estimated. */
  readonly effect: Range | null;
}

/** What one risk is expected to cost: chance times effect, low by low and high by high; null is not estimated. */
export function riskExposure({ chance, effect }: EstimatedRisk): Range | null {
  if (chance === null || effect === null) return null;
  for (const share of [chance.low, chance.high]) requireShare(share, "chance");
  for (const money of [effect.low, effect.high]) requireNumber(money, "effect", { least: 0 });
  return { low: chance.low * effect.low, high: chance.high * effect.high };
}

export interface Exposure extends Range {
  /** Risks without a chance or an effect; they are in neither end. */
  readonly notEstimated: number;
}

/**
 * What all risks together are expected to cost, money of the project.
 *
 * Expected values add up whether or not the risks hang together. All lows and all highs are the widest range the
 * estimates allow, not a statistical span.
 *
 * @throws {RangeError} if a chance is outside [0, 1] or an effect below 0.
 */
export function expectedExposure(risks: readonly EstimatedRisk[]): Exposure {
  const known = risks.flatMap((risk) => riskExposure(risk) ?? []);
  return {
    low: known.reduce((sum, { low }) => sum + low, 0),
    high: known.reduce((sum, { high }) => sum + high, 0),
    notEstimated: risks.length - known.length,
  };
}
