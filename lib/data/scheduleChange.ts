import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { loadTasks, loadWindows } from "@/lib/data/schedule";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import { criticalPath, type PlacedActivity } from "@/lib/projects/criticalPath";
import type { MakeReplan, MarkTask } from "@/lib/schema/schedule";
import { type PlannedRow, refusalWords, type ScheduleTask, scheduleTerms } from "@/lib/view/schedule";
import type { Prisma, Project } from "@/prisma/generated/client";

export const noProject: Refusal = {
  code: "missing",
  reason: "There is no such project that you may change.",
};
export const noTask: Refusal = { code: "missing", reason: "There is no such task in this project." };

/**
 * Puts another plan in force: changed days and earliest days, all tasks placed anew as of today, with the reason.
 * The former plan is kept with it. The first plan is the baseline; it dates milestones and an end that had no day.
 */
export async function replan(
  actor: Actor,
  { projectId, seen, reason, tasks: wanted }: MakeReplan,
): Promise<Result<{ number: number }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const project = await holdProject(tx, actor, projectId);
    if (!project) return err(noProject);
    const last = await tx.replan.findFirst({ where: { projectId }, orderBy: { number: "desc" } });
    if (last && last.number !== seen) return err(overtaken(last));
    const before = await loadTasks(tx, projectId);
    const asked = new Map(wanted.map(({ id, ...rest }) => [id, rest]));
    if (wanted.some(({ id }) => !before.some((task) => task.id === id && task.finishedOn === null)))
      return err({
        ...noTask,
        reason: "A task of this plan is finished or not there any more. Load the page again.",
      });
    const tasks = before.map((task) => ({ ...task, ...asked.get(task.id) }));
    const startsOn = dayOf(project.startsOn);
    const windows = await loadWindows(tx, project);
    const network = criticalPath(tasks, scheduleTerms({ startsOn, windows }, today));
    if (!network.ok) return err({ code: "impossible", reason: refusalWords(network.error, tasks) });
    const number = (last?.number ?? 0) + 1;
    await writePlan(tx, { tasks, placed: network.value.tasks, isFirst: number === 1 });
    if (number === 1) await dateProject(tx, { project, today });
    const after = await loadTasks(tx, projectId);
    await tx.replan.create({
      data: {
        ...{ projectId, number, reason, madeOn: dateOf(today), madeBy: actor.name },
        ...{ before: rowsOf(before), after: rowsOf(after) },
      },
    });
    record({
      ...{ deed: "schedule:replan", entity: "Replan", entityId: projectId, siteId: project.siteId },
      after: { number, reason, tasks: wanted },
    });
    return ok({ number });
  });
}

interface NewPlan {
  readonly tasks: readonly ScheduleTask[];
  readonly placed: readonly PlacedActivity[];
  readonly isFirst: boolean;
}

/** Writes the places of all tasks in one statement; a finished task keeps the days it was planned for. */
async function writePlan(tx: Transaction, { tasks, placed, isFirst }: NewPlan): Promise<void> {
  const rows = tasks.map(({ id, days, notBefore, finishedOn, plannedStart, plannedFinish }, i) => {
    const isKept = finishedOn !== null && plannedStart !== null;
    const { start, finish } = placed[i] ?? { start: plannedStart, finish: plannedFinish };
    return {
      ...{ id, days, notBefore },
      ...(isKept ? { start: plannedStart, finish: plannedFinish } : { start, finish }),
    };
  });
  const { length } = rows;
  if (length === 0) return;
  await tx.$executeRaw`
    UPDATE "ProjectTask" t SET "days" = n."days", "notBefore" = n."notBefore", "version" = t."version" + 1,
      "plannedStart" = n."start", "plannedFinish" = n."finish",
      "baselineStart" = CASE WHEN ${isFirst} THEN n."start" ELSE t."baselineStart" END,
      "baselineFinish" = CASE WHEN ${isFirst} THEN n."finish" ELSE t."baselineFinish" END
    FROM jsonb_to_recordset(${JSON.stringify(rows)}::jsonb)
      AS n("id" uuid, "days" int, "notBefore" date, "start" date, "finish" date)
    WHERE t."id" = n."id"`;
}

/** Gives milestones without a due day the day their tasks end, and a project without days its own. */
async function dateProject(
  tx: Transaction,
  { project, today }: { readonly project: Project; readonly today: IsoDate },
): Promise<void> {
  const { id } = project;
  await tx.$executeRaw`
    UPDATE "Milestone" m SET "dueOn" = s."finish"
    FROM (SELECT "milestoneId", max("plannedFinish") AS "finish" FROM "ProjectTask"
      WHERE "projectId" = ${id}::uuid GROUP BY "milestoneId") s
    WHERE m."id" = s."milestoneId" AND m."dueOn" IS NULL`;
  const { _max } = await tx.projectTask.aggregate({
    where: { projectId: id },
    _max: { plannedFinish: true },
  });
  await tx.project.update({
    where: { id },
    data: {
      startsOn: project.startsOn ?? dateOf(today),
      endsOn: project.endsOn ?? _max.plannedFinish,
      version: { increment: 1 },
    },
  });
}

function overtaken(last: { number: number; madeBy: string; reason: string }): Refusal {
  return {
    code: "conflict",
    reason: `${last.madeBy} put plan ${last.number} in force meanwhile: “${last.reason}”. Your changes are still here, now on top of that plan; look at them and keep them again.`,
  };
}

/** Says when a task really began and ended, if it still stands as the person saw it; swap both to undo. */
export async function markTask(
  actor: Actor,
  { projectId, taskId, seen, wanted }: MarkTask,
): Promise<Result<null, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const project = await holdProject(tx, actor, projectId);
    if (!project) return err(noProject);
    const task = await tx.projectTask.findFirst({
      where: { id: taskId, projectId },
      include: { gates: true },
    });
    if (!task) return err(noTask);
    const { startedOn, finishedOn } = wanted;
    const wrong = wrongDays(wanted, today);
    if (wrong !== null) return err(wrong);
    const gate = task.gates.find(({ decision }) => decision !== "passed");
    if (startedOn !== null && seen.startedOn === null && gate)
      return err({
        code: "impossible",
        reason: `${task.code} may not start: the gate “${gate.name}” is not passed.`,
      });
    const { count } = await tx.projectTask.updateMany({
      where: { id: taskId, startedOn: orNull(seen.startedOn), finishedOn: orNull(seen.finishedOn) },
      data: { startedOn: orNull(startedOn), finishedOn: orNull(finishedOn), version: { increment: 1 } },
    });
    if (count === 0)
      return err({
        code: "conflict",
        reason: `Somebody else marked ${task.code} meanwhile. Nothing was changed; look at the days that stand there now.`,
      });
    record({
      ...{ deed: "schedule:task", entity: "ProjectTask", entityId: taskId, siteId: project.siteId },
      ...{ before: seen, after: wanted },
    });
    return ok(null);
  });
}

function wrongDays({ startedOn, finishedOn }: MarkTask["wanted"], today: IsoDate): Refusal | null {
  const invalid = (field: string, reason: string): Refusal => ({
    ...{ code: "invalid", reason, fields: { [field]: reason } },
  });
  if (finishedOn !== null && startedOn === null)
    return invalid("startedOn", "A finished task has a day on which it began.");
  if (startedOn !== null && finishedOn !== null && finishedOn < startedOn)
    return invalid("finishedOn", "A task cannot end before it began.");
  if ((startedOn ?? "") > today) return invalid("startedOn", `Not later than today, ${today}.`);
  return (finishedOn ?? "") > today ? invalid("finishedOn", `Not later than today, ${today}.`) : null;
}

/** The project, held so that changes of its schedule come one after the other; null when the person may not change it. */
export async function holdProject(tx: Transaction, actor: Actor, id: string): Promise<Project | null> {
  const project = await tx.project.findFirst({ where: { id, ...atSites(actor, "project:write") } });
  if (project) await tx.$queryRaw`SELECT "id" FROM "Project" WHERE "id" = ${id}::uuid FOR UPDATE`;
  return project;
}

function rowsOf(tasks: readonly ScheduleTask[]): Prisma.InputJsonArray {
  return tasks.map(
    ({ code, name, days, plannedStart, plannedFinish }): PlannedRow => ({
      ...{ code, name, days, start: plannedStart, finish: plannedFinish },
    }),
  ) as unknown as Prisma.InputJsonArray;
}

const dateOf = (day: IsoDate): Date => new Date(`${day}T00:00:00Z`);
const orNull = (day: IsoDate | null): Date | null => (day === null ? null : dateOf(day));
const dayOf = (date: Date | null): IsoDate | null => date?.toISOString().slice(0, 10) ?? null;
