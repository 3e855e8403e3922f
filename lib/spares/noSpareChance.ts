import { type Demand, demandChanceAtMost, poissonAtMost } from "@/lib/spares/demand";

/** Demand ahead: removals over an exposure, their rate uncertain (a, b) or fixed (rate per unit-year). */
export type DemandAhead = Demand | { readonly rate: number; readonly exposure: number };

/** First chance this small cannot start a recursion any more. */
const SMALLEST_START = 1e-290;

/** P(X = 0), and what P(X = k + 1) is of P(X = k): scale * (a + k) / (k + 1), for a Poisson count scale / (k + 1). */
interface Series {
  readonly start: number;
  readonly scale: number;
  /** Null for a Poisson count. */
  readonly a: number | null;
}

function seriesOf(demand: DemandAhead): Series {
  if ("rate" in demand) {
    const mean = demand.rate * demand.exposure;
    return { start: Math.exp(-mean), scale: mean, a: null };
  }
  const { a, b, exposure } = demand;
  const scale = exposure / (b + exposure);
  return { start: (1 - scale) ** a, scale, a };
}

const ratio = ({ scale, a }: Series, k: number): number =>
  a === null ? scale / (k + 1) : (scale * (a + k)) / (k + 1);

function chanceAtMost(demand: DemandAhead, k: number): number {
  return "rate" in demand ? poissonAtMost(demand.rate * demand.exposure, k) : demandChanceAtMost(demand, k);
}

/** Chance that demand reaches each count, P(X >= k) for k = 0 … most. */
export function demandTails(demand: DemandAhead, most: number): readonly number[] {
  const series = seriesOf(demand);
  if (series.start < SMALLEST_START)
    return Array.from({ length: most + 1 }, (_, k) => 1 - chanceAtMost(demand, k - 1));
  const out = [1];
  let chance = series.start;
  let below = 0;
  for (let k = 0; k < most; k += 1) {
    below += chance;
    out.push(Math.max(0, 1 - below));
    chance *= ratio(series, k);
  }
  return out;
}

/** P(X >= k) of a Poisson count: the last of its `demandTails`, none of the others kept. */
export function poissonTail(mean: number, k: number): number {
  if (k === 0) return 1;
  const start = Math.exp(-mean);
  if (start < SMALLEST_START) return 1 - poissonAtMost(mean, k - 1);
  let chance = start;
  let below = 0;
  for (let count = 0; count < k; count += 1) {
    below += chance;
    chance *= mean / (count + 1);
  }
  return Math.max(0, 1 - below);
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
  const series = seriesOf(demand);
  // Computed for every pool, month and point of the rate: nothing is kept on the way.
  if (series.start < SMALLEST_START) return weighed(demandTails(demand, shelf.length - 1), shelf);
  let chance = series.start;
  let below = 0;
  let sum = 0;
  for (let k = 0; k < shelf.length; k += 1) {
    sum += (shelf[k] as number) * Math.max(0, 1 - below);
    below += chance;
    chance *= ratio(series, k);
  }
  return Math.min(1, sum);
}

function weighed(tails: readonly number[], shelf: readonly number[]): number {
  return Math.min(
    1,
    shelf.reduce((sum, chance, k) => sum + chance * (tails[k] as number), 0),
  );
}

/** Chance that some demand is not met when nothing comes back: P(X > K). */
export function runOutChance(demand: DemandAhead, shelf: readonly number[]): number {
  return weighed(demandTails(demand, shelf.length).slice(1), shelf);
}
