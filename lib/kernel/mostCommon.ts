/** The value that stands there most often; of equal ones the one that came first, and null where there is none. */
export function mostCommon<T>(values: Iterable<T>): T | null {
  const counts = new Map<T, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  let best: readonly [T, number] | null = null;
  for (const one of counts) if (best === null || one[1] > best[1]) best = one;
  return best === null ? null : best[0];
}
