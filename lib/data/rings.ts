import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { RingSheet, RingSheetRow } from "@/lib/view/ring";
import type { Prisma } from "@/prisma/generated/client";

/** The record of one ring on a day; null when there is none or it is at a site the actor may not see. */
export async function readRingSheet(
  actor: Actor,
  { id, asOf }: { readonly id: string; readonly asOf: IsoDate },
): Promise<RingSheet | null> {
  if (!z.uuid().safeParse(id).success) return null;
  const [ring] = await findRings(actor, { id }, asOf);
  return ring ?? null;
}

/** The rings that pass through a line, by name. */
export function readRingsOfLine(
  actor: Actor,
  { code, asOf }: { readonly code: string; readonly asOf: IsoDate },
): Promise<RingSheet[]> {
  const machine = { line: { code }, ...inServiceOn(dayStart(asOf)) };
  return findRings(actor, { axes: { some: { machine } } }, asOf);
}

async function findRings(actor: Actor, where: Prisma.NetworkWhereInput, asOf: IsoDate): Promise<RingSheet[]> {
  const networks = await database().network.findMany({
    where: { AND: [where, { kind: "fibre_ring" }, atSites(actor, "read")] },
    include: networkParts(dayStart(asOf)),
    orderBy: { name: "asc" },
  });
  return networks.map(({ id, name, profileFamily, site, axes, _count }) => ({
    ...{ asOf, id, name, profileFamily, site, outOfService: _count.axes - axes.length },
    rows: axes.map(rowOf),
  }));
}

const dayStart = (asOf: IsoDate) => new Date(`${asOf}T00:00:00Z`);

/** Machines that were not retired by the day. */
const inServiceOn = (day: Date) => ({ OR: [{ retiredOn: null }, { retiredOn: { gt: day } }] });

function networkParts(day: Date) {
  const present = {
    AND: [
      { OR: [{ fromOn: null }, { fromOn: { lte: day } }] },
      { OR: [{ untilOn: null }, { untilOn: { gt: day } }] },
    ],
  };
  const part = { select: { id: true, number: true, profileFamily: true } };
  return {
    site: { select: { id: true, code: true, name: true } },
    _count: { select: { axes: true } },
    axes: {
      where: { machine: inServiceOn(day) },
      orderBy: [{ machine: { line: { code: "asc" } } }, { machine: { code: "asc" } }, { code: "asc" }],
      include: {
        machine: {
          select: {
            id: true,
            code: true,
            line: { select: { code: true } },
            controller: { select: { designation: true } },
          },
        },
        positions: {
          where: { itemClass: "drive" },
          include: { part, placements: { where: present, select: { unit: { select: { part } } } } },
        },
      },
    },
  } satisfies Prisma.NetworkInclude;
}

type StoredAxis = Prisma.NetworkGetPayload<{ include: ReturnType<typeof networkParts> }>["axes"][number];

function rowOf({ machine, positions, ...axis }: StoredAxis): RingSheetRow {
  const [place] = positions;
  const drive = place?.placements[0]?.unit.part ?? place?.part ?? null;
  return {
    axisId: axis.id,
    label: `${machine.code} / ${axis.code}`,
    nodeAddress: axis.nodeAddress,
    ringOrder: axis.ringOrder,
    machineId: machine.id,
    machineCode: machine.code,
    lineCode: machine.line.code,
    axisCode: axis.code,
    axisName: axis.name,
    drive: drive && { id: drive.id, number: drive.number },
    driveFamily: drive?.profileFamily ?? null,
    controller: machine.controller?.designation ?? null,
    evidence: axis.evidence,
  };
}
