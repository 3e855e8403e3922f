import type { Assumptions } from "@/lib/risk/assumptions";
import { pointOf, type Vector, valueAt } from "@/lib/risk/draws/drawing";
import { drawLines, type LineDraws, lossDraws } from "@/lib/risk/draws/drawLosses";
import { type DrawnSpan, FRAGILE_PLACES, type LinePlace, type Neighbour } from "@/lib/risk/draws/linePlace";
import { type PlaceTable, placeTable } from "@/lib/risk/draws/placeTable";
import { weighUnknowns } from "@/lib/risk/draws/weighUnknowns";
import type { GroupInput } from "@/lib/risk/evaluation";

export interface DrawOptions {
  /** Whole, from 20 up: below that the 5 % point is not a point of the draws. */
  readonly draws: number;
  readonly seed: number;
  /** Ids of the lines as the ranking shows them, the dearest first: who is whose neighbour. By drawn mean when absent. */
  readonly order?: readonly string[];
}

const FEWEST_DRAWS = 20;
const NEIGHBOURS = 2;
const FIRST = 5;

function spanOf(vector: Vector): DrawnSpan {
  const sorted = vector.slice().sort();
  return { low: pointOf(sorted, 0.05), mid: pointOf(sorted, 0.5), high: pointOf(sorted, 0.95) };
}

function meanOf(vector: Vector): { mean: number; error: number } {
  let sum = 0;
  for (const value of vector) sum += value;
  const mean = sum / vector.length;
  let squares = 0;
  for (const value of vector) squares += (value - mean) ** 2;
  return { mean, error: Math.sqrt(squares / (vector.length - 1) / vector.length) };
}

function shareBefore(own: Vector, other: Vector): number {
  let before = 0;
  for (const [i, loss] of own.entries()) {
    const against = valueAt(other, i);
    if (loss > against) before += 1;
    else if (loss === against) before += 0.5;
  }
  return before / own.length;
}

/** The drawn lines in the order of the ranking; what it leaves out is not drawn against anyone. */
function orderOf(losses: ReadonlyMap<string, Vector>, given: DrawOptions["order"]): string[] {
  if (given) return given.filter((id) => losses.has(id));
  const means = new Map([...losses].map(([id, vector]) => [id, meanOf(vector).mean]));
  const ids = [...losses.keys()].sort();
  return ids.sort((a, b) => (means.get(b) ?? 0) - (means.get(a) ?? 0));
}

function neighboursOf(
  lineId: string,
  order: readonly string[],
  losses: ReadonlyMap<string, Vector>,
): Neighbour[] {
  const at = order.indexOf(lineId);
  const own = losses.get(lineId);
  if (at < 0 || !own) return [];
  return order.slice(Math.max(0, at - NEIGHBOURS), at + NEIGHBOURS + 1).flatMap((id, i): Neighbour[] => {
    const other = losses.get(id);
    if (id === lineId || !other) return [];
    const side = Math.max(0, at - NEIGHBOURS) + i < at ? "above" : "below";
    return [{ lineId: id, side, before: shareBefore(own, other) }];
  });
}

function placesOf(table: PlaceTable, lineId: string, draws: number): Vector {
  return new Float64Array(draws).map((_, draw) => table.placeOf(lineId, draw));
}

function requireOptions({ draws, seed }: DrawOptions): void {
  if (!(Number.isSafeInteger(draws) && draws >= FEWEST_DRAWS))
    throw new RangeError(`draws must be a whole number from ${FEWEST_DRAWS} up, got ${draws}`);
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seed must be an integer, got ${seed}`);
}

/**
 * How sure the ranking by loss is: every uncertain quantity is drawn, the lines are ranked, and this is done again and again.
 *
 * Drawn: removal and failure rates from their gamma posteriors, median hours to restore, cost per hour by its evidence,
 * working spares, lots nobody counted, whether an undated part can be ordered, the no-spare chance of unidentified parts.
 * All lines of a draw share the same draw of what they share, so what is common to two lines does not part them. Each
 * quantity has a stream of its own name: one more line or one settled question shifts no other draw.
 *
 * The mean loss agrees with the evaluation's, but where lots are not counted: it takes them as none.
 *
 * @returns One entry for each line with a cost per hour, in the order of the input.
 * @throws {RangeError} naming the argument and its value.
 */
export function drawRanks(input: GroupInput, assumptions: Assumptions, options: DrawOptions): LinePlace[] {
  requireOptions(options);
  const { draws, seed } = options;
  const lines = drawLines({ input, assumptions, draws, seed });
  const losses = new Map(lines.map((drawn) => [drawn.line.id, lossDraws(drawn, null)]));
  const table = placeTable(losses, draws);
  const order = orderOf(losses, options.order);
  const unknownsOf = weighUnknowns({ lines, losses, table, draws });
  return lines.map((drawn: LineDraws): LinePlace => {
    const lineId = drawn.line.id;
    const loss = losses.get(lineId) ?? new Float64Array(draws);
    const places = placesOf(table, lineId, draws);
    const unknowns = unknownsOf(drawn);
    return {
      ...{ lineId, draws, seed, place: spanOf(places) },
      firstFive: places.filter((place) => place <= FIRST).length / draws,
      stopLoss: { ...spanOf(loss), ...meanOf(loss) },
      neighbours: neighboursOf(lineId, order, losses),
      unknowns,
      fragile: (unknowns[0]?.places ?? 0) >= FRAGILE_PLACES,
    };
  });
}
