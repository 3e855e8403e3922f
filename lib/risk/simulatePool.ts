import { supplyStage } from "@/lib/lifecycle/supplyStage";
import type { GammaRate } from "@/lib/reliability/rate";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput, LeavingInput, PoolInput } from "@/lib/risk/evaluation";
import { piecesAhead } from "@/lib/risk/shelfAdditions";
import { storageRules } from "@/lib/risk/storageRules";
import { supplyOutlook } from "@/lib/risk/supplyOutlook";
import { simulateShelf } from "@/lib/spares/simulateShelf";
import { usableCount } from "@/lib/spares/usableCount";

/** A pool as the evaluation saw it. */
export interface PoolSeen {
  readonly pool: PoolInput;
  readonly asOf: GroupInput["asOf"];
  readonly units: number;
  readonly leaving: readonly LeavingInput[];
  readonly removal: GammaRate;
  readonly assumptions: Assumptions;
}

export interface PoolSimulation {
  /** Months ahead, > 0. */
  readonly months: readonly number[];
  readonly runs: number;
  readonly seed: number;
}

/**
 * The no-spare chance of a pool by simulation, month by month asked, from what the evaluation itself was given.
 *
 * One seed and one stream for each pool: the same question gives the same figures.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function simulatePool(seen: PoolSeen, asked: PoolSimulation): number[] {
  const { pool, asOf, units, leaving, removal, assumptions } = seen;
  const { pieces } = usableCount(pool.stock, storageRules(pool.itemClass, asOf, assumptions));
  const stage = supplyStage(pool.dates, asOf);
  const cases = supplyOutlook({ pool, stage, units, leaving, asOf }, assumptions);
  const additions = piecesAhead(pool, { asOf, leaving }, assumptions);
  const times = asked.months.map((month) => month / 12);
  const shares = times.map(() => 0);
  for (const [i, { chance, supply }] of cases.entries()) {
    // Each way supply may stand is looked at as often as it is likely.
    const runs = Math.max(1, Math.round(chance * asked.runs));
    const name = `simulated/${pool.id}/${i}`;
    const empty = simulateShelf(
      { supply, rate: removal, pieces, additions },
      { times, runs, seed: asked.seed, name, unmet: "waits for what is due back" },
    );
    for (const [place, share] of empty.entries()) shares[place] = (shares[place] ?? 0) + chance * share;
  }
  return shares;
}
