import { pointOf, type Vector, valueAt } from "@/lib/risk/draws/drawing";
import type { DrawnSpan, LossSpan } from "@/lib/risk/draws/linePlace";

/** The 5 %, 50 % and 95 % points of the draws. */
export function pointsOf(vector: Vector): DrawnSpan {
  const sorted = vector.slice().sort();
  return { low: pointOf(sorted, 0.05), mid: pointOf(sorted, 0.5), high: pointOf(sorted, 0.95) };
}

/** The same points of places, which are whole: counted between the first and the last of them, not sorted. */
export function placePoints(places: Vector): DrawnSpan {
  let first = Number.POSITIVE_INFINITY;
  let last = 0;
  for (let draw = 0; draw < places.length; draw += 1) {
    const place = valueAt(places, draw);
    if (place < first) first = place;
    if (place > last) last = place;
  }
  const counts = new Uint32Array(last - first + 1);
  for (let draw = 0; draw < places.length; draw += 1) {
    const place = valueAt(places, draw) - first;
    counts[place] = (counts[place] as number) + 1;
  }
  let place = 0;
  let reached = counts[0] as number;
  const upTo = (p: number): number => {
    for (const wanted = Math.max(1, Math.ceil(p * places.length)); reached < wanted; ) {
      place += 1;
      reached += counts[place] as number;
    }
    return first + place;
  };
  const [low, mid, high] = [upTo(0.05), upTo(0.5), upTo(0.95)];
  return { low, mid, high };
}

/** Mean of the draws and its standard error. */
export function meanOf(vector: Vector): { mean: number; error: number } {
  let sum = 0;
  for (const value of vector) sum += value;
  const mean = sum / vector.length;
  let squares = 0;
  for (const value of vector) squares += (value - mean) ** 2;
  return { mean, error: Math.sqrt(squares / (vector.length - 1) / vector.length) };
}

/** Both. */
export function spanOf(vector: Vector): LossSpan {
  return { ...pointsOf(vector), ...meanOf(vector) };
}
