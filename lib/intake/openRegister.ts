import { type DialectFinding, detectDialect } from "@/lib/intake/dialect";
import { findHeader } from "@/lib/intake/findHeader";
import { readTable, type TableFile } from "@/lib/intake/readTable";
import { findField, type Register } from "@/lib/intake/registers";
import { type Body, splitBody } from "@/lib/intake/splitBody";
import { type Mapping, type MappingSuggestion, suggestMapping } from "@/lib/intake/suggestMapping";
import { ok, type Result } from "@/lib/kernel/result";

/** A file opened for a register: how it was read, its rows, and what its columns most likely are. */
export interface OpenedRegister {
  readonly file: Pick<TableFile, "format" | "encoding" | "separator">;
  readonly sheet: string;
  readonly headerRow: number;
  readonly body: Body;
  readonly suggestions: readonly MappingSuggestion[];
}

/** Opens a file: the first sheet that holds rows, the header row found in it, a suggestion for each column. */
export async function openRegister(
  bytes: Uint8Array,
  register: Register,
): Promise<Result<OpenedRegister, string>> {
  const read = await readTable(bytes);
  if (!read.ok) return read;
  const { sheets, ...file } = read.value;
  const sheet = sheets.find((one) => one.rows.length > 1) ?? sheets[0] ?? { name: "", rows: [] };
  const place = findHeader(sheet.rows, register);
  const body = splitBody(sheet.rows, place);
  return ok({
    file,
    sheet: sheet.name,
    headerRow: place.row,
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
