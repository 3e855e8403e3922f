import "server-only";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Assumptions } from "@/lib/risk/assumptions";
import { drawRanks } from "@/lib/risk/draws/drawRanks";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import type { GroupInput, GroupResult } from "@/lib/risk/evaluation";

/** A share is then within 5 points in 19 of 20 drawings at the worst, and a large group is drawn in some seconds. */
const DRAWS = 400;

/** The day as a whole number: who looks at the same day sees the same draws. */
function seedOf(asOf: IsoDate): number {
  return Number(asOf.replaceAll("-", ""));
}

/** How sure the place of each line with a cost per hour is, by line id. */
export function drawPlaces(
  input: GroupInput,
  assumptions: Assumptions,
  { lines }: GroupResult,
): ReadonlyMap<string, LinePlace> {
  const loss = (id: string) => losses.get(id) ?? 0;
  const losses = new Map(lines.map(({ lineId, stopLoss }) => [lineId, stopLoss?.mean ?? 0]));
  const order = [...losses.keys()].sort((a, b) => loss(b) - loss(a));
  const places = drawRanks(input, assumptions, { draws: DRAWS, seed: seedOf(input.asOf), order });
  return new Map(places.map((place) => [place.lineId, place]));
}
