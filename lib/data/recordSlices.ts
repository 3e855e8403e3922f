import "server-only";
import type { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atAskedSite, inOrder, type SliceAsked } from "@/lib/data/interface/slice";
import { dayOf, dayOrNull, decimalOrNull, moneyOrNull } from "@/lib/data/interface/written";
import type { event, project, repair, stockLot } from "@/lib/interface/shapes/items";

/** Stock of the sites the actor reads. */
export async function sliceStockLots(actor: Actor, asked: SliceAsked): Promise<z.output<typeof stockLot>[]> {
  const { where, ...order } = inOrder(asked);
  const rows = await database().stockLot.findMany({
    where: { ...where, ...atAskedSite(actor, asked) },
    ...order,
  });
  return rows.map((row) => {
    const { id, siteId, partId, bin, revision, state, quantity, reservedFor, originUnknown, evidence } = row;
    return {
      ...{ id, siteId, partId, bin, revision, state, quantity, reservedFor, originUnknown, evidence },
      lastPoweredOn: dayOrNull(row.lastPoweredOn),
      countedOn: dayOrNull(row.countedOn),
      testedOn: dayOrNull(row.testedOn),
    };
  });
}

/** Events of the sites the actor reads, from a day on where one is asked for. */
export async function sliceEvents(
  actor: Actor,
  { since, ...asked }: SliceAsked & { readonly since: string | null },
): Promise<z.output<typeof event>[]> {
  const { where, ...order } = inOrder(asked);
  const from = since === null ? {} : { happenedAt: { gte: new Date(`${since}T00:00:00Z`) } };
  const rows = await database().event.findMany({
    where: { ...where, ...from, ...atAskedSite(actor, asked) },
    ...order,
  });
  return rows.map((row) => {
    const { id, siteId, lineId, machineId, positionId, partId, itemClass, kind } = row;
    const { spareAtHand, source, reference, text, setAside } = row;
    return {
      ...{ id, siteId, lineId, machineId, positionId, partId, itemClass, kind },
      ...{ spareAtHand, source, reference, text, setAside },
      happenedAt: row.happenedAt.toISOString(),
      downtimeHours: decimalOrNull(row.downtimeHours),
      logisticHours: decimalOrNull(row.logisticHours),
    };
  });
}

/** Repairs of the sites the actor reads. */
export async function sliceRepairs(actor: Actor, asked: SliceAsked): Promise<z.output<typeof repair>[]> {
  const { where, ...order } = inOrder(asked);
  const rows = await database().repairOrder.findMany({
    where: { ...where, ...atAskedSite(actor, asked) },
    ...order,
  });
  return rows.map((row) => {
    const { id, siteId, partId, reference, serial, repairer, finding } = row;
    return {
      ...{ id, siteId, partId, reference, serial, repairer, finding },
      sentOn: dayOf(row.sentOn),
      dueOn: dayOrNull(row.dueOn),
      returnedOn: dayOrNull(row.returnedOn),
      cost: moneyOrNull(row.cost, row.costCurrency),
      warrantyUntilOn: dayOrNull(row.warrantyUntilOn),
    };
  });
}

/** Projects of the sites the actor reads. */
export async function sliceProjects(actor: Actor, asked: SliceAsked): Promise<z.output<typeof project>[]> {
  const { where, ...order } = inOrder(asked);
  const rows = await database().project.findMany({
    where: { ...where, ...atAskedSite(actor, asked) },
    ...order,
  });
  return rows.map((row) => {
    const { id, siteId, lineId, code, name, status, currency, version } = row;
    return {
      ...{ id, siteId, lineId, code, name, status, version },
      budget: { amount: row.budget.toFixed(), currency },
      forecast: moneyOrNull(row.forecast, currency),
      startsOn: dayOrNull(row.startsOn),
      endsOn: dayOrNull(row.endsOn),
    };
  });
}
