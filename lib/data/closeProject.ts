import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { bookReleased } from "@/lib/data/closing/bookReleased";
import { fitUnits, takeUnitsOut } from "@/lib/data/closing/fitUnits";
import { holdOpenProject, holdProject } from "@/lib/data/closing/holdProject";
import { loadCloseFile } from "@/lib/data/closing/loadCloseFile";
import { movedLots, movedLotsBack, takeBackShelf } from "@/lib/data/stock/moveLots";
import { daysBetween, type IsoDate } from "@/lib/kernel/isoDate";
import { err, ok, type Result } from "@/lib/kernel/result";
import { benefitCheckOn } from "@/lib/projects/benefit";
import { closeOut } from "@/lib/projects/closeOut";
import { type CloseProject, type ClosingSteps, closingSteps, type ReopenProject } from "@/lib/schema/closing";
import { refusalWords } from "@/lib/view/closeOut";
import type { Project, ProjectClosing } from "@/prisma/generated/client";

const changed: Refusal = {
  code: "conflict",
  reason: "Somebody changed the project or its units since you opened this page. Look at it again first.",
};
const notClosed: Refusal = {
  code: "missing",
  reason: "There is no such closed project that you may change.",
};
const checked: Refusal = {
  code: "impossible",
  reason: "The benefit was checked against this closing. Take the check back first.",
};

/** Days in which a closing may be taken back: later others have built on it. Own choice. */
export const TAKE_BACK_DAYS = 30;

const dateOf = (day: IsoDate) => new Date(`${day}T00:00:00Z`);

/**
 * Closes a project when nothing is missing: released parts go onto the shelf, new units into the installed base, and
 * the benefit check is set for a year later, all or nothing.
 */
export async function closeThisProject(
  actor: Actor,
  { projectId, version, seen }: CloseProject,
): Promise<Result<{ version: number }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdOpenProject(tx, actor, projectId);
    if (!held.ok) return held;
    const project = held.value;
    const file = await loadCloseFile(tx, project);
    if (project.version !== version || file.seen !== seen) return err(changed);
    const items = closeOut(file.facts);
    if (items.some(({ missing }) => missing.length > 0))
      return err({ code: "impossible", reason: `Nothing was booked. ${refusalWords(items)}` });
    const booked = await book(tx, project, { by: actor.name, today });
    if (!booked.ok) return booked;
    const steps = booked.value;
    const checkOn = benefitCheckOn(today);
    const { id } = await tx.projectClosing.create({
      data: {
        ...{ projectId, closedBy: actor.name, steps },
        ...{ closedOn: dateOf(today), checkOn: dateOf(checkOn) },
      },
    });
    await tx.project.update({
      where: { id: projectId },
      data: { status: "closed", version: { increment: 1 } },
    });
    const { siteId, code } = project;
    record({
      ...{ deed: "project:close", entity: "ProjectClosing", entityId: id, siteId },
      after: { code, checkOn, lots: steps.shelf.lots.length, places: steps.base.places.length },
    });
    for (const deed of movedLots("stock:release", siteId, steps.shelf.lots)) record(deed);
    return ok({ version: version + 1 });
  });
}

interface Closer {
  readonly by: string;
  readonly today: IsoDate;
}

async function book(
  tx: Transaction,
  { id: projectId, siteId, code, status }: Project,
  { by, today }: Closer,
): Promise<Result<ClosingSteps, Refusal>> {
  const removed = await tx.removedUnit.findMany({ where: { projectId }, orderBy: { id: "asc" } });
  const fitted = await tx.fittedUnit.findMany({ where: { projectId }, orderBy: { id: "asc" } });
  const units = removed.map(({ testedOn, ...unit }) => ({
    ...unit,
    testedOn: testedOn?.toISOString().slice(0, 10) ?? null,
  }));
  const shelf = await bookReleased(tx, { siteId, projectCode: code, units, by, today });
  if (!shelf.ok) return shelf;
  const base = await fitUnits(tx, { fitted, removed });
  if (!base.ok) return base;
  if (status === "closed") throw new RangeError("an open project was asked for, got a closed one");
  return ok({ shelf: shelf.value, base: base.value, statusBefore: status });
}

/** Takes a closing back: shelf, installed base and state of the project are as they were before. */
export async function reopenThisProject(
  actor: Actor,
  { projectId, version }: ReopenProject,
): Promise<Result<{ version: number }, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdClosed(tx, actor, { projectId, version, today });
    if (!held.ok) return held;
    const { project, closing } = held.value;
    const { shelf, base, statusBefore } = closingSteps.parse(closing.steps);
    const offShelf = await takeBackShelf(tx, shelf);
    if (!offShelf.ok) return offShelf;
    const out = await takeUnitsOut(tx, base);
    if (!out.ok) return out;
    await tx.projectClosing.delete({ where: { projectId } });
    await tx.project.update({
      where: { id: projectId },
      data: { status: statusBefore, version: { increment: 1 } },
    });
    const { siteId, code } = project;
    record({
      ...{ deed: "project:reopen", entity: "ProjectClosing", entityId: closing.id, siteId },
      before: { code, closedOn: closing.closedOn.toISOString().slice(0, 10), closedBy: closing.closedBy },
    });
    for (const deed of movedLotsBack("stock:release-undo", siteId, shelf.lots)) record(deed);
    return ok({ version: version + 1 });
  });
}

interface Reopening extends ReopenProject {
  readonly today: IsoDate;
}

/** A closed project with its closing, held, where the closing may still be taken back. */
async function holdClosed(
  tx: Transaction,
  actor: Actor,
  { projectId, version, today }: Reopening,
): Promise<Result<{ project: Project; closing: ProjectClosing }, Refusal>> {
  const project = await holdProject(tx, actor, projectId);
  const closing = project && (await tx.projectClosing.findUnique({ where: { projectId } }));
  if (!project || !closing) return err(notClosed);
  if (project.version !== version) return err(changed);
  if (closing.checkedOn !== null) return err(checked);
  const closedOn = closing.closedOn.toISOString().slice(0, 10);
  return daysBetween(closedOn, today) > TAKE_BACK_DAYS ? err(tooLate(closedOn)) : ok({ project, closing });
}

function tooLate(closedOn: IsoDate): Refusal {
  return {
    code: "impossible",
    reason: `The project was closed on ${closedOn}, more than ${TAKE_BACK_DAYS} days ago. Correct shelf and places one by one.`,
  };
}
