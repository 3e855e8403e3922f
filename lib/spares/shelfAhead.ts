import type { GammaRate } from "@/lib/reliability/rate";
import { rateNodes } from "@/lib/reliability/rateNodes";
import { lostExposure, type PoolSupply, unreplenishedExposure } from "@/lib/spares/exposure";
import { demandTails, noSpareChance } from "@/lib/spares/noSpareChance";
import { MOST_PIECES } from "@/lib/spares/stockChance";

/** Chance of each number of working pieces, P(K = k) for k = 0, 1, … (`stockChance`). */
export type PieceChances = readonly number[];

/** Pieces that reach the shelf later: back from repair, or set free by a retrofit. */
export interface ShelfAddition {
  /** Years from now, >= 0. */
  readonly at: number;
  readonly pieces: PieceChances;
}

/** A pool over time: what wears its stock down, and when something is added to it. */
export interface ShelfPlan {
  readonly supply: PoolSupply;
  /** In order of time: when, and the unit-years since the step before whose removals are lost for good. */
  readonly steps: readonly { readonly at: number; readonly lost: number }[];
}

/** Lays out the times at which something is added, in order. */
export function shelfPlan(supply: PoolSupply, times: readonly number[]): ShelfPlan {
  let before = 0;
  const steps = times.map((at) => {
    const until = lostExposure(supply, at);
    const lost = Math.max(0, until - before);
    before = until;
    return { at, lost };
  });
  return { supply, steps };
}

/** How many additions have happened by t, and the unit-years since the last whose removals are missing on the shelf. */
export function momentOf({ supply, steps }: ShelfPlan, t: number) {
  const step = steps.findIndex(({ at }) => at > t);
  const added = step < 0 ? steps.length : step;
  const lost = steps.slice(0, added).reduce((sum, one) => sum + one.lost, 0);
  return { added, exposure: Math.max(0, unreplenishedExposure(supply, t) - lost) };
}

/** What is left of a shelf when pieces are lost at a known rate and no demand waits: max(0, K - N), N Poisson. */
function worn(shelf: PieceChances, rate: number, exposure: number): PieceChances {
  if (exposure === 0 || shelf.length === 1) return shelf;
  const reached = demandTails({ rate, exposure }, shelf.length);
  const left = new Array<number>(shelf.length).fill(0);
  for (const [k, chance] of shelf.entries())
    for (let lost = 0; lost <= k; lost += 1) {
      const upTo = lost === k ? 0 : (reached[lost + 1] as number);
      left[k - lost] = (left[k - lost] as number) + chance * ((reached[lost] as number) - upTo);
    }
  return left;
}

/** Chances of the sum of two independent counts, what goes beyond the most pieces put on the last. */
function sumOf(one: PieceChances, other: PieceChances): PieceChances {
  const most = Math.min(MOST_PIECES, one.length + other.length - 2);
  const sum = new Array<number>(most + 1).fill(0);
  for (const [i, a] of one.entries())
    for (const [j, b] of other.entries()) {
      const k = Math.min(most, i + j);
      sum[k] = (sum[k] as number) + a * b;
    }
  return sum;
}

/**
 * The shelf just after each addition, its first entry what lies there now, at a known rate.
 *
 * @param pieces What lies there now, then what each step of the plan adds.
 */
export function shelvesAtRate(
  { steps }: ShelfPlan,
  pieces: readonly PieceChances[],
  rate: number,
): readonly PieceChances[] {
  const [now = [1], ...added] = pieces;
  const out = [now];
  for (const [i, { lost }] of steps.entries())
    out.push(sumOf(worn(out.at(-1) ?? now, rate, lost), added[i] ?? [1]));
  return out;
}

export interface ShelfAhead {
  readonly supply: PoolSupply;
  readonly stock: PieceChances;
  /** In order of time. */
  readonly additions: readonly ShelfAddition[];
}

/**
 * Chance that a failure finds the shelf empty, at any time ahead, when pieces are added later and no demand waits.
 *
 * S counts the pieces on the shelf and those still due back for it: it falls by one with each removal lost for good
 * (`lostExposure`), not below zero, since what finds nothing is got elsewhere and does not queue; it rises by the
 * pieces added. R, removals still on order or in repair, is Poisson and independent of S at a given rate. The chance
 * is P(S <= R). Between two additions S is max(0, K - N), so P(S <= R) = P(N + R >= K) with the K of the last
 * addition: exact from addition to addition, without a grid of months. An uncertain rate is integrated over 48 points
 * (`rateNodes`). Until the first addition this is `noSpareChance` itself, in closed form.
 *
 * @param rate Gamma(a, b), or one rate per unit-year.
 * @returns A function of years from now, >= 0.
 * @throws {RangeError} naming the argument and its value.
 */
export function noSpareAhead(
  { supply, stock, additions }: ShelfAhead,
  rate: GammaRate | { readonly rate: number },
): (years: number) => number {
  // Spreading the rate here would cost more than the chance itself.
  const closed =
    "rate" in rate
      ? (years: number) =>
          noSpareChance({ rate: rate.rate, exposure: unreplenishedExposure(supply, years) }, stock)
      : (years: number) =>
          noSpareChance({ a: rate.a, b: rate.b, exposure: unreplenishedExposure(supply, years) }, stock);
  if (additions.length === 0) return closed;
  const plan = shelfPlan(
    supply,
    additions.map(({ at }) => at),
  );
  const pieces = [stock, ...additions.map((addition) => addition.pieces)];
  const nodes = "rate" in rate ? [{ rate: rate.rate, weight: 1 }] : rateNodes(rate);
  const known = nodes.map((node) => ({ ...node, shelves: shelvesAtRate(plan, pieces, node.rate) }));
  return (years) => {
    const { added, exposure } = momentOf(plan, years);
    if (added === 0) return closed(years);
    const sum = known.reduce(
      (total, { rate: at, weight, shelves }) =>
        total + weight * noSpareChance({ rate: at, exposure }, shelves[added] ?? stock),
      0,
    );
    return Math.min(1, sum);
  };
}
