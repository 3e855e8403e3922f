import { LIMITS } from "@/lib/intake/limits";
import type { RawCell } from "@/lib/intake/reading";

/** Cells merged over several rows: the first column, and the rows from 0. */
export interface Span {
  readonly column: number;
  readonly fromRow: number;
  readonly toRow: number;
}

/** The span of a reference such as A2:C5; null when it is none or stays in one row. */
export function spanOf(reference: string, columnOf: (place: string) => number | null): Span | null {
  const [, first = "", from = "", to = ""] = /^([A-Z]+)(\d+):[A-Z]+(\d+)$/.exec(reference) ?? [];
  const column = columnOf(first);
  return column === null || Number(to) <= Number(from)
    ? null
    : { column, fromRow: Number(from) - 1, toRow: Number(to) - 1 };
}

/**
 * Puts a value merged over several rows into each of them: a site written once beside its ten machines holds
 * for all ten. Over columns it stays where it is; the header takes care of its own.
 */
export function fillMerged(rows: RawCell[][], spans: readonly Span[]): void {
  let left: number = LIMITS.cells;
  for (const { column, fromRow, toRow } of spans) {
    const value = rows[fromRow]?.[column] ?? null;
    if (value === null) continue;
    for (let at = fromRow + 1; at <= toRow && at < rows.length && left > 0; at += 1, left -= 1) {
      const row = rows[at] ?? [];
      while (row.length < column) row.push(null);
      row[column] ??= value;
    }
  }
}
