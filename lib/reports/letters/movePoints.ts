import type { Outline, OutlinePart, OutlinePoint } from "@/lib/reports/letters/outline";
import type { PointMoves } from "@/lib/reports/letters/variation";

/** Points a glyph has for its metrics, after its own. */
export const METRIC_POINTS = 4;

interface Place {
  readonly x: number;
  readonly y: number;
}

/** An outline after its points moved, and by how much its width grew. */
export function moveOutline(
  outline: Outline,
  moves: readonly PointMoves[],
): { outline: Outline; wider: number } {
  const places: readonly Place[] =
    outline.kind === "points" ? outline.points : outline.kind === "parts" ? outline.parts : [];
  const ends = outline.kind === "points" ? outline.ends : places.map((_, place) => place);
  const shifts = sumOf(
    moves.map((one) => spread(one, { places, ends })),
    places.length + METRIC_POINTS,
  );
  const [left, right] = [shifts[places.length], shifts[places.length + 1]];
  const wider = Math.round((right?.x ?? 0) - (left?.x ?? 0));
  const moved = <T extends OutlinePoint | OutlinePart>(one: T, place: number): T => ({
    ...one,
    x: Math.round(one.x + (shifts[place]?.x ?? 0)),
    y: Math.round(one.y + (shifts[place]?.y ?? 0)),
  });
  if (outline.kind === "points") return { outline: { ...outline, points: outline.points.map(moved) }, wider };
  if (outline.kind === "parts") return { outline: { ...outline, parts: outline.parts.map(moved) }, wider };
  return { outline, wider };
}

function sumOf(all: readonly (readonly Place[])[], count: number): Place[] {
  return Array.from({ length: count }, (_, place) =>
    all.reduce(
      (sum, shifts) => ({ x: sum.x + (shifts[place]?.x ?? 0), y: sum.y + (shifts[place]?.y ?? 0) }),
      { x: 0, y: 0 },
    ),
  );
}

interface Shape {
  readonly places: readonly Place[];
  readonly ends: readonly number[];
}

/** The shift of every point: those named by what is said of them, those between by their neighbours on the contour. */
function spread({ share, points, xs, ys }: PointMoves, shape: Shape): Place[] {
  const { places, ends } = shape;
  const count = places.length + METRIC_POINTS;
  const named = new Map<number, Place>();
  for (let at = 0; at < xs.length; at += 1)
    named.set(points?.[at] ?? at, { x: share * (xs[at] ?? 0), y: share * (ys[at] ?? 0) });
  const shifts = Array.from({ length: count }, (_, place) => named.get(place) ?? { x: 0, y: 0 });
  if (points === null) return shifts;
  let start = 0;
  for (const end of ends) {
    fillContour({ start, end, named, places, shifts });
    start = end + 1;
  }
  return shifts;
}

interface Contour {
  readonly start: number;
  readonly end: number;
  readonly named: ReadonlyMap<number, Place>;
  readonly places: readonly Place[];
  readonly shifts: Place[];
}

function fillContour({ start, end, named, places, shifts }: Contour): void {
  const own = Array.from({ length: end - start + 1 }, (_, step) => start + step);
  const touched = own.filter((place) => named.has(place));
  if (touched.length === 0) return;
  for (const place of own) {
    if (named.has(place)) continue;
    const before = touched.findLast((one) => one < place) ?? touched.at(-1) ?? place;
    const after = touched.find((one) => one > place) ?? touched[0] ?? place;
    const [a, b, at] = [places[before], places[after], places[place]];
    const [moveA, moveB] = [named.get(before), named.get(after)];
    if (!a || !b || !at || !moveA || !moveB) continue;
    shifts[place] = {
      x: between(at.x, [a.x, moveA.x], [b.x, moveB.x]),
      y: between(at.y, [a.y, moveA.y], [b.y, moveB.y]),
    };
  }
}

type Known = readonly [at: number, shift: number];

/** The shift of a point between two whose shifts are known; beyond them it goes with the nearer. */
function between(at: number, first: Known, second: Known): number {
  const [[low, lowShift], [high, highShift]] = first[0] <= second[0] ? [first, second] : [second, first];
  if (low === high) return lowShift === highShift ? lowShift : 0;
  if (at <= low) return lowShift;
  if (at >= high) return highShift;
  return lowShift + ((at - low) / (high - low)) * (highShift - lowShift);
}
