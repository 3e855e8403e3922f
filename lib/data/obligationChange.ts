import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { atSites, sites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type {
  AddObligation,
  ChangeObligation,
  RemoveObligation,
  SettleObligation,
} from "@/lib/schema/obligation";
import { reasonGiven } from "@/lib/schema/why";
import type { Obligation } from "@/prisma/generated/client";

const noPlace: Refusal = {
  code: "missing",
  reason: "There is no such site or line where you may add dates.",
};
const missing: Refusal = { code: "missing", reason: "There is no such date that you may change." };
const conflict: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this date since you opened it. Nothing was changed; load the page again.",
};
const notYet: Refusal = {
  code: "impossible",
  reason: "What lies ahead is not done yet. Nothing was changed.",
  fields: { doneOn: "Write a day that is not ahead." },
};

/** Which duty was written, and its version, to take it back with. */
export interface ObligationMark {
  readonly obligationId: string;
  readonly version: number;
}

/** Records a duty at a site, known from today on. */
export async function addObligation(
  actor: Actor,
  wanted: AddObligation,
): Promise<Result<ObligationMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    if (!(await mayStandAt(tx, actor, wanted))) return err(noPlace);
    const { id, version } = await tx.obligation.create({
      data: { ...wanted, dueOn: dateOf(wanted.dueOn), recordedOn: dateOf(today) },
    });
    record({
      ...{ deed: "obligation:add", entity: "Obligation", entityId: id, siteId: wanted.siteId },
      after: { ...wanted, recordedOn: today },
    });
    return ok({ obligationId: id, version });
  });
}

/** Writes what is said of a duty, if nobody else did meanwhile. */
export async function changeObligation(
  actor: Actor,
  { obligationId, version, why, ...wanted }: ChangeObligation,
): Promise<Result<ObligationMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await findObligation(tx, actor, obligationId);
    if (!stored) return err(missing);
    if (!(await mayStandAt(tx, actor, wanted))) return err(noPlace);
    const { count } = await tx.obligation.updateMany({
      where: { id: obligationId, version },
      data: { ...wanted, dueOn: dateOf(wanted.dueOn), version: { increment: 1 } },
    });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "obligation:change", entity: "Obligation", entityId: obligationId, siteId: stored.siteId },
      ...{ before: saidOf(stored), after: wanted, why: reasonGiven(why) },
    });
    return ok({ obligationId, version: version + 1 });
  });
}

/** Marks a duty done on a day, or opens it again, if nobody else changed it meanwhile. */
export async function settleObligation(
  actor: Actor,
  { obligationId, version, doneOn, why }: SettleObligation,
): Promise<Result<ObligationMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  if (doneOn !== null && doneOn > today) return err(notYet);
  return change(actor, async (tx, record) => {
    const stored = await findObligation(tx, actor, obligationId);
    if (!stored) return err(missing);
    const { count } = await tx.obligation.updateMany({
      where: { id: obligationId, version },
      data: { doneOn: doneOn === null ? null : dateOf(doneOn), version: { increment: 1 } },
    });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "obligation:settle", entity: "Obligation", entityId: obligationId, siteId: stored.siteId },
      ...{ before: { doneOn: dayOf(stored.doneOn) }, after: { doneOn }, why: reasonGiven(why) },
    });
    return ok({ obligationId, version: version + 1 });
  });
}

/** Takes a duty off the record, if nobody else changed it meanwhile; the audit keeps what it said. */
export async function removeObligation(
  actor: Actor,
  { obligationId, version, why }: RemoveObligation,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await findObligation(tx, actor, obligationId);
    if (!stored) return err(missing);
    const { count } = await tx.obligation.deleteMany({ where: { id: obligationId, version } });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "obligation:remove", entity: "Obligation", entityId: obligationId, siteId: stored.siteId },
      ...{ before: saidOf(stored), why: reasonGiven(why) },
    });
    return ok(null);
  });
}

function findObligation(tx: Transaction, actor: Actor, id: string) {
  return tx.obligation.findFirst({ where: { id, ...atSites(actor, "line:write") } });
}

/** Whether the actor may write at the site, and the line stands there. */
async function mayStandAt(
  tx: Transaction,
  actor: Actor,
  { siteId, lineId }: { readonly siteId: string; readonly lineId: string | null },
): Promise<boolean> {
  const site = await tx.site.count({ where: { AND: [{ id: siteId }, sites(actor, "line:write")] } });
  if (site === 0 || lineId === null) return site > 0;
  return (await tx.line.count({ where: { id: lineId, siteId } })) > 0;
}

function saidOf({ siteId, lineId, kind, title, source, owner, evidence, ...days }: Obligation) {
  const { dueOn, recordedOn, doneOn } = days;
  return {
    ...{ siteId, lineId, kind, title, source, owner, evidence },
    ...{ dueOn: dayOf(dueOn), recordedOn: dayOf(recordedOn), doneOn: dayOf(doneOn) },
  };
}

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);
const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;
