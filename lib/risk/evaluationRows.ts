import type { LinePlace } from "@/lib/risk/draws/linePlace";
import type { GroupResult, LineResult, PoolFigures, PoolResult, Span } from "@/lib/risk/evaluation";
import { isUnidentified } from "@/lib/risk/poolOutlook";

/** A line as it is stored. */
export interface LineToStore {
  readonly lineId: string;
  readonly rankByLoss: number | null;
  readonly rankByScore: number;
  readonly result: LineResult;
  readonly place: LinePlace | null;
}

/** A line to store anew; one whose place or rank alone changed goes without its result. */
export type ChangedLine = Omit<LineToStore, "result"> & Partial<Pick<LineToStore, "result">>;

/** A pool as it is stored: its chances by month beside the rest, which most readers do without. */
export interface PoolToStore {
  readonly partId: string;
  readonly result: PoolFigures;
  readonly noSpareByMonth: readonly number[];
}

const NUMBERS_A_MONTH = 3;

export function linesToStore(
  { lines }: Pick<GroupResult, "lines">,
  places: ReadonlyMap<string, LinePlace>,
): LineToStore[] {
  const byLoss = ranksBy(lines, (line) => line.stopLoss?.mean ?? null);
  const byScore = ranksBy(lines, (line) => line.score);
  return lines.map((result, i) => ({
    lineId: result.lineId,
    rankByLoss: byLoss[i] ?? null,
    rankByScore: byScore[i] ?? lines.length,
    result,
    place: places.get(result.lineId) ?? null,
  }));
}

/**
 * The lines to store after a change of some pools, in their order.
 *
 * @param others Lines somebody else has stored since: those go whole, whether they changed here or not.
 */
export function changedLines(
  before: readonly LineToStore[],
  now: readonly LineToStore[],
  others: ReadonlySet<string>,
): ChangedLine[] {
  return now.flatMap((line, i): ChangedLine[] => {
    const old = before[i];
    if (old?.result !== line.result || others.has(line.lineId)) return [line];
    const { result: _, ...rest } = line;
    const isSame =
      old.place === line.place && old.rankByLoss === line.rankByLoss && old.rankByScore === line.rankByScore;
    return isSame ? [] : [rest];
  });
}

/** Those of parts: a place nobody has read is no part. */
export function poolsToStore(pools: readonly PoolResult[]): PoolToStore[] {
  return pools
    .filter(({ poolId }) => !isUnidentified(poolId))
    .map(({ noSpareByMonth, ...result }) => ({
      partId: result.poolId,
      result,
      noSpareByMonth: noSpareByMonth.flatMap(({ mean, low, high }) => [mean, low, high]),
    }));
}

/** The chances by month from what is stored of them. */
export function monthsStored(numbers: readonly number[]): Span[] {
  return Array.from({ length: numbers.length / NUMBERS_A_MONTH }, (_, month) => {
    const [mean = 0, low = 0, high = 0] = numbers.slice(
      month * NUMBERS_A_MONTH,
      (month + 1) * NUMBERS_A_MONTH,
    );
    return { mean, low, high };
  });
}

/** Rank of each line from 1, largest first; equal values share a rank; unknown has none. */
function ranksBy(
  lines: readonly LineResult[],
  value: (line: LineResult) => number | null,
): (number | null)[] {
  const values = lines.map(value);
  const sorted = values.filter((v) => v !== null).sort((a, b) => b - a);
  const rank = new Map<number, number>();
  sorted.forEach((v, i) => {
    if (!rank.has(v)) rank.set(v, i + 1);
  });
  return values.map((v) => (v === null ? null : (rank.get(v) ?? null)));
}
