import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { visibleBatches } from "@/lib/data/intake/batch";
import { removeUnused } from "@/lib/data/intake/fileStore";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { DiscardBatch } from "@/lib/schema/import";

/** Drops a file that was never taken over. Nothing of it was in the registers, so the data stay as they are. */
export async function discardImport(actor: Actor, { batchId }: DiscardBatch): Promise<Result<null, Refusal>> {
  const where = { id: batchId, state: "staged", ...visibleBatches(actor) } as const;
  const batch = await database().importBatch.findFirst({ where, select: { fileId: true } });
  const dropped = await database().importBatch.deleteMany({ where });
  if (batch) await removeUnused(batch.fileId);
  if (dropped.count > 0) return ok(null);
  return err({
    code: "missing",
    reason: "There is no such file waiting. It may have been loaded or dropped meanwhile; look at the list.",
  });
}
