import { supplyStage } from "@/lib/lifecycle/supplyStage";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput, PoolInput, StockInput } from "@/lib/risk/evaluation";
import { isUnidentified } from "@/lib/risk/poolOutlook";
import { storageRules } from "@/lib/risk/storageRules";
import { type StorageRules, worksInState } from "@/lib/spares/usableCount";

/** A pool, and the assumptions to look at it with, were everything unknown of it found at its best. */
export interface BestKnown {
  readonly pool: PoolInput;
  readonly assumptions: Assumptions;
}

/** The lot powered up on the day itself, and as full as a lot nobody counted may be; the lot itself when that changes nothing. */
function bestLot(lot: StockInput, rules: StorageRules, most: number): StockInput {
  const fresh = { ...lot, lastPoweredOn: rules.asOf };
  const unknown = lot.state === "usable" && (lot.lastPoweredOn === null || lot.lastPoweredOn > rules.asOf);
  const best = unknown && worksInState(fresh, rules) > worksInState(lot, rules) ? fresh : lot;
  return lot.quantity === null && most > 0 && worksInState(best, rules) > 0
    ? { ...best, quantity: most }
    : best;
}

/**
 * The best state a pool may be in as far as nobody knows it; null when nothing of it is unknown.
 *
 * Lots not counted hold the most a draw gives them, pieces of unknown last power-up were powered today, a supply without
 * a fresh source still stands as last recorded (orderable where nothing is), and a part nobody has read always has a
 * spare. Lead times and buffers have no known bound and stay as assumed; firmware is in no figure here.
 */
export function bestKnown(
  pool: PoolInput,
  { asOf }: Pick<GroupInput, "asOf">,
  assumptions: Assumptions,
): BestKnown | null {
  if (isUnidentified(pool.id))
    return assumptions.unidentifiedNoSpare === 0
      ? null
      : { pool, assumptions: { ...assumptions, unidentifiedNoSpare: 0 } };
  const rules = storageRules(pool.itemClass, asOf, assumptions);
  const most = Math.floor(assumptions.uncountedMost);
  const stock = pool.stock.map((lot) => bestLot(lot, rules, most));
  const undated = supplyStage(pool.dates, asOf) === "undated";
  if (!undated && stock.every((lot, i) => lot === pool.stock[i])) return null;
  const dates = undated ? { ...pool.dates, checkedOn: asOf } : pool.dates;
  return { pool: { ...pool, dates, stock }, assumptions };
}
