import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Transaction } from "@/lib/data/change";
import type { Place } from "@/lib/data/event/place";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { CaptureEvent, CaptureSteps } from "@/lib/schema/event";

const sameDay: Refusal = {
  code: "impossible",
  reason: "The unit that stands there was put in on the same day or later. Correct its record first.",
};

export interface Exchange {
  readonly place: Place;
  readonly told: CaptureEvent;
  /** Day on the site's clock. */
  readonly day: string;
  readonly reference: string;
}

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);

/** Takes the unit out of its place and puts the other one in, and moves both in stock and repair. */
export async function exchangeUnits(
  tx: Transaction,
  exchange: Exchange,
): Promise<Result<CaptureSteps, Refusal>> {
  const { place, told, day } = exchange;
  if (place.standing?.since && place.standing.since >= day) return err(sameDay);
  if (place.standing)
    await tx.placement.update({ where: { id: place.standing.id }, data: { untilOn: dateOf(day) } });
  const placed = await putIn(tx, exchange);
  if (!placed.ok) return placed;
  const taken = await takeSpare(tx, exchange);
  if (!taken.ok) return taken;
  const out = told.unitOut === "shelf" ? await shelve(tx, exchange) : null;
  const repair = told.unitOut === "repair" ? await sendOff(tx, exchange) : null;
  return ok({
    ...{ ended: place.standing?.id ?? null, ...placed.value, taken: taken.value },
    ...{ given: out, repair },
  });
}

type Placed = Pick<CaptureSteps, "placed" | "unitMade">;

async function putIn(tx: Transaction, { place, told, day }: Exchange): Promise<Result<Placed, Refusal>> {
  const { partId, positionId } = place;
  if (told.serialIn === "" || partId === null) return ok({ placed: null, unitMade: null });
  const known = await tx.unit.findUnique({
    where: { partId_serial: { partId, serial: told.serialIn } },
    include: {
      placements: { where: { untilOn: null }, select: { position: { select: { designation: true } } } },
    },
  });
  const elsewhere = known?.placements[0]?.position.designation;
  if (elsewhere !== undefined)
    return err({
      code: "impossible",
      reason: `Serial ${told.serialIn} stands at ${elsewhere} in Ebbline. Read the plate again, or take it out there first.`,
      fields: { serialIn: "This unit stands somewhere else." },
    });
  const revision = told.revisionIn === "" ? null : told.revisionIn;
  const unit = known ?? (await tx.unit.create({ data: { partId, serial: told.serialIn, revision } }));
  const placement = await tx.placement.create({ data: { unitId: unit.id, positionId, fromOn: dateOf(day) } });
  return ok({ placed: placement.id, unitMade: known ? null : unit.id });
}

async function takeSpare(
  tx: Transaction,
  { told, place }: Exchange,
): Promise<Result<string | null, Refusal>> {
  if (told.lotId === null) return ok(null);
  const mine = { id: told.lotId, siteId: place.siteId, partId: place.partId ?? "" };
  const uncounted = await tx.stockLot.count({ where: { ...mine, quantity: null } });
  if (uncounted > 0) return ok(null);
  const { count } = await tx.stockLot.updateMany({
    where: { ...mine, quantity: { gt: 0 } },
    data: { quantity: { decrement: 1 } },
  });
  if (count > 0) return ok(told.lotId);
  return err({
    code: "conflict",
    reason: "That bin holds no piece any more. Nothing was kept; choose another one.",
    fields: { lotId: "Empty since you opened the page." },
  });
}

async function shelve(tx: Transaction, { told, place }: Exchange): Promise<string | null> {
  const { siteId, partId } = place;
  if (partId === null) return null;
  const at = { siteId, partId, bin: told.binOut, revision: "", state: "removed_untested" as const };
  const lot = await tx.stockLot.upsert({
    where: { siteId_partId_bin_revision_state: at },
    create: { ...at, quantity: 1, evidence: "measured" },
    update: { quantity: { increment: 1 } },
  });
  // Nobody counted the bin, so nothing was added to a number.
  return lot.quantity === null ? null : lot.id;
}

async function sendOff(tx: Transaction, { place, day, reference }: Exchange): Promise<string | null> {
  const { siteId, partId, standing } = place;
  if (partId === null) return null;
  const serial = standing?.serial ?? null;
  const order = await tx.repairOrder.create({
    data: { siteId, partId, reference, serial, sentOn: dateOf(day) },
  });
  return order.id;
}
