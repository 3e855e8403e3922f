import { type RandomStream, randomStream } from "@/lib/kernel/random";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import { type Drawing, drawVector, type Vector, valueAt } from "@/lib/risk/draws/drawing";
import type { PoolInput, StockInput } from "@/lib/risk/evaluation";
import type { GroupRates } from "@/lib/risk/groupRates";
import { supplyOutlook } from "@/lib/risk/supplyOutlook";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import { demandTails } from "@/lib/spares/noSpareChance";
import { stockChance } from "@/lib/spares/stockChance";
import { type StorageRules, type UsableCount, worksInState } from "@/lib/spares/usableCount";

/** Chance that a failure finds the shelf empty, the mean over the horizon, draw by draw. */
export interface NoSpareDraws {
  readonly noSpare: Vector;
  /** With the lots nobody counted all empty and all at their most; null when every lot is counted. */
  readonly uncounted: {
    readonly siteIds: readonly string[];
    readonly atNone: Vector;
    readonly atMost: Vector;
  } | null;
}

export interface DrawnPool {
  readonly pool: PoolInput;
  readonly stage: SupplyStage;
  readonly units: number;
  readonly count: UsableCount;
  readonly rules: StorageRules;
}

/** Number of working spares at a point u of their distribution. */
function countAt(chances: readonly number[], u: number): number {
  let below = 0;
  for (const [k, chance] of chances.entries()) {
    below += chance;
    if (u < below) return k;
  }
  return chances.length - 1;
}

interface WorkingPieces {
  /** As many as the lots are drawn to hold. */
  readonly drawn: Vector;
  /** Were every lot at its most. */
  readonly full: Vector;
}

/** Adds one lot nobody counted: from no piece to `most`, each alike likely, each working or not for itself. */
function addLot(
  sum: WorkingPieces,
  stream: RandomStream,
  { works, most }: { works: number; most: number },
): void {
  for (let i = 0; i < sum.drawn.length; i += 1) {
    const pieces = stream.integer(0, most);
    const good = Array.from({ length: most }, () => (stream.next() < works ? 1 : 0) as number);
    const count = (held: number) => good.slice(0, held).reduce((all, one) => all + one, 0);
    sum.drawn[i] = valueAt(sum.drawn, i) + count(pieces);
    sum.full[i] = valueAt(sum.full, i) + count(most);
  }
}

function drawUncounted(
  drawing: Drawing,
  { pool, rules }: DrawnPool,
  lots: readonly StockInput[],
): WorkingPieces {
  const sum = { drawn: new Float64Array(drawing.draws), full: new Float64Array(drawing.draws) };
  for (const [place, lot] of lots.entries()) {
    const stream = randomStream(drawing.seed, `not counted/${pool.id}/${lot.siteId}/${place}`);
    addLot(sum, stream, {
      works: worksInState(lot, rules),
      most: Math.floor(drawing.assumptions.uncountedMost),
    });
  }
  return sum;
}

/** Mean over the horizon of P(X >= k), by the trapezoid rule over the months. */
function meanTail(rate: number, exposures: readonly number[], k: number): number {
  if (k === 0) return 1;
  const last = exposures.length - 1;
  let sum = 0;
  for (const [month, exposure] of exposures.entries()) {
    const tail = demandTails({ rate, exposure }, k)[k] ?? 0;
    sum += month === 0 || month === last ? tail / 2 : tail;
  }
  return Math.min(1, sum / last);
}

function exposuresByCase({ input, assumptions }: Drawing, { pool, stage, units }: DrawnPool) {
  const months = Array.from({ length: assumptions.horizonMonths + 1 }, (_, m) => m / 12);
  return supplyOutlook({ pool, stage, units, asOf: input.asOf }, assumptions).map(({ chance, supply }) => ({
    chance,
    exposures: months.map((years) => unreplenishedExposure(supply, years)),
  }));
}

/** Which of the ways supply may stand holds at a point u. */
function caseAt<T extends { readonly chance: number }>(cases: readonly T[], u: number): T {
  const [first, second] = cases;
  if (!first) throw new RangeError("cases must hold an entry, got 0");
  return second && u >= first.chance ? second : first;
}

const plus = (a: Vector, b: Vector): Vector => a.map((value, i) => value + valueAt(b, i));

/**
 * Draws the no-spare chance of a pool: its removal rate, its working spares, lots nobody counted and, without dated
 * supply, whether it can be ordered at all.
 */
export function drawNoSpare(drawing: Drawing, rates: GroupRates, drawn: DrawnPool): NoSpareDraws {
  const { pool, count, rules } = drawn;
  const { a, b } = rates.removal(pool);
  const rate = drawVector(drawing, `removals/${pool.id}`, (stream) => stream.gamma(a) / b);
  const supply = drawVector(drawing, `supply/${pool.id}`, (stream) => stream.next());
  const chances = stockChance(count.pieces);
  const counted = drawVector(drawing, `stock/${pool.id}`, (stream) => countAt(chances, stream.next()));
  const cases = exposuresByCase(drawing, drawn);
  const chanceWith = (spares: Vector): Vector =>
    spares.map((k, i) => meanTail(valueAt(rate, i), caseAt(cases, valueAt(supply, i)).exposures, k));
  const lots = pool.stock.filter((lot) => lot.quantity === null && worksInState(lot, rules) > 0);
  if (lots.length === 0) return { noSpare: chanceWith(counted), uncounted: null };
  const extra = drawUncounted(drawing, drawn, lots);
  return {
    noSpare: chanceWith(plus(counted, extra.drawn)),
    uncounted: {
      siteIds: [...new Set(lots.map((lot) => lot.siteId))].sort(),
      atNone: chanceWith(counted),
      atMost: chanceWith(plus(counted, extra.full)),
    },
  };
}

/** A chance about which nothing but its mean is believed: Beta(2 m, 2 - 2 m), uniform for a mean of one half. */
export function drawUnidentified(drawing: Drawing, name: string): Vector {
  const mean = drawing.assumptions.unidentifiedNoSpare;
  return drawVector(drawing, name, (stream) => {
    if (mean <= 0 || mean >= 1) return mean;
    const yes = stream.gamma(2 * mean);
    return yes / (yes + stream.gamma(2 - 2 * mean));
  });
}
