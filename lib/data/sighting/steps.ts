import "server-only";
import { isDeepStrictEqual } from "node:util";
import { z } from "zod";
import type { Transaction } from "@/lib/data/change";
import { insertRows, type Row, removeRow, updateRow } from "@/lib/data/intake/writers";
import { Prisma } from "@/prisma/generated/client";

const kept = z.record(z.string(), z.union([z.string(), z.number(), z.boolean(), z.null()]));
const steps = z.array(
  z.strictObject({
    entity: z.enum(["Controller", "Position", "Unit", "Placement"]),
    id: z.uuid(),
    /** Null for a row that was added. */
    before: kept.nullable(),
    after: kept,
  }),
);

/** One row of the register a verdict made or changed. */
export type SightStep = z.output<typeof steps>[number];

/** Writes steps in their order. */
export async function writeSteps(tx: Transaction, wanted: readonly SightStep[]): Promise<void> {
  for (const { entity, id, before, after } of wanted)
    if (before === null) await insertRows(tx, { entity, rows: [after] }, null);
    else await updateRow(tx, { entity, id }, after);
}

/** Goes back over kept steps, last first; false, and half done, when a row no longer stands as a step left it. */
export async function takeStepsBack(tx: Transaction, stored: unknown): Promise<boolean> {
  for (const { entity, id, before, after } of steps.parse(stored).reverse()) {
    if (!(await standsAs(tx, { entity, id, before, after }))) return false;
    if (before !== null) await updateRow(tx, { entity, id }, before);
    else if (entity === "Unit" && (await tx.placement.count({ where: { unitId: id } })) > 0) return false;
    else await removeRow(tx, { entity, id });
  }
  return true;
}

const TABLES: Readonly<Record<SightStep["entity"], Prisma.Sql>> = {
  Controller: Prisma.sql`"Controller"`,
  Position: Prisma.sql`"Position"`,
  Unit: Prisma.sql`"Unit"`,
  Placement: Prisma.sql`"Placement"`,
};

async function standsAs(tx: Transaction, { entity, id, after }: SightStep): Promise<boolean> {
  const [found] = await tx.$queryRaw<{ row: Row }[]>`
    SELECT to_jsonb(t) AS "row" FROM ${TABLES[entity]} t WHERE t."id" = ${id}::uuid FOR UPDATE`;
  const now = Object.fromEntries(Object.keys(after).map((field) => [field, found?.row[field] ?? null]));
  return isDeepStrictEqual(now, after);
}
