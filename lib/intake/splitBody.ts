import { type HeaderPlace, readHeaders } from "@/lib/intake/findHeader";
import { foldText } from "@/lib/intake/foldText";
import { plainText, type RawCell } from "@/lib/intake/reading";

/** A row of the body with the number a spreadsheet shows beside it. */
export type BodyRow = { rowNumber: number; cells: readonly RawCell[] };

/** A row that is no entry, why, and what it says. */
export type SkippedRow = {
  rowNumber: number;
  reason: "blank row" | "total" | "heading or remark" | "column names again";
  text: string;
};

export type Body = { headers: string[]; rows: BodyRow[]; skipped: SkippedRow[] };

const TOTAL =
  /^(?:grand total|sub total|subtotal|totals?|sum|summe|gesamt|gesamtsumme|zwischensumme|razem|suma|lacznie|ogolem|summa|totalt|delsumma|total general|suma total)\b/;

function joinCells(cells: readonly RawCell[]): string {
  return cells
    .map(plainText)
    .filter((text) => text !== "")
    .join(" · ")
    .slice(0, 200);
}

function isFilled(cell: RawCell): boolean {
  return cell !== null && cell !== "" && plainText(cell) !== "";
}

/** Why a row below the column names is no entry; null when it is one. */
export function reasonToSkip(
  cells: readonly RawCell[],
  headerTexts: readonly string[],
): SkippedRow["reason"] | null {
  const first = cells.findIndex(isFilled);
  if (first === -1) return "blank row";
  if (TOTAL.test(foldText(cells[first] ?? null)) && cells.filter(isFilled).length < headerTexts.length)
    return "total";
  const isAlone = !cells.some((cell, index) => index > first && isFilled(cell));
  if (isAlone) return headerTexts.length >= 3 ? "heading or remark" : null;
  return headerTexts.every((text, index) => text === foldText(cells[index] ?? null))
    ? "column names again"
    : null;
}

/** A row that is no entry, with what it says. */
export function skippedRow(
  rowNumber: number,
  reason: SkippedRow["reason"],
  cells: readonly RawCell[],
): SkippedRow {
  return { rowNumber, reason, text: joinCells(cells) };
}

/**
 * Parts the rows below the column names into entries and rows that are none: blank rows, totals, headings
 * between the rows, and the names printed again on a new page. Nothing goes without being listed, save blank
 * rows at the end.
 */
export function splitBody(rows: readonly (readonly RawCell[])[], place: HeaderPlace): Body {
  const headers = readHeaders(rows, place);
  const headerTexts = headers.map((_, index) => foldText(rows[place.row - 1]?.[index] ?? null));
  const body: Body = { headers, rows: [], skipped: [] };
  rows.slice(place.row).forEach((cells, index) => {
    const rowNumber = place.row + index + 1;
    const reason = reasonToSkip(cells, headerTexts);
    if (reason === null) body.rows.push({ rowNumber, cells });
    else body.skipped.push(skippedRow(rowNumber, reason, cells));
  });
  while (body.skipped.at(-1)?.reason === "blank row" && isLast(body)) body.skipped.pop();
  return body;
}

function isLast(body: Body): boolean {
  return (body.skipped.at(-1)?.rowNumber ?? 0) > (body.rows.at(-1)?.rowNumber ?? 0);
}
