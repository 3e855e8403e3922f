import { NBSP, NOT_KNOWN, plainNumber, significant } from "@/lib/view/number";

/**
 * A share in [0, 1] as a percentage; a share above nothing never reads 0, one below all never 100.
 *
 * @throws {RangeError} outside [0, 1].
 */
export function percent(share: number | null): string {
  if (share === null) return NOT_KNOWN;
  if (!(share >= 0 && share <= 1)) throw new RangeError(`a share must be in [0, 1], got ${share}`);
  if (share > 0 && share < 0.01) return `<1${NBSP}%`;
  if (share < 1 && share > 0.99) return `>99${NBSP}%`;
  return `${plainNumber(share * 100)}${NBSP}%`;
}

/** A change relative to a base, signed: `+12 %`, `−4 %`. */
export function signedPercent(share: number | null): string {
  if (share === null) return NOT_KNOWN;
  return `${share > 0 ? "+" : ""}${plainNumber(share * 100)}${NBSP}%`;
}

/**
 * A chance as a count out of a round number of like things: `in 20 such lines about 3`.
 *
 * The round number grows from 20 to 200 where 20 would show nothing.
 *
 * @param things Plural noun, e.g. `lines`.
 * @throws {RangeError} outside [0, 1].
 */
export function chanceWords(chance: number, things: string): string {
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`a chance must be in [0, 1], got ${chance}`);
  if (chance === 0) return `in no such ${things}`;
  if (chance === 1) return `in every one of such ${things}`;
  if (chance < 0.0025) return `in fewer than 1 of 200 such ${things}`;
  const base = chance < 0.05 ? 200 : 20;
  const hit = Math.round(chance * base);
  return hit === base ? `in nearly all of ${base} such ${things}` : `in ${base} such ${things} about ${hit}`;
}

/** Percentage and words together: `14 % (in 20 such lines about 3)`. */
export function chance(value: number | null, things: string): string {
  return value === null ? NOT_KNOWN : `${percent(value)} (${chanceWords(value, things)})`;
}

/** How often something happens: `3.2 a year`, `one in 5 years`. */
export function perYear(rate: number | null): string {
  if (rate === null) return NOT_KNOWN;
  if (rate > 0 && rate < 0.5) return `one in ${significant(1 / rate, 2)} years`;
  return `${significant(rate, 2)} a year`;
}
