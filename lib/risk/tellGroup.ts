import type { Assumptions } from "@/lib/risk/assumptions";
import type { DrawnTotals } from "@/lib/risk/draws/drawTotals";
import { type EvaluatedGroup, evaluateGroup, reevaluateGroup } from "@/lib/risk/evaluateGroup";
import type { GroupInput, PoolInput } from "@/lib/risk/evaluation";
import { type ChangedLine, changedLines, type PoolToStore, poolsToStore } from "@/lib/risk/evaluationRows";

/** Lines as one text of JSON, a list of rows: many at once cross between threads and into a statement as they are. */
export interface PackedLines {
  readonly lineIds: readonly string[];
  readonly text: string;
}

/** Pools alike; their chances by month lie one after the other beside the text, so many for each. */
export interface PackedPools {
  readonly partIds: readonly string[];
  readonly text: string;
  readonly months: Float64Array;
  readonly each: number;
}

/** What is to be stored of an evaluation: everything, or what a change moved. */
export interface GroupRows {
  readonly totals: DrawnTotals;
  readonly lines: readonly PackedLines[];
  readonly pools: readonly PackedPools[];
}

/** An evaluation to step on from, and what is to be stored of it. */
export interface ToldGroup {
  readonly group: EvaluatedGroup;
  readonly rows: GroupRows;
}

/** A change of some pools and nothing else. */
export interface PoolChange {
  readonly changed: readonly PoolInput[];
  /** Lines somebody else has stored since the evaluation stepped on from. */
  readonly others: readonly string[];
}

/** So many rows go in one text: few trips, and none of many megabytes. */
const ROWS_AT_ONCE = 1000;

/** The whole group, evaluated and packed. */
export function tellWhole(input: GroupInput, assumptions: Assumptions): ToldGroup {
  const group = evaluateGroup(input, assumptions);
  return { group, rows: rowsOf(group, group.lines, poolsToStore(group.staged.result.pools)) };
}

/** The group after a change of some pools; null when one of them is not among those known, or nobody used it before. */
export function tellStep(before: EvaluatedGroup, { changed, others }: PoolChange): ToldGroup | null {
  const { ground, pools } = before.staged;
  const isThere = ({ id, stock }: PoolInput) => pools.has(id) && (ground.units.has(id) || stock.length > 0);
  if (!changed.every(isThere)) return null;
  const group = reevaluateGroup(before, changed);
  const moved = changed.flatMap((pool) => group.staged.pools.get(pool.id)?.result ?? []);
  const lines = changedLines(before.lines, group.lines, new Set(others));
  return { group, rows: rowsOf(group, lines, poolsToStore(moved)) };
}

function rowsOf(
  { drawn }: EvaluatedGroup,
  lines: readonly ChangedLine[],
  pools: readonly PoolToStore[],
): GroupRows {
  return {
    totals: drawn.totals,
    lines: inParts(lines).map((some) => ({
      lineIds: some.map(({ lineId }) => lineId),
      text: JSON.stringify(some),
    })),
    pools: inParts(pools).map(packedPools),
  };
}

function packedPools(some: readonly PoolToStore[]): PackedPools {
  const each = some[0]?.noSpareByMonth.length ?? 0;
  if (some.some(({ noSpareByMonth }) => noSpareByMonth.length !== each))
    throw new RangeError(`noSpareByMonth must be as long for every pool, got other lengths than ${each}`);
  const months = new Float64Array(some.length * each);
  some.forEach(({ noSpareByMonth }, i) => {
    months.set(noSpareByMonth, i * each);
  });
  return {
    partIds: some.map(({ partId }) => partId),
    text: JSON.stringify(some.map(({ partId, result }) => ({ partId, result }))),
    months,
    each,
  };
}

function inParts<T>(rows: readonly T[]): (readonly T[])[] {
  return Array.from({ length: Math.ceil(rows.length / ROWS_AT_ONCE) }, (_, part) =>
    rows.slice(part * ROWS_AT_ONCE, (part + 1) * ROWS_AT_ONCE),
  );
}
