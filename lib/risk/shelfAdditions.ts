import { type IsoDate, yearsBetween } from "@/lib/kernel/isoDate";
import { requireCount, requireShare } from "@/lib/kernel/requireNumber";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { LeavingInput, PoolInput } from "@/lib/risk/evaluation";
import type { ShelfAddition } from "@/lib/spares/shelfAhead";
import { stockChance } from "@/lib/spares/stockChance";

/** Pieces that reach a shelf together, each working or not for itself. */
export interface PiecesAhead {
  readonly from: "repair" | "retrofit";
  /** Years from the as-of day, >= 0. */
  readonly at: number;
  readonly count: number;
  readonly works: number;
}

interface Ahead {
  readonly asOf: IsoDate;
  readonly leaving: readonly LeavingInput[];
}

/** Years a piece without a day to come is taken to be away: one more turn-around, or order to receipt without one. */
function yearsOverdue({ repair, leadYears, itemClass }: PoolInput, assumptions: Assumptions): number {
  return repair?.turnaroundYears ?? leadYears ?? assumptions.classes[itemClass].leadYears;
}

/** A day that has come without the piece says nothing of when it will. */
const isOverdue = (on: IsoDate, asOf: IsoDate): boolean => on <= asOf;

/** What will reach the shelf of a pool within the months computed: out for repair now, or kept at a retrofit to come. */
export function piecesAhead(
  pool: PoolInput,
  { asOf, leaving }: Ahead,
  assumptions: Assumptions,
): readonly PiecesAhead[] {
  const repaired = (pool.arrivals ?? []).map(
    ({ on, pieces, works }): PiecesAhead => ({
      from: "repair",
      at: isOverdue(on, asOf) ? yearsOverdue(pool, assumptions) : yearsBetween(asOf, on),
      count: requireCount(pieces, "pieces"),
      works: requireShare(works ?? assumptions.repairWorks, "works"),
    }),
  );
  const released = leaving
    .filter(({ kept }) => kept)
    .map(
      ({ on, units }): PiecesAhead => ({
        from: "retrofit",
        at: yearsBetween(asOf, on),
        count: units,
        works: assumptions.releaseWorks,
      }),
    );
  return [...repaired, ...released].filter(
    ({ at, count, works }) => at <= assumptions.months / 12 && count * works > 0,
  );
}

/** The same by day, as the chance of an empty shelf is computed from it. */
export function shelfAdditions(ahead: readonly PiecesAhead[]): readonly ShelfAddition[] {
  const times = [...new Set(ahead.map(({ at }) => at))].sort((a, b) => a - b);
  return times.map((at) => ({ at, pieces: stockChance(ahead.filter((pieces) => pieces.at === at)) }));
}

/** Pieces expected to work that come from one side by a time in years. */
export function expectedBy(years: number, from: PiecesAhead["from"], ahead: readonly PiecesAhead[]): number {
  return ahead
    .filter((pieces) => pieces.from === from && pieces.at <= years)
    .reduce((sum, { count, works }) => sum + count * works, 0);
}

const units = (count: number): string => (count === 1 ? "1 unit" : `${count} units`);

/** What was assumed of pieces to come because nothing was recorded. */
export function assumedAhead(pool: PoolInput, { asOf, leaving }: Ahead, assumptions: Assumptions): string[] {
  const arrivals = pool.arrivals ?? [];
  const pieces = (list: typeof arrivals) => list.reduce((sum, arrival) => sum + arrival.pieces, 0);
  const late = pieces(arrivals.filter(({ on }) => isOverdue(on, asOf)));
  const untold = pieces(arrivals.filter(({ works }) => works === null));
  const kept = leaving.filter((leave) => leave.kept).reduce((sum, leave) => sum + leave.units, 0);
  const days = Math.round(yearsOverdue(pool, assumptions) * 365.25);
  const out: string[] = [];
  if (late > 0) out.push(`${units(late)} due back from repair and not back: taken to come in ${days} days.`);
  if (untold > 0)
    out.push(
      `Repair yield not recorded: ${units(untold)} out taken to come back working with chance ${assumptions.repairWorks}.`,
    );
  if (kept > 0)
    out.push(
      `${units(kept)} to be kept at retrofits: each taken to pass its test with chance ${assumptions.releaseWorks}.`,
    );
  return out;
}
