import "server-only";
import type { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atAskedSite, inOrder, type SliceAsked } from "@/lib/data/interface/slice";
import { dayOrNull, decimalOrNull } from "@/lib/data/interface/written";
import { sites } from "@/lib/data/scope";
import type { axis, machine, site, unit } from "@/lib/interface/shapes/places";

/** Sites the actor reads, in the order of their ids. */
export async function sliceSites(actor: Actor, asked: SliceAsked): Promise<z.output<typeof site>[]> {
  const { where, ...order } = inOrder(asked);
  const chosen = asked.siteId === null ? {} : { id: asked.siteId };
  return database().site.findMany({
    where: { AND: [sites(actor, "read"), chosen, where] },
    ...order,
    select: { id: true, code: true, name: true, country: true, timeZone: true, currency: true },
  });
}

const ofLine = { select: { siteId: true } } as const;

/** Machines of the sites the actor reads. */
export async function sliceMachines(actor: Actor, asked: SliceAsked): Promise<z.output<typeof machine>[]> {
  const { where, ...order } = inOrder(asked);
  const rows = await database().machine.findMany({
    where: { ...where, line: atAskedSite(actor, asked) },
    ...order,
    include: { line: ofLine },
  });
  return rows.map(({ id, line, lineId, code, name, inServiceYear, controllerId, standbyGroup }) => {
    return { id, siteId: line.siteId, lineId, code, name, inServiceYear, controllerId, standbyGroup };
  });
}

/** Axes of the sites the actor reads. */
export async function sliceAxes(actor: Actor, asked: SliceAsked): Promise<z.output<typeof axis>[]> {
  const { where, ...order } = inOrder(asked);
  const rows = await database().axis.findMany({
    where: { ...where, machine: { line: atAskedSite(actor, asked) } },
    ...order,
    include: { machine: { select: { line: ofLine } } },
  });
  return rows.map((row) => {
    const { id, machineId, code, name, inServiceYear, networkId, nodeAddress, ringOrder } = row;
    const { feedback, travelUnit, evidence } = row;
    return {
      ...{ id, siteId: row.machine.line.siteId, machineId, code, name, inServiceYear, networkId },
      ...{ nodeAddress, ringOrder, feedback, travel: decimalOrNull(row.travel), travelUnit, evidence },
    };
  });
}

/** Places that hold an item at the sites the actor reads, with what stands there now. */
export async function sliceUnits(actor: Actor, asked: SliceAsked): Promise<z.output<typeof unit>[]> {
  const { where, ...order } = inOrder(asked);
  const rows = await database().position.findMany({
    where: { ...where, machine: { line: atAskedSite(actor, asked) } },
    ...order,
    include: {
      machine: { select: { lineId: true, line: ofLine } },
      placements: { where: { untilOn: null }, include: { unit: true }, take: 1 },
    },
  });
  return rows.map(({ placements: [standing], machine: at, ...row }) => {
    const { id, machineId, axisId, designation, itemClass, evidence } = row;
    return {
      ...{ id, positionId: id, siteId: at.line.siteId, lineId: at.lineId, machineId, axisId },
      ...{ designation, itemClass, partId: standing?.unit.partId ?? row.partId },
      serial: standing?.unit.serial ?? null,
      revision: standing?.unit.revision ?? null,
      since: dayOrNull(standing?.fromOn ?? null),
      evidence,
    };
  });
}
