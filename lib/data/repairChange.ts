import "server-only";
import { randomUUID } from "node:crypto";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Deeded, type Transaction } from "@/lib/data/change";
import { atSites, sites } from "@/lib/data/scope";
import {
  holdLot,
  movedLots,
  movedLotsBack,
  putPieces,
  takeBackShelf,
  takePieces,
} from "@/lib/data/stock/moveLots";
import { partByPlate } from "@/lib/data/stock/partByPlate";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import { type LotStep, shelfSteps } from "@/lib/schema/lotStep";
import type { ChangeRepair, ReceiveUnit, SendUnit, UndoRepair } from "@/lib/schema/repair";
import { Prisma, type RepairOrder } from "@/prisma/generated/client";

const noPlace: Refusal = {
  code: "missing",
  reason: "There is no such site or lot you may send a unit from.",
};
const missing: Refusal = { code: "missing", reason: "There is no such repair that you may change." };
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else changed this repair since you opened it. What you typed is still here; load the page in another window to see theirs.",
};
const noPart: Refusal = {
  code: "invalid",
  reason: "No part, or more than one, is known by this number. Nothing was sent.",
  fields: { plate: "Write the number of a part on record." },
};
const empty: Refusal = {
  code: "conflict",
  reason: "That bin holds no piece any more. Nothing was sent; choose another one.",
  fields: { lotId: "Empty since you opened the page." },
};
const isBack: Refusal = { code: "impossible", reason: "The unit is back already." };
const taken: Refusal = {
  code: "invalid",
  reason: "The site has a repair of that number. Nothing was sent.",
  fields: { reference: "Write another number, or leave it empty." },
};

const dateOf = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`));

function ahead(field: "sentOn" | "returnedOn"): Refusal {
  const fields = { [field]: "Write the day it happened." };
  return { code: "invalid", reason: "The day lies in the future. Nothing was kept.", fields };
}

/** What the audit keeps of an order; only the figures of its part can change by it. */
function deedOf(deed: string, { id, siteId, partId }: RepairOrder, after: Prisma.InputJsonObject): Deeded {
  return { deed, entity: "RepairOrder", entityId: id, siteId, after, stockOf: [partId] };
}

/** Sends a unit out for repair, taken from a lot or from nowhere on record. */
export async function sendForRepair(
  actor: Actor,
  asked: SendUnit,
): Promise<Result<{ orderId: string; version: number; reference: string }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  if (asked.sentOn > today) return err(ahead("sentOn"));
  return change(actor, async (tx, record) => {
    const from = await startOf(tx, actor, asked);
    if (!from.ok) return from;
    const { siteId, partId, step } = from.value;
    const { serial, repairer, fault } = asked;
    const reference = asked.reference || `R-${asked.sentOn.replaceAll("-", "")}-${randomUUID().slice(0, 6)}`;
    if ((await tx.repairOrder.count({ where: { siteId, reference } })) > 0) return err(taken);
    const order = await tx.repairOrder.create({
      data: {
        ...{ siteId, partId, reference, serial, repairer, fault },
        ...{ sentOn: dateOf(asked.sentOn) as Date, dueOn: dateOf(asked.dueOn) },
        steps: { lots: step ? [step] : [], holds: [] },
      },
    });
    record(deedOf("repair:send", order, { ...asked, reference }));
    for (const deed of movedLots("stock:repair", siteId, step ? [step] : [])) record(deed);
    return ok({ orderId: order.id, version: order.version, reference });
  });
}

interface Start {
  readonly siteId: string;
  readonly partId: string;
  readonly step: LotStep | null;
}

async function startOf(
  tx: Transaction,
  actor: Actor,
  { lotId, siteId, plate }: SendUnit,
): Promise<Result<Start, Refusal>> {
  if (lotId === null) {
    const site = await tx.site.findFirst({ where: { AND: [{ id: siteId }, sites(actor, "stock:write")] } });
    if (!site) return err(noPlace);
    const part = await partByPlate(tx, plate, siteId);
    return part ? ok({ siteId, partId: part.id, step: null }) : err(noPart);
  }
  const allowed = await tx.stockLot.count({ where: { id: lotId, ...atSites(actor, "stock:write") } });
  const lot = allowed > 0 ? await holdLot(tx, lotId) : null;
  if (!lot) return err(noPlace);
  if ((lot.quantity ?? 0) < 1) return err(empty);
  return ok({ siteId: lot.siteId, partId: lot.partId, step: await takePieces(tx, lot, 1) });
}

/** Corrects who repairs a unit that is out, what was wrong, and when it is promised. */
export async function changeThisRepair(
  actor: Actor,
  { orderId, version, ...wanted }: ChangeRepair,
): Promise<Result<{ version: number }, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdOrder(tx, actor, { orderId, version });
    if (!held.ok) return held;
    if (held.value.returnedOn !== null) return err(isBack);
    const { repairer, fault } = held.value;
    const dueOn = held.value.dueOn?.toISOString().slice(0, 10) ?? null;
    const order = await tx.repairOrder.update({
      where: { id: orderId },
      data: { ...wanted, dueOn: dateOf(wanted.dueOn), version: { increment: 1 } },
    });
    record({ ...deedOf("repair:change", order, wanted), before: { repairer, fault, dueOn } });
    return ok({ version: order.version });
  });
}

/** Takes a unit back with what was found, and books it into a bin. */
export async function receiveFromRepair(
  actor: Actor,
  { orderId, version, bookAs, bin, revision, ...back }: ReceiveUnit,
): Promise<Result<{ version: number }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  if (back.returnedOn > today) return err(ahead("returnedOn"));
  return change(actor, async (tx, record) => {
    const held = await holdOrder(tx, actor, { orderId, version });
    if (!held.ok) return held;
    const { siteId, partId, sentOn, returnedOn } = held.value;
    if (returnedOn !== null) return err(isBack);
    if (back.returnedOn < sentOn.toISOString().slice(0, 10)) return err(beforeSent);
    const lots = await shelve(tx, { siteId, partId, bookAs, bin, revision, on: back.returnedOn });
    const order = await tx.repairOrder.update({
      where: { id: orderId },
      data: {
        ...{ ...back, costCurrency: back.cost === null ? null : back.costCurrency },
        ...{ returnedOn: dateOf(back.returnedOn), warrantyUntilOn: dateOf(back.warrantyUntilOn) },
        ...{ steps: { lots, holds: [] }, version: { increment: 1 } },
      },
    });
    record(deedOf("repair:receive", order, { ...back, bookAs, bin, revision }));
    for (const deed of movedLots("stock:repair", siteId, lots)) record(deed);
    return ok({ version: order.version });
  });
}

interface Shelved extends Pick<ReceiveUnit, "bookAs" | "bin" | "revision"> {
  readonly siteId: string;
  readonly partId: string;
  readonly on: IsoDate;
}

async function shelve(tx: Transaction, { bookAs, on, ...at }: Shelved): Promise<LotStep[]> {
  if (bookAs === "none") return [];
  // A unit called usable ran on the repairer's bench; of others nobody says so.
  const ran = bookAs === "usable" ? on : null;
  return [await putPieces(tx, { ...at, state: bookAs }, { quantity: 1, lastPoweredOn: ran, testedOn: ran })];
}

const beforeSent: Refusal = {
  code: "invalid",
  reason: "It cannot be back before it was sent. Nothing was kept.",
  fields: { returnedOn: "Before it was sent." },
};

/** Takes the last step of a repair back: a unit received is out again, a unit sent is where it was. */
export async function takeRepairBack(actor: Actor, asked: UndoRepair): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdOrder(tx, actor, asked);
    if (!held.ok) return held;
    const order = held.value;
    if (order.steps === null) return err(missing);
    const steps = shelfSteps.parse(order.steps);
    const back = await takeBackShelf(tx, steps);
    if (!back.ok) return back;
    if (order.returnedOn === null) await tx.repairOrder.delete({ where: { id: order.id } });
    else await tx.repairOrder.update({ where: { id: order.id }, data: outAgain });
    record(deedOf("repair:undo", order, { reference: order.reference }));
    for (const deed of movedLotsBack("stock:repair-undo", order.siteId, steps.lots)) record(deed);
    return ok(null);
  });
}

const outAgain = {
  ...{ returnedOn: null, finding: null, cost: null, costCurrency: null, warrantyUntilOn: null, note: null },
  ...{ steps: Prisma.DbNull, version: { increment: 1 } },
};

async function holdOrder(
  tx: Transaction,
  actor: Actor,
  { orderId, version }: UndoRepair,
): Promise<Result<RepairOrder, Refusal>> {
  await tx.$queryRaw`SELECT "id" FROM "RepairOrder" WHERE "id" = ${orderId}::uuid FOR UPDATE`;
  const order = await tx.repairOrder.findFirst({
    where: { id: orderId, ...atSites(actor, "stock:write") },
  });
  if (!order) return err(missing);
  return order.version === version ? ok(order) : err(conflict);
}
