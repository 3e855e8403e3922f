import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { visibleBatches } from "@/lib/data/intake/batch";
import { waitingRows } from "@/lib/data/intake/readLoaded";
import { keptReading } from "@/lib/data/intake/runReading";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { WhichBatch } from "@/lib/schema/import";
import type { Prisma } from "@/prisma/generated/client";

const over: Refusal = {
  code: "missing",
  reason: "Nothing is being done with this file any more. Load the page again to see how it stands.",
};

/** Stops the reading or loading of a file wherever it goes on; what a loading wrote until then is undone. */
export async function stopImport(actor: Actor, { batchId }: WhichBatch): Promise<Result<null, Refusal>> {
  const { count } = await database().importBatch.updateMany({
    where: { id: batchId, state: "staged", work: { in: ["reading", "loading"] }, ...visibleBatches(actor) },
    data: { work: "stopped", workId: null },
  });
  return count > 0 ? ok(null) : err(over);
}

/** Lets a file be read once more: after a reading that was stopped or broke off, and when the records have changed. */
export async function readImportAgain(actor: Actor, { batchId }: WhichBatch): Promise<Result<null, Refusal>> {
  const { count } = await database().importBatch.updateMany({
    where: { id: batchId, state: "staged", ...visibleBatches(actor) },
    data: { work: "idle", workId: null, workNote: null, readFor: null },
  });
  return count > 0 ? ok(null) : err(over);
}

/** Hands in once more the rows of a loaded file that wait, to be looked at and loaded like any file. */
export async function takeUpWaiting(
  actor: Actor,
  { batchId }: WhichBatch,
): Promise<Result<{ readonly batchId: string }, Refusal>> {
  const batch = await database().importBatch.findFirst({
    where: { id: batchId, state: "committed", ...visibleBatches(actor) },
  });
  const rows = batch ? await waitingRows(batchId) : [];
  if (!batch || rows.length === 0)
    return err({ code: "missing", reason: "No row of this file waits any more. Look at the list of files." });
  const { register, fileName, fileHash, fileId, headers, sourceId } = batch;
  const rest = await database().importBatch.create({
    data: {
      ...{ register, fileName, fileHash, fileId, headers, sourceId, restOfId: batchId, onlyRows: rows },
      ...{
        mapping: batch.mapping as Prisma.InputJsonObject,
        dialect: batch.dialect as Prisma.InputJsonObject,
      },
      ...{ reading: batch.reading as Prisma.InputJsonObject, createdBy: actor.userId },
      summary: { answers: (keptReading(batch)?.answers ?? {}) as Prisma.InputJsonObject, staged: null },
    },
    select: { id: true },
  });
  return ok({ batchId: rest.id });
}
