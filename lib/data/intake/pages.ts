import "server-only";
import { database } from "@/lib/data/client";
import { CHANGES_SHOWN, type FieldChange } from "@/lib/view/importChanges";
import { PROBLEMS_SHOWN, type RowProblem } from "@/lib/view/importPreview";
import type { Paged } from "@/lib/view/importView";

/** One page of the problems of a batch, errors before warnings, then by row. */
export async function readProblems(
  batchId: string,
  after?: string,
): Promise<Omit<Paged<RowProblem>, "count">> {
  const [severity = "", row = "0", place = "-1"] = (after ?? "").split(".");
  const found = await database().$queryRaw<(RowProblem & { place: number })[]>`
    SELECT "place", "rowNumber", "severity", "column", "field", "found", "problem", "remedy"
    FROM "ImportProblem" WHERE "batchId" = ${batchId}::uuid
      AND ("severity", "rowNumber", "place") > (${severity}, ${wholeNumber(row)}::int, ${wholeNumber(place)}::int)
    ORDER BY "severity", "rowNumber", "place" LIMIT ${PROBLEMS_SHOWN + 1}`;
  const shown = found.slice(0, PROBLEMS_SHOWN);
  const last = found.length > PROBLEMS_SHOWN ? shown.at(-1) : undefined;
  return {
    shown: shown.map(({ place: _, ...problem }) => problem),
    next: last ? `${last.severity}.${last.rowNumber}.${last.place}` : null,
  };
}

/** One page of what a file that is not loaded would change. */
export async function readDifferences(
  batchId: string,
  after?: string,
): Promise<Omit<Paged<FieldChange>, "count">> {
  const from = wholeNumber(after ?? "-1");
  const found = await database().importDifference.findMany({
    where: { batchId, place: { gt: from } },
    orderBy: { place: "asc" },
    take: CHANGES_SHOWN + 1,
    omit: { batchId: true },
  });
  const shown = found.slice(0, CHANGES_SHOWN);
  const last = found.length > CHANGES_SHOWN ? shown.at(-1) : undefined;
  return { shown: shown.map(({ place: _, ...change }) => change), next: last ? String(last.place) : null };
}

/** A number of an address; what is none begins before the first. */
export function wholeNumber(text: string): number {
  return /^\d{1,9}$/.test(text) ? Number(text) : -1;
}
