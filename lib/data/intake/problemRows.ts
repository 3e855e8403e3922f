import "server-only";
import type { Examination } from "@/lib/data/intake/examine";
import { listProblems } from "@/lib/view/importPreview";

/**
 * What was found against the rows of a piece, as it is kept.
 *
 * @param from Number of problems the pieces before it had.
 */
export function problemRows(batchId: string, { rows, waiting }: Examination, from: number) {
  const found = listProblems(rows.filter((row) => row.problems.length > 0));
  return found.map(({ rowNumber, severity, column, field, found: text, problem, remedy }, index) => ({
    ...{ batchId, place: from + index, rowNumber, severity },
    waits: severity === "error" && waiting.has(rowNumber),
    ...{ column, field, found: text, problem, remedy },
  }));
}
