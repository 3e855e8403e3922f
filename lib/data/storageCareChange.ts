import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { holdSeenLot } from "@/lib/data/stock/holdSeenLot";
import { movedLots, movedLotsBack, putPieces, takeBackShelf, writeLot } from "@/lib/data/stock/moveLots";
import { err, ok, type Result } from "@/lib/kernel/result";
import { type CareInterval, usualCare } from "@/lib/risk/careIntervals";
import { type LotStep, type ShelfSteps, shelfSteps } from "@/lib/schema/lotStep";
import type { RecordCare, SetCareInterval, UndoCare } from "@/lib/schema/storageCare";
import type { StockLot } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such care that you may take back." };
const noCare: Refusal = { code: "impossible", reason: "Pieces of this class need no care by the list." };
const ahead: Refusal = {
  code: "invalid",
  reason: "The day lies in the future. Nothing was kept.",
  fields: { doneOn: "Write the day it was done." },
};
const notAll: Refusal = {
  code: "forbidden",
  reason: "The list holds for every site: only who changes the stock of all sites edits it.",
};
const edited: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this interval meanwhile. Nothing was changed; load the page again.",
};

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);

type Lot = StockLot & { readonly quantity: number };

/**
 * Keeps that the pieces of a lot had their care: those that failed go on hold, the others count as powered that day, and
 * as usable when they were unproven and ran under load.
 */
export async function recordStorageCare(
  actor: Actor,
  asked: RecordCare,
): Promise<Result<{ careId: string }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  if (asked.doneOn > today) return err(ahead);
  return change(actor, async (tx, record) => {
    const held = await holdSeenLot(tx, actor, asked);
    if (!held.ok) return held;
    const lot = held.value;
    const { siteId, partId, quantity: pieces } = lot;
    const { doneBy, doneOn, failed, note } = asked;
    if (failed > pieces) return err(tooMany(pieces));
    const { itemClass } = await tx.part.findUniqueOrThrow({ where: { id: partId } });
    const { kind, everyMonths } = await intervalOf(tx, itemClass);
    if (everyMonths === null) return err(noCare);
    const steps = await shelfAfter(tx, lot, { ...asked, isPowered: kind === "power_up" });
    const care = await tx.storageCare.create({
      data: {
        ...{ siteId, partId, lotId: lot.id, kind, doneBy, pieces, failed, note, steps },
        doneOn: dateOf(doneOn),
      },
    });
    record({
      ...{ deed: "care:record", entity: "StorageCare", entityId: care.id, siteId },
      after: { kind, doneOn, doneBy, pieces, failed, tested: asked.tested, note },
    });
    for (const deed of movedLots("stock:care", siteId, steps.lots)) record(deed);
    return ok({ careId: care.id });
  });
}

function tooMany(pieces: number): Refusal {
  return {
    code: "invalid",
    reason: "More failed than lie there. Nothing was kept.",
    fields: { failed: `The lot holds ${pieces}.` },
  };
}

async function shelfAfter(
  tx: Transaction,
  lot: Lot,
  { failed, tested, doneOn, doneBy, note, isPowered }: RecordCare & { readonly isPowered: boolean },
): Promise<ShelfSteps> {
  const { siteId, partId, bin, revision, state, originUnknown } = lot;
  const at = { siteId, partId, bin, revision };
  const good = lot.quantity - failed;
  const proves = tested && (state === "unproven" || state === "removed_untested");
  const poweredOn = isPowered ? doneOn : (lot.lastPoweredOn?.toISOString().slice(0, 10) ?? null);
  const ran = { lastPoweredOn: poweredOn, ...(tested ? { testedOn: doneOn } : {}) };
  const lots: LotStep[] = [];
  const { step } = await writeLot(
    tx,
    lot,
    proves ? { quantity: 0 } : { quantity: good, ...(good > 0 ? ran : {}) },
  );
  lots.push(step);
  if (proves && good > 0)
    lots.push(await putPieces(tx, { ...at, state: "usable" }, { ...ran, quantity: good, originUnknown }));
  if (failed === 0) return { lots, holds: [] };
  const away = { quantity: failed, lastPoweredOn: poweredOn, originUnknown };
  const bad = await putPieces(tx, { ...at, state: "on_hold" }, away);
  const reason = `Failed at storage care${note === "" ? "" : `: ${note}`}`;
  const hold = await tx.stockHold.create({
    data: { lotId: bad.lotId, pieces: failed, reason, heldOn: dateOf(doneOn), heldBy: doneBy },
  });
  return { lots: [...lots, bad], holds: [hold.id] };
}

async function intervalOf(tx: Transaction, itemClass: keyof typeof usualCare): Promise<CareInterval> {
  return (await tx.careInterval.findUnique({ where: { itemClass } })) ?? usualCare[itemClass];
}

/** Puts the lots back as they were before a care was recorded. */
export async function takeCareBack(actor: Actor, { careId }: UndoCare): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const care = await tx.storageCare.findFirst({
      where: { id: careId, ...atSites(actor, "stock:write") },
    });
    if (!care) return err(missing);
    const steps = shelfSteps.parse(care.steps);
    const back = await takeBackShelf(tx, steps);
    if (!back.ok) return back;
    await tx.storageCare.delete({ where: { id: careId } });
    const { siteId, doneBy, pieces } = care;
    record({
      ...{ deed: "care:undo", entity: "StorageCare", entityId: careId, siteId },
      before: { doneBy, pieces, doneOn: care.doneOn.toISOString().slice(0, 10) },
    });
    for (const deed of movedLotsBack("stock:care-undo", siteId, steps.lots)) record(deed);
    return ok(null);
  });
}

/** Sets how often pieces of a class need care, at every site. */
export async function setClassCare(
  actor: Actor,
  { itemClass, kind, everyMonths, seen }: SetCareInterval,
): Promise<Result<null, Refusal>> {
  if (scopeOf(actor.grants, "stock:write") !== "all") return err(notAll);
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    // Two people at one class come one after the other.
    await tx.$queryRaw`SELECT pg_advisory_xact_lock(hashtext(${`care ${itemClass}`}))::text AS "held"`;
    const before = await intervalOf(tx, itemClass);
    if (before.kind !== seen.kind || before.everyMonths !== seen.everyMonths) return err(edited);
    const data = { kind, everyMonths, changedOn: dateOf(today), changedBy: actor.name };
    await tx.careInterval.upsert({
      where: { itemClass },
      create: { itemClass, ...data },
      update: data,
    });
    record({
      ...{ deed: "care:interval", entity: "CareInterval", entityId: itemClass },
      ...{ before: { kind: before.kind, everyMonths: before.everyMonths }, after: { kind, everyMonths } },
    });
    return ok(null);
  });
}
