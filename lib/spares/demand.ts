import negativeBinomialCdf from "@stdlib/stats-base-dists-negative-binomial-cdf";
import { requireCount, requireNumber } from "@/lib/kernel/requireNumber";
import { poissonSum } from "@/lib/reliability/poissonSum";

/** Removals over an exposure when their rate is Gamma(a, b): negative binomial, mean a * exposure / b. */
export interface Demand {
  /** Shape of the rate, > 0. */
  readonly a: number;
  /** Rate of the rate, unit-years, > 0. */
  readonly b: number;
  /** Unit-years ahead, >= 0. */
  readonly exposure: number;
}

function requireDemand({ a, b, exposure }: Demand): void {
  requireNumber(a, "a", { least: 0, open: true });
  requireNumber(b, "b", { least: 0, open: true });
  requireNumber(exposure, "exposure", { least: 0 });
}

function requireWhole(value: number, name: string): number {
  if (!Number.isSafeInteger(value)) throw new RangeError(`${name} must be a whole number, got ${value}`);
  return value;
}

/**
 * Chance that at most k units are asked for, P(D <= k).
 *
 * P(D = k) = Gamma(a + k) / (Gamma(a) k!) * (b / (b + X))^a * (X / (b + X))^k, X the exposure.
 *
 * @param k Whole number; below zero the chance is 0.
 * @throws {RangeError} naming the argument and its value.
 */
export function demandChanceAtMost(demand: Demand, k: number): number {
  requireDemand(demand);
  if (requireWhole(k, "k") < 0) return 0;
  if (demand.exposure === 0) return 1;
  return negativeBinomialCdf(k, demand.a, demand.b / (demand.b + demand.exposure));
}

/**
 * Chance that a Poisson count is at most k, P(N <= k).
 *
 * @param mean >= 0; @param k Whole number; below zero the chance is 0.
 * @throws {RangeError} naming the argument and its value.
 */
export function poissonAtMost(mean: number, k: number): number {
  requireNumber(mean, "mean", { least: 0 });
  if (requireWhole(k, "k") < 0) return 0;
  return mean === 0 ? 1 : poissonSum(mean, k);
}

/**
 * Units asked for beyond the spares, E[(D - s)+], with the rate uncertain.
 *
 * = mean * P(D' >= s) - s * P(D > s), D' the same demand with shape a + 1.
 *
 * @param spares Whole number >= 0.
 * @returns Units, >= 0.
 * @throws {RangeError} naming the argument and its value.
 */
export function expectedShort(demand: Demand, spares: number): number {
  requireDemand(demand);
  requireCount(spares, "spares");
  const mean = (demand.a * demand.exposure) / demand.b;
  const above = 1 - demandChanceAtMost(demand, spares);
  const weighted = 1 - demandChanceAtMost({ ...demand, a: demand.a + 1 }, spares - 1);
  return Math.max(0, mean * weighted - spares * above);
}

/**
 * Expected backorders of a Poisson demand, E[(N - s)+].
 *
 * = mean * P(N >= s) - s * P(N > s).
 *
 * @param mean >= 0; @param spares Whole number >= 0.
 * @returns Units, >= 0.
 * @throws {RangeError} naming the argument and its value.
 * @see Sherbrooke, Optimal Inventory Modeling of Systems, chapter 2 (from memory).
 */
export function expectedBackorders(mean: number, spares: number): number {
  requireCount(spares, "spares");
  const above = 1 - poissonAtMost(mean, spares);
  const weighted = 1 - poissonAtMost(mean, spares - 1);
  return Math.max(0, mean * weighted - spares * above);
}
