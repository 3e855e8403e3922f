import "server-only";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import type { Transaction } from "@/lib/data/change";
import { type Examination, examine } from "@/lib/data/intake/examine";
import type { Dialect, DialectFinding } from "@/lib/intake/dialect";
import { dialectOf, type OpenedRegister, openRegister } from "@/lib/intake/openRegister";
import { isRegisterKey, REGISTERS } from "@/lib/intake/registers";
import type { Mapping } from "@/lib/intake/suggestMapping";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ImportBatch, Prisma } from "@/prisma/generated/client";

/** A staged file opened again, and what it would do. */
export interface OpenedBatch {
  readonly opened: OpenedRegister;
  readonly mapping: Mapping;
  readonly dialect: Dialect;
  readonly finding: DialectFinding;
  readonly examination: Examination;
}

/** Condition on batches a person may see: all of them for who imports for every site, else the own ones. */
export function visibleBatches(actor: Actor): Prisma.ImportBatchWhereInput {
  return scopeOf(actor.grants, "register:import") === "all" ? {} : { createdBy: actor.userId };
}

/** Codes of the sites the person may import for; null is every site. */
export async function importSites(tx: Transaction, actor: Actor): Promise<ReadonlySet<string> | null> {
  const scope = scopeOf(actor.grants, "register:import");
  if (scope === "all") return null;
  const rows = await tx.site.findMany({ where: { id: { in: [...scope] } }, select: { code: true } });
  return new Set(rows.map((row) => row.code));
}

/** Opens the stored file by the choices made and compares it with what is stored. */
export async function openBatch(
  tx: Transaction,
  batch: ImportBatch,
  around: {
    readonly allowedSites: ReadonlySet<string> | null;
    readonly day: IsoDate;
    readonly leftOut: readonly number[];
  },
): Promise<OpenedBatch> {
  if (!isRegisterKey(batch.register)) throw new Error(`Import batch ${batch.id} names no register`);
  const register = REGISTERS[batch.register];
  const opened = await openRegister(batch.fileBytes, register);
  // The bytes were opened once before they were stored, so a file that no longer opens is a broken store.
  if (!opened.ok) throw new Error(`The stored file of import ${batch.id} no longer opens: ${opened.error}`);
  const mapping = batch.mapping as Mapping;
  const dialect = batch.dialect as unknown as Dialect;
  const examination = await examine(tx, {
    register,
    body: opened.value.body,
    mapping,
    dialect,
    recordedOn: around.day,
    allowedSites: around.allowedSites,
    leftOut: new Set(around.leftOut),
  });
  return {
    opened: opened.value,
    mapping,
    dialect,
    finding: dialectOf(opened.value.body, mapping, register),
    examination,
  };
}
