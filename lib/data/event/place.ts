import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";

/** A place an event is told for, with what stands there now. */
export async function findPlace(tx: Transaction, actor: Actor, positionId: string) {
  const position = await tx.position.findFirst({
    where: { id: positionId, machine: { line: atSites(actor, "event:write") } },
    include: {
      machine: { select: { lineId: true, line: { select: { siteId: true } } } },
      placements: { where: { untilOn: null }, include: { unit: { select: { partId: true, serial: true } } } },
    },
  });
  if (!position) return null;
  // Two people at one place come one after the other.
  await tx.$queryRaw`SELECT "id" FROM "Position" WHERE "id" = ${positionId}::uuid FOR UPDATE`;
  const standing = position.placements[0] ?? null;
  return {
    ...{ positionId, itemClass: position.itemClass, machineId: position.machineId },
    lineId: position.machine.lineId,
    siteId: position.machine.line.siteId,
    partId: standing?.unit.partId ?? position.partId,
    standing: standing && {
      id: standing.id,
      serial: standing.unit.serial,
      since: standing.fromOn?.toISOString().slice(0, 10) ?? null,
    },
  };
}

export type Place = NonNullable<Awaited<ReturnType<typeof findPlace>>>;

/** The instant of a reading of the site's clock. */
export async function instantOf(tx: Transaction, siteId: string, reading: string): Promise<Date> {
  const [row] = await tx.$queryRaw<{ at: Date }[]>`
    SELECT ${reading}::timestamp AT TIME ZONE s."timeZone" AS "at" FROM "Site" s WHERE s."id" = ${siteId}::uuid`;
  if (!row) throw new RangeError(`siteId must be a site, got ${siteId}`);
  return row.at;
}

/** Days in which a second record of one event usually arrives. */
const CLOSE_DAYS = 3;

/** References of events at the same place within three days. */
export async function eventsCloseBy(tx: Transaction, { positionId }: Place, at: Date): Promise<string[]> {
  const span = CLOSE_DAYS * 86_400_000;
  const close = await tx.event.findMany({
    where: {
      ...{ positionId, setAside: null },
      happenedAt: { gte: new Date(at.getTime() - span), lte: new Date(at.getTime() + span) },
    },
    select: { source: true, reference: true },
    orderBy: { happenedAt: "asc" },
  });
  return close.map(({ source, reference }) => `${source} ${reference}`);
}
