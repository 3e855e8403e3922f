import "server-only";
import { database } from "@/lib/data/client";
import type { StoredBatch } from "@/lib/data/intake/batch";
import { readNames } from "@/lib/data/intake/readNames";
import type { Resolved } from "@/lib/data/intake/resolve";
import type { Entity } from "@/lib/intake/intents/intent";
import type { RegisterKey } from "@/lib/intake/registers";
import type { VanishedThings } from "@/lib/view/importView";
import { thingWord } from "@/lib/view/importWords";

/** Things a file of a register is a full list of; logs and bulletins are none, they only grow. */
const LISTED: Partial<Record<RegisterKey, readonly Entity[]>> = {
  assets: ["Line", "Machine", "Controller"],
  axes: ["Axis", "Position"],
  stock: ["StockLot"],
  backups: ["Backup"],
  contacts: ["Contact"],
  windows: ["ShutdownWindow"],
};

const MOST_SHOWN = 500;

/** The things of its own kind that rows speak of, to be kept with the batch. */
export function mentionsOf(batchId: string, register: RegisterKey, resolved: readonly Resolved[]) {
  const listed = LISTED[register] ?? [];
  return resolved
    .filter(({ entity }) => listed.includes(entity))
    .map(({ entity, id }) => ({ batchId, entity, entityId: id }));
}

/**
 * What the last file of the same source and the same sites spoke of and this one does not, of what is still stored.
 * It is told, never taken out.
 */
export async function findVanished(
  batch: StoredBatch,
  register: RegisterKey,
  siteCodes: readonly string[],
): Promise<VanishedThings | null> {
  if (!LISTED[register] || batch.onlyRows.length > 0) return null;
  const last = await database().importBatch.findFirst({
    where: {
      ...{ register, state: "committed", siteCodes: { equals: [...siteCodes] }, restOfId: null },
      ...(batch.sourceId === null ? { headers: batch.headers } : { sourceId: batch.sourceId }),
    },
    orderBy: { committedAt: "desc" },
    select: { id: true, fileName: true, committedAt: true },
  });
  if (!last) return null;
  const gone = await database().$queryRaw<{ entity: string; id: string }[]>`
    SELECT m."entity", m."entityId" AS "id" FROM "ImportMention" m
    WHERE m."batchId" = ${last.id}::uuid AND NOT EXISTS (SELECT FROM "ImportMention" o
      WHERE o."batchId" = ${batch.id}::uuid AND o."entity" = m."entity" AND o."entityId" = m."entityId")
    ORDER BY m."entity", m."entityId"`;
  const names = await readNames(
    database(),
    gone.map(({ id }) => id),
  );
  const still = gone.flatMap(({ entity, id }) => {
    const name = names.get(id);
    return name === undefined ? [] : [{ thing: thingWord(entity, false), name }];
  });
  if (still.length === 0) return null;
  const at = last.committedAt?.toISOString() ?? null;
  return { fileName: last.fileName, at, count: still.length, shown: still.slice(0, MOST_SHOWN) };
}
