import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { siteIds } from "@/lib/data/scope";
import { partKey } from "@/lib/intake/readPartNumber";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { SettleNumber, TakeNumberBack } from "@/lib/schema/partIdentity";
import type { Prisma } from "@/prisma/generated/client";

const noPart: Refusal = {
  code: "missing",
  reason: "There is no such part any more; it may have been merged.",
};
const notYours: Refusal = {
  code: "forbidden",
  reason: "What holds everywhere needs a role for all sites. Say it for a storeroom of your own site.",
};
const gone: Refusal = {
  code: "missing",
  reason: "There is nothing of the kind to take back that you may change.",
};

/** Keeps what a person said of a number: another number of a part, another part, or to be looked at later. */
export async function settlePartNumber(
  actor: Actor,
  said: SettleNumber,
): Promise<Result<{ id: string; kind: "alias" | "verdict" }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  const decided = { decidedBy: actor.name, decidedOn: new Date(`${today}T00:00:00Z`), reason: said.reason };
  return change(actor, async (tx, record) => {
    const site = await siteOf(tx, actor, said.siteCode);
    if (!site.ok) return site;
    if (said.partId !== null && !(await countsItself(tx, said.partId))) return err(noPart);
    const kept =
      said.verdict === "same" && said.partId !== null
        ? await keepAlias(tx, { ...said, partId: said.partId, siteId: site.value, decided })
        : await keepVerdict(tx, said, decided);
    if (!kept.ok) return kept;
    const { id, kind } = kept.value;
    const after = { written: said.written, maker: said.maker, partId: said.partId, reason: said.reason };
    const entity = kind === "alias" ? "PartAlias" : "NumberVerdict";
    record({ deed: `number:${said.verdict}`, entity, entityId: id, siteId: site.value, after });
    await readAgain(tx, { unmatched: { some: { folded: partKey(said.written) } } });
    return ok({ id, kind });
  });
}

/** Files that wait are read again, so that they follow what was said. */
async function readAgain(tx: Transaction, which: Prisma.ImportBatchWhereInput): Promise<void> {
  await tx.importBatch.updateMany({
    where: { state: "staged", work: { not: "loading" }, ...which },
    data: { work: "idle", workId: null, readFor: null },
  });
}

async function siteOf(
  tx: Transaction,
  actor: Actor,
  code: string | null,
): Promise<Result<string | null, Refusal>> {
  if (code === null) return scopeOf(actor.grants, "register:import") === "all" ? ok(null) : err(notYours);
  const ids = siteIds(actor, "register:import");
  const site = await tx.site.findFirst({
    where: { code, ...(ids ? { id: ids } : {}) },
    select: { id: true },
  });
  return site ? ok(site.id) : err(notYours);
}

const countsItself = async (tx: Transaction, id: string) =>
  (await tx.part.count({ where: { id, mergedIntoId: null } })) > 0;

interface Decided {
  readonly decidedBy: string;
  readonly decidedOn: Date;
  readonly reason: string;
}

type Kept = Result<{ id: string; kind: "alias" | "verdict" }, Refusal>;

async function keepAlias(
  tx: Transaction,
  {
    written: alias,
    partId,
    siteId,
    decided,
  }: { written: string; partId: string; siteId: string | null; decided: Decided },
): Promise<Kept> {
  const taken = await tx.partAlias.findFirst({ where: { alias, siteId }, include: { part: true } });
  if (taken && taken.partId !== partId)
    return err({
      code: "conflict",
      reason: `“${alias}” is already another number of ${taken.part.maker} ${taken.part.number}. Take that back first.`,
    });
  if (taken) return ok({ id: taken.id, kind: "alias" });
  const { id } = await tx.partAlias.create({
    data: { alias, partId, siteId, ...decided },
    select: { id: true },
  });
  await tx.numberVerdict.deleteMany({ where: { key: partKey(alias) } });
  return ok({ id, kind: "alias" });
}

async function keepVerdict(tx: Transaction, said: SettleNumber, decided: Decided): Promise<Kept> {
  const { written, maker, partId } = said;
  const verdict = said.verdict === "later" ? ("later" as const) : ("other" as const);
  const key = partKey(written);
  const known = await tx.numberVerdict.findFirst({ where: { key, maker, partId }, select: { id: true } });
  const data = { verdict, written, ...decided };
  const { id } = known
    ? await tx.numberVerdict.update({ where: { id: known.id }, data, select: { id: true } })
    : await tx.numberVerdict.create({ data: { key, maker, partId, ...data }, select: { id: true } });
  return ok({ id, kind: "verdict" });
}

/** Takes back what was said of a number; numbers that came with a file are no one's word and stay. */
export async function takePartNumberBack(
  actor: Actor,
  { id, kind }: TakeNumberBack,
): Promise<Result<null, Refusal>> {
  const ids = siteIds(actor, "register:import");
  return change(actor, async (tx, record) => {
    if (kind === "verdict") {
      const verdict = ids ? null : await tx.numberVerdict.findUnique({ where: { id } });
      if (!verdict) return err(gone);
      await tx.numberVerdict.delete({ where: { id } });
      const before = { written: verdict.written, verdict: verdict.verdict, reason: verdict.reason };
      record({ deed: "number:back", entity: "NumberVerdict", entityId: id, before });
      return ok(null);
    }
    const where = { id, decidedOn: { not: null }, ...(ids ? { siteId: ids } : {}) };
    const alias = await tx.partAlias.findFirst({ where });
    if (!alias) return err(gone);
    await tx.partAlias.delete({ where: { id } });
    // A file that was read with it holds the number no longer as one nobody knows.
    await readAgain(tx, {});
    const before = { alias: alias.alias, partId: alias.partId, reason: alias.reason };
    record({ deed: "number:back", entity: "PartAlias", entityId: id, siteId: alias.siteId, before });
    return ok(null);
  });
}
