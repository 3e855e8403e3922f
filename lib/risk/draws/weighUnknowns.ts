import { quantile, type Vector, valueAt } from "@/lib/risk/draws/drawing";
import { type Fixed, type LineDraws, lossWith } from "@/lib/risk/draws/drawLosses";
import type { Unknown } from "@/lib/risk/draws/linePlace";
import type { PlaceTable } from "@/lib/risk/draws/placeTable";
import { placePoints } from "@/lib/risk/draws/spanOf";
import { isUnidentified } from "@/lib/risk/poolOutlook";

/** Draws enough to see a median place move by whole places; the first ones, so that they are common to all. */
const MOST_DRAWS = 200;
const LOW = 0.05;
const HIGH = 0.95;

type Losses = ReadonlyMap<string, Vector>;

export interface Weighing {
  readonly lines: readonly LineDraws[];
  readonly losses: Losses;
  readonly table: PlaceTable;
  readonly draws: number;
}

/** Median place of a line when some lines lose something else. */
function medianPlace({ losses, table, draws }: Weighing, lineId: string, changed: Losses): number {
  return placePoints(table.placesIf(lineId, changed, Math.min(draws, MOST_DRAWS)), losses.size).mid;
}

interface Question extends Pick<Unknown, "kind" | "poolId" | "siteIds"> {
  readonly low: Losses;
  readonly high: Losses;
}

const isOpenCost = ({ line }: LineDraws) =>
  line.costEvidence === "inferred" || line.costEvidence === "assumed";

function costQuestion(drawn: LineDraws, losses: Losses): Question[] {
  const own = losses.get(drawn.line.id);
  if (!own || !isOpenCost(drawn)) return [];
  const at = (p: number): Losses => {
    const fixed = quantile(drawn.costFactor, p);
    return new Map([[drawn.line.id, own.map((loss, i) => (loss / valueAt(drawn.costFactor, i)) * fixed)]]);
  };
  return [{ kind: "cost", poolId: null, siteIds: [], low: at(LOW), high: at(HIGH) }];
}

/** What a line loses with one no-spare chance set to something else. */
function settled(drawn: LineDraws, losses: Losses, fixed: Fixed): [string, Vector] {
  const { id } = drawn.line;
  const own = losses.get(id);
  if (!own) throw new RangeError(`lineId must be a drawn line, got ${id}`);
  return [id, lossWith(drawn, own, fixed)];
}

function partQuestions(drawn: LineDraws, losses: Losses): Question[] {
  return drawn.pools
    .filter(({ poolId }) => isUnidentified(poolId))
    .map(({ poolId, noSpare }) => {
      const at = (p: number): Losses => {
        const fixed = new Float64Array(noSpare.length).fill(quantile(noSpare, p));
        return new Map([settled(drawn, losses, { poolId, noSpare: fixed })]);
      };
      return { kind: "part", poolId, siteIds: [], low: at(LOW), high: at(HIGH) };
    });
}

interface Sharing {
  readonly uncounted: NonNullable<LineDraws["pools"][number]["uncounted"]>;
  readonly lines: LineDraws[];
}

/** What every line that shares an uncounted pool would lose were its lots empty, or full: one answer for all of them. */
function stockQuestions({ lines, losses }: Weighing): Map<string, Question> {
  const sharing = new Map<string, Sharing>();
  for (const drawn of lines)
    for (const { poolId, uncounted } of drawn.pools) {
      if (!uncounted) continue;
      const shared = sharing.get(poolId) ?? { uncounted, lines: [] };
      shared.lines.push(drawn);
      sharing.set(poolId, shared);
    }
  return new Map(
    [...sharing].map(([poolId, { uncounted, lines: users }]) => {
      const at = (noSpare: Vector): Losses =>
        new Map(users.map((drawn) => settled(drawn, losses, { poolId, noSpare })));
      const { siteIds, atNone, atMost } = uncounted;
      return [poolId, { kind: "stock", poolId, siteIds, low: at(atNone), high: at(atMost) }];
    }),
  );
}

/**
 * How far each unknown of a line alone would move it, were it found at its 5 % or its 95 % point.
 *
 * Lots nobody counted are found empty or at their most. All else stays as drawn, so that only the unknown speaks.
 */
export function weighUnknowns(weighing: Weighing): (drawn: LineDraws) => Unknown[] {
  const { losses } = weighing;
  const stock = stockQuestions(weighing);
  const nothing: Losses = new Map();
  return (drawn) => {
    const shelves = stock.size === 0 ? [] : drawn.pools.flatMap(({ poolId }) => stock.get(poolId) ?? []);
    const questions = [...costQuestion(drawn, losses), ...shelves, ...partQuestions(drawn, losses)];
    if (questions.length === 0) return [];
    const { id } = drawn.line;
    const now = medianPlace(weighing, id, nothing);
    return questions
      .map(({ kind, poolId, siteIds, low, high }): Unknown => {
        const placeAtLow = medianPlace(weighing, id, low);
        const placeAtHigh = medianPlace(weighing, id, high);
        const places = Math.max(Math.abs(placeAtLow - now), Math.abs(placeAtHigh - now));
        return { kind, poolId, siteIds, placeAtLow, placeAtHigh, places };
      })
      .sort((a, b) => b.places - a.places);
  };
}
