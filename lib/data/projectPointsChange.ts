import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { holdOpenProject, holdRecordedProject } from "@/lib/data/closing/holdProject";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddPoint, ChangePoint, DropPoint, SettlePoint } from "@/lib/schema/projectPoints";
import type { OpenPoint, Project } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such point in a project you may change." };
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else changed this point since you opened it. What you typed is still here; load the page in another window to see theirs.",
};

export interface PointMark {
  readonly pointId: string;
  readonly version: number;
}

const maybeDate = (day: string | null) => (day === null ? null : new Date(`${day}T00:00:00Z`));

/** Records something left to do, raised today, by whoever records in the project; what is said of it later is for who runs it. */
export async function addOpenPoint(
  actor: Actor,
  { projectId, ...said }: AddPoint,
): Promise<Result<PointMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdRecordedProject(tx, actor, projectId);
    if (!held.ok) return held;
    const { id, version } = await tx.openPoint.create({
      data: { projectId, ...said, dueOn: maybeDate(said.dueOn), raisedOn: new Date(`${today}T00:00:00Z`) },
    });
    record({ ...deedOf("point:add", id, held.value), after: { projectId, ...said } });
    return ok({ pointId: id, version });
  });
}

/** Writes what is said of a point, if nobody else did meanwhile. */
export function changeOpenPoint(
  actor: Actor,
  { pointId, version, ...said }: ChangePoint,
): Promise<Result<PointMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdPoint(tx, actor, { pointId, version });
    if (!held.ok) return held;
    const { project, point } = held.value;
    await tx.openPoint.update({
      where: { id: pointId },
      data: { ...said, dueOn: maybeDate(said.dueOn), version: { increment: 1 } },
    });
    record({ ...deedOf("point:change", pointId, project), before: saidOf(point), after: said });
    return ok({ pointId, version: version + 1 });
  });
}

/** Marks a point done today by whoever says so, or opens it again. */
export async function settleOpenPoint(
  actor: Actor,
  { pointId, version, done }: SettlePoint,
): Promise<Result<PointMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdPoint(tx, actor, { pointId, version });
    if (!held.ok) return held;
    const sign = done ? { doneOn: maybeDate(today), doneBy: actor.name } : { doneOn: null, doneBy: null };
    await tx.openPoint.update({ where: { id: pointId }, data: { ...sign, version: { increment: 1 } } });
    const { project, point } = held.value;
    record({ ...deedOf("point:settle", pointId, project), before: saidOf(point), after: { done } });
    return ok({ pointId, version: version + 1 });
  });
}

/** Takes a point away; the audit keeps what it said. */
export function dropOpenPoint(actor: Actor, asked: DropPoint): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdPoint(tx, actor, asked);
    if (!held.ok) return held;
    const { project, point } = held.value;
    await tx.openPoint.delete({ where: { id: asked.pointId } });
    record({ ...deedOf("point:drop", asked.pointId, project), before: saidOf(point) });
    return ok(null);
  });
}

async function holdPoint(
  tx: Transaction,
  actor: Actor,
  { pointId, version }: DropPoint,
): Promise<Result<{ project: Project; point: OpenPoint }, Refusal>> {
  const known = await tx.openPoint.findUnique({ where: { id: pointId }, select: { projectId: true } });
  const held = known ? await holdOpenProject(tx, actor, known.projectId) : err(missing);
  if (!held.ok) return held.error.code === "missing" ? err(missing) : held;
  const point = await tx.openPoint.findUnique({ where: { id: pointId } });
  if (!point) return err(missing);
  return point.version === version ? ok({ project: held.value, point }) : err(conflict);
}

function deedOf(deed: string, entityId: string, { siteId }: Project) {
  return { deed, entity: "OpenPoint", entityId, siteId };
}

function saidOf({ what, owner, blocks, dueOn, doneOn, doneBy }: OpenPoint) {
  const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;
  return { what, owner, blocks, doneBy, dueOn: dayOf(dueOn), doneOn: dayOf(doneOn) };
}
