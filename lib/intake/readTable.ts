import { parse } from "csv-parse/browser/esm/sync";
import readWorkbook from "read-excel-file/universal";
import type { RawCell } from "@/lib/intake/reading";
import { decodeText, detectEncoding, type Encoding } from "@/lib/intake/textEncoding";
import { unguardFormula } from "@/lib/intake/writeCsv";
import { err, ok, type Result } from "@/lib/kernel/result";

export type Separator = ";" | "," | "\t" | "|";

/** One sheet's cells as they stand; row 1 of the file is rows[0]. */
export type Sheet = { name: string; rows: RawCell[][] };

/** A file's cells, and how it was read; encoding and separator are null for a workbook. */
export type TableFile = {
  format: "csv" | "workbook";
  encoding: Encoding | null;
  separator: Separator | null;
  sheets: Sheet[];
};

/** What a person chose instead of what was found. */
export type TableChoice = { encoding?: Encoding; separator?: Separator };

const SEPARATORS: readonly Separator[] = [";", "\t", ",", "|"];
const SAMPLE_ROWS = 40;
const SAMPLE_LETTERS = 65_536;

function parseText(text: string, separator: Separator, lastRow?: number): string[][] {
  return parse(text, {
    delimiter: separator,
    record_delimiter: ["\r\n", "\n", "\r"],
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
    ...(lastRow === undefined ? {} : { to: lastRow }),
  });
}

/** Rows that agree on a width above one speak for a separator; wider wins between equals. */
function rateSeparator(text: string, separator: Separator): number {
  try {
    const widths = parseText(text, separator, SAMPLE_ROWS).map((row) => row.length);
    const counts = new Map<number, number>();
    for (const width of widths) if (width > 1) counts.set(width, (counts.get(width) ?? 0) + 1);
    const rated = [...counts].map(([width, count]) => count * (1 + Math.log2(width)));
    return Math.max(0, ...rated);
  } catch {
    // A sample cut inside quotes, or quotes that do not close: this separator gives no table.
    return 0;
  }
}

function cutSample(text: string): string {
  if (text.length <= SAMPLE_LETTERS) return text;
  const cut = text.lastIndexOf("\n", SAMPLE_LETTERS);
  return text.slice(0, cut > 0 ? cut : SAMPLE_LETTERS);
}

/** Finds what parts the columns; a file of one column reads with ";". */
export function detectSeparator(text: string): Separator {
  const sample = cutSample(text);
  const rated = SEPARATORS.map((separator) => ({ separator, rate: rateSeparator(sample, separator) }));
  const best = rated.reduce((left, right) => (right.rate > left.rate ? right : left));
  return best.rate > 0 ? best.separator : ";";
}

/** Some spreadsheets write their separator into a first line "sep=;". */
function readSeparatorLine(text: string): Separator | null {
  const named = /^sep=(.)\r?\n/.exec(text)?.[1];
  return SEPARATORS.find((separator) => separator === named) ?? null;
}

function toCell(text: string): RawCell {
  return text === "" ? null : unguardFormula(text);
}

function readText(bytes: Uint8Array, choice: TableChoice): Result<TableFile, string> {
  const encoding = choice.encoding ?? detectEncoding(bytes);
  const text = decodeText(bytes, encoding);
  const named = choice.separator === undefined ? readSeparatorLine(text) : null;
  const separator = choice.separator ?? named ?? detectSeparator(text);
  try {
    const rows = parseText(text, separator).map((row) => row.map(toCell));
    // The line that names the separator stays a row, so that rows count as in the file.
    if (named !== null && rows[0]) rows[0] = [];
    return ok({ format: "csv", encoding, separator, sheets: [{ name: "", rows }] });
  } catch (error) {
    const where = error instanceof Error ? error.message : "";
    return err(`The file is not a readable table. A quotation mark may be left open. ${where}`.trim());
  }
}

function fromWorkbookCell(cell: unknown): RawCell {
  if (cell instanceof Date) {
    const time = cell.getTime();
    if (Number.isNaN(time)) return null;
    // A workbook keeps times as fractions of a day, which miss a minute's start by parts of a second.
    return new Date(Math.round(time / 1000) * 1000).toISOString().slice(0, 16);
  }
  return typeof cell === "string" || typeof cell === "number" || typeof cell === "boolean" ? cell : null;
}

async function readWorkbookFile(bytes: Uint8Array): Promise<Result<TableFile, string>> {
  try {
    const buffer = new Uint8Array(bytes).buffer;
    const sheets = await readWorkbook(buffer);
    return ok({
      format: "workbook",
      encoding: null,
      separator: null,
      sheets: sheets.map(({ sheet, data }) => ({
        name: sheet,
        rows: data.map((row) => row.map(fromWorkbookCell)),
      })),
    });
  } catch {
    return err(
      "The workbook cannot be read. Open it in a spreadsheet program, save it as .xlsx again and load that file",
    );
  }
}

/** Workbooks are zip archives, whatever their name ends in. */
function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 0x03 || bytes[2] === 0x05);
}

function isOldWorkbook(bytes: Uint8Array): boolean {
  return bytes[0] === 0xd0 && bytes[1] === 0xcf && bytes[2] === 0x11 && bytes[3] === 0xe0;
}

/**
 * Reads a file's cells: a workbook (.xlsx), or text whose encoding and separator are found from the bytes
 * unless chosen. Nothing is interpreted yet.
 *
 * @returns the cells, or what a person should do when the file is no table
 */
export async function readTable(
  bytes: Uint8Array,
  choice: TableChoice = {},
): Promise<Result<TableFile, string>> {
  if (bytes.length === 0) return err("The file is empty");
  if (isOldWorkbook(bytes))
    return err("This is a workbook of the old kind (.xls). Save it as .xlsx and load that file");
  return isZip(bytes) ? readWorkbookFile(bytes) : readText(bytes, choice);
}
