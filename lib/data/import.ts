import "server-only";
import { randomUUID } from "node:crypto";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, holdData } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { applyBatch, type Loaded } from "@/lib/data/intake/applyBatch";
import { importSites, visibleBatches, WITH_FILE } from "@/lib/data/intake/batch";
import { bulkClient } from "@/lib/data/intake/bulk";
import { keepFile, removeUnused } from "@/lib/data/intake/fileStore";
import { openFile } from "@/lib/data/intake/openFile";
import { asJson, beatOf, Stopped, silentAt } from "@/lib/data/intake/runReading";
import { recallReading, rememberReading, withNullWords } from "@/lib/data/intake/sourceReading";
import { takeBack } from "@/lib/data/intake/takeBack";
import { misnamed } from "@/lib/intake/misnamed";
import { dialectOf, type OpenedRegister, type ReadingChoice } from "@/lib/intake/openRegister";
import { isRegisterKey, REGISTERS, type RegisterKey } from "@/lib/intake/registers";
import { settleDialect } from "@/lib/intake/settleDialect";
import { headersKey, toMapping } from "@/lib/intake/suggestMapping";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { ChooseReading, CommitBatch, UndoBatch } from "@/lib/schema/import";
import type { ImportBatch } from "@/prisma/generated/client";

const LONGEST_LOAD_MS = 3_600_000;

const gone: Refusal = {
  code: "missing",
  reason: "There is no such file waiting. It may have been loaded or taken back meanwhile; look at the list.",
};

const stopped: Refusal = {
  code: "impossible",
  reason: "The loading was stopped before its end. Nothing was taken over.",
};

const busy: Refusal = {
  code: "conflict",
  reason: "This file is being loaded already. Look again in half a minute; loading it twice changes nothing.",
};

/** A file as a person hands it in. */
export interface HandedIn {
  readonly register: RegisterKey;
  readonly fileName: string;
  /** The bytes, at once or as they come. */
  readonly bytes: Uint8Array<ArrayBuffer> | AsyncIterable<Uint8Array>;
}

/**
 * Keeps a file as handed in, with what its columns most likely are. Nothing of it is taken over yet.
 *
 * @throws what `bytes` throws; nothing is kept then.
 */
export async function stageImport(
  actor: Actor,
  { register, fileName, bytes }: HandedIn,
): Promise<Result<{ batchId: string }, Refusal>> {
  const file = await keepFile(bytes instanceof Uint8Array ? [bytes] : bytes);
  const opened = await openFile(file, REGISTERS[register], {});
  const why = opened.ok ? misnamed(fileName, opened.value.opened.file.format) : opened.error;
  if (!opened.ok || why !== null) {
    await removeUnused(file.id);
    return err({ code: "invalid", reason: `${fileName}: ${why}` });
  }
  const proposed = await propose(actor, opened.value.opened, register);
  const batch = await database().importBatch.create({
    data: {
      ...{ register, fileName, fileHash: file.hash, fileId: file.id, createdBy: actor.userId },
      ...{ headers: proposed.headers, mapping: proposed.mapping, dialect: asJson(proposed.dialect) },
      ...{ sourceId: proposed.sourceId, summary: asJson({ answers: proposed.answers, staged: null }) },
    },
    select: { id: true },
  });
  return ok({ batchId: batch.id });
}

/** What is known of files with these column names, else the likeliest mapping, and how the first rows are written. */
async function propose(actor: Actor, { body, suggestions }: OpenedRegister, register: RegisterKey) {
  const headers = headersKey(body.headers);
  const known = await recallReading(database(), actor, { register, headers });
  const { sourceId, mapping, answers } = known ?? {
    ...{ sourceId: null, mapping: toMapping(suggestions), answers: {} },
  };
  const dialect = settleDialect(dialectOf(body, mapping, REGISTERS[register]), answers);
  return { headers, sourceId, mapping, answers, dialect };
}

/** Sets which column is which field and how the file is written; remembered for files with the same headers. */
export async function chooseImportReading(
  actor: Actor,
  { batchId, mapping: posted, answers: said, reading }: ChooseReading,
): Promise<Result<null, Refusal>> {
  const batch = await database().importBatch.findFirst({
    where: { id: batchId, state: "staged", work: { not: "loading" }, ...visibleBatches(actor) },
    include: WITH_FILE,
  });
  if (!batch || !isRegisterKey(batch.register)) return err(gone);
  const register = REGISTERS[batch.register];
  const way = reading ?? (batch.reading as ReadingChoice);
  const opened = await openFile(batch.file, register, way);
  if (!opened.ok) return err({ code: "invalid", reason: opened.error });
  const { body } = opened.value.opened;
  const headers = headersKey(body.headers);
  // Another sheet or row of names has other columns; what was said of the earlier ones is about those.
  const isOther = reading !== undefined && headers !== headersKey(Object.keys(posted));
  const mapping = isOther ? (await propose(actor, opened.value.opened, register.key)).mapping : posted;
  const answers = await withNullWords(batch.sourceId, register.key, said);
  const dialect = settleDialect(dialectOf(body, mapping, register), answers);
  await database().importBatch.update({
    where: { id: batch.id },
    data: {
      ...{ mapping, headers, dialect: asJson(dialect), reading: asJson(way) },
      summary: asJson({ answers, staged: null }),
      // A reading that goes on notices that its number is gone, and ends.
      ...{ work: "idle", workId: null, readFor: null },
    },
    select: { id: true },
  });
  if (isOther) return ok(null);
  const { sourceId } = batch;
  await rememberReading(database(), actor, { register: register.key, headers, sourceId, mapping, answers });
  return ok(null);
}

/** Takes a staged file over, wholly or not at all; rows with an error and rows left out stay outside. */
export async function commitImport(
  actor: Actor,
  { batchId, leftOut }: CommitBatch,
): Promise<Result<Loaded, Refusal>> {
  const workId = await announce(actor, batchId);
  if (workId === null) return err(busy);
  const hear = beatOf(batchId, workId);
  try {
    const answer = await change<Loaded, Refusal>(
      actor,
      async (tx, record) => {
        await holdData(tx);
        const batch = await tx.importBatch.findFirst({
          where: { id: batchId, state: "staged", ...visibleBatches(actor) },
          include: WITH_FILE,
        });
        if (!batch) return err(gone);
        const around = { allowedSites: await importSites(tx, actor), day: today(), leftOut };
        const applied = await applyBatch(tx, batch, { ...around, hear });
        if (!applied.ok) return applied;
        const { loaded, siteCodes, stock } = applied.value;
        const done = { state: "committed", work: "read", committedAt: new Date() } as const;
        const kept = { ...loaded, ...done, siteCodes: [...siteCodes], leftOut: [...leftOut] };
        await tx.importBatch.update({ where: { id: batchId }, data: kept, select: { id: true } });
        if (loaded.added + loaded.changed > 0) record({ ...entry("import:commit", batch, loaded), ...stock });
        return ok(loaded);
      },
      { client: bulkClient(), longestMs: LONGEST_LOAD_MS },
    );
    if (!answer.ok) await giveUp(batchId, workId);
    return answer;
  } catch (error) {
    await giveUp(batchId, workId);
    if (error instanceof Stopped) return err(stopped);
    throw error;
  }
}

/**
 * Says that a batch is being loaded, so that its page shows how far it is. Whoever was killed amid the loading is no
 * obstacle once silent.
 *
 * @returns Number of the work; null while somebody else loads it.
 */
async function announce(actor: Actor, batchId: string): Promise<string | null> {
  const workId = randomUUID();
  const now = new Date();
  const batch = { id: batchId, state: "staged", ...visibleBatches(actor) } as const;
  const { count } = await database().importBatch.updateMany({
    where: { AND: [batch, { OR: [{ work: { not: "loading" } }, ...silentAt(now)] }] },
    data: { work: "loading", workId, workStartedAt: now, beatAt: now, rowsRead: 0, bytesRead: 0 },
  });
  if (count > 0) return workId;
  return (await database().importBatch.count({ where: { ...batch, work: "loading" } })) > 0 ? null : workId;
}

async function giveUp(batchId: string, workId: string): Promise<void> {
  await database().importBatch.updateMany({
    where: { id: batchId, workId, state: "staged" },
    data: { work: "idle", readFor: null },
  });
}

/** Takes a committed file back: what it added goes, what it changed is as before. */
export async function undoImport(actor: Actor, { batchId }: UndoBatch): Promise<Result<Loaded, Refusal>> {
  return change(
    actor,
    async (tx, record) => {
      await holdData(tx);
      const batch = await tx.importBatch.findFirst({
        where: { id: batchId, state: "committed", ...visibleBatches(actor) },
      });
      if (!batch) return err(gone);
      const back = await takeBack(tx, batchId);
      if (!back.ok) return back;
      await tx.importBatch.update({
        where: { id: batchId },
        data: { state: "undone", undoneAt: new Date() },
      });
      const { added, changed, unchanged, refused } = batch;
      record(entry("import:undo", batch, { added, changed, unchanged, refused }));
      return ok({ added, changed, unchanged, refused });
    },
    { client: bulkClient(), longestMs: LONGEST_LOAD_MS },
  );
}

function entry(deed: string, batch: ImportBatch, counts: Loaded) {
  const after = { register: batch.register, fileName: batch.fileName, fileHash: batch.fileHash, ...counts };
  return { deed, entity: "ImportBatch", entityId: batch.id, after };
}

function today(): IsoDate {
  return new Date().toISOString().slice(0, 10);
}
