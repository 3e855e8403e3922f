import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { tryOut } from "@/lib/data/group/tryOut";
import { applyBatch } from "@/lib/data/intake/applyBatch";
import { importSites, visibleBatches, WITH_FILE } from "@/lib/data/intake/batch";
import { bulkClient } from "@/lib/data/intake/bulk";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { FigureEffect } from "@/lib/view/figureEffect";

const gone: Refusal = { code: "missing", reason: "There is no such file waiting." };

const busy: Refusal = {
  code: "conflict",
  reason: "Another file is being loaded just now, and trials wait for it. Ask again when it is done.",
};

/** What loading a staged file without some rows would do to losses and places. */
export interface ImportEffect {
  readonly effect: FigureEffect;
  /** Things it would add and change. */
  readonly added: number;
  readonly changed: number;
  /** What it took to find out, seconds. */
  readonly seconds: number;
}

/** Prisma's word for a transaction that found no free connection in time. */
const NO_CONNECTION = "P2028";

/** Loads a staged file in a transaction that is rolled back, and evaluates the group without it and with it. */
export async function readImportEffect(
  actor: Actor,
  batch: { readonly batchId: string; readonly leftOut: readonly number[] },
): Promise<Result<ImportEffect, Refusal>> {
  try {
    return await tryBatch(actor, batch);
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === NO_CONNECTION) return err(busy);
    throw error;
  }
}

async function tryBatch(
  actor: Actor,
  { batchId, leftOut }: { readonly batchId: string; readonly leftOut: readonly number[] },
): Promise<Result<ImportEffect, Refusal>> {
  const started = performance.now();
  const asOf = await readAsOf(actor, undefined);
  const tried = await tryOut(actor, { asOf, client: bulkClient() }, async (tx) => {
    const batch = await tx.importBatch.findFirst({
      where: { id: batchId, state: "staged", ...visibleBatches(actor) },
      include: WITH_FILE,
    });
    if (!batch) return err(gone);
    const around = { allowedSites: await importSites(tx, actor), day: today(), leftOut };
    return applyBatch(tx, batch, { ...around, hear: async () => undefined });
  });
  if (!tried.ok) return tried;
  const { told, effect } = tried.value;
  const { added, changed } = told.loaded;
  return ok({ effect, added, changed, seconds: (performance.now() - started) / 1000 });
}

function today(): string {
  return new Date().toISOString().slice(0, 10);
}
