import { columnLetters } from "@/lib/intake/columnLetters";
import { grouped, LIMITS, UnreadableFile } from "@/lib/intake/limits";
import type { RawCell } from "@/lib/intake/reading";
import type { Separator, TableChoice, TableFile } from "@/lib/intake/readTable";
import { RowSplitter } from "@/lib/intake/rowSplitter";
import { decodeText, detectEncoding, type Encoding } from "@/lib/intake/textEncoding";
import { unguardFormula } from "@/lib/intake/writeCsv";

const SEPARATORS: readonly Separator[] = [";", "\t", ",", "|"];
const SAMPLE_ROWS = 40;
const SAMPLE_LETTERS = 65_536;

/** A row that a separator leaves whole though another would part it into three or more. */
function isPartedOtherwise(row: readonly string[], separator: Separator): boolean {
  const [only = "", ...more] = row;
  if (more.length > 0) return false;
  return SEPARATORS.some((other) => other !== separator && only.split(other).length >= 3);
}

/**
 * Rows that agree on a width above one speak for a separator; wider wins between equals. Names parted by another
 * one speak against it: commas in every number do not make a file one of commas.
 */
function rateSeparator(sample: string, separator: Separator): number {
  try {
    // A sample may be cut inside a row: only whole ones count.
    const rows = new RowSplitter(separator).push(sample, false).slice(0, SAMPLE_ROWS);
    const counts = new Map<number, number>();
    for (const { length } of rows) if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
    const rated = [...counts].map(([width, count]) => count * (1 + Math.log2(width)));
    const most = Math.max(0, ...rated);
    return rows.some((row) => isPartedOtherwise(row, separator)) ? most / 2 : most;
  } catch {
    // Rows too wide to be any: this separator gives no table.
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
  const sample = `${cutSample(text)}\n`;
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

/** Holds the rows of a text to the limits. `row` counts from 1, as a spreadsheet does. */
class RowLimits {
  #cells = 0;

  /** @throws UnreadableFile when the row, or all rows together, go beyond what is read. */
  check(row: number, cells: readonly string[]): void {
    if (cells.length > LIMITS.columns)
      throw new UnreadableFile(
        `Row ${grouped(row)} has ${grouped(cells.length)} columns; at most ${grouped(LIMITS.columns)} are read. Check what parts the columns, or take columns out`,
      );
    this.#cells += cells.length;
    if (this.#cells > LIMITS.cells)
      throw new UnreadableFile(
        `At row ${grouped(row)} the file has more than ${grouped(LIMITS.cells)} cells. Split it and load the pieces one after the other`,
      );
    const long = cells.findIndex((cell) => cell.length > LIMITS.cellLetters);
    if (long >= 0)
      throw new UnreadableFile(
        `Row ${grouped(row)}, column ${columnLetters(long)}, holds ${grouped(cells[long]?.length ?? 0)} letters; at most ${grouped(LIMITS.cellLetters)} are read. Shorten it, or look for a quotation mark left open above`,
      );
  }
}

function parseRows(text: string, separator: Separator): string[][] {
  const limits = new RowLimits();
  const rows = new RowSplitter(separator).push(text, true);
  for (const [index, row] of rows.entries()) limits.check(index + 1, row);
  return rows;
}

/** Text has few control letters; pictures, programs and archives renamed to .csv are full of them. */
function isText(sample: string): boolean {
  const controls = [...sample].filter((letter) => letter < " " && !"\t\n\v\f\r".includes(letter)).length;
  return controls <= sample.length / 20;
}

function notesOn(text: string, encoding: Encoding): string[] {
  const nulls = text.includes("\0") ? text.split("\0").length - 1 : 0;
  const unread = text.includes("\uFFFD") ? text.split("\uFFFD").length - 1 : 0;
  return [
    ...(nulls > 0 ? [`${grouped(nulls)} NUL letters in the file were read as blanks.`] : []),
    ...(unread > 0
      ? [
          `${grouped(unread)} letters are none in ${encoding}; they show as \uFFFD. Choose how the letters are written.`,
        ]
      : []),
  ];
}

/**
 * Reads a text's cells; encoding and separator are found from the bytes unless chosen.
 *
 * @throws UnreadableFile
 */
export function readText(bytes: Uint8Array, choice: TableChoice): TableFile {
  const encoding = choice.encoding ?? detectEncoding(bytes);
  const text = decodeText(bytes, encoding);
  if (!isText(text.slice(0, SAMPLE_LETTERS)))
    throw new UnreadableFile(
      "The file holds no text but the bytes of a picture, program or archive. Save the list as .csv or .xlsx and load that",
    );
  const named = choice.separator === undefined ? readSeparatorLine(text) : null;
  const separator = choice.separator ?? named ?? detectSeparator(text);
  const rows = parseRows(text, separator).map((row) => row.map(toCell));
  // The line that names the separator stays a row, so that rows count as in the file.
  if (named !== null && rows[0]) rows[0] = [];
  const sheet = { name: "", hidden: false, rows, notes: notesOn(text, encoding) };
  return { format: "csv", encoding, separator, sheets: [sheet] };
}
