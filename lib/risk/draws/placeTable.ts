import { type Vector, valueAt } from "@/lib/risk/draws/drawing";
import { type Move, shifted } from "@/lib/risk/draws/shifted";

/** The losses of all lines in every draw, ready to place a loss among them. */
export interface PlaceTable {
  /** Place from 1 of a line's own loss in each draw: one more than the lines that lose more. */
  placesOf(lineId: string): Vector;
  /** The same in as many draws as are given, had the lines of `changed` lost that instead. */
  placesIf(lineId: string, changed: ReadonlyMap<string, Vector>): Vector;
  /** The losses of each draw, ascending. */
  readonly sorted: SortedDraws;
}

/** Every draw's losses ascending, one draw after the other in one piece of memory. */
interface SortedDraws {
  readonly all: Vector;
  readonly draws: readonly Vector[];
}

/** How many of an ascending list do not exceed a value. */
function countUpTo(sorted: Vector, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (valueAt(sorted, middle) <= value) low = middle + 1;
    else high = middle;
  }
  return low;
}

function sortedDraws(all: Vector, draws: number, lines: number): SortedDraws {
  const at = (draw: number) => all.subarray(draw * lines, (draw + 1) * lines);
  return { all, draws: Array.from({ length: draws }, (_, draw) => at(draw)) };
}

/** Sorts every draw once. */
export function placeTable(losses: ReadonlyMap<string, Vector>, draws: number): PlaceTable {
  const vectors = [...losses.values()];
  const sorted = sortedDraws(new Float64Array(draws * vectors.length), draws, vectors.length);
  for (const [draw, losing] of sorted.draws.entries()) {
    for (const [i, vector] of vectors.entries()) losing[i] = valueAt(vector, draw);
    losing.sort();
  }
  return tableOf(losses, sorted);
}

/** The table after some lines lose something else: each draw stays in order but for them. */
export function movedTable(
  table: PlaceTable,
  losses: ReadonlyMap<string, Vector>,
  moved: readonly Move[],
): PlaceTable {
  const sorted = sortedDraws(table.sorted.all.slice(), table.sorted.draws.length, losses.size);
  for (const [draw, losing] of sorted.draws.entries())
    for (const { from, to } of moved) replace(losing, valueAt(from, draw), valueAt(to, draw));
  return tableOf(losses, sorted);
}

/** Puts one value of an ascending list in the place of another and keeps it ascending. */
function replace(sorted: Vector, old: number, value: number): void {
  const from = countUpTo(sorted, old) - 1;
  const to = countUpTo(sorted, value);
  if (to > from) {
    sorted.copyWithin(from, from + 1, to);
    sorted[to - 1] = value;
  } else {
    sorted.copyWithin(to + 1, to, from);
    sorted[to] = value;
  }
}

function tableOf(losses: ReadonlyMap<string, Vector>, sorted: SortedDraws): PlaceTable {
  const lossOf = (lineId: string): Vector => {
    const vector = losses.get(lineId);
    if (!vector) throw new RangeError(`lineId must be a drawn line, got ${lineId}`);
    return vector;
  };
  const placeAt = (value: number, draw: number): number => {
    const losing = sorted.draws[draw];
    if (!losing) throw new RangeError(`draw must be below ${sorted.draws.length}, got ${draw}`);
    return losing.length - countUpTo(losing, value) + 1;
  };
  return {
    sorted,
    placesOf: (lineId) => lossOf(lineId).map(placeAt),
    placesIf: (lineId, changed) => {
      const own = changed.get(lineId) ?? lossOf(lineId);
      const moved = [...changed].map(([id, to]): Move => ({ from: lossOf(id), to }));
      return shifted(own.map(placeAt), own, moved);
    },
  };
}
