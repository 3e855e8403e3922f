import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { loadTasks } from "@/lib/data/schedule";
import { holdProject, noProject, noTask } from "@/lib/data/scheduleChange";
import { err, ok, type Result } from "@/lib/kernel/result";
import { inOrder } from "@/lib/projects/taskOrder";
import type { AddTask, ChangeTask, RemoveTask } from "@/lib/schema/schedule";
import { refusalWords } from "@/lib/view/schedule";

type Said = Omit<ChangeTask, "projectId" | "taskId" | "version">;

/** Adds a task behind the others; it is placed at once and planned with the next plan. */
export async function addTask(
  actor: Actor,
  { projectId, days, ...said }: AddTask,
): Promise<Result<{ id: string }, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await holdProject(tx, actor, projectId);
    if (!project) return err(noProject);
    const { after, ...plain } = said;
    const wrong = await wrongSaid(tx, projectId, { id: null, said });
    if (wrong !== null) return err(wrong);
    const { _max } = await tx.projectTask.aggregate({ where: { projectId }, _max: { sequence: true } });
    const { id } = await tx.projectTask.create({
      data: {
        ...{ ...plain, projectId, days, sequence: (_max.sequence ?? 0) + 1 },
        after: { create: after.map((link) => ({ afterId: link.id, lag: link.lag })) },
      },
      select: { id: true },
    });
    record({
      ...{ deed: "schedule:add", entity: "ProjectTask", entityId: id, siteId: project.siteId },
      after: { days, ...said },
    });
    return ok({ id });
  });
}

/** Says what a task is, if nobody else changed it meanwhile. */
export async function changeTask(
  actor: Actor,
  { projectId, taskId, version, ...said }: ChangeTask,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await holdProject(tx, actor, projectId);
    if (!project) return err(noProject);
    const before = (await loadTasks(tx, projectId)).find(({ id }) => id === taskId);
    if (!before) return err(noTask);
    if (before.version !== version) return err(changedMeanwhile(before.code));
    const wrong = await wrongSaid(tx, projectId, { id: taskId, said });
    if (wrong !== null) return err(wrong);
    const { after, ...plain } = said;
    await tx.taskLink.deleteMany({ where: { taskId } });
    await tx.projectTask.update({
      where: { id: taskId },
      data: {
        ...{ ...plain, version: { increment: 1 } },
        after: { create: after.map((link) => ({ afterId: link.id, lag: link.lag })) },
      },
    });
    const { name, who, inWindow, crews, engineers } = before;
    record({
      ...{ deed: "schedule:change", entity: "ProjectTask", entityId: taskId, siteId: project.siteId },
      before: {
        name,
        who,
        inWindow,
        crews,
        engineers,
        code: before.code,
        after: before.after.map((one) => ({ ...one })),
      },
      after: said,
    });
    return ok(null);
  });
}

/** Takes away a task that has not begun and guards no gate. */
export async function removeTask(
  actor: Actor,
  { projectId, taskId, version }: RemoveTask,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await holdProject(tx, actor, projectId);
    if (!project) return err(noProject);
    const task = await tx.projectTask.findFirst({
      where: { id: taskId, projectId },
      include: { gates: true, before: { include: { task: { select: { code: true } } } } },
    });
    if (!task) return err(noTask);
    if (task.version !== version) return err(changedMeanwhile(task.code));
    const hindrance = removeHindrance(task, {
      gates: task.gates.map(({ name }) => name),
      followers: task.before.map((link) => link.task.code),
    });
    if (hindrance !== null) return err({ code: "impossible", reason: `${hindrance} Nothing was changed.` });
    await tx.projectTask.delete({ where: { id: taskId } });
    record({
      ...{ deed: "schedule:remove", entity: "ProjectTask", entityId: taskId, siteId: project.siteId },
      before: { code: task.code, name: task.name, days: task.days },
    });
    return ok(null);
  });
}

interface Hanging {
  /** Names of the gates that guard the task, and codes of the tasks that wait for it. */
  readonly gates: readonly string[];
  readonly followers: readonly string[];
}

function removeHindrance(
  { code, startedOn }: { readonly code: string; readonly startedOn: Date | null },
  { gates, followers }: Hanging,
): string | null {
  if (startedOn !== null) return `${code} has begun.`;
  if (gates.length > 0) return `The gate “${gates[0]}” guards ${code}.`;
  return followers.length > 0
    ? `Waiting for ${code}: ${followers.join(", ")}. Change what they wait for first.`
    : null;
}

function changedMeanwhile(code: string): Refusal {
  return {
    code: "conflict",
    reason: `Somebody else changed ${code} meanwhile. Nothing was changed; what you typed is still here.`,
  };
}

interface Asked {
  /** Null is a new task. */
  readonly id: string | null;
  readonly said: Said;
}

/** Why what is said of a task cannot stand: its code is taken, a link leads nowhere or back to itself. */
async function wrongSaid(tx: Transaction, projectId: string, { id, said }: Asked): Promise<Refusal | null> {
  const tasks = await loadTasks(tx, projectId);
  const invalid = (field: string, reason: string): Refusal => ({
    ...{ code: "invalid", reason, fields: { [field]: reason } },
  });
  if (tasks.some((task) => task.code === said.code && task.id !== id))
    return invalid("code", `${said.code} is another task of this project already.`);
  if (
    said.milestoneId !== null &&
    (await tx.milestone.count({ where: { id: said.milestoneId, projectId } })) === 0
  )
    return invalid("milestoneId", "There is no such milestone in this project.");
  const others = tasks.filter((task) => task.id !== id);
  const own = { ...tasks[0], ...said, id: id ?? "new" };
  const ordered = inOrder([...others, own]);
  if (ordered.ok) return null;
  const named = [
    ...others.map((task) => ({ id: task.id, code: task.code })),
    { id: own.id, code: said.code },
  ];
  return invalid("after", refusalWords(ordered.error, named));
}
