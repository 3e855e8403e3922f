import { requireCount, requireNumber } from "@/lib/kernel/requireNumber";

/**
 * Splits whole pieces by weight: each gets the whole part of its share, the largest remainders one more.
 *
 * Of equal remainders the first given comes first. Without any weight the first gets all.
 *
 * @returns Whole pieces in the order of the weights; their sum is `pieces`, unless there are no weights.
 * @throws {RangeError} naming the argument and its value.
 * @see Largest remainder method (Hamilton), textbook result, from memory.
 */
export function apportion(pieces: number, weights: readonly number[]): number[] {
  requireCount(pieces, "pieces");
  for (const weight of weights) requireNumber(weight, "weights", { least: 0 });
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  if (all === 0) return weights.map((_, i) => (i === 0 ? pieces : 0));
  const shares = weights.map((weight) => (pieces * weight) / all);
  const whole = shares.map(Math.floor);
  let left = pieces - whole.reduce((sum, count) => sum + count, 0);
  const order = shares.map((share, i) => ({ i, rest: share - Math.floor(share) }));
  order.sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of order) {
    if (left === 0) break;
    whole[i] = (whole[i] ?? 0) + 1;
    left -= 1;
  }
  return whole;
}
