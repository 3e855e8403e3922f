import type { GammaRate } from "@/lib/reliability/rate";
import { noSpareChance } from "@/lib/spares/noSpareChance";
import type { PieceChances } from "@/lib/spares/shelfAhead";

/** A time ahead at which a site's own shelf is looked at. */
export interface ShelfMoment {
  /** Unit-years of the site not made good by then (`unreplenishedExposure`), >= 0. */
  readonly exposure: number;
  /** Share of the span looked over, >= 0; those of a site with units sum to 1. */
  readonly weight: number;
  /** EUR lost over that share were the own shelf empty and another site's not: stops times what the way costs more. */
  readonly worth: number;
  /** Chance that no site has one then, in [0, 1]. */
  readonly groupEmpty: number;
}

/** What one site of a pool asks of its own shelf. */
export interface OwnShelf {
  readonly id: string;
  /** Removals per unit-year, the same at every site of the pool. */
  readonly rate: GammaRate;
  /** None where no unit is installed: such a shelf is asked for nothing. */
  readonly moments: readonly ShelfMoment[];
}

export interface OwnOutcome {
  /** Mean chance over the span that a failure at the site finds its own shelf empty, in [0, 1]. */
  readonly chance: number;
  /** EUR over the span lost on the way from other sites. */
  readonly loss: number;
}

/**
 * How a site stands with a shelf of its own.
 *
 * chance = sum of weight * pi, loss = sum of worth * max(pi, groupEmpty), pi = P(X >= K), X the site's own removals not
 * made good, K the pieces on its shelf. Where no site has one, the own shelf is empty too; that part of the loss no
 * moving of pieces changes.
 *
 * Not modelled: what other sites take from this shelf, and pieces still to come, whose shelf nobody knows.
 *
 * @param shelf P(K = k) from `stockChance`.
 */
export function ownOutcome({ rate, moments }: OwnShelf, shelf: PieceChances): OwnOutcome {
  let chance = 0;
  let loss = 0;
  for (const { exposure, weight, worth, groupEmpty } of moments) {
    const empty = noSpareChance({ ...rate, exposure }, shelf);
    chance += weight * empty;
    loss += worth * Math.max(empty, groupEmpty);
  }
  return { chance: Math.min(1, chance), loss };
}
