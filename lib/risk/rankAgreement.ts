/** Pairs of entries of an ascending list that are equal. */
function tiedPairs(count: number, isTied: (i: number) => boolean): number {
  let pairs = 0;
  let run = 0;
  for (let i = 1; i < count; i += 1) {
    run = isTied(i) ? run + 1 : 0;
    pairs += run;
  }
  return pairs;
}

/** Sorts a list in place and counts the pairs that stood in falling order (merge sort). */
function sortCounting(list: Float64Array, spare: Float64Array): number {
  if (list.length < 2) return 0;
  const middle = list.length >> 1;
  const left = list.subarray(0, middle);
  const right = list.subarray(middle);
  let falling = sortCounting(left, spare) + sortCounting(right, spare);
  let [i, j] = [0, 0];
  for (let k = 0; k < list.length; k += 1) {
    const takesRight = i === left.length || (j < right.length && (right[j] as number) < (left[i] as number));
    // What is left on the left side stands before it and is larger.
    if (takesRight) falling += left.length - i;
    spare[k] = (takesRight ? right[j++] : left[i++]) as number;
  }
  list.set(spare.subarray(0, list.length));
  return falling;
}

/**
 * Says how far two rankings of the same lines agree: 1 same order, -1 reversed, ties allowed.
 *
 * tau-b = (concordant - discordant) / sqrt((pairs - ties in x) * (pairs - ties in y)), the pairs counted by sorting.
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
  const count = x.length;
  const order = Array.from(x, (value, i) => ({ x: value, y: y[i] as number }));
  order.sort((a, b) => a.x - b.x || a.y - b.y);
  const sameX = (i: number) => order[i]?.x === order[i - 1]?.x;
  const sameBoth = (i: number) => sameX(i) && order[i]?.y === order[i - 1]?.y;
  const list = Float64Array.from(order, (one) => one.y);
  const discordant = sortCounting(list, new Float64Array(count));
  const pairs = (count * (count - 1)) / 2;
  const tiesX = tiedPairs(count, sameX);
  const tiesY = tiedPairs(count, (i) => list[i] === list[i - 1]);
  const untiedX = pairs - tiesX;
  const untiedY = pairs - tiesY;
  if (untiedX === 0 || untiedY === 0)
    throw new RangeError("x and y must each hold two different values, got all ties");
  const balance = pairs - tiesX - tiesY + tiedPairs(count, sameBoth) - 2 * discordant;
  return balance / Math.sqrt(untiedX * untiedY);
}
