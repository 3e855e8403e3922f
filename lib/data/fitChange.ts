import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { conflict, isDrivePlace, liesAhead, noPart, noPlace, noUnit } from "@/lib/data/closing/checkUnit";
import { holdOpenProject } from "@/lib/data/closing/holdProject";
import type { UnitMark } from "@/lib/data/releaseChange";
import { partByPlate } from "@/lib/data/stock/partByPlate";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { DropFitted, FitUnit } from "@/lib/schema/closing";
import type { FittedUnit, Project } from "@/prisma/generated/client";

/** Records the unit a project put into a place, or writes it anew if nobody else did meanwhile. */
export async function fitProjectUnit(
  actor: Actor,
  { projectId, positionId, version, plate, ...said }: FitUnit,
): Promise<Result<UnitMark, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    if (said.fittedOn > today) return err(liesAhead("fittedOn"));
    const held = await holdOpenProject(tx, actor, projectId);
    if (!held.ok) return held;
    const found = await partAtPlace(tx, held.value, { positionId, plate });
    if (!found.ok) return found;
    const at = { projectId_positionId: { projectId, positionId } };
    const before = await tx.fittedUnit.findUnique({ where: at });
    if ((before?.version ?? 0) !== version) return err(conflict);
    const data = { ...said, partId: found.value, fittedOn: new Date(`${said.fittedOn}T00:00:00Z`) };
    const after = await tx.fittedUnit.upsert({
      where: at,
      create: { projectId, positionId, ...data },
      update: { ...data, version: { increment: 1 } },
    });
    record({
      ...{ deed: "fit:record", entity: "FittedUnit", entityId: after.id, siteId: held.value.siteId },
      ...{ before: before ? fittedOf(before) : {}, after: { positionId, plate, ...said } },
    });
    return ok({ unitId: after.id, version: after.version });
  });
}

/** The part of a plate, where the place is one of the project's. */
async function partAtPlace(
  tx: Transaction,
  project: Project,
  { positionId, plate }: Pick<FitUnit, "positionId" | "plate">,
): Promise<Result<string, Refusal>> {
  if (!(await isDrivePlace(tx, project, positionId))) return err(noPlace);
  const part = await partByPlate(tx, plate, project.siteId);
  return part ? ok(part.id) : err(noPart);
}

/** Takes the record of a fitted unit away; the installed base stays as it is. */
export async function dropFittedUnit(
  actor: Actor,
  { unitId, version }: DropFitted,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const unit = await tx.fittedUnit.findUnique({ where: { id: unitId } });
    const held = unit ? await holdOpenProject(tx, actor, unit.projectId) : null;
    if (!unit || !held || (!held.ok && held.error.code === "missing")) return err(noUnit);
    if (!held.ok) return held;
    const { count } = await tx.fittedUnit.deleteMany({ where: { id: unitId, version } });
    if (count === 0) return err(conflict);
    record({
      ...{ deed: "fit:drop", entity: "FittedUnit", entityId: unitId, siteId: held.value.siteId },
      before: fittedOf(unit),
    });
    return ok(null);
  });
}

const fittedOf = ({ fittedOn, ...unit }: FittedUnit) => ({
  ...unit,
  fittedOn: fittedOn.toISOString().slice(0, 10),
});
