import { pointOf, type Vector, valueAt } from "@/lib/risk/draws/drawing";
import type { DrawnSpan, LossSpan } from "@/lib/risk/draws/linePlace";

/** The 5 %, 50 % and 95 % points of the draws. */
export function pointsOf(vector: Vector): DrawnSpan {
  const sorted = vector.slice().sort();
  return { low: pointOf(sorted, 0.05), mid: pointOf(sorted, 0.5), high: pointOf(sorted, 0.95) };
}

/** The same points of places, which are whole from 1 up: counted, not sorted. */
export function placePoints(places: Vector, lines: number): DrawnSpan {
  const counts = new Uint32Array(lines + 1);
  for (let draw = 0; draw < places.length; draw += 1) {
    const place = valueAt(places, draw);
    counts[place] = (counts[place] as number) + 1;
  }
  const at = (p: number): number => {
    let place = 0;
    for (let left = Math.max(1, Math.ceil(p * places.length)); left > 0; left -= counts[place] as number)
      place += 1;
    return place;
  };
  return { low: at(0.05), mid: at(0.5), high: at(0.95) };
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
