import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { loadTaskRows } from "@/lib/data/schedule/taskRows";
import { projects } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { PlannedRow, ScheduleFile, ScheduleTask, ScheduleWindow } from "@/lib/view/schedule";

/** The schedule of a project; null when there is none or the person may not see it. */
export async function readSchedule(actor: Actor, code: string): Promise<ScheduleFile | null> {
  const project = await database().project.findFirst({
    where: { code, ...projects(actor, "read") },
    include: {
      site: { select: { name: true } },
      line: { select: { code: true } },
      milestones: { orderBy: { sequence: "asc" } },
      gates: { orderBy: { sequence: "asc" }, include: { items: { orderBy: { sequence: "asc" } } } },
      replans: { orderBy: { number: "desc" } },
    },
  });
  if (!project) return null;
  const { id: projectId, siteId, lineId } = project;
  const [tasks, windows] = await Promise.all([
    loadTasks(database(), projectId),
    loadWindows(database(), { siteId, lineId }),
  ]);
  return {
    ...{ projectId, siteId, tasks, windows, code: project.code, name: project.name },
    ...{ siteName: project.site.name, lineCode: project.line.code },
    ...{ startsOn: dayOf(project.startsOn), endsOn: dayOf(project.endsOn) },
    milestones: project.milestones.map((one) => ({
      ...{ id: one.id, name: one.name, dueOn: dayOf(one.dueOn), doneOn: dayOf(one.doneOn) },
    })),
    gates: project.gates.map(({ projectId: _, sequence: __, items, decidedOn, ...gate }) => ({
      ...{ ...gate, decidedOn: dayOf(decidedOn) },
      items: items.map(({ id, text, who, doneOn, doneBy }) => ({
        id,
        text,
        who,
        doneBy,
        doneOn: dayOf(doneOn),
      })),
    })),
    replans: project.replans.map(({ number, madeOn, madeBy, reason, before, after }) => ({
      ...{ number, madeBy, reason, madeOn: dayText(madeOn) },
      ...{ before: before as unknown as PlannedRow[], after: after as unknown as PlannedRow[] },
    })),
  };
}

/** The tasks of a project in their order. The caller has narrowed the project to one the person may see. */
export async function loadTasks(tx: Transaction, projectId: string): Promise<ScheduleTask[]> {
  return (await loadTaskRows(tx, [projectId])).get(projectId) ?? [];
}

/** The shutdowns of a line and of its whole site, by first day. */
export async function loadWindows(
  tx: Transaction,
  { siteId, lineId }: { readonly siteId: string; readonly lineId: string },
): Promise<ScheduleWindow[]> {
  const rows = await tx.shutdownWindow.findMany({
    where: { siteId, OR: [{ lineId: null }, { lineId }] },
    orderBy: [{ startsOn: "asc" }, { name: "asc" }],
  });
  return rows.map(({ id, name, startsOn, endsOn }) => ({
    ...{ id, name, startsOn: dayText(startsOn), endsOn: dayText(endsOn) },
  }));
}

const dayText = (date: Date): IsoDate => date.toISOString().slice(0, 10);
const dayOf = (date: Date | null): IsoDate | null => (date === null ? null : dayText(date));
