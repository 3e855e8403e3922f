import { type RandomStream, randomStream } from "@/lib/kernel/random";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import { type Drawing, drawVector, type Vector, valueAt } from "@/lib/risk/draws/drawing";
import type { LeavingInput, PoolInput, StockInput } from "@/lib/risk/evaluation";
import type { GroupRates } from "@/lib/risk/groupRates";
import { piecesAhead, shelfAdditions } from "@/lib/risk/shelfAdditions";
import { supplyOutlook } from "@/lib/risk/supplyOutlook";
import { noSpareChance, poissonTail } from "@/lib/spares/noSpareChance";
import {
  momentOf,
  type PieceChances,
  type ShelfAddition,
  type ShelfPlan,
  shelfPlan,
  shelvesAtRate,
} from "@/lib/spares/shelfAhead";
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
  readonly leaving: readonly LeavingInput[];
  readonly count: UsableCount;
  readonly rules: StorageRules;
}

/** Number of working spares at a point u of their distribution. */
function countAt(chances: readonly number[], u: number): number {
  let below = 0;
  for (let k = 0; k < chances.length; k += 1) {
    below += chances[k] as number;
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

/** One way supply may stand, month by month. */
interface CaseAhead {
  readonly chance: number;
  readonly plan: ShelfPlan;
  readonly months: readonly ReturnType<typeof momentOf>[];
}

/** What reaches the shelf within the horizon. */
function additionsWithin({ input: { asOf }, assumptions }: Drawing, { pool, leaving }: DrawnPool) {
  const ahead = piecesAhead(pool, { asOf, leaving }, assumptions);
  return shelfAdditions(ahead.filter(({ at }) => at <= assumptions.horizonMonths / 12));
}

function casesAhead(
  { input: { asOf }, assumptions }: Drawing,
  drawn: DrawnPool,
  additions: readonly ShelfAddition[],
): CaseAhead[] {
  const times = additions.map(({ at }) => at);
  return supplyOutlook({ ...drawn, asOf }, assumptions).map(({ chance, supply }) => {
    const plan = shelfPlan(supply, times);
    const months = Array.from({ length: assumptions.horizonMonths + 1 }, (_, m) => momentOf(plan, m / 12));
    return { chance, plan, months };
  });
}

/** A count that is certain, as the chances of a count. */
const exactly = (count: number): PieceChances => [...new Array<number>(count).fill(0), 1];

/** Mean over the horizon of a chance at the start of each month, by the trapezoid rule. */
function meanOver({ months }: CaseAhead, chanceAt: (month: CaseAhead["months"][number]) => number): number {
  const last = months.length - 1;
  let sum = 0;
  let exposure = Number.NaN;
  let place = Number.NaN;
  let chance = 0;
  for (let month = 0; month <= last; month += 1) {
    const moment = months[month] as CaseAhead["months"][number];
    // Once the first order arrives the exposure stands still, and with it the chance.
    if (moment.exposure !== exposure || moment.added !== place) chance = chanceAt(moment);
    ({ exposure, added: place } = moment);
    sum += month === 0 || month === last ? chance / 2 : chance;
  }
  return Math.min(1, sum / last);
}

/** Pieces that work: on the shelf, and of each addition still to come. */
interface Pieces {
  readonly now: number;
  readonly added: readonly number[];
}

/** Chance of an empty shelf at a rate, the mean over the horizon. */
function meanEmpty(rate: number, ahead: CaseAhead, { now, added }: Pieces): number {
  // One count alone needs no sum over counts: most pools, and every draw of them, go this way.
  if (added.length === 0)
    return now === 0 ? 1 : meanOver(ahead, ({ exposure }) => poissonTail(rate * exposure, now));
  const shelves = shelvesAtRate(ahead.plan, [now, ...added].map(exactly), rate);
  return meanOver(ahead, ({ added: place, exposure }) =>
    noSpareChance({ rate, exposure }, shelves[place] as PieceChances),
  );
}

/** Which of the ways supply may stand holds in each draw. */
function drawCases(drawing: Drawing, pool: PoolInput, [first, second]: readonly CaseAhead[]) {
  if (!first) throw new RangeError("cases must hold an entry, got 0");
  if (!second) return () => first;
  const supply = drawVector(drawing, `supply/${pool.id}`, (stream) => stream.next());
  return (draw: number): CaseAhead => (valueAt(supply, draw) >= first.chance ? second : first);
}

const plus = (a: Vector, b: Vector): Vector => a.map((value, i) => value + valueAt(b, i));

/**
 * Draws the no-spare chance of a pool: its removal rate, its working spares, lots nobody counted, pieces still to come
 * that work and, without dated supply, whether it can be ordered at all.
 */
export function drawNoSpare(drawing: Drawing, rates: GroupRates, drawn: DrawnPool): NoSpareDraws {
  const { pool, count, rules } = drawn;
  const chances = stockChance(count.pieces);
  const lots = pool.stock.filter((lot) => lot.quantity === null && worksInState(lot, rules) > 0);
  const additions = additionsWithin(drawing, drawn);
  // Nothing on the shelf and nothing to come: certain in every draw, whatever the rate.
  if (chances.length === 1 && lots.length === 0 && additions.length === 0)
    return { noSpare: new Float64Array(drawing.draws).fill(1), uncounted: null };
  const { a, b } = rates.removal(pool);
  const rate = drawVector(drawing, `removals/${pool.id}`, (stream) => stream.gamma(a) / b);
  const counted = drawVector(drawing, `stock/${pool.id}`, (stream) => countAt(chances, stream.next()));
  const cases = casesAhead(drawing, drawn, additions);
  const supply = drawCases(drawing, pool, cases);
  const added = additions.map(({ at, pieces }) =>
    drawVector(drawing, `to come/${pool.id}/${at}`, (stream) => countAt(pieces, stream.next())),
  );
  const chanceWith = (spares: Vector): Vector =>
    spares.map((now, i) =>
      meanEmpty(valueAt(rate, i), supply(i), { now, added: added.map((count) => valueAt(count, i)) }),
    );
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
