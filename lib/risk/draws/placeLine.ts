import type { Vector } from "@/lib/risk/draws/drawing";
import { FRAGILE_PLACES, type LinePlace, type Neighbour, type Unknown } from "@/lib/risk/draws/linePlace";
import { placePoints, spanOf } from "@/lib/risk/draws/spanOf";

/** A line's losses and places, draw by draw, with what they are told of. */
export interface PlacedLine {
  readonly lineId: string;
  readonly seed: number;
  /** How many lines are drawn. */
  readonly lines: number;
  readonly loss: Vector;
  readonly places: Vector;
  readonly neighbours: readonly Neighbour[];
  readonly unknowns: readonly Unknown[];
}

/** The vectors of an earlier drawing, and what was told of them. */
export interface PlacedBefore extends Pick<PlacedLine, "loss" | "places"> {
  readonly place: LinePlace;
}

const FIRST = 5;

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** How sure the place of a line is; of vectors told before nothing is computed again, and the same is the same object. */
export function placeLine(line: PlacedLine, before?: PlacedBefore): LinePlace {
  const { lineId, seed, lines, loss, places, neighbours, unknowns } = line;
  const draws = places.length;
  const asBefore = before?.places === places ? before.place : null;
  const place: LinePlace = {
    ...{ lineId, draws, seed, place: asBefore?.place ?? placePoints(places, lines) },
    firstFive: asBefore?.firstFive ?? places.filter((one) => one <= FIRST).length / draws,
    stopLoss: before?.loss === loss ? before.place.stopLoss : spanOf(loss),
    neighbours,
    unknowns,
    fragile: (unknowns[0]?.places ?? 0) >= FRAGILE_PLACES,
  };
  return before && isSame(before.place, place) ? before.place : place;
}
