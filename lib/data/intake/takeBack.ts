import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import { type Row, removeRow, updateRow } from "@/lib/data/intake/writers";
import type { Entity } from "@/lib/intake/intents/intent";
import { err, ok, type Result } from "@/lib/kernel/result";

interface Step {
  readonly entity: Entity;
  readonly id: string;
  readonly rowNumber: number;
  readonly before: Row | null;
  readonly after: Row;
}

/**
 * Goes back over the steps of an import, last first.
 *
 * Refused as a whole when something later stands on what it added or changed: nobody's later work is lost.
 */
export async function takeBack(tx: Transaction, batchId: string): Promise<Result<null, Refusal>> {
  const later = await laterChanges(tx, batchId);
  if (later.length > 0) return err(standsInTheWay(later.join(" and ")));
  const kept = await tx.importChange.findMany({ where: { batchId }, orderBy: { sequence: "desc" } });
  const steps = kept.map(
    (row): Step => ({
      entity: row.entity as Entity,
      id: row.entityId,
      rowNumber: row.rowNumber,
      before: row.before as Row | null,
      after: row.after as Row,
    }),
  );
  for (const step of steps) {
    if (step.before !== null) await updateRow(tx, step, step.before);
    else if (!(await removable(tx, step)))
      return err(standsInTheWay(`records that name row ${step.rowNumber}`));
  }
  return ok(null);
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

/** Removes an added row unless something else refers to it. */
async function removable(tx: Transaction, step: Step): Promise<boolean> {
  await tx.$executeRaw`SAVEPOINT one_row`;
  try {
    await removeRow(tx, step);
    await tx.$executeRaw`RELEASE SAVEPOINT one_row`;
    return true;
  } catch (error) {
    if (!isForeignKey(error)) throw error;
    await tx.$executeRaw`ROLLBACK TO SAVEPOINT one_row`;
    return false;
  }
}

function isForeignKey(error: unknown): boolean {
  return error instanceof Error && "code" in error && error.code === "P2003";
}
