import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { importSites, visibleBatches } from "@/lib/data/intake/batch";
import { readLoaded } from "@/lib/data/intake/readLoaded";
import { readStaged } from "@/lib/data/intake/readStaged";
import { isRegisterKey, REGISTERS } from "@/lib/intake/registers";
import type { ImportHead, ImportList, ImportView } from "@/lib/view/importView";
import type { Prisma } from "@/prisma/generated/client";

const LONGEST_READING_MS = 120_000;

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
  const names = await readPeople(
    database(),
    rows.map((row) => row.createdBy),
  );
  return { files: rows.map((row) => toHead(row, names)), isEmpty: site === null };
}

/**
 * One file: before it is loaded, what it would do without the rows left out; after, what it did.
 *
 * @param leftOut Rows a person leaves out, as a spreadsheet numbers them.
 * @returns null when there is no such file for this actor.
 */
export async function readImport(
  actor: Actor,
  batchId: string,
  leftOut: readonly number[],
): Promise<ImportView | null> {
  return database().$transaction(
    async (tx) => {
      const batch = await tx.importBatch.findFirst({ where: { id: batchId, ...visibleBatches(actor) } });
      if (!batch) return null;
      const head = toHead(batch, await readPeople(tx, [batch.createdBy]));
      if (batch.state !== "staged") return { head, staged: null, loaded: await readLoaded(tx, batchId) };
      const same = await tx.importBatch.findFirst({
        where: {
          fileHash: batch.fileHash,
          register: batch.register,
          state: "committed",
          ...visibleBatches(actor),
        },
        orderBy: { committedAt: "desc" },
        select: { id: true, committedAt: true },
      });
      const staged = await readStaged(tx, batch, {
        allowedSites: await importSites(tx, actor),
        day: today(),
        leftOut,
      });
      const loadedBefore = same && { id: same.id, at: same.committedAt?.toISOString() ?? null };
      return { head, staged: { ...staged, loadedBefore }, loaded: null };
    },
    { isolationLevel: "RepeatableRead", timeout: LONGEST_READING_MS, maxWait: 10_000 },
  );
}

async function readPeople(tx: Transaction, ids: readonly string[]): Promise<Map<string, string>> {
  const people = await tx.user.findMany({
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
