import { type Vector, valueAt } from "@/lib/risk/draws/drawing";
import type { Neighbour } from "@/lib/risk/draws/linePlace";

const NEIGHBOURS = 2;

/** Share of the draws in which the first loss is the larger; equal ones count half. */
function shareBefore(own: Vector, other: Vector): number {
  let before = 0;
  for (let i = 0; i < own.length; i += 1) {
    const loss = valueAt(own, i);
    const against = valueAt(other, i);
    if (loss > against) before += 1;
    else if (loss === against) before += 0.5;
  }
  return before / own.length;
}

/** What was told before, and whose losses have changed since. */
export interface ToldBefore {
  of(lineId: string): readonly Neighbour[];
  hasMoved(lineId: string): boolean;
}

/**
 * The nearest lines of each line in the ranking, and how it fares against them.
 *
 * @param order Ids of the lines, the dearest first; those not drawn are nobody's neighbour.
 */
export function neighbours(
  order: readonly string[],
  losses: ReadonlyMap<string, Vector>,
  before?: ToldBefore,
): (lineId: string) => readonly Neighbour[] {
  const ranked = order.filter((id) => losses.has(id));
  const places = new Map(ranked.map((id, place) => [id, place]));
  const againstOf = (lineId: string, id: string): number => {
    const old = before && !before.hasMoved(lineId) && !before.hasMoved(id) ? before.of(lineId) : [];
    const known = old.find((neighbour) => neighbour.lineId === id);
    return known?.before ?? shareBefore(losses.get(lineId) as Vector, losses.get(id) as Vector);
  };
  return (lineId) => {
    const place = places.get(lineId);
    if (place === undefined) return [];
    const from = Math.max(0, place - NEIGHBOURS);
    return ranked.slice(from, place + NEIGHBOURS + 1).flatMap((id, i): Neighbour[] => {
      if (id === lineId) return [];
      return [{ lineId: id, side: from + i < place ? "above" : "below", before: againstOf(lineId, id) }];
    });
  };
}
