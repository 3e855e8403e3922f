import { type FileColumn, type FileSheet, workbookOfSheets } from "@/lib/reports/workbook";
import { basisText, cellsOf, cellText } from "@/lib/view/reportCell";
import type {
  ReportCell,
  ReportColumn,
  ReportDocument,
  ReportList,
  ReportTable,
} from "@/lib/view/reportDocument";

type Value = string | number | null;

/** Columns of the sheet that one column of a report becomes, and the values of a cell in them. */
interface Written {
  readonly columns: readonly FileColumn[];
  readonly values: (cell: ReportCell) => readonly Value[];
}

const EUROS = "#,##0";
const WIDE = 40;
const USUAL = 16;

/** A report as a workbook: what it rests on, then each of its tables, with real numbers and days. */
export function reportWorkbook(report: ReportDocument, address: string): Promise<Uint8Array<ArrayBuffer>> {
  const blocks = report.pages.flatMap(({ blocks: all }) => all);
  return workbookOfSheets([
    headSheet(report, address),
    ...blocks.map((block) =>
      block.kind === "table" ? tableSheet(block, address) : listSheet(block, address),
    ),
  ]);
}

/** A sheet's name: at most 31 characters and none that a spreadsheet refuses there. */
const sheetName = (title: string) => title.replace(/[\\/?*[\]:]/g, " ").slice(0, 31);

function headSheet({ title, scope, basis, headline, cautions }: ReportDocument, address: string): FileSheet {
  const loss = headline?.loss ?? null;
  const money = (what: string, value: number | null): Value[] => [
    what,
    null,
    value,
    null,
    `${address}/lines`,
  ];
  const text = (what: string, words: string): Value[] => [what, words, null, null, null];
  return {
    name: "Report",
    columns: [
      { title: "What", kind: "text", width: 32 },
      { title: "Words", kind: "text", width: 60 },
      { title: "Number", kind: "number", format: EUROS, width: USUAL },
      { title: "Day", kind: "date", width: USUAL },
      { title: "Page", kind: "text", width: WIDE },
    ],
    rows: [
      text("Report", title),
      text("Of", scope),
      ["As of", null, null, basis.asOf, null],
      ["Data version", null, basis.dataVersion, null, null],
      text("Engine", basis.engine),
      text("Assumptions", basis.assumptions),
      ["Seed of the draws", null, basis.seed, null, null],
      text("Rests on", basisText(basis)),
      ...(loss
        ? [
            money("Stop loss a year, expected, EUR", loss.mean),
            money("Stop loss a year, low, EUR", loss.low),
            money("Stop loss a year, high, EUR", loss.high),
            money("Of the expected, for want of a spare, EUR", headline?.shortage ?? null),
          ]
        : []),
      ...(headline?.sentences ?? []).map((sentence) => text("In words", sentence)),
      ...cautions.map(({ title: name, text: words }) => text(name, words)),
    ],
  };
}

function tableSheet(table: ReportTable, address: string): FileSheet {
  const written = table.columns.map((column, place) => writtenOf(column, cellsAt(table, place)));
  return {
    name: sheetName(table.title),
    columns: [...written.flatMap(({ columns }) => columns), { title: "Page", kind: "text", width: WIDE }],
    rows: table.rows.map((row) => {
      const cells = cellsOf(table, row);
      const values = cells.flatMap(({ cell }, place) => written[place]?.values(cell) ?? []);
      return [...values, `${address}${cells[0]?.href ?? table.href}`];
    }),
  };
}

const cellsAt = ({ rows }: ReportTable, place: number) =>
  rows.flatMap(({ cells }) => (cells[place] ? [cells[place]] : []));

function listSheet({ title, items }: ReportList, address: string): FileSheet {
  return {
    name: sheetName(title),
    columns: [
      { title, kind: "text", width: 90 },
      { title: "Page", kind: "text", width: WIDE },
    ],
    rows: items.map(({ text, href }) => [text, href === null ? null : `${address}${href}`]),
  };
}

function writtenOf(column: ReportColumn, cells: readonly ReportCell[]): Written {
  const { title, kind } = column;
  const number = (name: string, format: string): FileColumn => ({
    ...{ title: name, kind: "number", format, width: USUAL },
  });
  switch (kind) {
    case "money":
      return { columns: [number(`${title}, EUR`, EUROS)], values: (cell) => [numberOf(cell)] };
    case "span":
      return {
        columns: [number("Low (5 %), EUR", EUROS), number("High (95 %), EUR", EUROS)],
        values: (cell) =>
          cell.kind === "span" ? [cell.span?.low ?? null, cell.span?.high ?? null] : [null, null],
      };
    case "local":
      return {
        columns: [number(title, EUROS), { title: `${title}, currency`, kind: "text", width: 10 }],
        values: (cell) => (cell.kind === "local" ? [cell.value, cell.currency] : [null, null]),
      };
    case "number":
      return { columns: [number(title, formatOf(cells))], values: (cell) => [numberOf(cell)] };
    case "share":
      return { columns: [number(title, "0.0%")], values: (cell) => [numberOf(cell)] };
    case "pair":
      return {
        columns: title.split(" / ").map((name) => number(name, formatOf(cells))),
        values: (cell) => (cell.kind === "pair" ? cell.values : [null, null]),
      };
    case "date":
      return {
        columns: [
          { title, kind: "date", width: USUAL },
          { title: `${title}, in words`, kind: "text", width: 24 },
        ],
        values: (cell) => (cell.kind === "date" ? [cell.on, cellText(cell)] : [null, null]),
      };
    default:
      return {
        columns: [{ title, kind: "text", width: WIDE }],
        values: (cell) => [cellText(cell)],
      };
  }
}

function numberOf(cell: ReportCell): number | null {
  return cell.kind === "money" || cell.kind === "number" || cell.kind === "share" ? cell.value : null;
}

/** Format of a column by what its cells are. */
function formatOf([first]: readonly ReportCell[]): string {
  if (first?.kind === "pair" && first.share) return "0.0%";
  const places = first?.kind === "pair" || first?.kind === "number" ? first.places : 0;
  return places === 0 ? "#,##0" : `#,##0.${"0".repeat(places)}`;
}
