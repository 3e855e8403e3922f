/** A cell a spreadsheet would take as a formula gets an apostrophe, so that it stays text. */
const FORMULA = /^[=+\-@\t\r]/;

function cell(value: string | number | null): string {
  if (value === null) return "";
  const text = typeof value === "string" && FORMULA.test(value) ? `'${value}` : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** Rows as comma-separated text (RFC 4180, from memory), with a byte order mark so that spreadsheets read UTF-8. */
export function csv(rows: readonly (readonly (string | number | null)[])[]): string {
  return `\uFEFF${rows.map((row) => row.map(cell).join(",")).join("\r\n")}\r\n`;
}
