import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { placesOf } from "@/lib/kernel/currency";
import { fitsPlaces } from "@/lib/kernel/money";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { ChangeProject, RemoveProject, SetMilestone } from "@/lib/schema/project";
import type { Project } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such project that you may change." };
const noMilestone: Refusal = { code: "missing", reason: "There is no such milestone in this project." };
const byAxes: Refusal = {
  code: "impossible",
  reason:
    "This milestone is earned axis by axis. Mark the axes under Axis records; it is done when all of them are.",
};
const byClosing: Refusal = {
  code: "impossible",
  reason:
    "A project is closed, and its closing taken back, under Close-out, where parts and units are booked.",
};
const conflict: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this since you opened it. Nothing was changed; load the page again.",
};

/** Writes state, dates, forecast and cause of a project, if nobody else did meanwhile. */
export async function changeProject(
  actor: Actor,
  { projectId, version, ...wanted }: ChangeProject,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await findProject(tx, actor, projectId);
    if (!project) return err(missing);
    if ((project.status === "closed") !== (wanted.status === "closed")) return err(byClosing);
    const places = placesOf(project.currency);
    if (wanted.forecast !== null && !fitsPlaces(wanted.forecast, places)) {
      const reason = `${project.currency} has ${places} places behind the point.`;
      return err({ code: "invalid", reason, fields: { forecast: reason } });
    }
    const { startsOn, endsOn, cause, ...plain } = wanted;
    const { count } = await tx.project.updateMany({
      where: { id: projectId, version },
      data: {
        ...plain,
        cause: cause === "" ? null : cause,
        startsOn: dateOf(startsOn),
        endsOn: dateOf(endsOn),
        version: { increment: 1 },
      },
    });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "project:change", entity: "Project", entityId: projectId, siteId: project.siteId },
      ...{ before: figuresOf(project), after: wanted },
      // What a parked project would take out stays in the line.
      beside: (project.status === "parked") === (wanted.status === "parked"),
    });
    return ok(null);
  });
}

/** Dates a milestone or marks it done, if its days are still those the person saw; swap both to undo. */
export async function setMilestone(
  actor: Actor,
  { projectId, milestoneId, seen, wanted }: SetMilestone,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await findProject(tx, actor, projectId);
    if (!project) return err(missing);
    const where = { id: milestoneId, projectId };
    const milestone = await tx.milestone.findFirst({ where, select: { axisStep: true } });
    if (!milestone) return err(noMilestone);
    if (milestone.axisStep !== null && wanted.doneOn !== seen.doneOn) return err(byAxes);
    const days = (one: typeof seen) => ({ dueOn: dateOf(one.dueOn), doneOn: dateOf(one.doneOn) });
    const { count } = await tx.milestone.updateMany({
      where: { ...where, ...days(seen) },
      data: days(wanted),
    });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "project:milestone", entity: "Milestone", entityId: milestoneId, siteId: project.siteId },
      ...{ before: seen, after: wanted },
    });
    return ok(null);
  });
}

/** Takes a project's start back while nothing is booked, no milestone or step of an axis is done, no task begun and no unit moved. */
export async function removeProject(
  actor: Actor,
  { projectId, version }: RemoveProject,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await findProject(tx, actor, projectId);
    if (!project) return err(missing);
    const { count } = await tx.project.deleteMany({
      where: {
        ...{ id: projectId, version, costs: { none: {} }, axisSteps: { none: {} } },
        milestones: { none: { doneOn: { not: null } } },
        tasks: { none: { startedOn: { not: null } } },
        ...{ removed: { none: {} }, fitted: { none: {} } },
      },
    });
    if (count === 0)
      return err({
        code: "impossible",
        reason: "Money is booked or work is done, or somebody changed the project. Park it instead.",
      });
    record({
      ...{ deed: "project:remove", entity: "Project", entityId: projectId, siteId: project.siteId },
      before: { code: project.code, name: project.name, ...figuresOf(project) },
    });
    return ok(null);
  });
}

function findProject(tx: Transaction, actor: Actor, id: string) {
  return tx.project.findFirst({ where: { id, ...atSites(actor, "project:write") } });
}

function figuresOf({ status, budget, currency, forecast, cause, startsOn, endsOn }: Project) {
  return {
    ...{ status, currency, cause, budget: budget.toFixed(2), forecast: forecast?.toFixed(2) ?? null },
    startsOn: startsOn?.toISOString().slice(0, 10) ?? null,
    endsOn: endsOn?.toISOString().slice(0, 10) ?? null,
  };
}

function dateOf(day: string | null): Date | null {
  return day === null ? null : new Date(`${day}T00:00:00Z`);
}
