import type { IsoDate } from "@/lib/kernel/isoDate";

/** Pieces that lie together and are booked as one lot. */
export interface LyingPieces {
  /** Null is not counted. */
  readonly quantity: number | null;
  /** Null is not known. */
  readonly lastPoweredOn: IsoDate | null;
}

/**
 * Puts further pieces into a lot.
 *
 * The lot knows one day of last power-up for all of its pieces, so the earliest stands, and none once it is unknown for
 * some. An empty lot takes the day of what comes; a lot nobody counted stays uncounted.
 */
export function togetherInBin(there: LyingPieces, added: LyingPieces): LyingPieces {
  if (there.quantity === 0) return added;
  const quantity =
    there.quantity === null || added.quantity === null ? null : there.quantity + added.quantity;
  if (added.quantity === 0) return there;
  const days = [there.lastPoweredOn, added.lastPoweredOn];
  return { quantity, lastPoweredOn: days.includes(null) ? null : (days.sort()[0] ?? null) };
}
