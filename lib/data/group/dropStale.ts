import "server-only";
import type { Transaction } from "@/lib/data/change";

/** A page that began to read an evaluation has finished after this. */
const READING_MINUTES = 10;
/** A process that computed nothing for so long starts afresh. */
const NARROW_DAYS = 2;

/** Marks the evaluations that data of this version made stale: nobody begins to read them any more. */
export async function markStale(tx: Transaction, version: bigint): Promise<void> {
  await tx.$executeRaw`
    UPDATE "Evaluation" SET "staleSince" = now() WHERE "dataVersion" < ${version} AND "staleSince" IS NULL`;
}

/**
 * Drops what whoever was reading has long finished with.
 *
 * Evaluations go with their rows once none that shares them is read; of those that share the rows of `rowsId`, the
 * stale steps go, and the rows only they used.
 */
export async function dropStale(tx: Transaction, rowsId: string): Promise<void> {
  await tx.$executeRaw`
    DELETE FROM "Evaluation" e WHERE NOT EXISTS (
      SELECT 1 FROM "Evaluation" s WHERE s."rowsId" = e."rowsId"
        AND coalesce(s."staleSince", now()) >= now() - make_interval(mins => ${READING_MINUTES}::int))`;
  await tx.$executeRaw`
    DELETE FROM "Evaluation" WHERE "rowsId" = ${rowsId}::uuid AND "id" <> "rowsId"
      AND "staleSince" < now() - make_interval(mins => ${READING_MINUTES}::int)`;
  const [read] = await tx.$queryRaw<{ since: bigint }[]>`
    SELECT min("dataVersion") AS "since" FROM "Evaluation" WHERE "rowsId" = ${rowsId}::uuid
      AND coalesce("staleSince", now()) >= now() - make_interval(mins => ${READING_MINUTES}::int)`;
  if (read) {
    const unread = { rowsId, untilVersion: { lte: read.since } };
    await tx.lineRow.deleteMany({ where: unread });
    await tx.poolRow.deleteMany({ where: unread });
  }
  await tx.$executeRaw`
    DELETE FROM "NarrowChange" WHERE "changedAt" < now() - make_interval(days => ${NARROW_DAYS}::int)`;
}
