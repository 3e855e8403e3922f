import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { importSites, type StoredBatch, visibleBatches, WITH_FILE } from "@/lib/data/intake/batch";
import { readDifferences, readProblems } from "@/lib/data/intake/pages";
import { readLoaded, readMade, readStepsInWords } from "@/lib/data/intake/readLoaded";
import { ensureRead, progressOf, readStaged } from "@/lib/data/intake/readStaged";
import { isRegisterKey, REGISTERS } from "@/lib/intake/registers";
import type { ImportHead, ImportList, ImportMore, ImportPages, ImportView } from "@/lib/view/importView";
import type { Prisma } from "@/prisma/generated/client";

const headColumns = {
  id: true,
  register: true,
  fileName: true,
  createdBy: true,
  createdAt: true,
  state: true,
  committedAt: true,
  undoneAt: true,
  added: true,
  changed: true,
  unchanged: true,
  refused: true,
} as const satisfies Prisma.ImportBatchSelect;

type HeadRow = Prisma.ImportBatchGetPayload<{ select: typeof headColumns }>;

/** The files the actor may see, newest first, and whether anything is stored yet. */
export async function readImports(actor: Actor): Promise<ImportList> {
  const [rows, site] = await Promise.all([
    database().importBatch.findMany({
      where: visibleBatches(actor),
      orderBy: { createdAt: "desc" },
      take: 200,
      select: headColumns,
    }),
    database().site.findFirst({ select: { id: true } }),
  ]);
  const names = await readPeople(rows.map((row) => row.createdBy));
  return { files: rows.map((row) => toHead(row, names)), isEmpty: site === null };
}

/**
 * One file: before it is loaded, what it would do without the rows left out, or how far its reading is; after, what it
 * did.
 *
 * @param leftOut Rows a person leaves out, as a spreadsheet numbers them.
 * @returns null when there is no such file for this actor.
 */
export async function readImport(
  actor: Actor,
  batchId: string,
  leftOut: readonly number[],
): Promise<ImportView | null> {
  const found = await database().importBatch.findFirst({
    where: { id: batchId, ...visibleBatches(actor) },
    include: WITH_FILE,
  });
  if (!found) return null;
  const head = toHead(found, await readPeople([found.createdBy]));
  if (found.state !== "staged")
    return { head, progress: null, staged: null, loaded: await readLoaded(batchId) };
  const around = { allowedSites: await importSites(database(), actor), day: today(), leftOut };
  const { batch, isStale } = await ensureRead(found, around);
  const progress = progressOf(batch);
  const staged = progress === null ? await readStaged(batch) : null;
  const loadedBefore = staged && (await findSame(actor, batch));
  return { head, progress, staged: staged && { ...staged, loadedBefore, isStale }, loaded: null };
}

/** Further pages of the long lists of a file; null when there is no such file for this actor. */
export async function readImportPages(
  actor: Actor,
  batchId: string,
  pages: ImportPages,
): Promise<ImportMore | null> {
  const batch = await database().importBatch.findFirst({
    where: { id: batchId, ...visibleBatches(actor) },
    select: { id: true, state: true },
  });
  if (!batch) return null;
  const changes = batch.state === "staged" ? readDifferences : readStepsInWords;
  return {
    problems: pages.problems === undefined ? null : await readProblems(batchId, pages.problems),
    changes: pages.changes === undefined ? null : await changes(batchId, pages.changes),
    made: pages.made === undefined ? null : await readMade(batchId, pages.made),
  };
}

/** The same bytes, loaded already into the same register. */
async function findSame(actor: Actor, { fileHash, register, restOfId }: StoredBatch) {
  if (restOfId !== null) return null;
  const same = await database().importBatch.findFirst({
    where: { fileHash, register, state: "committed", ...visibleBatches(actor) },
    orderBy: { committedAt: "desc" },
    select: { id: true, committedAt: true },
  });
  return same && { id: same.id, at: same.committedAt?.toISOString() ?? null };
}

async function readPeople(ids: readonly string[]): Promise<Map<string, string>> {
  const people = await database().user.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, name: true },
  });
  return new Map(people.map(({ id, name }) => [id, name]));
}

function toHead(row: HeadRow, names: ReadonlyMap<string, string>): ImportHead {
  if (!isRegisterKey(row.register)) throw new Error(`Import batch ${row.id} names no register`);
  const { id, fileName, state, added, changed, unchanged, refused } = row;
  return {
    id,
    fileName,
    state,
    register: row.register,
    registerLabel: REGISTERS[row.register].label,
    by: names.get(row.createdBy) ?? "somebody no longer here",
    createdAt: row.createdAt.toISOString(),
    committedAt: row.committedAt?.toISOString() ?? null,
    undoneAt: row.undoneAt?.toISOString() ?? null,
    counts: { added, changed, unchanged, refused },
  };
}

function today(): string {
  return new Date().toISOString().slice(0, 10);
}
