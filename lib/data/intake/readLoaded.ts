import "server-only";
import { database } from "@/lib/data/client";
import { readProblems, wholeNumber } from "@/lib/data/intake/pages";
import { readNames } from "@/lib/data/intake/readNames";
import { CHANGES_SHOWN, type FieldChange, listChanges, type ThingCount } from "@/lib/view/importChanges";
import type { LoadedImport, MadeThing, Paged } from "@/lib/view/importView";
import { thingWord } from "@/lib/view/importWords";
import { Prisma } from "@/prisma/generated/client";

type Kept = Readonly<Record<string, string | number | boolean | null>>;

/** What a loaded file wrote, from the steps kept for taking it back, and what of it stayed out. */
export async function readLoaded(batchId: string): Promise<LoadedImport> {
  const [things, changes, made, problems, waiting, rests] = await Promise.all([
    countSteps(batchId),
    readStepsInWords(batchId),
    readMade(batchId),
    readProblems(batchId),
    waitingRows(batchId),
    database().importBatch.findMany({
      where: { restOfId: batchId },
      orderBy: { createdAt: "asc" },
      select: { id: true, state: true, createdAt: true },
    }),
  ]);
  const [counts] = await database().$queryRaw<{ changes: number; problems: number }[]>`
    SELECT (SELECT coalesce(sum((SELECT count(*) FROM jsonb_object_keys("after"))), 0)::int
        FROM "ImportChange" WHERE "batchId" = ${batchId}::uuid AND "before" IS NOT NULL) AS "changes",
      (SELECT count(*)::int FROM "ImportProblem" WHERE "batchId" = ${batchId}::uuid) AS "problems"`;
  return {
    things,
    changes: { ...changes, count: counts?.changes ?? 0 },
    made,
    problems: { ...problems, count: counts?.problems ?? 0 },
    waiting: waiting.length,
    rests: rests.map(({ id, state, createdAt }) => ({ id, state, at: createdAt.toISOString() })),
  };
}

async function countSteps(batchId: string): Promise<ThingCount[]> {
  const rows = await database().$queryRaw<{ entity: string; added: number; changed: number }[]>`
    SELECT "entity", count(*) FILTER (WHERE "before" IS NULL)::int AS "added",
      count(*) FILTER (WHERE "before" IS NOT NULL)::int AS "changed"
    FROM "ImportChange" WHERE "batchId" = ${batchId}::uuid GROUP BY "entity" ORDER BY min("sequence")`;
  return rows.map((row) => ({ ...row, label: thingWord(row.entity, true), unchanged: 0 }));
}

/** One page of what a loaded file changed, from before to after. */
export async function readStepsInWords(
  batchId: string,
  after?: string,
): Promise<Omit<Paged<FieldChange>, "count">> {
  const steps = await database().importChange.findMany({
    where: { batchId, before: { not: Prisma.AnyNull }, sequence: { gt: wholeNumber(after ?? "") } },
    orderBy: { sequence: "asc" },
    take: CHANGES_SHOWN + 1,
  });
  const shown = steps.slice(0, CHANGES_SHOWN);
  const names = await readNames(
    database(),
    shown.flatMap(({ entityId, before, after: now }) => [
      entityId,
      ...textsIn(before as Kept),
      ...textsIn(now as Kept),
    ]),
  );
  const things = shown.map(({ entity, entityId, rowNumber, before, after: now }) => ({
    ...{ entity, rowNumber, name: names.get(entityId) ?? entityId, kind: "change" as const },
    ...{ before: before as Kept, after: now as Kept },
  }));
  return {
    shown: listChanges(things, (id) => names.get(id)),
    next: steps.length > CHANGES_SHOWN ? String(shown.at(-1)?.sequence) : null,
  };
}

const MADE_SHOWN = 200;

/** One page of what the rows of a loaded file made, in the order it was written. */
export async function readMade(batchId: string, after?: string): Promise<Omit<Paged<MadeThing>, "count">> {
  const steps = await database().importChange.findMany({
    where: { batchId, sequence: { gt: wholeNumber(after ?? "") } },
    orderBy: { sequence: "asc" },
    take: MADE_SHOWN + 1,
    select: { sequence: true, rowNumber: true, entity: true, entityId: true, before: true },
  });
  const shown = steps.slice(0, MADE_SHOWN);
  const names = await readNames(
    database(),
    shown.map(({ entityId }) => entityId),
  );
  return {
    shown: shown.map(({ sequence, rowNumber, entity, entityId, before }) => ({
      ...{ place: sequence, rowNumber, thing: thingWord(entity, false) },
      name: names.get(entityId) ?? "no longer here",
      kind: before === null ? "added" : "changed",
    })),
    next: steps.length > MADE_SHOWN ? String(shown.at(-1)?.sequence) : null,
  };
}

/** Rows of a loaded file that stayed out only because of what was stored then. */
export async function waitingRows(batchId: string): Promise<number[]> {
  const rows = await database().importProblem.findMany({
    where: { batchId, waits: true },
    distinct: ["rowNumber"],
    orderBy: { rowNumber: "asc" },
    select: { rowNumber: true },
  });
  return rows.map(({ rowNumber }) => rowNumber);
}

/** Texts that may be ids; readNames leaves out those that are none. */
function textsIn(values: Kept): string[] {
  return Object.values(values).filter((value) => typeof value === "string");
}
