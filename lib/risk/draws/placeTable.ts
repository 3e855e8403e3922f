import { type Vector, valueAt } from "@/lib/risk/draws/drawing";

/** The losses of all lines in every draw, ready to place a loss among them. */
export interface PlaceTable {
  /** Place from 1 of a line's own loss in each draw: one more than the lines that lose more. */
  placesOf(lineId: string): Vector;
  /** The same in the first draws, had the lines of `changed` lost that instead. */
  placesIf(lineId: string, changed: ReadonlyMap<string, Vector>, draws: number): Vector;
  /** The losses of each draw, ascending. */
  readonly sorted: readonly Vector[];
}

/** Losses of a line before and after a change. */
export interface Move {
  readonly from: Vector;
  readonly to: Vector;
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

/** Sorts every draw once. */
export function placeTable(losses: ReadonlyMap<string, Vector>, draws: number): PlaceTable {
  const vectors = [...losses.values()];
  const sorted = Array.from({ length: draws }, (_, draw) =>
    Float64Array.from(vectors, (vector) => valueAt(vector, draw)).sort(),
  );
  return tableOf(losses, sorted);
}

/** The table after some lines lose something else: each draw stays in order but for them. */
export function movedTable(
  table: PlaceTable,
  losses: ReadonlyMap<string, Vector>,
  moved: readonly Move[],
): PlaceTable {
  const sorted = table.sorted.map((losing, draw) => {
    const out = losing.slice();
    for (const { from, to } of moved) replace(out, valueAt(from, draw), valueAt(to, draw));
    return out;
  });
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

function tableOf(losses: ReadonlyMap<string, Vector>, sorted: readonly Vector[]): PlaceTable {
  const lossOf = (lineId: string): Vector => {
    const vector = losses.get(lineId);
    if (!vector) throw new RangeError(`lineId must be a drawn line, got ${lineId}`);
    return vector;
  };
  const placeAt = (draw: number, value: number): number => {
    const losing = sorted[draw];
    if (!losing) throw new RangeError(`draw must be below ${sorted.length}, got ${draw}`);
    return losing.length - countUpTo(losing, value) + 1;
  };
  return {
    sorted,
    placesOf: (lineId) => lossOf(lineId).map((value, draw) => placeAt(draw, value)),
    placesIf: (lineId, changed, draws) => {
      const own = changed.get(lineId) ?? lossOf(lineId);
      const moves = [...changed].map(([id, to]): Move => ({ from: lossOf(id), to }));
      return own.slice(0, draws).map((value, draw) => {
        let place = placeAt(draw, value);
        for (const { from, to } of moves)
          place += Number(valueAt(to, draw) > value) - Number(valueAt(from, draw) > value);
        return place;
      });
    },
  };
}
