import type { Sheet } from "@/lib/intake/readTable";
import { type CellComment, readComments } from "@/lib/intake/workbook/comments";
import { openWorkbook, type SheetPart, type Workbook } from "@/lib/intake/workbook/parts";
import { readSheet, type SheetFacts } from "@/lib/intake/workbook/readSheet";

const COMMENTS_SHOWN = 3;

const many = (count: number, one: string, more: string) =>
  count === 1 ? `1 ${one}` : `${count.toLocaleString("en-GB")} ${more}`;

function tellFormulas({ formulas, unworked, firstUnworked }: SheetFacts): string[] {
  const told =
    formulas > 0
      ? [`${many(formulas, "formula", "formulas")}: the values last worked out were taken, nothing was run.`]
      : [];
  if (unworked > 0)
    told.push(
      `${many(unworked, "formula was", "formulas were")} never worked out, the first in ${firstUnworked}: open and save the file in a spreadsheet program.`,
    );
  return told;
}

function tellComments(comments: readonly CellComment[]): string[] {
  if (comments.length === 0) return [];
  const shown = comments.slice(0, COMMENTS_SHOWN).map(({ place, text }) => `${place} “${text}”`);
  const rest = comments.length > shown.length ? ", …" : "";
  return [
    `${many(comments.length, "cell carries a comment", "cells carry comments")}, which no column holds: ${shown.join(", ")}${rest}`,
  ];
}

/** What a person should know of a sheet beside its values. */
function tell(sheet: SheetPart, facts: SheetFacts, comments: readonly CellComment[]): string[] {
  const { hiddenRows, hiddenColumns, merged } = facts;
  return [
    ...(sheet.hidden ? ["The sheet is hidden in the workbook."] : []),
    ...(hiddenRows > 0
      ? [
          `${many(hiddenRows, "row is", "rows are")} hidden or filtered out in the sheet and read all the same.`,
        ]
      : []),
    ...(hiddenColumns > 0
      ? [`${many(hiddenColumns, "column is", "columns are")} hidden in the sheet and read all the same.`]
      : []),
    ...(merged > 0
      ? [`${many(merged, "cell is", "cells are")} merged: over rows the value stands in each of them.`]
      : []),
    ...tellFormulas(facts),
    ...tellComments(comments),
  ];
}

function readOne(workbook: Workbook, sheet: SheetPart): Sheet {
  const { rows, facts } = readSheet(workbook, sheet);
  return {
    name: sheet.name,
    hidden: sheet.hidden,
    rows,
    notes: tell(sheet, facts, readComments(workbook, sheet)),
  };
}

/**
 * Reads all sheets of a workbook as they are shown.
 *
 * @throws UnreadableFile
 */
export function readWorkbook(bytes: Uint8Array): Sheet[] {
  const workbook = openWorkbook(bytes);
  return workbook.sheets.map((sheet) => readOne(workbook, sheet));
}
