import { requireNumber } from "@/lib/kernel/requireNumber";

/** A shelf a piece may be bought for, and what is lost once it is there. */
export interface NextPiece {
  /** Shelf the piece goes to. */
  readonly shelf: string;
  /** EUR lost over the span with it, >= 0. */
  readonly loss: number;
}

/** A part that can be bought, on its own: what is lost depends on no other offer. */
export interface Offer {
  readonly id: string;
  /** Price of one piece, > 0. */
  readonly unitCost: number;
  /** EUR no first piece can avoid more than; an offer is worked out only once this makes it the best. */
  readonly most: number;
  /** EUR lost over the span with nothing bought, >= 0. */
  readonly loss: () => number;
  /** The best shelf for one more piece after these, by shelf in the order bought; null when none helps. */
  readonly next: (bought: readonly string[]) => NextPiece | null;
}

export interface BoughtPiece {
  readonly id: string;
  readonly shelf: string;
  readonly unitCost: number;
  /** EUR this piece avoids. */
  readonly avoids: number;
  /** Money spent and loss avoided up to and with it. */
  readonly spent: number;
  readonly avoided: number;
}

interface Standing {
  readonly offer: Offer;
  readonly bought: readonly string[];
  /** Null is not worked out yet: the ratio is then a bound. */
  readonly exact: { readonly loss: number; readonly piece: NextPiece | null } | null;
  /** Loss avoided per money by the next piece. */
  readonly ratio: number;
}

function stand(offer: Offer, bought: readonly string[], loss: number): Standing {
  const piece = offer.next(bought);
  const avoids = piece === null ? 0 : loss - piece.loss;
  return { offer, bought, exact: { loss, piece }, ratio: avoids / offer.unitCost };
}

function bestOf(standings: readonly Standing[], left: number): number {
  let best = -1;
  for (const [i, { offer, ratio }] of standings.entries())
    if (ratio > 0 && offer.unitCost <= left && ratio > (standings[best]?.ratio ?? 0)) best = i;
  return best;
}

/**
 * Spends a budget on spares one piece at a time, each time where the expected loss falls most for the money.
 *
 * After a piece only its own offer is worked out anew; the ratios of the others stand. An offer whose bound never makes
 * it the best is never worked out at all. An offer too dear for what is
 * left is passed over; of equals the first given is bought; ends when nothing fits or helps, or at `most` pieces.
 *
 * Exact (nothing else that costs as much avoids more) at each sum it passes before an offer is passed over, when each
 * offer's loss falls ever more slowly with each piece. Where a second piece helps more than the first, the list sees
 * only the first and may come to it late; with one offer passed over for its price, the last money may do better.
 *
 * @param most Longest list, whole.
 * @throws {RangeError} naming the argument and its value.
 * @see Marginal analysis, Sherbrooke, Optimal Inventory Modeling of Systems (from memory).
 */
export function spendBest(offers: readonly Offer[], budget: number, most: number): BoughtPiece[] {
  requireNumber(budget, "budget", { least: 0 });
  for (const { unitCost } of offers) requireNumber(unitCost, "unitCost", { least: 0, open: true });
  const standings = offers.map(
    (offer): Standing => ({ offer, bought: [], exact: null, ratio: offer.most / offer.unitCost }),
  );
  const out: BoughtPiece[] = [];
  let spent = 0;
  let avoided = 0;
  while (out.length < most) {
    const place = bestOf(standings, budget - spent);
    const best = standings[place];
    if (!best) break;
    const { offer, bought, exact } = best;
    if (exact === null) {
      standings[place] = stand(offer, [], offer.loss());
      continue;
    }
    const { loss, piece } = exact;
    if (piece === null) break;
    const { id, unitCost } = offer;
    const avoids = loss - piece.loss;
    spent += unitCost;
    avoided += avoids;
    out.push({ id, shelf: piece.shelf, unitCost, avoids, spent, avoided });
    standings[place] = stand(offer, [...bought, piece.shelf], piece.loss);
  }
  return out;
}
