import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { conflict, isDrivePlace, liesAhead, noPart, noPlace, noUnit } from "@/lib/data/closing/checkUnit";
import { holdOpenProject } from "@/lib/data/closing/holdProject";
import { partByPlate } from "@/lib/data/stock/partByPlate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddRemoved, ChangeRemoved, DropRemoved } from "@/lib/schema/closing";
import type { Project, RemovedUnit } from "@/prisma/generated/client";

const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);
const maybeDate = (day: string | null) => (day === null ? null : dateOf(day));

export interface UnitMark {
  readonly unitId: string;
  readonly version: number;
}

/** Records a unit the project took out. */
export async function addRemovedUnit(
  actor: Actor,
  { projectId, ...said }: AddRemoved,
): Promise<Result<UnitMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdOpenProject(tx, actor, projectId);
    if (!held.ok) return held;
    const checked = await checkSaid(tx, held.value, { said, today, unitId: null });
    if (!checked.ok) return checked;
    const { id: unitId, version } = await tx.removedUnit.create({
      data: { projectId, ...checked.value },
    });
    record(deedOf("release:add", { id: unitId, siteId: held.value.siteId }, { projectId, ...said }));
    return ok({ unitId, version });
  });
}

/** Writes what is said of a removed unit, if nobody else did meanwhile. */
export async function changeRemovedUnit(
  actor: Actor,
  { unitId, version, ...said }: ChangeRemoved,
): Promise<Result<UnitMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdRemoved(tx, actor, unitId);
    if (!held.ok) return held;
    const { project, unit } = held.value;
    if (unit.version !== version) return err(conflict);
    const checked = await checkSaid(tx, project, { said, today, unitId });
    if (!checked.ok) return checked;
    await tx.removedUnit.update({
      where: { id: unitId },
      data: { ...checked.value, version: { increment: 1 } },
    });
    record({
      ...deedOf("release:change", { id: unitId, siteId: project.siteId }, said),
      before: saidOf(unit),
    });
    return ok({ unitId, version: version + 1 });
  });
}

/** Takes the record of a removed unit away; the audit keeps what it said. */
export async function dropRemovedUnit(
  actor: Actor,
  { unitId, version }: DropRemoved,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdRemoved(tx, actor, unitId);
    if (!held.ok) return held;
    const { project, unit } = held.value;
    if (unit.version !== version) return err(conflict);
    await tx.removedUnit.delete({ where: { id: unitId } });
    record({
      ...{ deed: "release:drop", entity: "RemovedUnit", entityId: unitId, siteId: project.siteId },
      before: saidOf(unit),
    });
    return ok(null);
  });
}

type Said = Omit<AddRemoved, "projectId">;

interface Checking {
  readonly said: Said;
  readonly today: string;
  /** The unit that is changed; null is a new one. */
  readonly unitId: string | null;
}

/** What of a removed unit is written, once part, place, days and serial are such that it can be. */
async function checkSaid(tx: Transaction, project: Project, { said, today, unitId }: Checking) {
  const { plate, removedOn, testedOn, positionId, serial } = said;
  const ahead = removedOn > today ? "removedOn" : testedOn !== null && testedOn > today ? "testedOn" : null;
  if (ahead !== null) return err(liesAhead(ahead));
  const part = await partByPlate(tx, plate, project.siteId);
  if (!part) return err(noPart);
  if (positionId !== null && !(await isDrivePlace(tx, project, positionId))) return err(noPlace);
  const twin = await tx.removedUnit.count({
    where: { projectId: project.id, partId: part.id, serial, id: { not: unitId ?? project.id } },
  });
  if (serial !== "" && twin > 0) return err(twice(part.number, serial));
  const { plate: _, ...plain } = said;
  return ok({
    ...plain,
    ...{ partId: part.id, removedOn: dateOf(removedOn), testedOn: maybeDate(testedOn) },
  });
}

function twice(part: string, serial: string): Refusal {
  return {
    code: "conflict",
    reason: `${part} ${serial} is recorded in this project already.`,
    fields: { serial: "Recorded already." },
  };
}

async function holdRemoved(
  tx: Transaction,
  actor: Actor,
  unitId: string,
): Promise<Result<{ project: Project; unit: RemovedUnit }, Refusal>> {
  const known = await tx.removedUnit.findUnique({ where: { id: unitId }, select: { projectId: true } });
  const held = known ? await holdOpenProject(tx, actor, known.projectId) : null;
  if (!held || (!held.ok && held.error.code === "missing")) return err(noUnit);
  if (!held.ok) return held;
  const unit = await tx.removedUnit.findUnique({ where: { id: unitId } });
  return unit ? ok({ project: held.value, unit }) : err(noUnit);
}

function deedOf(deed: string, at: { readonly id: string; readonly siteId: string }, after: object) {
  return { deed, entity: "RemovedUnit", entityId: at.id, siteId: at.siteId, after: { ...after } };
}

const saidOf = ({ removedOn, testedOn, ...unit }: RemovedUnit) => ({
  ...unit,
  removedOn: removedOn.toISOString().slice(0, 10),
  testedOn: testedOn?.toISOString().slice(0, 10) ?? null,
});
