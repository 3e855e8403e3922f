import { writeCsv } from "@/lib/intake/writeCsv";
import { inPieces } from "@/lib/reports/table/pieces";
import { type ExportCell, type ExportTable, exportHead } from "@/lib/view/exportTable";

/** Tells a spreadsheet that the text is UTF-8, so that it shows all letters. */
const BYTE_ORDER_MARK = "\uFEFF";

/** A list as CSV by RFC 4180 with commas; text that a spreadsheet would run is guarded, not known is empty. */
export function csvTable({ columns, rows }: ExportTable): AsyncGenerator<Buffer> {
  async function* lines() {
    yield BYTE_ORDER_MARK + writeCsv([columns.map(exportHead)]);
    for await (const row of rows) yield writeCsv([row.map(plain)]);
  }
  return inPieces(lines());
}

const plain = (cell: ExportCell) => (typeof cell === "boolean" ? (cell ? "yes" : "no") : cell);
