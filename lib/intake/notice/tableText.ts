import type { RawCell } from "@/lib/intake/reading";
import { readTable } from "@/lib/intake/readTable";
import { decodeText, detectEncoding } from "@/lib/intake/textEncoding";
import { ok, type Result } from "@/lib/kernel/result";

const filled = (row: readonly RawCell[]) => row.filter((cell) => cell !== null && String(cell).trim() !== "");

/** Each row as lines `header: cell`, so that a cell stands beside the words that say what it is. */
function sheetText(rows: readonly (readonly RawCell[])[]): string {
  const head = rows.findIndex((row) => filled(row).length >= 2);
  if (head < 0) return rows.map((row) => filled(row).join(" ")).join("\n");
  const headers = rows[head] ?? [];
  const before = rows.slice(0, head).map((row) => filled(row).join(" "));
  const after = rows.slice(head + 1).map((row) =>
    row
      .map((cell, i) => ({ cell, header: String(headers[i] ?? "").trim() }))
      .filter(({ cell }) => cell !== null && String(cell).trim() !== "")
      .map(({ cell, header }) => (header === "" ? String(cell) : `${header}: ${String(cell)}`))
      .join("\n"),
  );
  return [...before, ...after].join("\n\n");
}

/** The text of a notice handed in as a file: a table's rows said in lines, a text as it is. */
export async function textOfFile(name: string, bytes: Uint8Array): Promise<Result<string, string>> {
  if (!/\.(csv|xlsx)$/i.test(name)) return ok(decodeText(bytes, detectEncoding(bytes)));
  const read = await readTable(bytes);
  return read.ok ? ok(read.value.sheets.map(({ rows }) => sheetText(rows)).join("\n\n")) : read;
}
