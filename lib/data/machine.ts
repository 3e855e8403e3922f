import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { axisFactsOf } from "@/lib/data/axisList/axisFactsOf";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import { readUnitStays, type StayOf } from "@/lib/data/unitStays";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { recordedCountsPerUnit } from "@/lib/retrofit/scaling";
import type {
  MachineAxis,
  MachineController,
  MachineDossier,
  MachinePosition,
  PlacedUnit,
} from "@/lib/view/machine";
import type { Prisma } from "@/prisma/generated/client";

/** Which machine, and on which day. */
export interface MachineQuestion {
  readonly id: string;
  readonly asOf: IsoDate;
}

/** One machine on a day; null when there is none or it is at a site the actor may not see. */
export async function readMachine(
  actor: Actor,
  { id, asOf }: MachineQuestion,
): Promise<MachineDossier | null> {
  if (!z.uuid().safeParse(id).success) return null;
  const machine = await database().machine.findFirst({
    where: { id, line: atSites(actor, "read") },
    include: machineParts(new Date(`${asOf}T00:00:00Z`)),
  });
  if (machine === null) return null;
  const { code, name, inServiceYear, line } = machine;
  const stays = await readUnitStays(actor, { unitIds: unitsIn(machine), asOf });
  const positionOf = positionReader(asOf, stays);
  return {
    ...{ asOf, id, code, name, inServiceYear, retired: retirementOf(machine, asOf) },
    line: { id: line.id, code: line.code, name: line.name },
    site: line.site,
    controller: controllerOf(machine),
    panels: machine.panels.map(({ machineId: _, ...panel }) => panel),
    axes: machine.axes.map((axis) => axisOf(axis, positionOf)),
    items: machine.positions.filter(({ axisId }) => axisId === null).map(positionOf),
  };
}

function retirementOf({ retiredOn, retiredReason }: StoredMachine, asOf: IsoDate): MachineDossier["retired"] {
  const on = dayOf(retiredOn);
  return on === null || on > asOf ? null : { on, reason: retiredReason };
}

/** Places that were retired by the day are no part of the machine any more. */
function machineParts(day: Date) {
  const positions = {
    where: { OR: [{ retiredOn: null }, { retiredOn: { gt: day } }] },
    orderBy: { designation: "asc" },
    include: {
      part: { select: { id: true, number: true } },
      panel: { select: { id: true, designation: true } },
      placements: {
        where: { OR: [{ fromOn: null }, { fromOn: { lte: day } }] },
        orderBy: { fromOn: { sort: "desc", nulls: "last" } },
        include: { unit: { include: { part: { select: { id: true, number: true } } } } },
      },
    },
  } satisfies Prisma.PositionFindManyArgs;
  return {
    line: { include: { site: { select: { id: true, code: true, name: true, timeZone: true } } } },
    controller: {
      include: {
        machines: {
          select: {
            ...{ id: true, code: true, _count: { select: { axes: true } } },
            line: { select: { id: true, code: true } },
          },
          orderBy: { code: "asc" },
        },
        leadsLine: { select: { id: true, code: true } },
      },
    },
    panels: { orderBy: { designation: "asc" } },
    positions,
    axes: {
      orderBy: { code: "asc" },
      include: { network: { select: { id: true, name: true, kind: true, profileFamily: true } }, positions },
    },
  } satisfies Prisma.MachineInclude;
}

type StoredMachine = Prisma.MachineGetPayload<{ include: ReturnType<typeof machineParts> }>;
type StoredAxis = StoredMachine["axes"][number];
type StoredPosition = StoredMachine["positions"][number];
type PositionReader = (position: StoredPosition) => MachinePosition;

const unitsIn = ({ positions }: StoredMachine): string[] =>
  positions.flatMap(({ placements }) => placements.map(({ unitId }) => unitId));

function controllerOf({ id, controller }: StoredMachine): MachineController | null {
  if (controller === null) return null;
  const {
    id: controllerId,
    designation,
    model,
    hardware,
    firmware,
    firmwareRaw,
    axisLimit,
    evidence,
    machines,
  } = controller;
  return {
    ...{ id: controllerId, designation, model, hardware, firmware, firmwareRaw, axisLimit, evidence },
    memoryPercent: controller.memoryPercent?.toNumber() ?? null,
    readOn: dayOf(controller.readOn),
    axes: machines.reduce((sum, machine) => sum + machine._count.axes, 0),
    sharedWith: machines.filter((machine) => machine.id !== id).map(({ code }) => code),
    leadsLine: controller.leadsLine,
    lines: [...new Map(machines.map(({ line }) => [line.id, line])).values()],
  };
}

function axisOf(axis: StoredAxis, positionOf: PositionReader): MachineAxis {
  const { machineId: _, networkId: __, positions, ...plain } = axis;
  const unitsPerLoadRev = axis.unitsPerLoadRev?.toNumber() ?? null;
  return {
    ...plain,
    ...axisFactsOf(axis),
    unitsPerLoadRev,
    countsPerUnit: recordedCountsPerUnit({ ...axis, unitsPerLoadRev }),
    positions: positions.map(positionOf),
  };
}

/** Reads a place as it was on the day: what is in it, and what was before. */
function positionReader(asOf: IsoDate, stays: readonly StayOf[]): PositionReader {
  return ({ id, designation, panel, itemClass, evidence, part, placements }) => {
    const units = placements.map(({ unit, fromOn, untilOn }): PlacedUnit => {
      const until = dayOf(untilOn);
      return {
        ...{ unitId: unit.id, serial: unit.serial, revision: unit.revision, madeYear: unit.madeYear },
        ...{
          part: unit.part,
          fromOn: dayOf(fromOn),
          untilOn: until !== null && until <= asOf ? until : null,
        },
        elsewhere: stays.flatMap(({ unitId, positionId, ...stay }) =>
          unitId === unit.id && positionId !== id ? [stay] : [],
        ),
      };
    });
    const unit = units.find(({ untilOn }) => untilOn === null) ?? null;
    return {
      ...{ id, designation, panel, itemClass, evidence, unit },
      part: unit?.part ?? part,
      before: units.filter((one) => one !== unit),
    };
  };
}

function dayOf(date: Date | null): IsoDate | null {
  return date?.toISOString().slice(0, 10) ?? null;
}
