import { type Demand, demandChanceAtMost, poissonAtMost } from "@/lib/spares/demand";

/** Demand ahead: removals over an exposure, their rate uncertain (a, b) or fixed (rate per unit-year). */
export type DemandAhead = Demand | { readonly rate: number; readonly exposure: number };

/** First chance this small cannot start a recursion any more. */
const SMALLEST_START = 1e-290;

/** P(X >= k) for k = 0 … most, by adding up probabilities from zero. */
function tails(start: number, ratio: (k: number) => number, most: number): number[] {
  const out = [1];
  let chance = start;
  let below = 0;
  for (let k = 0; k < most; k += 1) {
    below += chance;
    out.push(Math.max(0, 1 - below));
    chance *= ratio(k);
  }
  return out;
}

const tailsBy = (atMost: (k: number) => number, most: number): number[] =>
  Array.from({ length: most + 1 }, (_, k) => 1 - atMost(k - 1));

/** Chance that demand reaches each count, P(X >= k) for k = 0 … most. */
export function demandTails(demand: DemandAhead, most: number): readonly number[] {
  if ("rate" in demand) {
    const mean = demand.rate * demand.exposure;
    const start = Math.exp(-mean);
    if (start < SMALLEST_START) return tailsBy((k) => poissonAtMost(mean, k), most);
    return tails(start, (k) => mean / (k + 1), most);
  }
  const { a, b, exposure } = demand;
  const p = exposure / (b + exposure);
  const start = (1 - p) ** a;
  if (start < SMALLEST_START) return tailsBy((k) => demandChanceAtMost(demand, k), most);
  return tails(start, (k) => (p * (a + k)) / (k + 1), most);
}

/**
 * Chance that a failure finds the shelf empty: P(X >= K), X the removals not made good, K the working spares.
 *
 * = sum over k of P(K = k) * P(X >= k). Not the run-out chance, which is P(X > K).
 *
 * @param demand Unit-years not made good and the rate; @param shelf P(K = k) from `stockChance`.
 */
export function noSpareChance(demand: DemandAhead, shelf: readonly number[]): number {
  if (shelf.length === 1) return 1;
  const reached = demandTails(demand, shelf.length - 1);
  let sum = 0;
  for (const [k, chance] of shelf.entries()) sum += chance * (reached[k] as number);
  return Math.min(1, sum);
}

/** Chance that some demand is not met when nothing comes back: P(X > K). */
export function runOutChance(demand: DemandAhead, shelf: readonly number[]): number {
  const reached = demandTails(demand, shelf.length);
  let sum = 0;
  for (const [k, chance] of shelf.entries()) sum += chance * (reached[k + 1] as number);
  return Math.min(1, sum);
}
