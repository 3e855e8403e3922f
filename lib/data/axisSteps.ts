import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { projects } from "@/lib/data/scope";
import type { AxisStepsFile, StepDone } from "@/lib/view/axisSteps";

/** How far each axis of a project's line is; null when the person may not see the project. */
export async function readAxisSteps(actor: Actor, code: string): Promise<AxisStepsFile | null> {
  const project = await database().project.findFirst({
    where: { code, ...projects(actor, "read") },
    select: { id: true, siteId: true, lineId: true },
  });
  if (!project) return null;
  const { id: projectId, siteId, lineId } = project;
  const axes = await database().axis.findMany({
    where: { machine: { lineId } },
    orderBy: [{ machine: { code: "asc" } }, { code: "asc" }],
    select: {
      ...{ id: true, code: true, name: true, machine: { select: { code: true, name: true } } },
      records: { where: { projectId }, select: { id: true } },
      projectRounds: { where: { projectId }, select: { round: true } },
      projectSteps: { where: { projectId }, select: { step: true, doneOn: true, doneBy: true } },
    },
  });
  return {
    projectId,
    siteId,
    axes: axes.map((axis) => ({
      ...{ id: axis.id, code: axis.code, name: axis.name },
      ...{ machineCode: axis.machine.code, machineName: axis.machine.name },
      round: axis.projectRounds[0]?.round ?? 1,
      hasRecord: axis.records.length > 0,
      steps: Object.fromEntries(
        axis.projectSteps.map(({ step, doneOn, doneBy }): readonly [string, StepDone] => [
          step,
          { on: doneOn.toISOString().slice(0, 10), by: doneBy },
        ]),
      ),
    })),
  };
}
