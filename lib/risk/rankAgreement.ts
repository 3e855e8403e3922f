/** 1, 0 or -1 as the first is larger, equal or smaller. */
function signOf(one: number, other: number): number {
  if (one > other) return 1;
  return one === other ? 0 : -1;
}

/**
 * Says how far two rankings of the same lines agree: 1 same order, -1 reversed, ties allowed.
 *
 * tau-b = (concordant - discordant) / sqrt((pairs - ties in x) * (pairs - ties in y))
 *
 * @param x Values by line, finite.
 * @param y Values of the same lines in the same order, finite.
 * @returns Dimensionless, in [-1, 1].
 * @throws {RangeError} if lengths differ, a value is not finite, or one side is all ties (undefined).
 */
export function kendallTauB(x: readonly number[], y: readonly number[]): number {
  if (x.length !== y.length) throw new RangeError(`y must have ${x.length} values, got ${y.length}`);
  const bad = [...x, ...y].find((value) => !Number.isFinite(value));
  if (bad !== undefined) throw new RangeError(`x and y must be finite, got ${bad}`);
  let balance = 0;
  let untiedX = 0;
  let untiedY = 0;
  for (let i = 1; i < x.length; i += 1) {
    for (let j = 0; j < i; j += 1) {
      const dx = signOf(x[i] as number, x[j] as number);
      const dy = signOf(y[i] as number, y[j] as number);
      balance += dx * dy;
      untiedX += Math.abs(dx);
      untiedY += Math.abs(dy);
    }
  }
  if (untiedX === 0 || untiedY === 0)
    throw new RangeError("x and y must each hold two different values, got all ties");
  return balance / Math.sqrt(untiedX * untiedY);
}
