import "server-only";
import { randomUUID } from "node:crypto";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { exchangeUnits } from "@/lib/data/event/exchange";
import { eventsCloseBy, findPlace, instantOf, type Place } from "@/lib/data/event/place";
import { takeBackSteps } from "@/lib/data/event/takeBackSteps";
import { atSites } from "@/lib/data/scope";
import { addDays } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import { type CaptureEvent, type CaptureSteps, captureSteps, type UndoEvent } from "@/lib/schema/event";

const missing: Refusal = { code: "missing", reason: "There is no such place where you may record an event." };
const gone: Refusal = { code: "missing", reason: "There is no such event that you may take back." };

/** Where an event comes from that somebody told here. */
const BY_HAND = "by hand";

/** Keeps an event told at the machine, with the exchange of the unit, the spare used and where the old one goes. */
export async function keepEvent(
  actor: Actor,
  told: CaptureEvent,
): Promise<Result<{ eventId: string; reference: string }, Refusal>> {
  return change(actor, async (tx, record) => {
    const admitted = await admit(tx, actor, told);
    if (!admitted.ok) return admitted;
    const { place, happenedAt } = admitted.value;
    const day = told.happenedAt.slice(0, 10);
    const reference = `H-${day.replaceAll("-", "")}-${randomUUID().slice(0, 6)}`;
    const steps = await exchangeUnits(tx, { place, told, day, reference });
    if (!steps.ok) return steps;
    const { kind, downtimeHours, logisticHours, spareAtHand, text } = told;
    const { siteId, lineId, machineId, positionId, partId, itemClass } = place;
    const event = await tx.event.create({
      data: {
        ...{ siteId, lineId, machineId, positionId, partId, itemClass, kind, happenedAt, reference },
        ...{ downtimeHours, logisticHours, spareAtHand, source: BY_HAND, text: text === "" ? null : text },
      },
    });
    const after = { ...told, reference, steps: steps.value };
    record({ deed: "event:add", entity: "Event", entityId: event.id, siteId, after });
    for (const moved of movedBy(steps.value)) record({ ...moved, siteId, after: { reference } });
    return ok({ eventId: event.id, reference });
  });
}

/** The place and the instant of an event that may be kept there: not ahead of time, not likely told before. */
async function admit(
  tx: Transaction,
  actor: Actor,
  told: CaptureEvent,
): Promise<Result<{ place: Place; happenedAt: Date }, Refusal>> {
  const place = await findPlace(tx, actor, told.positionId);
  if (!place) return err(missing);
  // The day of the site may be one ahead of the installation's.
  const latest = addDays(await readAsOf(actor, undefined), 1);
  if (told.happenedAt.slice(0, 10) > latest) return err(ahead);
  const happenedAt = await instantOf(tx, place.siteId, told.happenedAt);
  const close = told.sure ? [] : await eventsCloseBy(tx, place, happenedAt);
  return close.length > 0 ? err(likely(close)) : ok({ place, happenedAt });
}

/** What the audit keeps of each other row an event changed. */
function movedBy({ ended, placed, taken, given, repair }: CaptureSteps) {
  const rows = [
    ["unit:out", "Placement", ended],
    ["unit:in", "Placement", placed],
    ["stock:take", "StockLot", taken],
    ["stock:put", "StockLot", given],
    ["repair:send", "RepairOrder", repair],
  ] as const;
  return rows.flatMap(([deed, entity, entityId]) => (entityId === null ? [] : [{ deed, entity, entityId }]));
}

const ahead: Refusal = {
  code: "invalid",
  reason: "The event lies in the future. Nothing was kept.",
  fields: { happenedAt: "Write when it happened." },
};

function likely(close: readonly string[]): Refusal {
  return {
    code: "conflict",
    reason: `Within three days of it the same place has ${close.join(", ")}. If yours is another event, keep it all the same.`,
    fields: { sure: "Close to another event." },
  };
}

/** Takes an event told by hand back, with all that was moved for it. */
export async function takeEventBack(actor: Actor, { eventId }: UndoEvent): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const event = await tx.event.findFirst({
      where: { id: eventId, source: BY_HAND, ...atSites(actor, "event:write") },
      select: { siteId: true, reference: true },
    });
    const steps = event && (await stepsOf(tx, eventId));
    if (!event || !steps) return err(gone);
    const undone = await takeBackSteps(tx, steps);
    if (!undone.ok) return undone;
    await tx.event.delete({ where: { id: eventId } });
    record({
      ...{ deed: "event:undo", entity: "Event", entityId: eventId, siteId: event.siteId },
      before: { reference: event.reference, steps },
    });
    return ok(null);
  });
}

async function stepsOf(tx: Transaction, eventId: string) {
  const entry = await tx.auditEntry.findFirst({
    where: { entity: "Event", entityId: eventId, deed: "event:add" },
    select: { after: true },
  });
  const kept = entry?.after;
  return kept && typeof kept === "object" && "steps" in kept ? captureSteps.parse(kept.steps) : null;
}
