import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import type { HistoryQuestion } from "@/lib/data/lineEvents";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { recordedCountsPerUnit } from "@/lib/retrofit/scaling";
import type { AxisRow, MachineRow, PlacedItem } from "@/lib/view/lineDossier";
import type { Prisma } from "@/prisma/generated/client";

/** The machines of a line with their controllers, axes and the units in their places on a day. */
export async function readLineMachines(
  actor: Actor,
  { lineId, asOf }: HistoryQuestion,
): Promise<MachineRow[]> {
  const machines = await database().machine.findMany({
    where: { lineId, line: atSites(actor, "read") },
    orderBy: { code: "asc" },
    include: machineParts(new Date(`${asOf}T00:00:00Z`)),
  });
  return machines.map((machine) => ({
    id: machine.id,
    code: machine.code,
    name: machine.name,
    inServiceYear: machine.inServiceYear,
    controller: controllerOf(machine),
    axes: machine.axes.map(axisOf),
    items: machine.positions.filter((position) => position.axisId === null).map(itemOf),
  }));
}

function machineParts(day: Date) {
  const positions = {
    orderBy: { designation: "asc" },
    include: {
      part: { select: { id: true, number: true } },
      placements: {
        where: {
          AND: [
            { OR: [{ fromOn: null }, { fromOn: { lte: day } }] },
            { OR: [{ untilOn: null }, { untilOn: { gt: day } }] },
          ],
        },
        select: {
          unit: { select: { serial: true, revision: true, part: { select: { id: true, number: true } } } },
        },
      },
    },
  } satisfies Prisma.PositionFindManyArgs;
  return {
    controller: true,
    positions,
    axes: { orderBy: { code: "asc" }, include: { network: { select: { name: true } }, positions } },
  } satisfies Prisma.MachineInclude;
}

type MachineParts = Prisma.MachineGetPayload<{ include: ReturnType<typeof machineParts> }>;
type AxisParts = MachineParts["axes"][number];

function controllerOf({ controller, axes }: MachineParts): MachineRow["controller"] {
  if (controller === null) return null;
  const { designation, model, firmware, firmwareRaw, hardware, axisLimit, evidence } = controller;
  return {
    ...{ designation, model, firmware, firmwareRaw, hardware, axisLimit, evidence, axes: axes.length },
    memoryPercent: controller.memoryPercent?.toNumber() ?? null,
    readOn: dayOf(controller.readOn),
  };
}

function axisOf(axis: AxisParts): AxisRow {
  const { code, name, inServiceYear, nodeAddress, ringOrder, feedback, travelUnit } = axis;
  return {
    ...{ code, name, inServiceYear, nodeAddress, ringOrder, feedback, travelUnit },
    network: axis.network?.name ?? null,
    countsPerUnit: recordedCountsPerUnit({
      ...axis,
      unitsPerLoadRev: axis.unitsPerLoadRev?.toNumber() ?? null,
    }),
    items: axis.positions.map(itemOf),
  };
}

function itemOf(position: AxisParts["positions"][number]): PlacedItem {
  const unit = position.placements[0]?.unit;
  return {
    itemClass: position.itemClass,
    designation: position.designation,
    part: unit?.part ?? position.part,
    serial: unit?.serial ?? null,
    revision: unit?.revision ?? null,
    evidence: position.evidence,
  };
}

function dayOf(date: Date | null): IsoDate | null {
  return date?.toISOString().slice(0, 10) ?? null;
}
