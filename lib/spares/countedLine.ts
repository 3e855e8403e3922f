import { requireCount } from "@/lib/kernel/requireNumber";
import type { StockState } from "@/lib/spares/usableCount";

/** What somebody with the pieces in hand says of them. */
export interface CountedPieces {
  /** Pieces found, whole and >= 0. */
  readonly found: number;
  readonly state: StockState;
  /** Tested under load; null is not said. */
  readonly tested: boolean | null;
  readonly originUnknown: boolean;
  /** Why they are put on hold; empty puts none on hold. */
  readonly holdReason: string;
}

/**
 * The state counted pieces are booked in.
 *
 * A hold comes first. Pieces called usable are unproven when they were not tested, and pieces of unknown origin unless
 * they were. Any other state stands as it was said.
 */
export function stateAfterCount({ state, tested, originUnknown, holdReason }: CountedPieces): StockState {
  if (holdReason !== "") return "on_hold";
  if (state !== "usable") return state;
  return tested === false || (originUnknown && tested !== true) ? "unproven" : "usable";
}

/** How a count differs from the book. */
export interface Variance {
  /** Found less book, pieces; null when there was no number on the book to compare with. */
  readonly pieces: number | null;
  /** The same in EUR at the price on record; null is not known. */
  readonly euro: number | null;
}

interface Compared {
  readonly found: number;
  /** Pieces on the book; null is a lot nobody had counted. A find without a record has a book of 0. */
  readonly book: number | null;
  /** EUR a piece; null is not known. */
  readonly price: number | null;
}

/**
 * Found against book, in pieces and money.
 *
 * @throws {RangeError} when a number of pieces is not whole and >= 0.
 */
export function varianceOf({ found, book, price }: Compared): Variance {
  requireCount(found, "found");
  if (book === null) return { pieces: null, euro: null };
  const pieces = found - requireCount(book, "book");
  if (pieces === 0) return { pieces, euro: 0 };
  return { pieces, euro: price === null ? null : pieces * price };
}

/**
 * Whether a second person has to approve a count before it is posted.
 *
 * Yes when the differences, each without its sign, are worth more than the limit together, or when one of them cannot
 * be valued: shortages do not make up for surpluses.
 *
 * @param limitEuro EUR, >= 0.
 */
export function needsSecondPerson(variances: readonly Variance[], limitEuro: number): boolean {
  let sum = 0;
  for (const { euro } of variances) {
    if (euro === null) return true;
    sum += Math.abs(euro);
  }
  return sum > limitEuro;
}
