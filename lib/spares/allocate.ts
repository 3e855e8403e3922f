import { requireNumber } from "@/lib/kernel/requireNumber";
import { expectedBackorders, poissonAtMost } from "@/lib/spares/demand";

export interface AllocationItem {
  readonly id: string;
  /** Mean units waiting for replenishment, >= 0. */
  readonly mean: number;
  /** Price of one unit, > 0. */
  readonly unitCost: number;
}

export interface Purchase {
  readonly id: string;
  /** Money spent up to and with this unit. */
  readonly spent: number;
  /** Expected backorders of all items after it. */
  readonly total: number;
}

interface Offer {
  readonly item: AllocationItem;
  stock: number;
  /** Fall of expected backorders by the next unit. */
  fall: number;
}

function bestOffer(offers: readonly Offer[], left: number): Offer | null {
  let best: Offer | null = null;
  for (const offer of offers) {
    if (offer.item.unitCost > left || offer.fall <= 0) continue;
    if (!best || offer.fall / offer.item.unitCost > best.fall / best.item.unitCost) best = offer;
  }
  return best;
}

/**
 * Spends a budget on spares one unit at a time, always where expected backorders fall most for the money.
 *
 * The next unit of an item lowers its expected backorders by P(N > stock). An item too dear for what is left is
 * passed over; of equals the first given is bought; ends when nothing fits or helps.
 *
 * @throws {RangeError} naming the argument and its value.
 * @see Sherbrooke, Optimal Inventory Modeling of Systems, marginal analysis (from memory).
 */
export function allocate(items: readonly AllocationItem[], budget: number): Purchase[] {
  requireNumber(budget, "budget", { least: 0 });
  const offers = items.map((item): Offer => {
    requireNumber(item.mean, "mean", { least: 0 });
    requireNumber(item.unitCost, "unitCost", { least: 0, open: true });
    return { item, stock: 0, fall: 1 - poissonAtMost(item.mean, 0) };
  });
  const bought: Purchase[] = [];
  let spent = 0;
  for (let offer = bestOffer(offers, budget); offer; offer = bestOffer(offers, budget - spent)) {
    spent += offer.item.unitCost;
    offer.stock += 1;
    offer.fall = 1 - poissonAtMost(offer.item.mean, offer.stock);
    const total = offers.reduce((sum, { item, stock }) => sum + expectedBackorders(item.mean, stock), 0);
    bought.push({ id: offer.item.id, spent, total });
  }
  return bought;
}
