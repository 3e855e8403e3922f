import { guardFormula } from "@/lib/intake/writeCsv";
import type { SheetStyles } from "@/lib/reports/table/xlsxParts";
import { escaped } from "@/lib/reports/table/xmlText";
import { currencyIn, type ExportCell, type ExportColumn, type ExportRow } from "@/lib/view/exportTable";

/** Letters a cell can hold (limit of the format's programs, from memory). */
const LONGEST_TEXT = 32_767;
const CUT = " … (cut here; whole as CSV or JSON)";
const DAY_MS = 86_400_000;
/** Day 0 of the sheet's calendar; days before March 1900 differ between programs. */
const DAY_ZERO = Date.UTC(1899, 11, 30);
const FIRST_DAY = 61;
const LAST_DAY = 2_958_465;

interface Place {
  readonly column: ExportColumn;
  readonly columns: readonly ExportColumn[];
  readonly row: ExportRow;
  readonly at: number;
  /** Such as B7: many programs do not read a cell without it. */
  readonly address: string;
}

/** One cell of a sheet in XML, of the type its column has. */
export function sheetCell({ column, columns, row, at, address }: Place, styles: SheetStyles): string {
  const value = row[at] ?? null;
  if (value === null) return "";
  if (typeof value === "boolean") return `<c r="${address}" t="b"><v>${value ? 1 : 0}</v></c>`;
  const number = numberOf(value, column);
  if (number === undefined) return textCell({ address, text: guardFormula(String(value)), style: 0 });
  return `<c r="${address}" s="${styleOf(column, styles, currencyIn(column, row, columns))}"><v>${number}</v></c>`;
}

/** Text of a cell: never a formula, whatever it says. */
export function textCell({ address, text, style }: { address: string; text: string; style: number }): string {
  return `<c r="${address}" t="inlineStr" s="${style}"><is><t xml:space="preserve">${escaped(fitting(text))}</t></is></c>`;
}

function numberOf(value: ExportCell, { kind }: ExportColumn): number | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? value : undefined;
  if (kind !== "date" && kind !== "instant") return undefined;
  const days = (Date.parse(String(value)) - DAY_ZERO) / DAY_MS;
  return days >= FIRST_DAY && days < LAST_DAY + 1 ? days : undefined;
}

function styleOf({ kind }: ExportColumn, styles: SheetStyles, currency: string | undefined): number {
  switch (kind) {
    case "date":
      return styles.of("yyyy-mm-dd");
    case "instant":
      return styles.of("yyyy-mm-dd hh:mm:ss");
    case "share":
      return styles.of("0.0%");
    case "money":
      return styles.of(currency === undefined ? "#,##0.00" : `[$${currency}] #,##0.00`);
    default:
      return 0;
  }
}

const fitting = (text: string) =>
  text.length > LONGEST_TEXT ? text.slice(0, LONGEST_TEXT - CUT.length) + CUT : text;
