import type { RawCell } from "@/lib/intake/reading";

export type CsvStyle = { separator: ";" | "," | "\t" };

/** Starts that make a spreadsheet run a text as a formula, as OWASP's page on CSV injection lists them (from memory). */
const RUNS_AS_FORMULA = /^'*[=+\-@\t\r]/;

/**
 * A text no spreadsheet runs: an apostrophe goes before what starts like a formula. Texts that start with
 * apostrophes and then like a formula get one more, so that unguardFormula gives back every text.
 */
export function guardFormula(text: string): string {
  return RUNS_AS_FORMULA.test(text) ? `'${text}` : text;
}

/** Takes back what guardFormula did. */
export function unguardFormula(text: string): string {
  return text.startsWith("'") && RUNS_AS_FORMULA.test(text) ? text.slice(1) : text;
}

function writeCell(cell: RawCell, separator: string): string {
  if (cell === null) return "";
  const text = typeof cell === "string" ? guardFormula(cell) : String(cell);
  const needsQuotes = text.includes(separator) || /["\r\n]/.test(text) || /^\s|\s$/.test(text);
  return needsQuotes ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * Writes rows as CSV by RFC 4180: CR LF after every row, quotes doubled inside quotes. Text that a spreadsheet
 * would run is guarded; numbers are written with a decimal point. Encode the result as UTF-8 with a byte order
 * mark for spreadsheets to show all letters.
 */
export function writeCsv(
  rows: readonly (readonly RawCell[])[],
  style: CsvStyle = { separator: "," },
): string {
  return rows
    .map((row) => `${row.map((cell) => writeCell(cell, style.separator)).join(style.separator)}\r\n`)
    .join("");
}
