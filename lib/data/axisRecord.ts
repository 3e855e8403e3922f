import "server-only";
import type { Actor } from "@/lib/access/actor";
import { axisFactsOf } from "@/lib/data/axisList/axisFactsOf";
import { database } from "@/lib/data/client";
import { projects } from "@/lib/data/scope";
import { recordedCountsPerUnit } from "@/lib/retrofit/scaling";
import type { AxisFile, AxisInProject, StoredEntry } from "@/lib/view/axisRecord";
import type { Prisma } from "@/prisma/generated/client";

const axisParts = {
  machine: { select: { code: true, name: true } },
  network: { select: { name: true } },
} satisfies Prisma.AxisInclude;

type StoredAxis = Prisma.AxisGetPayload<{ include: typeof axisParts }>;

/** The axes of a project's line with their records, by machine and code; null when the person may not see the project. */
export async function readProjectAxes(actor: Actor, code: string): Promise<AxisInProject[] | null> {
  const project = await database().project.findFirst({
    where: { code, ...projects(actor, "read") },
    select: { id: true, lineId: true },
  });
  if (!project) return null;
  const axes = await database().axis.findMany({
    where: { machine: { lineId: project.lineId } },
    include: { ...axisParts, records: recordOf(project.id) },
    orderBy: [{ machine: { code: "asc" } }, { code: "asc" }],
  });
  return axes.map((axis) => ({ ...described(axis), ...recorded(axis.records[0]) }));
}

/** One axis of a project with its record; null when there is none or the person may not see it. */
export async function readAxisRecord(
  actor: Actor,
  { code, axisId }: { code: string; axisId: string },
): Promise<AxisFile | null> {
  const project = await database().project.findFirst({
    where: {
      code,
      ...projects(actor, "read"),
      line: { machines: { some: { axes: { some: { id: axisId } } } } },
    },
    select: { id: true, code: true, name: true, siteId: true, line: { select: { code: true, name: true } } },
  });
  if (!project) return null;
  const axis = await database().axis.findUniqueOrThrow({
    where: { id: axisId },
    include: { ...axisParts, records: recordOf(project.id) },
  });
  const { id: projectId, code: projectCode, name: projectName, siteId, line } = project;
  return {
    ...{ projectId, projectCode, projectName, siteId, lineCode: line.code, lineName: line.name },
    ...{ ...described(axis), ...recorded(axis.records[0]) },
  };
}

const recordOf = (projectId: string) =>
  ({ where: { projectId }, include: { entries: true } }) satisfies Prisma.Axis$recordsArgs;

type StoredRecord = Prisma.AxisRecordGetPayload<{ include: { entries: true } }>;

function recorded(record: StoredRecord | undefined) {
  const entries = (record?.entries ?? []).map((entry): readonly [string, StoredEntry] => {
    const { checkId, recordId: _record, id: _id, on, ...rest } = entry;
    return [checkId, { ...rest, on: on?.toISOString().slice(0, 10) ?? null }];
  });
  return {
    entries: Object.fromEntries(entries),
    acceptedOn: record?.acceptedOn?.toISOString().slice(0, 10) ?? null,
    acceptedBy: record?.acceptedBy ?? null,
  };
}

function described(axis: StoredAxis) {
  const { id, code, name, feedback, nodeAddress, travelUnit, evidence, countsPerRev, motorRevs, loadRevs } =
    axis;
  const unitsPerLoadRev = axis.unitsPerLoadRev?.toNumber() ?? null;
  const scaling = { countsPerRev, motorRevs, loadRevs, unitsPerLoadRev };
  return {
    ...{ id, code, name, feedback, nodeAddress, travelUnit, evidence },
    ...{
      machineCode: axis.machine.code,
      machineName: axis.machine.name,
      network: axis.network?.name ?? null,
    },
    facts: axisFactsOf(axis),
    scaling,
    countsPerUnit: recordedCountsPerUnit(scaling),
  };
}
