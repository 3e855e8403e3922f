import { columnLetters } from "@/lib/intake/columnLetters";
import { inPieces } from "@/lib/reports/table/pieces";
import { sheetCell, textCell } from "@/lib/reports/table/xlsxCell";
import {
  contentTypes,
  relations,
  SheetStyles,
  workbookRelations,
  workbookXml,
} from "@/lib/reports/table/xlsxParts";
import { writeZip, type ZipEntry } from "@/lib/reports/zip/writeZip";
import { type ExportColumn, type ExportRow, type ExportTable, exportHead } from "@/lib/view/exportTable";

/** Rows a sheet can have, its head among them (ECMA-376, from memory); what goes beyond goes on on the next. */
const SHEET_ROWS = 1_048_576;

/**
 * A list as an XLSX workbook, written while it is read: numbers, days, instants and money are real values.
 *
 * Text stands in the sheet itself and never as a formula; what a spreadsheet would run once it is copied is guarded
 * as in CSV.
 */
export function xlsxTable(table: ExportTable, sheetRows = SHEET_ROWS): AsyncGenerator<Buffer> {
  return writeZip(partsOf(table, sheetRows));
}

async function* partsOf(table: ExportTable, sheetRows: number): AsyncGenerator<ZipEntry> {
  const styles = new SheetStyles();
  const source = table.rows[Symbol.asyncIterator]();
  const state = { next: await source.next() };
  let sheets = 0;
  do {
    sheets += 1;
    const rows = take(source, state, sheetRows - 1);
    yield part(`xl/worksheets/sheet${sheets}.xml`, sheetXml(table.columns, rows, styles));
  } while (!state.next.done);
  yield part("xl/styles.xml", one(styles.xml()));
  yield part("xl/workbook.xml", one(workbookXml(table.title, sheets)));
  yield part("xl/_rels/workbook.xml.rels", one(workbookRelations(sheets)));
  yield part("_rels/.rels", one(relations));
  yield part("[Content_Types].xml", one(contentTypes(sheets)));
}

const part = (name: string, texts: AsyncIterable<string>): ZipEntry => ({ name, content: inPieces(texts) });

async function* one(text: string): AsyncGenerator<string> {
  yield text;
}

/** The next rows of a source, up to so many; `state` holds the one after them. */
async function* take(
  source: AsyncIterator<ExportRow>,
  state: { next: IteratorResult<ExportRow> },
  most: number,
): AsyncGenerator<ExportRow> {
  for (let taken = 0; taken < most && !state.next.done; taken += 1) {
    yield state.next.value;
    state.next = await source.next();
  }
}

async function* sheetXml(
  columns: readonly ExportColumn[],
  rows: AsyncIterable<ExportRow>,
  styles: SheetStyles,
): AsyncGenerator<string> {
  const widths = columns.map(
    ({ kind }, at) =>
      `<col min="${at + 1}" max="${at + 1}" width="${kind === "id" ? 38 : 18}" customWidth="1"/>`,
  );
  yield `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><cols>${widths.join("")}</cols><sheetData>`;
  const letters = columns.map((_, at) => columnLetters(at));
  const head = columns.map((column, at) =>
    textCell({ address: `${letters[at]}1`, text: exportHead(column), style: styles.head }),
  );
  yield `<row r="1">${head.join("")}</row>`;
  let line = 1;
  for await (const row of rows) {
    line += 1;
    const cells = columns.map((column, at) =>
      sheetCell({ column, columns, row, at, address: `${letters[at]}${line}` }, styles),
    );
    yield `<row r="${line}">${cells.join("")}</row>`;
  }
  yield "</sheetData></worksheet>";
}
