import { type DialectFinding, detectDialect } from "@/lib/intake/dialect";
import { findHeader, type HeaderPlace } from "@/lib/intake/findHeader";
import { grouped } from "@/lib/intake/limits";
import type { RawCell } from "@/lib/intake/reading";
import { readTable, type Sheet, type TableChoice, type TableFile } from "@/lib/intake/readTable";
import { findField, type Register } from "@/lib/intake/registers";
import { type Body, splitBody } from "@/lib/intake/splitBody";
import { type Mapping, type MappingSuggestion, suggestMapping } from "@/lib/intake/suggestMapping";
import { err, ok, type Result } from "@/lib/kernel/result";

/** What a person chose about reading a file; what is left out is found from the file. */
export interface ReadingChoice extends TableChoice {
  /** Name of the sheet. */
  readonly sheet?: string | undefined;
  /** Row with the column names, the lower of two, as a spreadsheet numbers it. */
  readonly headerRow?: number | undefined;
  readonly headerLines?: 1 | 2 | undefined;
}

/** A sheet a person may choose. */
export interface SheetOffer {
  readonly name: string;
  readonly hidden: boolean;
  readonly rows: number;
}

/** A file opened for a register: how it was read, its rows, and what its columns most likely are. */
export interface OpenedRegister {
  readonly file: Pick<TableFile, "format" | "encoding" | "separator">;
  readonly sheet: string;
  readonly sheets: readonly SheetOffer[];
  readonly headerRow: number;
  readonly headerLines: 1 | 2;
  /** The first rows of the sheet as they stand, for a person to find the header in. */
  readonly firstRows: readonly (readonly RawCell[])[];
  /** What a person should know of the sheet beside its cells. */
  readonly notes: readonly string[];
  readonly body: Body;
  readonly suggestions: readonly MappingSuggestion[];
}

const FIRST_ROWS = 15;
const NO_SHEET: Sheet = { name: "", hidden: false, rows: [], notes: [] };

/** The sheet chosen, else the first with rows: one that is shown before one that is hidden. */
function pickSheet(sheets: readonly Sheet[], name: string | undefined): Sheet | null {
  if (name !== undefined) return sheets.find((one) => one.name === name) ?? null;
  const filled = sheets.filter((one) => one.rows.length > 1);
  return filled.find((one) => !one.hidden) ?? filled[0] ?? sheets[0] ?? NO_SHEET;
}

function placeHeader(rows: Sheet["rows"], register: Register, choice: ReadingChoice): HeaderPlace | null {
  const { headerRow, headerLines } = choice;
  if (headerRow === undefined) return findHeader(rows, register);
  if (headerRow > rows.length) return null;
  return { row: headerRow, lines: headerRow > 1 ? (headerLines ?? 1) : 1 };
}

/**
 * Opens a file: the first sheet that holds rows, the header row found in it, a suggestion for each column; a
 * person's choices go before what is found.
 */
export async function openRegister(
  bytes: Uint8Array,
  register: Register,
  choice: ReadingChoice = {},
): Promise<Result<OpenedRegister, string>> {
  const read = await readTable(bytes, choice);
  if (!read.ok) return read;
  const { sheets, ...file } = read.value;
  const sheet = pickSheet(sheets, choice.sheet);
  if (sheet === null) return err(`The workbook has no sheet “${choice.sheet}”. Choose another one`);
  const place = placeHeader(sheet.rows, register, choice);
  if (place === null)
    return err(
      `Row ${grouped(choice.headerRow ?? 0)} lies below the last row, ${grouped(sheet.rows.length)}. Choose the row with the column names`,
    );
  const body = splitBody(sheet.rows, place);
  return ok({
    file,
    sheet: sheet.name,
    sheets: sheets.map(({ name, hidden, rows }) => ({ name, hidden, rows: rows.length })),
    headerRow: place.row,
    headerLines: place.lines,
    firstRows: sheet.rows.slice(0, FIRST_ROWS),
    notes: sheet.notes,
    body,
    suggestions: suggestMapping(body.headers, register),
  });
}

/** What the mapped columns say about how the file writes numbers and dates. */
export function dialectOf(body: Body, mapping: Mapping, register: Register): DialectFinding {
  return detectDialect(
    body.headers.flatMap((header, index) => {
      const field = findField(register, mapping[header] ?? "");
      return field
        ? [{ header, kind: field.kind, cells: body.rows.map((row) => row.cells[index] ?? null) }]
        : [];
    }),
  );
}
