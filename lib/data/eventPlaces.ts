import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { EventPlaces, SpareLot } from "@/lib/view/eventCapture";

/** What was chosen so far, by code; empty is nothing yet. */
export interface PlaceQuestion {
  readonly line: string;
  readonly machine: string;
  readonly position: string;
}

/** The lines, machines and places an event can be told for, and the spares at hand for the place chosen. */
export async function readEventPlaces(actor: Actor, asked: PlaceQuestion): Promise<EventPlaces> {
  const where = atSites(actor, "event:write");
  const lines = await database().line.findMany({
    where,
    select: { code: true, name: true },
    orderBy: { code: "asc" },
  });
  const machines = await database().machine.findMany({
    where: { line: { code: asked.line, ...where } },
    select: { code: true, name: true },
    orderBy: { code: "asc" },
  });
  const positions = await database().position.findMany({
    where: { machine: { code: asked.machine, line: { code: asked.line, ...where } } },
    include: {
      axis: { select: { code: true } },
      part: { select: { number: true } },
      placements: { where: { untilOn: null }, include: { unit: { include: { part: true } } } },
    },
    orderBy: [{ axis: { code: "asc" } }, { designation: "asc" }],
  });
  const places = positions.map(({ id, axis, designation, part, placements, itemClass }) => {
    const unit = placements[0]?.unit ?? null;
    return {
      ...{ id, itemClass, label: axis ? `${axis.code} ${designation}` : designation },
      part: unit?.part.number ?? part?.number ?? null,
      serial: unit?.serial ?? null,
    };
  });
  const chosen = positions.find(({ id }) => id === asked.position);
  const partId = chosen?.placements[0]?.unit.partId ?? chosen?.partId ?? null;
  const spares = partId === null ? [] : await readSpares(actor, asked.line, partId);
  return { lines, machines, places, spares };
}

/** The lots of a part at the line's own site that may hold a piece. */
async function readSpares(actor: Actor, line: string, partId: string): Promise<SpareLot[]> {
  const lots = await database().stockLot.findMany({
    where: {
      ...{ partId, site: { lines: { some: { code: line } } }, ...atSites(actor, "event:write") },
      OR: [{ quantity: null }, { quantity: { gt: 0 } }],
    },
    select: { id: true, bin: true, revision: true, state: true, quantity: true },
    orderBy: [{ state: "asc" }, { bin: "asc" }],
  });
  return lots;
}
