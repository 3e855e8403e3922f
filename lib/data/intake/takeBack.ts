import "server-only";
import { DatabaseError } from "pg";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { queryInTransaction } from "@/lib/data/intake/bulk";
import { type Row, updateRow } from "@/lib/data/intake/writers";
import { ENTITIES, type Entity } from "@/lib/intake/intents/intent";
import { err, ok, type Result } from "@/lib/kernel/result";
import { Prisma } from "@/prisma/generated/client";

/**
 * Goes back over the steps of an import, last first, in the transaction of the bulk client.
 *
 * Refused as a whole when something later stands on what it added or changed: nobody's later work is lost.
 */
export async function takeBack(tx: Transaction, batchId: string): Promise<Result<null, Refusal>> {
  const later = await laterChanges(tx, batchId);
  if (later.length > 0) return err(standsInTheWay(later.join(" and ")));
  // Children were written after their parents, and what a kind of thing added after what it changed.
  for (const entity of [...ENTITIES].reverse()) {
    const inTheWay = await removeAdded(batchId, entity);
    if (inTheWay !== null) return err(standsInTheWay(`records that name row ${inTheWay}`));
    const changed = await tx.importChange.findMany({
      where: { batchId, entity, before: { not: Prisma.AnyNull } },
      orderBy: { sequence: "desc" },
    });
    for (const { entityId, before } of changed) await updateRow(tx, { entity, id: entityId }, before as Row);
  }
  return ok(null);
}

/** Removes what a batch added of one kind. @returns the row of a thing that others refer to; null when all went. */
async function removeAdded(batchId: string, entity: Entity): Promise<number | null> {
  const [column, type] = entity === "CurrencyRate" ? ["currency", "text"] : ["id", "uuid"];
  const added = `SELECT "entityId" FROM "ImportChange" WHERE "batchId" = $1 AND "entity" = $2 AND "before" IS NULL`;
  try {
    await queryInTransaction(
      `DELETE FROM "${entity}" t USING (${added}) a WHERE t."${column}" = a."entityId"::${type}`,
      [batchId, entity],
    );
    return null;
  } catch (error) {
    if (!(error instanceof DatabaseError) || !REFERRED_TO.includes(error.code ?? "")) throw error;
    return rowInTheWay(batchId, error);
  }
}

/** A foreign key stands in the way; PostgreSQL 18 gives one that restricts a number of its own. */
const REFERRED_TO = ["23503", "23001"];

/** The row of the file that made the thing a refusal of the database names. */
async function rowInTheWay(batchId: string, { detail = "" }: DatabaseError): Promise<number> {
  const entityId = /=\(([^)]+)\)/.exec(detail)?.[1] ?? "";
  // The transaction is broken and will be rolled back; what was kept is read beside it.
  const step = await database().importChange.findFirst({
    where: { batchId, entityId, before: { equals: Prisma.AnyNull } },
    select: { rowNumber: true },
  });
  return step?.rowNumber ?? 0;
}

function standsInTheWay(what: string): Refusal {
  return {
    code: "conflict",
    reason: `This file cannot be taken back, because ${what} came after it. Take that back first; nothing was changed.`,
  };
}

/** Files committed later, and edits made later, that wrote to the same rows. */
async function laterChanges(tx: Transaction, batchId: string): Promise<string[]> {
  const rows = await tx.$queryRaw<{ what: string }[]>`
    WITH batch AS (SELECT "committedAt" FROM "ImportBatch" WHERE "id" = ${batchId}::uuid),
    mine AS (SELECT "entity", "entityId" FROM "ImportChange" WHERE "batchId" = ${batchId}::uuid)
    SELECT DISTINCT 'the file ' || b."fileName" AS "what" FROM mine
    JOIN "ImportChange" other USING ("entity", "entityId")
    JOIN "ImportBatch" b ON b."id" = other."batchId" AND b."state" = 'committed'
    CROSS JOIN batch WHERE b."committedAt" > batch."committedAt"
    UNION
    SELECT DISTINCT 'an edit of a ' || lower(a."entity") FROM mine
    JOIN "AuditEntry" a USING ("entity", "entityId") CROSS JOIN batch WHERE a."at" > batch."committedAt"
    ORDER BY 1 LIMIT 3`;
  return rows.map((row) => row.what);
}
