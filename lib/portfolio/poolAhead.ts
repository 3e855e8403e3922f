import type { ArrivalInput, LeavingInput, PoolResult } from "@/lib/risk/evaluation";
import { isUnidentified } from "@/lib/risk/poolOutlook";
import { piecesAhead, shelfAdditions } from "@/lib/risk/shelfAdditions";
import type { EvaluatedPool, Ground } from "@/lib/risk/stages";
import { storageRules } from "@/lib/risk/storageRules";
import { supplyOutlook } from "@/lib/risk/supplyOutlook";
import { noSpareAhead } from "@/lib/spares/shelfAhead";
import { stockChance } from "@/lib/spares/stockChance";
import { usableCount } from "@/lib/spares/usableCount";

/** What a plan does to a pool. */
export interface PoolChange {
  /** All units that leave it, those of projects under way included, the earliest first. */
  readonly leaving: readonly LeavingInput[];
  /** Pieces the plan brings to the shelf. */
  readonly arrivals: readonly ArrivalInput[];
  /** Units the plan puts in, and in how many years from now. */
  readonly added: readonly { readonly at: number; readonly units: number }[];
  /** So many more working spares than there are, from now on; to ask what they would do. */
  readonly extraSpares?: number;
}

const MONTHS_PER_YEAR = 12;

/** The mean over the first months by the trapezoid rule, as the evaluation takes it. */
function meanOver(byMonth: readonly number[], months: number): number {
  let sum = 0;
  for (let m = 1; m <= months; m += 1) sum += ((byMonth[m - 1] as number) + (byMonth[m] as number)) / 2;
  return Math.min(1, sum / months);
}

/** The ways the supply of a pool may stand, with the units a plan puts in. */
function waysOf({ pool, result }: EvaluatedPool, change: PoolChange, ground: Ground) {
  const { leaving } = change;
  const units = ground.units.get(pool.id) ?? 0;
  const added = change.added.map((one) => ({ from: one.at, to: null, units: one.units }));
  const about = { pool, stage: result.stage, units, leaving, asOf: ground.asOf };
  return supplyOutlook(about, ground.assumptions).map(({ chance, supply }) => ({
    chance,
    supply: added.length === 0 ? supply : { ...supply, installed: [...supply.installed, ...added] },
  }));
}

/**
 * The chance by month that a failure finds the shelf of a pool empty once a plan has changed it (0 … months).
 *
 * The mean of the evaluation, by the same functions in the same order and so to the same bit where the plan adds no
 * units; without its span, which a worth does not need.
 */
function noSpareByMonth(evaluated: EvaluatedPool, change: PoolChange, ground: Ground): number[] {
  const { asOf, assumptions } = ground;
  const { pool, result } = evaluated;
  const { pieces } = usableCount(pool.stock, storageRules(pool.itemClass, asOf, assumptions));
  const arrivals = [...(pool.arrivals ?? []), ...change.arrivals];
  const ahead = piecesAhead({ ...pool, arrivals }, { asOf, leaving: change.leaving }, assumptions);
  const shelf = {
    stock: [...new Array<number>(change.extraSpares ?? 0).fill(0), ...stockChance(pieces)],
    additions: shelfAdditions(ahead),
  };
  const { a, b } = result.removal;
  const ways = waysOf(evaluated, change, ground).map(({ chance, supply }) => ({
    chance,
    at: noSpareAhead({ ...shelf, supply }, { a, b }),
  }));
  return Array.from({ length: assumptions.months + 1 }, (_, m) =>
    ways.reduce((sum, { chance, at }) => sum + chance * at(m / MONTHS_PER_YEAR), 0),
  );
}

/**
 * A pool as a plan leaves it, in the place of its evaluation: chances by month and over the horizon of the score, ends
 * of spans at the mean.
 */
export function poolAhead(evaluated: EvaluatedPool, change: PoolChange, ground: Ground): PoolResult {
  const { pool, result } = evaluated;
  if (isUnidentified(pool.id)) return result;
  const byMonth = noSpareByMonth(evaluated, change, ground);
  const flat = (mean: number) => ({ mean, low: mean, high: mean });
  return {
    ...result,
    noSpareByMonth: byMonth.map(flat),
    noSpare: flat(meanOver(byMonth, ground.assumptions.horizonMonths)),
  };
}
