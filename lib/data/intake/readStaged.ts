import "server-only";
import type { Transaction } from "@/lib/data/change";
import { type OpenedBatch, openBatch } from "@/lib/data/intake/batch";
import { readNames } from "@/lib/data/intake/readNames";
import type { Resolved } from "@/lib/data/intake/resolve";
import { isRegisterKey, REGISTERS } from "@/lib/intake/registers";
import { openQuestions } from "@/lib/intake/settleDialect";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { CHANGES_SHOWN, countThings, listChanges } from "@/lib/view/importChanges";
import {
  countRows,
  listColumns,
  listCustoms,
  listProblems,
  PROBLEMS_SHOWN,
  previewRows,
  ROWS_SHOWN,
} from "@/lib/view/importPreview";
import type { ImportOpening, StagedImport } from "@/lib/view/importView";
import type { ImportBatch } from "@/prisma/generated/client";

interface Around {
  readonly allowedSites: ReadonlySet<string> | null;
  readonly day: IsoDate;
  readonly leftOut: readonly number[];
}

/** What a staged file would do without the rows left out, as a page shows it. */
export async function readStaged(
  tx: Transaction,
  batch: ImportBatch,
  around: Around,
): Promise<Omit<StagedImport, "loadedBefore">> {
  if (!isRegisterKey(batch.register)) throw new Error(`Import batch ${batch.id} names no register`);
  const register = REGISTERS[batch.register];
  const open = await openBatch(tx, batch, around);
  const { opened, mapping, dialect, finding, examination } = open;
  const { rows, resolved } = examination;
  const asked = new Set(around.leftOut);
  const leftOut = rows.map((row) => row.rowNumber).filter((row) => asked.has(row));
  const kept = rows.filter((row) => row.state !== "error" && !asked.has(row.rowNumber));
  const problems = listProblems(rows);
  const changes = await readChanges(tx, resolved);
  const preview = previewRows(rows, opened.body, { mapping, register });
  return {
    opening: toOpening(opened),
    columns: listColumns(opened.body, mapping, opened.suggestions),
    customs: listCustoms(finding, dialect, openQuestions(finding, dialect)),
    missing: examination.problems.map((one) => one.problem),
    totals: countRows(rows),
    leftOut,
    loadable: kept.length,
    things: countThings(resolved),
    changes: { shown: changes.slice(0, CHANGES_SHOWN), count: changes.length },
    problems: { shown: problems.slice(0, PROBLEMS_SHOWN), count: problems.length },
    ...preview,
  };
}

async function readChanges(tx: Transaction, resolved: readonly Resolved[]) {
  const changed = resolved.filter((one) => one.kind === "change");
  const ids = changed.flatMap(({ before, after }) => [...idsIn(before ?? {}), ...idsIn(after)]);
  const stored = await readNames(tx, ids);
  const inFile = new Map(resolved.map(({ id, key }) => [id, readable(key)]));
  return listChanges(
    changed.map((one) => ({ ...one, name: readable(one.key) })),
    (id) => stored.get(id) ?? inFile.get(id),
  );
}

function idsIn(values: Resolved["after"]): string[] {
  return Object.entries(values).flatMap(([field, value]) =>
    field.endsWith("Id") && typeof value === "string" ? [value] : [],
  );
}

/** A natural key as one reads it; the separator is the one `keyOf` puts between the parts of a key. */
function readable(key: string): string {
  return key.split("\u241F").join(" ");
}

function toOpening({ file, sheet, headerRow, body }: OpenedBatch["opened"]): ImportOpening {
  const { format, encoding, separator } = file;
  const skipped = body.skipped.slice(0, ROWS_SHOWN);
  return { format, encoding, separator, sheet, headerRow, skipped, skippedCount: body.skipped.length };
}
