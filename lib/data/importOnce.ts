import "server-only";
import type { z } from "zod";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { type HandedIn, stageImport } from "@/lib/data/import";
import { discardImport } from "@/lib/data/importDiscard";
import { visibleBatches } from "@/lib/data/intake/batch";
import { claimRequest, dropClaim, keepAnswer } from "@/lib/data/interface/keptAnswer";
import type { importHead } from "@/lib/interface/shapes/writes";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { DiscardBatch } from "@/lib/schema/import";

const LONGEST_STAGING_MS = 300_000;

/** Each file handed in holds a connection while it is read over others, and the connections are few. */
const MOST_AT_ONCE = 3;
let beingRead = 0;

const busy: Refusal = {
  code: "conflict",
  reason: `${MOST_AT_ONCE} files are being read already. Hand this one in again in a minute; nothing was kept.`,
};

/** Keeps a file another system hands in, once for the same request. */
export async function stageOnce(actor: Actor, file: HandedIn): Promise<Result<{ batchId: string }, Refusal>> {
  if (beingRead >= MOST_AT_ONCE) return err(busy);
  beingRead += 1;
  try {
    return await once(actor, (plain) => stageImport(plain, file));
  } finally {
    beingRead -= 1;
  }
}

/** Drops a file that was never loaded, once for the same request. */
export function discardOnce(actor: Actor, file: DiscardBatch): Promise<Result<null, Refusal>> {
  return once(actor, (plain) => discardImport(plain, file));
}

/**
 * Does something that writes in transactions of its own once for the same request.
 *
 * A power cut between those and the answer lets it be done twice: a file then waits twice. Loading a file is a
 * change, and that is never done twice.
 */
async function once<T>(
  actor: Actor,
  run: (plain: Actor) => Promise<Result<T, Refusal>>,
): Promise<Result<T, Refusal>> {
  const { request: _, ...plain } = actor;
  return database().$transaction(
    async (tx) => {
      const before = await claimRequest(tx, actor);
      if (before) return ok(before.value as T);
      const result = await run(plain);
      await (result.ok ? keepAnswer(tx, actor, result.value) : dropClaim(tx, actor));
      return result;
    },
    { timeout: LONGEST_STAGING_MS, maxWait: 10_000 },
  );
}

/** What became of a file; null when there is none for this actor. */
export async function readImportHead(
  actor: Actor,
  batchId: string,
): Promise<z.output<typeof importHead> | null> {
  const batch = await database().importBatch.findFirst({
    where: { id: batchId, ...visibleBatches(actor) },
  });
  if (!batch) return null;
  const { id, register, fileName, state, added, changed, unchanged, refused } = batch;
  return {
    ...{ id, register, fileName, state, counts: { added, changed, unchanged, refused } },
    createdAt: batch.createdAt.toISOString(),
    committedAt: batch.committedAt?.toISOString() ?? null,
    undoneAt: batch.undoneAt?.toISOString() ?? null,
  };
}
