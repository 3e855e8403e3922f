import type { Vector } from "@/lib/risk/draws/drawing";
import type { DrawnLines, LineDraws } from "@/lib/risk/draws/drawLosses";
import type { Unknown } from "@/lib/risk/draws/linePlace";
import type { PlaceTable } from "@/lib/risk/draws/placeTable";
import { type Move, shifted } from "@/lib/risk/draws/shifted";
import { placePoints } from "@/lib/risk/draws/spanOf";
import { type Question, unknownQuestions } from "@/lib/risk/draws/unknownQuestions";

/** Draws enough to see a median place move by whole places. */
const MOST_DRAWS = 200;

export interface Weighing {
  readonly drawn: DrawnLines;
  readonly losses: ReadonlyMap<string, Vector>;
  readonly table: PlaceTable;
  readonly draws: number;
}

/** What a line loses with an unknown at one end, its place among the others, draw by draw, and the median of them. */
interface Settled {
  readonly loss: Vector;
  readonly places: Vector;
  readonly median: number;
}

/** An unknown of a line, settled at either end. */
interface Weighed {
  readonly question: Question;
  readonly low: Settled;
  readonly high: Settled;
}

/** The unknowns of each line that has any, by line. */
export type WeighedLines = ReadonlyMap<string, readonly Weighed[]>;

/** What was weighed before, and which lines lose something else since. */
export interface WeighedBefore {
  readonly weighed: WeighedLines;
  readonly moved: readonly Move[];
  hasMoved(lineId: string): boolean;
}

const medianOf = (places: Vector): number => placePoints(places).mid;

/** After others moved, a line with unknowns of its own alone is only moved along. */
function movedAlong(weighed: readonly Weighed[], { moved, hasMoved }: WeighedBefore): Weighed[] | null {
  if (weighed.some(({ question }) => [...question.low.keys()].some(hasMoved))) return null;
  const along = (settled: Settled): Settled => {
    const places = shifted(settled.places, settled.loss, moved);
    return places === settled.places ? settled : { ...settled, places, median: medianOf(places) };
  };
  return weighed.map(({ question, low, high }) => ({ question, low: along(low), high: along(high) }));
}

/**
 * What each line would lose, and which place it would have, were each of its unknowns found at one end or the other.
 *
 * All else stays as drawn, so that only the unknown speaks.
 */
export function weighUnknowns(weighing: Weighing, before?: WeighedBefore): WeighedLines {
  const { drawn: group, losses, table } = weighing;
  const questionsOf = unknownQuestions({ group, losses, draws: Math.min(weighing.draws, MOST_DRAWS) });
  const weigh = (drawn: LineDraws): Weighed[] => {
    const { id } = drawn.line;
    const settle = (changed: Question["low"]): Settled => {
      const places = table.placesIf(id, changed);
      return { loss: changed.get(id) as Vector, places, median: medianOf(places) };
    };
    return questionsOf(drawn).map((question) => ({
      question,
      low: settle(question.low),
      high: settle(question.high),
    }));
  };
  return new Map(
    group.lines.flatMap((drawn): [string, readonly Weighed[]][] => {
      const { id } = drawn.line;
      const known = before && !before.hasMoved(id) ? (before.weighed.get(id) ?? []) : null;
      const weighed = (before && known && movedAlong(known, before)) ?? weigh(drawn);
      return weighed.length === 0 ? [] : [[id, weighed]];
    }),
  );
}

/**
 * How far each unknown of a line alone would move it, the farthest first.
 *
 * @param places Places of the line as drawn.
 */
export function unknownsOf(weighed: readonly Weighed[] | undefined, places: Vector): readonly Unknown[] {
  if (!weighed) return [];
  const now = medianOf(places.subarray(0, MOST_DRAWS));
  return weighed
    .map(({ question: { kind, poolId, siteIds }, low, high }): Unknown => {
      const farthest = Math.max(Math.abs(low.median - now), Math.abs(high.median - now));
      const told = { kind, poolId, siteIds, placeAtLow: low.median, placeAtHigh: high.median };
      return { ...told, places: farthest };
    })
    .sort((a, b) => b.places - a.places);
}
