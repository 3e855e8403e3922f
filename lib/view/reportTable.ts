import { count } from "@/lib/view/number";
import type { CellKind, ReportCell, ReportColumn, ReportRow, ReportTable } from "@/lib/view/reportDocument";

/** A column: its title, what its cells are, and its share of the width. */
export function column(title: string, kind: CellKind, width: number): ReportColumn {
  return { title, kind, width };
}

/** A cell of words. */
export function words(text: string, href?: string | null): ReportCell {
  return href === undefined ? { kind: "text", text } : { kind: "text", text, href };
}

type PairCell = Extract<ReportCell, { kind: "pair" }>;

/** Two figures read together. */
export function pair(values: PairCell["values"], rest: Omit<PairCell, "kind" | "values">): PairCell {
  return { kind: "pair", values, ...rest };
}

interface TableRecipe {
  readonly title: string;
  readonly href: string;
  readonly columns: readonly ReportColumn[];
  readonly rows: readonly ReportRow[];
  /** Rows that find room; the rest is counted in the note. */
  readonly most: number;
  /** What one row is called, and several. */
  readonly things: readonly [string, string];
  readonly none: string;
  readonly note?: string;
  readonly half?: boolean;
}

/** A table of at most so many rows, with how many more there are. */
export function tableOf({ most, things, rows, note, half = false, ...rest }: TableRecipe): ReportTable {
  return {
    ...{ kind: "table", chart: null, half, ...rest },
    rows: rows.slice(0, most),
    note: noteOf(rows.length - most, things, note),
  };
}

/** What is left out, then the note itself. */
export function noteOf(more: number, [one, many]: TableRecipe["things"], note?: string): string | null {
  const left = more > 0 ? `And ${count(more, one, many)} more.` : "";
  return [left, note ?? ""].filter((text) => text !== "").join(" ") || null;
}
