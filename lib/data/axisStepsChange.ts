import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import type { Deed } from "@/lib/access/policy";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { projects } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import { markHindrance, STEPS_OF_RECORD, type StepDays, unmarkHindrance } from "@/lib/projects/axisSteps";
import type { AxisStepKind, MarkAxes, SetRound, UnmarkAxes } from "@/lib/schema/axisStep";
import type { LeftAxis } from "@/lib/view/axisSteps";

const missing: Refusal = {
  code: "missing",
  reason: "There is no such axis in a project where you may write this.",
};

/** What was done of many axes at once. */
export interface ManyAxes {
  readonly axisIds: readonly string[];
  readonly left: readonly LeftAxis[];
}

/** What stood on an axis before a step was taken back. */
export interface FormerStep {
  readonly axisId: string;
  readonly on: IsoDate;
  readonly by: string;
}

/** Marks a step of axes done; those that cannot be are left as they are and named. */
export async function markAxes(
  actor: Actor,
  { projectId, axisIds, step, on, by }: MarkAxes,
): Promise<Result<ManyAxes, Refusal>> {
  const today = await readAsOf(actor, undefined);
  if (on > today)
    return err({
      code: "invalid",
      reason: `Work of a day to come is not done. Today is ${today}.`,
      fields: { on: `Not later than ${today}.` },
    });
  return change(actor, async (tx, record) => {
    const held = await holdAxes(tx, actor, { deed: "event:write", projectId, axisIds });
    if (held === null) return err(missing);
    const left: LeftAxis[] = [];
    const marked = held.axes.filter((axis) => {
      const reason =
        recordReason(axis, step) ??
        (axis.days[step] === undefined ? null : "is marked already") ??
        markHindrance(axis.days, step, on);
      if (reason !== null) left.push({ axis: axis.name, reason });
      return reason === null;
    });
    if (marked.length === 0) return err(noneOf(left));
    const doneOn = new Date(`${on}T00:00:00Z`);
    await tx.axisStep.createMany({
      data: marked.map(({ id }) => ({
        ...{ projectId, axisId: id, step, doneOn, doneBy: by, recordedBy: actor.name },
      })),
    });
    const names = marked.map(({ name }) => name);
    record({
      ...{ deed: "axis:mark", entity: "AxisStep", entityId: projectId, siteId: held.siteId },
      after: { step, on, by, axes: names },
    });
    return ok({ axisIds: marked.map(({ id }) => id), left });
  });
}

/** Takes a step of axes back; those that have gone on, or follow their record, are left and named. */
export async function unmarkAxes(
  actor: Actor,
  { projectId, axisIds, step }: UnmarkAxes,
): Promise<Result<ManyAxes & { readonly former: readonly FormerStep[] }, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdAxes(tx, actor, { deed: "event:write", projectId, axisIds });
    if (held === null) return err(missing);
    const left: LeftAxis[] = [];
    const taken = held.axes.filter((axis) => {
      const reason =
        recordReason(axis, step) ??
        (axis.days[step] === undefined ? "is not marked" : unmarkHindrance(axis.days, step));
      if (reason !== null) left.push({ axis: axis.name, reason });
      return reason === null;
    });
    if (taken.length === 0) return err(noneOf(left));
    const where = { projectId, step, axisId: { in: taken.map(({ id }) => id) } };
    const rows = await tx.axisStep.findMany({ where });
    await tx.axisStep.deleteMany({ where });
    const former = rows.map(({ axisId, doneOn, doneBy }) => ({
      ...{ axisId, on: doneOn.toISOString().slice(0, 10), by: doneBy },
    }));
    record({
      ...{ deed: "axis:unmark", entity: "AxisStep", entityId: projectId, siteId: held.siteId },
      before: { step, axes: former },
    });
    return ok({ axisIds: former.map(({ axisId }) => axisId), left, former });
  });
}

/** Puts axes of a project into a round of it. */
export async function setRound(
  actor: Actor,
  { projectId, axisIds, round }: SetRound,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdAxes(tx, actor, { deed: "project:write", projectId, axisIds });
    if (held === null) return err(missing);
    await tx.projectAxis.deleteMany({ where: { projectId, axisId: { in: [...axisIds] } } });
    await tx.projectAxis.createMany({ data: axisIds.map((axisId) => ({ projectId, axisId, round })) });
    record({
      ...{ deed: "axis:round", entity: "ProjectAxis", entityId: projectId, siteId: held.siteId },
      after: { round, axes: held.axes.map(({ name }) => name) },
    });
    return ok(null);
  });
}

interface HeldAxis {
  readonly id: string;
  readonly name: string;
  readonly hasRecord: boolean;
  readonly days: StepDays;
}

function recordReason({ hasRecord }: HeldAxis, step: AxisStepKind): string | null {
  return hasRecord && STEPS_OF_RECORD.includes(step)
    ? `has a record, and is ${step} when its record says so: open the record`
    : null;
}

function noneOf(left: readonly LeftAxis[]): Refusal {
  const [first] = left;
  const more = left.length > 1 ? ` The same or another reason holds for ${left.length - 1} more.` : "";
  return { code: "impossible", reason: `Nothing was changed: ${first?.axis} ${first?.reason}.${more}` };
}

interface Wanted {
  readonly deed: Deed;
  readonly projectId: string;
  readonly axisIds: readonly string[];
}

/** The axes with their steps, the project held so that marks come one after the other; null when one is not there. */
async function holdAxes(tx: Transaction, actor: Actor, { deed, projectId, axisIds }: Wanted) {
  const project = await tx.project.findFirst({
    where: { id: projectId, ...projects(actor, deed) },
    select: { siteId: true, lineId: true },
  });
  if (!project) return null;
  await tx.$queryRaw`SELECT "id" FROM "Project" WHERE "id" = ${projectId}::uuid FOR UPDATE`;
  const rows = await tx.axis.findMany({
    where: { id: { in: [...axisIds] }, machine: { lineId: project.lineId } },
    orderBy: [{ machine: { code: "asc" } }, { code: "asc" }],
    select: {
      ...{ id: true, code: true, machine: { select: { code: true } } },
      records: { where: { projectId }, select: { id: true } },
      projectSteps: { where: { projectId }, select: { step: true, doneOn: true } },
    },
  });
  if (rows.length !== new Set(axisIds).size) return null;
  const axes = rows.map(
    (row): HeldAxis => ({
      id: row.id,
      name: `${row.machine.code} ${row.code}`,
      hasRecord: row.records.length > 0,
      days: Object.fromEntries(
        row.projectSteps.map(({ step, doneOn }) => [step, doneOn.toISOString().slice(0, 10)]),
      ),
    }),
  );
  return { siteId: project.siteId, axes };
}
