/**
 * Parts a whole number over weights by largest remainder; ties go to the earlier entry.
 *
 * @param total Whole number to part. @param least Smallest share of each entry. @param most Largest share of each.
 * @throws {RangeError} if the limits leave no way to part the total.
 */
export function apportion(
  total: number,
  weights: readonly number[],
  { least = 0, most = Number.POSITIVE_INFINITY }: { readonly least?: number; readonly most?: number } = {},
): number[] {
  return apportionWithin(
    total,
    weights.map((weight) => ({ weight, least, most })),
  );
}

export interface Claim {
  readonly weight: number;
  readonly least: number;
  readonly most: number;
}

/** The same with limits of its own for each entry. */
export function apportionWithin(total: number, claims: readonly Claim[]): number[] {
  const sum = claims.reduce((all, { weight }) => all + weight, 0);
  const ideal = claims.map(({ weight }) => (total * weight) / sum);
  const shares = claims.map(({ least, most }, i) =>
    Math.min(most, Math.max(least, Math.floor(ideal[i] ?? 0))),
  );
  for (
    let missing = total - shares.reduce((a, b) => a + b, 0);
    missing !== 0;
    missing -= Math.sign(missing)
  ) {
    const step = Math.sign(missing);
    const open = claims
      .map(({ least, most }, i) => ({
        i,
        least,
        most,
        share: shares[i] ?? 0,
        lack: (ideal[i] ?? 0) - (shares[i] ?? 0),
      }))
      .filter(({ share, least, most }) => (step > 0 ? share < most : share > least))
      .sort((a, b) => step * (b.lack - a.lack) || a.i - b.i);
    const [next] = open;
    if (!next) throw new RangeError(`total must fit the limits of the entries, got ${total}`);
    shares[next.i] = next.share + step;
  }
  return shares;
}
