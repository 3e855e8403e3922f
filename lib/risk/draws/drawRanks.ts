import type { Assumptions } from "@/lib/risk/assumptions";
import type { Vector } from "@/lib/risk/draws/drawing";
import { type DrawnLines, drawLines, lossDraws, redrawLines } from "@/lib/risk/draws/drawLosses";
import { type DrawnTotals, drawTotals } from "@/lib/risk/draws/drawTotals";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import { neighbours } from "@/lib/risk/draws/neighbours";
import { type PlacedBefore, placeLine } from "@/lib/risk/draws/placeLine";
import { movedTable, type PlaceTable, placeTable } from "@/lib/risk/draws/placeTable";
import { type Move, shifted } from "@/lib/risk/draws/shifted";
import { meanOf } from "@/lib/risk/draws/spanOf";
import { stopShareOf } from "@/lib/risk/draws/stopShareOf";
import { unknownsOf, type WeighedLines, weighUnknowns } from "@/lib/risk/draws/weighUnknowns";
import type { GroupInput, LineResult, PoolInput } from "@/lib/risk/evaluation";

export interface DrawOptions {
  /** Whole, from 20 up: below that the 5 % point is not a point of the draws. */
  readonly draws: number;
  readonly seed: number;
  /** Ids of the lines as the ranking shows them, the dearest first: who is whose neighbour. By drawn mean when absent. */
  readonly order?: readonly string[];
  /** The evaluation's lines, for their stop shares; computed when absent and needed. */
  readonly lines?: readonly LineResult[];
}

/** What the draws say of the lines and of their sums. */
export interface GroupDraws {
  /** One entry for each line with a cost per hour, in the order of the input. */
  readonly places: readonly LinePlace[];
  readonly totals: DrawnTotals;
  /** What `redrawGroup` starts from. */
  readonly stages: DrawStages;
}

interface DrawStages extends Placed {
  readonly weighed: WeighedLines;
}

interface Placed {
  readonly drawn: DrawnLines;
  /** Losses and places of each line, draw by draw. */
  readonly losses: ReadonlyMap<string, Vector>;
  readonly placed: ReadonlyMap<string, Vector>;
  readonly table: PlaceTable;
}

const FEWEST_DRAWS = 20;

/** The drawn lines in the order of the ranking. */
function orderOf(losses: ReadonlyMap<string, Vector>, given: DrawOptions["order"]): readonly string[] {
  if (given) return given;
  const means = new Map([...losses].map(([id, vector]) => [id, meanOf(vector).mean]));
  const ids = [...losses.keys()].sort();
  return ids.sort((a, b) => (means.get(b) ?? 0) - (means.get(a) ?? 0));
}

function requireOptions({ draws, seed }: DrawOptions): void {
  if (!(Number.isSafeInteger(draws) && draws >= FEWEST_DRAWS))
    throw new RangeError(`draws must be a whole number from ${FEWEST_DRAWS} up, got ${draws}`);
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seed must be an integer, got ${seed}`);
}

/**
 * How sure the ranking by loss and the sums of it are: every uncertain quantity is drawn, the lines are ranked, and this is done again and again.
 *
 * Drawn: removal and failure rates from their gamma posteriors, median hours to restore, cost per hour by its evidence,
 * working spares, lots nobody counted, whether an undated part can be ordered, the no-spare chance of unidentified parts.
 * All lines of a draw share the same draw of what they share, so what is common to two lines does not part them. Each
 * quantity has a stream of its own name: one more line or one settled question shifts no other draw.
 *
 * The mean loss agrees with the evaluation's, but where lots are not counted: it takes them as none.
 *
 * @throws {RangeError} naming the argument and its value.
 */
export function drawGroup(input: GroupInput, assumptions: Assumptions, options: DrawOptions): GroupDraws {
  requireOptions(options);
  const { draws, seed } = options;
  const shareOf = stopShareOf(input, assumptions, options.lines);
  const drawn = drawLines({ input, assumptions, draws, seed }, shareOf);
  const losses = new Map(drawn.lines.map((line) => [line.line.id, lossDraws(line)]));
  const table = placeTable(losses, draws);
  const placed = new Map([...losses.keys()].map((id) => [id, table.placesOf(id)]));
  return told({ drawn, losses, placed, table }, options);
}

/** A change of some pools, with the whole changed input. */
export interface DrawChange {
  readonly input: GroupInput;
  readonly changed: readonly PoolInput[];
}

/**
 * Draws again after a change of some pools: to the last bit what `drawGroup` gives for the changed input.
 *
 * @param options The options of before, with the lines and their order as they are now.
 */
export function redrawGroup(
  previous: GroupDraws,
  { input, changed }: DrawChange,
  options: DrawOptions,
): GroupDraws {
  const before = previous.stages;
  const { assumptions } = before.drawn.shared.drawing;
  const drawn = redrawLines(before.drawn, changed, stopShareOf(input, assumptions, options.lines));
  const redone = drawn.lines.filter((line, i) => line !== before.drawn.lines[i]).map(({ line }) => line.id);
  const fresh = new Set(redone);
  const losses = new Map(
    drawn.lines.map((line): [string, Vector] => {
      const id = line.line.id;
      return [id, fresh.has(id) ? lossDraws(line) : vectorOf(before.losses, id)];
    }),
  );
  const moved = redone.map((id) => ({ from: vectorOf(before.losses, id), to: vectorOf(losses, id) }));
  const table = movedTable(before.table, losses, moved);
  const placed = new Map(
    [...losses].map(([id, loss]) => [
      id,
      fresh.has(id) ? table.placesOf(id) : shifted(vectorOf(before.placed, id), loss, moved),
    ]),
  );
  return told({ drawn, losses, placed, table }, { ...options, before: { draws: previous, moved } });
}

function vectorOf(vectors: ReadonlyMap<string, Vector>, lineId: string): Vector {
  const vector = vectors.get(lineId);
  if (!vector) throw new RangeError(`lineId must be a drawn line, got ${lineId}`);
  return vector;
}

interface Telling extends DrawOptions {
  readonly before?: { readonly draws: GroupDraws; readonly moved: readonly Move[] };
}

function placedBefore(before: GroupDraws | undefined): ReadonlyMap<string, PlacedBefore> {
  if (!before) return new Map();
  const { losses, placed } = before.stages;
  return new Map(
    before.places.map((place) => {
      const { lineId } = place;
      return [lineId, { place, loss: vectorOf(losses, lineId), places: vectorOf(placed, lineId) }];
    }),
  );
}

/** What is told of the draws: only what changed is told anew. */
function told(stages: Placed, options: Telling): GroupDraws {
  const { draws, seed, order, before } = options;
  const { drawn, losses, placed } = stages;
  const { lines } = drawn;
  const earlier = placedBefore(before?.draws);
  const hasMoved = (lineId: string) => earlier.get(lineId)?.loss !== losses.get(lineId);
  const neighboursOf = neighbours(orderOf(losses, order), losses, {
    of: (lineId) => earlier.get(lineId)?.place.neighbours ?? [],
    hasMoved,
  });
  const weighed = weighUnknowns(
    { ...stages, drawn, draws },
    before && { weighed: before.draws.stages.weighed, moved: before.moved, hasMoved },
  );
  const places = lines.map(({ line: { id: lineId } }): LinePlace => {
    const vectors = { loss: vectorOf(losses, lineId), places: vectorOf(placed, lineId) };
    const line = { lineId, seed, ...vectors };
    const unknowns = unknownsOf(weighed.get(lineId), vectors.places);
    return placeLine({ ...line, neighbours: neighboursOf(lineId), unknowns }, earlier.get(lineId));
  });
  const totals = drawTotals(drawn.shared.drawing.input.lines, losses);
  return { places, totals, stages: { ...stages, weighed } };
}

/** The places alone; see `drawGroup`. */
export function drawRanks(
  input: GroupInput,
  assumptions: Assumptions,
  options: DrawOptions,
): readonly LinePlace[] {
  return drawGroup(input, assumptions, options).places;
}
