import { type Vector, valueAt } from "@/lib/risk/draws/drawing";

/** The losses of all lines in every draw, ready to place a loss among them. */
export interface PlaceTable {
  /** Place from 1 of a line's own loss in a draw: one more than the lines that lose more. */
  placeOf(lineId: string, draw: number): number;
  /** The same had the lines of `changed` lost that instead. */
  placeIf(lineId: string, draw: number, changed: ReadonlyMap<string, Vector>): number;
}

/** How many of an ascending list exceed a value. */
function countAbove(sorted: Vector, value: number): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (valueAt(sorted, middle) <= value) low = middle + 1;
    else high = middle;
  }
  return sorted.length - low;
}

/** Sorts every draw once. */
export function placeTable(losses: ReadonlyMap<string, Vector>, draws: number): PlaceTable {
  const vectors = [...losses.values()];
  const byDraw = Array.from({ length: draws }, (_, draw) =>
    Float64Array.from(vectors, (vector) => valueAt(vector, draw)).sort(),
  );
  const sortedAt = (draw: number): Vector => {
    const sorted = byDraw[draw];
    if (!sorted) throw new RangeError(`draw must be below ${draws}, got ${draw}`);
    return sorted;
  };
  const lossOf = (lineId: string, from: ReadonlyMap<string, Vector>, draw: number): number => {
    const vector = from.get(lineId) ?? losses.get(lineId);
    if (!vector) throw new RangeError(`lineId must be a drawn line, got ${lineId}`);
    return valueAt(vector, draw);
  };
  const placeIf: PlaceTable["placeIf"] = (lineId, draw, changed) => {
    const value = lossOf(lineId, changed, draw);
    let above = countAbove(sortedAt(draw), value);
    for (const [id, vector] of changed) {
      if (lossOf(id, losses, draw) > value) above -= 1;
      if (valueAt(vector, draw) > value) above += 1;
    }
    return above + 1;
  };
  return {
    placeOf: (lineId, draw) => countAbove(sortedAt(draw), lossOf(lineId, losses, draw)) + 1,
    placeIf,
  };
}
