import { requireNumber, requireOpenShare } from "@/lib/kernel/requireNumber";
import type { GammaRate } from "@/lib/reliability/rate";
import { demandChanceAtMost } from "@/lib/spares/demand";
import { type PoolSupply, unreplenishedExposure } from "@/lib/spares/exposure";

/** What a site holds of a part and how it is supplied; times in years from now. */
export interface LevelQuestion {
  readonly rate: GammaRate;
  /** Units in service and when each leaves; repair while it is open. */
  readonly supply: PoolSupply;
  /** Whether an order is accepted today. */
  readonly canOrder: boolean;
  /** No-spare chance aimed at, in (0, 1). */
  readonly target: number;
  /** Years between two looks at the shelf, >= 0. */
  readonly reviewYears: number;
  /** Units without a day to leave are provided for over so many years, > 0, where nothing can be ordered. */
  readonly keepYears: number;
}

/**
 * Why the levels are what they are: nothing installed needs the part; every unit has a day to leave; it can no longer
 * be ordered; it is restocked.
 */
export type LevelKind = "unused" | "retires" | "ended" | "restock";

export interface StockLevels {
  readonly kind: LevelKind;
  /** Order when fewer work than this, and up to this; 0 where nothing is to be ordered. */
  readonly min: number;
  readonly max: number;
  /** Pieces that are still needed; what works beyond them is surplus. */
  readonly keep: number;
  /** Unit-years behind `min`, `max` and `keep`. */
  readonly leadExposure: number;
  readonly reviewExposure: number;
  readonly keepExposure: number;
  /** Years until the last unit leaves; null when some stay. */
  readonly gone: number | null;
}

/** Beyond this a level is a fault of the input. */
const MOST_PIECES = 10_000;

/**
 * Smallest stock with which a failure finds the shelf empty with at most the target chance.
 *
 * Smallest s with P(X >= s) <= target, X negative binomial over the exposure; 0 without exposure.
 *
 * @throws {RangeError} when that needs more than 10 000 pieces.
 */
export function smallestLevel({ a, b }: GammaRate, exposure: number, target: number): number {
  requireOpenShare(target, "target");
  if (requireNumber(exposure, "exposure", { least: 0 }) === 0) return 0;
  const holds = (s: number) => demandChanceAtMost({ a, b, exposure }, s - 1) >= 1 - target;
  let high = 1;
  while (!holds(high)) {
    if (high > MOST_PIECES)
      throw new RangeError(`exposure must need at most ${MOST_PIECES} pieces, got ${exposure}`);
    high *= 2;
  }
  let low = Math.floor(high / 2);
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return high;
}

function lastLeave({ installed }: PoolSupply): number | null {
  const days = installed.filter(({ units }) => units > 0).map(({ to }) => to);
  return days.includes(null) || days.length === 0 ? null : Math.max(...days.map((to) => to ?? 0));
}

function kindOf({ supply, canOrder }: LevelQuestion, gone: number | null): LevelKind {
  if (!supply.installed.some(({ units }) => units > 0)) return "unused";
  if (gone !== null) return "retires";
  return canOrder ? "restock" : "ended";
}

/**
 * Minimum and maximum of a part at a site, and what of its stock is still needed.
 *
 * Restocked: an order placed today arrives after the lead time L and the shelf is looked at every R, so
 * min = smallest level over the un-replenished exposure of L, max = the same over L + R (order up to, textbook periodic
 * review), keep = max. A part that can no longer be ordered has no min and max; keep covers what is not made good until
 * its units leave, or over the years asked for. A part whose units all have a day to leave is never ordered again: keep
 * covers the way to that day. Nothing installed: all are 0.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function stockLevels(question: LevelQuestion): StockLevels {
  const { rate, supply, target, reviewYears, keepYears } = question;
  requireNumber(reviewYears, "reviewYears", { least: 0 });
  requireNumber(keepYears, "keepYears", { least: 0, open: true });
  const gone = lastLeave(supply);
  const kind = kindOf(question, gone);
  const level = (exposure: number) => smallestLevel(rate, exposure, target);
  if (kind === "restock") {
    const leadExposure = unreplenishedExposure(supply, supply.leadTime);
    // An order placed at the next look arrives a lead time after it, so all of that time is to be covered.
    const reviewed = { ...supply, leadTime: supply.leadTime + reviewYears };
    const reviewExposure = unreplenishedExposure(reviewed, reviewed.leadTime);
    const [min, max] = [level(leadExposure), level(reviewExposure)];
    return {
      ...{ kind, min, max, keep: max, gone },
      ...{ leadExposure, reviewExposure, keepExposure: reviewExposure },
    };
  }
  // Nothing is ordered any more: only repair makes removals good.
  const closed = { ...supply, leadTime: 0, lastOrderAt: 0 };
  const keepExposure = kind === "unused" ? 0 : unreplenishedExposure(closed, gone ?? keepYears);
  return {
    ...{ kind, min: 0, max: 0, keep: level(keepExposure), gone },
    ...{ leadExposure: 0, reviewExposure: 0, keepExposure },
  };
}

/**
 * Pieces to order: up to the maximum once fewer work than the minimum, else none. A part that retires, has ended or is
 * not used gets none whatever the shelf holds.
 *
 * @param usable Pieces expected to work, >= 0.
 */
export function toOrder({ kind, min, max }: StockLevels, usable: number): number {
  requireNumber(usable, "usable", { least: 0 });
  return kind !== "restock" || usable >= min ? 0 : Math.max(0, max - Math.floor(usable + 1e-9));
}
