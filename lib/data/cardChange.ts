import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddBackup, AddContact } from "@/lib/schema/cardEntry";

const noMachine: Refusal = {
  code: "missing",
  reason: "There is no such machine whose card you may change.",
};
const noController: Refusal = {
  code: "impossible",
  reason: "No controller is recorded for this machine, so nothing can be a copy of it. Nothing was changed.",
};
const ahead: Refusal = {
  code: "impossible",
  reason: "What lies ahead has not happened yet. Nothing was changed.",
  fields: { takenOn: "Write days that are not ahead." },
};
const missing: Refusal = { code: "missing", reason: "There is no such entry that you may remove." };

type Added = Result<{ readonly id: string }, Refusal>;

/** Records a copy kept of the controller of a machine. */
export async function addBackup(
  actor: Actor,
  { machineId, takenOn, verifiedOn, ...wanted }: AddBackup,
): Promise<Added> {
  const today = await readAsOf(actor, undefined);
  if (takenOn > today || (verifiedOn ?? takenOn) > today) return err(ahead);
  return change(actor, async (tx, record) => {
    const machine = await findMachine(tx, actor, machineId);
    if (!machine) return err(noMachine);
    if (machine.controllerId === null) return err(noController);
    const { id } = await tx.backup.create({
      data: {
        ...wanted,
        controllerId: machine.controllerId,
        takenOn: dateOf(takenOn),
        verifiedOn: verifiedOn === null ? null : dateOf(verifiedOn),
      },
    });
    record({
      ...{ deed: "backup:add", entity: "Backup", entityId: id, siteId: machine.line.siteId },
      after: { ...wanted, takenOn, verifiedOn, controllerId: machine.controllerId },
    });
    return ok({ id });
  });
}

/** Records a function to call for a machine's line, or for its whole site. */
export function addContact(actor: Actor, { machineId, wholeSite, ...wanted }: AddContact): Promise<Added> {
  return change(actor, async (tx, record) => {
    const machine = await findMachine(tx, actor, machineId);
    if (!machine) return err(noMachine);
    const { siteId } = machine.line;
    const data = { ...wanted, siteId, lineId: wholeSite ? null : machine.lineId };
    const { id } = await tx.contact.create({ data });
    record({ deed: "contact:add", entity: "Contact", entityId: id, siteId, after: data });
    return ok({ id });
  });
}

/** Takes a copy off the record; the audit keeps what it said. */
export function removeBackup(actor: Actor, { id }: { readonly id: string }): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const where = { id, controller: atSites(actor, "line:write") };
    const stored = await tx.backup.findFirst({
      where,
      include: { controller: { select: { siteId: true } } },
    });
    if (!stored) return err(missing);
    await tx.backup.delete({ where: { id } });
    const { controller, ...before } = stored;
    record({
      ...{ deed: "backup:remove", entity: "Backup", entityId: id, siteId: controller.siteId },
      before: { ...before, takenOn: dayOf(before.takenOn), verifiedOn: dayOf(before.verifiedOn) },
    });
    return ok(null);
  });
}

/** Takes a function off the record; the audit keeps what it said. */
export function removeContact(actor: Actor, { id }: { readonly id: string }): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const stored = await tx.contact.findFirst({ where: { id, ...atSites(actor, "line:write") } });
    if (!stored) return err(missing);
    await tx.contact.delete({ where: { id } });
    record({
      ...{ deed: "contact:remove", entity: "Contact", entityId: id, siteId: stored.siteId, before: stored },
    });
    return ok(null);
  });
}

function findMachine(tx: Transaction, actor: Actor, id: string) {
  return tx.machine.findFirst({
    where: { id, line: atSites(actor, "line:write") },
    select: { lineId: true, controllerId: true, line: { select: { siteId: true } } },
  });
}

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);
const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;
