import { inPieces } from "@/lib/reports/table/pieces";
import type { ExportCell, ExportColumn, ExportTable } from "@/lib/view/exportTable";

/** A list as one JSON object: its name, what each column is, and its rows by column key; not known is null. */
export function jsonTable({ name, title, columns, rows }: ExportTable): AsyncGenerator<Buffer> {
  async function* texts() {
    yield `${JSON.stringify({ name, title, columns }).slice(0, -1)},"rows":[`;
    let before = "\n";
    for await (const row of rows) {
      yield `${before}{${columns.map((column, at) => field(column, row[at] ?? null)).join(",")}}`;
      before = ",\n";
    }
    yield "\n]}\n";
  }
  return inPieces(texts());
}

function field({ key, kind }: ExportColumn, cell: ExportCell): string {
  const value = kind === "json" && typeof cell === "string" ? cell : JSON.stringify(cell);
  return `${JSON.stringify(key)}:${value}`;
}
