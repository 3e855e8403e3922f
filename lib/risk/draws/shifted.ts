import { type Vector, valueAt } from "@/lib/risk/draws/drawing";

/** Losses of a line before and after a change. */
export interface Move {
  readonly from: Vector;
  readonly to: Vector;
}

/**
 * Places of a loss after other lines lose something else: one down for each that now loses more, one up for each that
 * no longer does.
 *
 * @returns The same vector when none of them passed it in any draw.
 */
export function shifted(places: Vector, loss: Vector, moved: readonly Move[]): Vector {
  let out = places;
  for (const { from, to } of moved)
    for (let draw = 0; draw < places.length; draw += 1) {
      const own = valueAt(loss, draw);
      const passed = Number(valueAt(to, draw) > own) - Number(valueAt(from, draw) > own);
      if (passed === 0) continue;
      if (out === places) out = places.slice();
      out[draw] = valueAt(out, draw) + passed;
    }
  return out;
}
