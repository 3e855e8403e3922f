import type { Vector } from "@/lib/risk/draws/drawing";
import {
  type DrawnSpan,
  FRAGILE_PLACES,
  type LinePlace,
  type Neighbour,
  type Unknown,
} from "@/lib/risk/draws/linePlace";
import { placePoints, spanOf } from "@/lib/risk/draws/spanOf";

/** A line's losses and places, draw by draw, with what they are told of. */
export interface PlacedLine {
  readonly lineId: string;
  readonly seed: number;
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

function shareUpTo(places: Vector, last: number): number {
  let count = 0;
  for (let draw = 0; draw < places.length; draw += 1) if ((places[draw] as number) <= last) count += 1;
  return count / places.length;
}

const isSamePlace = (a: DrawnSpan, b: DrawnSpan): boolean =>
  a.low === b.low && a.mid === b.mid && a.high === b.high;

const isSameNeighbour = (a: Neighbour, b: Neighbour | undefined): boolean =>
  a.lineId === b?.lineId && a.side === b.side && a.before === b.before;

const isSameUnknown = (a: Unknown, b: Unknown | undefined): boolean =>
  a.kind === b?.kind &&
  a.poolId === b.poolId &&
  a.siteIds.join() === b.siteIds.join() &&
  a.placeAtLow === b.placeAtLow &&
  a.placeAtHigh === b.placeAtHigh &&
  a.places === b.places;

/** Whether the same is told; compared piece by piece, for it is asked of every line after every change. */
function isSame(a: LinePlace, b: LinePlace): boolean {
  return (
    a.stopLoss === b.stopLoss &&
    a.firstFive === b.firstFive &&
    isSamePlace(a.place, b.place) &&
    a.neighbours.length === b.neighbours.length &&
    a.neighbours.every((one, i) => isSameNeighbour(one, b.neighbours[i])) &&
    a.unknowns.length === b.unknowns.length &&
    a.unknowns.every((one, i) => isSameUnknown(one, b.unknowns[i]))
  );
}

/** How sure the place of a line is; of vectors told before nothing is computed again, and the same is the same object. */
export function placeLine(line: PlacedLine, before?: PlacedBefore): LinePlace {
  const { lineId, seed, loss, places, neighbours, unknowns } = line;
  const draws = places.length;
  const asBefore = before?.places === places ? before.place : null;
  const place: LinePlace = {
    ...{ lineId, draws, seed, place: asBefore?.place ?? placePoints(places) },
    firstFive: asBefore?.firstFive ?? shareUpTo(places, FIRST),
    stopLoss: before?.loss === loss ? before.place.stopLoss : spanOf(loss),
    neighbours,
    unknowns,
    fragile: (unknowns[0]?.places ?? 0) >= FRAGILE_PLACES,
  };
  return before && isSame(before.place, place) ? before.place : place;
}
