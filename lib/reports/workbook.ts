import writeWorkbook from "write-excel-file/node";
import { guardFormula } from "@/lib/intake/writeCsv";
import { inWords } from "@/lib/words/say";

/** A cell of a table that leaves as a file; a date is `YYYY-MM-DD`, null is empty. */
export interface FileColumn {
  readonly title: string;
  readonly kind: "text" | "number" | "date";
  /** How a spreadsheet shows its numbers, as `0.00`. */
  readonly format?: string;
  /** Width in characters. */
  readonly width?: number;
}

type Cell = string | number | null;

/**
 * A table as an XLSX workbook of one sheet, with real numbers and dates and the heads kept in sight.
 *
 * Its words are those of whoever asked for it. Text that a spreadsheet would run is guarded, as in CSV: a copied cell could run elsewhere.
 */
export async function workbook(
  columns: readonly FileColumn[],
  rows: readonly (readonly Cell[])[],
): Promise<Uint8Array<ArrayBuffer>> {
  return Uint8Array.from(await writeWorkbook(sheetOf(columns, rows), { stickyRowsCount: 1 }).toBuffer());
}

/** A table of a workbook with its own name, at most 31 characters. */
export interface FileSheet {
  readonly name: string;
  readonly columns: readonly FileColumn[];
  readonly rows: readonly (readonly Cell[])[];
}

/** Several tables as one workbook, a sheet each, guarded in the same way. */
export async function workbookOfSheets(sheets: readonly FileSheet[]): Promise<Uint8Array<ArrayBuffer>> {
  const written = sheets.map(({ name, columns, rows }) => ({
    ...{
      sheet: inWords(name)
        .replace(/[\\/?*[\]:]/g, " ")
        .slice(0, 31),
      stickyRowsCount: 1,
      data: sheetOf(columns, rows),
    },
    columns: columns.map(({ width }) => (width === undefined ? {} : { width })),
  }));
  return Uint8Array.from(await writeWorkbook(written).toBuffer());
}

function sheetOf(columns: readonly FileColumn[], rows: FileSheet["rows"]) {
  const head = columns.map(({ title }) => ({
    value: inWords(title),
    type: String,
    fontWeight: "bold" as const,
  }));
  return [head, ...rows.map((row) => row.map((value, place) => cellOf(value, columns[place])))];
}

function cellOf(value: Cell, column: FileColumn | undefined) {
  if (value === null) return null;
  if (column?.kind === "date")
    return { value: new Date(`${value}T00:00:00.000Z`), type: Date, format: "yyyy-mm-dd" };
  if (typeof value === "number")
    return { value, type: Number, ...(column?.format === undefined ? {} : { format: column.format }) };
  return { value: guardFormula(inWords(value)), type: String };
}
