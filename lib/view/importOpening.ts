import { columnLetters } from "@/lib/intake/columnLetters";
import type { OpenedRegister, ReadingChoice } from "@/lib/intake/openRegister";
import { plainText } from "@/lib/intake/reading";
import { ROWS_SHOWN } from "@/lib/view/importPreview";
import type { ImportOpening } from "@/lib/view/importView";

const COLUMNS_SHOWN = 12;
const LONGEST_CELL = 40;

function shorten(text: string): string {
  return text.length <= LONGEST_CELL ? text : `${text.slice(0, LONGEST_CELL - 1)}…`;
}

/** How a file was read, and its first rows as they stand, for the page that asks whether that is right. */
export function viewOpening(opened: OpenedRegister, chosen: ReadingChoice): ImportOpening {
  const { file, sheet, sheets, headerRow, headerLines, firstRows, notes, body } = opened;
  const width = Math.max(0, ...firstRows.map((row) => row.length));
  const letters = Array.from({ length: Math.min(width, COLUMNS_SHOWN) }, (_, index) => columnLetters(index));
  return {
    ...file,
    chosen,
    sheet,
    sheets,
    headerRow,
    headerLines,
    letters,
    firstRows: firstRows.map((row, index) => ({
      rowNumber: index + 1,
      cells: Object.fromEntries(letters.map((letter, at) => [letter, shorten(plainText(row[at] ?? null))])),
    })),
    columnsLeft: Math.max(0, width - COLUMNS_SHOWN),
    notes,
    skipped: body.skipped.slice(0, ROWS_SHOWN),
    skippedCount: body.skipped.length,
  };
}
