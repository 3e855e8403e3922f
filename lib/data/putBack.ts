import "server-only";
import { z } from "zod";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { isIsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";

const nothing: Refusal = {
  code: "missing",
  reason: "There is no removed entry of this kind that you may put back.",
};
const inTheWay: Refusal = {
  code: "conflict",
  reason:
    "What it belongs to has changed since, so it cannot be put back. Nothing was changed; enter it anew.",
};

const text = z.string();
const id = z.uuid();
const day = text.refine(isIsoDate);

/** What the audit keeps of each kind when it is removed. */
const removed = {
  Backup: z.object({
    ...{ id, controllerId: id, kind: z.enum(["program", "parameters", "operator_panel"]), takenOn: day },
    ...{ keptAt: text, verifiedOn: day.nullable(), sourceAvailable: z.boolean().nullable() },
  }),
  Contact: z.object({
    ...{ id, siteId: id, lineId: id.nullable() },
    ...{ role: text, phone: text, hours: text, note: text.nullable() },
  }),
  Panel: z.object({
    ...{ id, machineId: id, designation: text, name: text.nullable(), location: text.nullable() },
    positionIds: z.array(id),
  }),
} as const;
type Kind = keyof typeof removed;
type Removed<K extends Kind> = z.output<(typeof removed)[K]>;

interface Entry {
  readonly id: string;
}
type Made = Promise<Result<Entry, Refusal>>;

/** Puts a removed copy back as it was, under the same id. */
export function putBackBackup(actor: Actor, { id: entityId }: Entry): Made {
  return putBack(actor, { kind: "Backup", entityId }, async (tx, { takenOn, verifiedOn, ...plain }) => {
    if ((await tx.controller.count({ where: { id: plain.controllerId } })) === 0) return false;
    await tx.backup.create({
      data: {
        ...plain,
        takenOn: dateOf(takenOn),
        verifiedOn: verifiedOn === null ? null : dateOf(verifiedOn),
      },
    });
    return true;
  });
}

/** Puts a removed number back as it was, under the same id. */
export function putBackContact(actor: Actor, { id: entityId }: Entry): Made {
  return putBack(actor, { kind: "Contact", entityId }, async (tx, contact) => {
    await tx.contact.create({ data: contact });
    return true;
  });
}

/** Puts a removed panel back, with the places that were in it and stand in no other panel since. */
export function putBackPanel(actor: Actor, { id: entityId }: Entry): Made {
  return putBack(actor, { kind: "Panel", entityId }, async (tx, { positionIds, ...panel }) => {
    const { machineId, designation } = panel;
    if ((await tx.panel.count({ where: { machineId, designation } })) > 0) return false;
    await tx.panel.create({ data: panel });
    await tx.position.updateMany({
      where: { id: { in: positionIds }, machineId, panelId: null },
      data: { panelId: panel.id },
    });
    return true;
  });
}

interface Sought<K extends Kind> {
  readonly kind: K;
  readonly entityId: string;
}

/** Reads what the last removal kept and makes it again; the audit, not the browser, says what that was. */
function putBack<K extends Kind>(
  actor: Actor,
  { kind, entityId }: Sought<K>,
  make: (tx: Transaction, row: Removed<K>) => Promise<boolean>,
): Made {
  return change(actor, async (tx, record) => {
    const last = await tx.auditEntry.findFirst({
      where: { entity: kind, entityId },
      orderBy: [{ at: "desc" }, { id: "desc" }],
    });
    const deed = kind.toLowerCase();
    const scope = atSites(actor, "line:write").siteId?.in;
    const mine = scope === undefined || scope.includes(last?.siteId ?? "");
    if (last === null || last.deed !== `${deed}:remove` || !mine) return err(nothing);
    const row = removed[kind].parse(last.before) as Removed<K>;
    if (!(await make(tx, row))) return err(inTheWay);
    const { siteId } = last;
    record({ deed: `${deed}:put-back`, entity: kind, entityId, siteId, after: row });
    return ok({ id: entityId });
  });
}

const dateOf = (on: string) => new Date(`${on}T00:00:00Z`);
