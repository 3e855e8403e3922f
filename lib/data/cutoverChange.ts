import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { heldCutover, stepsKept } from "@/lib/data/closing/heldCutover";
import { holdOpenProject } from "@/lib/data/closing/holdProject";
import { instantOf } from "@/lib/data/event/place";
import { err, ok, type Result } from "@/lib/kernel/result";
import { USUAL_CUTOVER } from "@/lib/projects/usualCutover";
import type { AddCutover, ChangeCutover, DropCutover } from "@/lib/schema/cutover";
import type { Cutover } from "@/prisma/generated/client";

const begun: Refusal = {
  code: "impossible",
  reason: "Steps of this cutover have begun, so it is part of what happened. Nothing was removed.",
};

function nameTaken(name: string): Refusal {
  const reason = `The project has a cutover called “${name}” already. Nothing was kept.`;
  return { code: "conflict", reason, fields: { name: "Write another name." } };
}

export interface CutoverMark {
  readonly cutoverId: string;
  readonly version: number;
}

/** Plans a cutover, with the usual steps or none. */
export function addProjectCutover(
  actor: Actor,
  { projectId, usual, ...said }: AddCutover,
): Promise<Result<CutoverMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdOpenProject(tx, actor, projectId);
    if (!held.ok) return held;
    const { siteId } = held.value;
    if ((await tx.cutover.count({ where: { projectId, name: said.name } })) > 0)
      return err(nameTaken(said.name));
    const { id: cutoverId, version } = await tx.cutover.create({
      data: {
        ...{ projectId, ...(await columnsOf(tx, siteId, said)) },
        steps: { create: usual ? USUAL_CUTOVER.map((step) => ({ ...step })) : [] },
      },
    });
    record({
      ...{ deed: "cutover:add", entity: "Cutover", entityId: cutoverId, siteId },
      after: { projectId, usual, ...said },
    });
    return ok({ cutoverId, version });
  });
}

type Said = Omit<AddCutover, "projectId" | "usual">;

/** Times are read on the site's clock. */
async function columnsOf(tx: Transaction, siteId: string, said: Said) {
  const { startsAt, productionAt, restoreTestedOn } = said;
  return {
    ...said,
    startsAt: await instantOf(tx, siteId, startsAt),
    productionAt: await instantOf(tx, siteId, productionAt),
    restoreTestedOn: restoreTestedOn === null ? null : new Date(`${restoreTestedOn}T00:00:00Z`),
  };
}

/** Writes times and fall-back of a cutover, if nobody else did meanwhile. */
export function changeProjectCutover(
  actor: Actor,
  { cutoverId, version, ...said }: ChangeCutover,
): Promise<Result<CutoverMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await heldCutover(tx, actor, { cutoverId, version });
    if (!held.ok) return held;
    const { cutover, project } = held.value;
    const twin = { projectId: project.id, name: said.name, id: { not: cutoverId } };
    if ((await tx.cutover.count({ where: twin })) > 0) return err(nameTaken(said.name));
    const data = await columnsOf(tx, project.siteId, said);
    await tx.cutover.update({ where: { id: cutoverId }, data: { ...data, version: { increment: 1 } } });
    record({
      ...{ deed: "cutover:change", entity: "Cutover", entityId: cutoverId, siteId: project.siteId },
      ...{ before: keptOf(cutover), after: said },
    });
    return ok({ cutoverId, version: version + 1 });
  });
}

/** Takes a cutover away with its steps, while none has begun; the audit keeps them. */
export function dropProjectCutover(actor: Actor, asked: DropCutover): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await heldCutover(tx, actor, asked);
    if (!held.ok) return held;
    const { cutover, project } = held.value;
    const steps = await tx.cutoverStep.findMany({ where: { cutoverId: cutover.id } });
    if (steps.some(({ startedAt }) => startedAt !== null)) return err(begun);
    await tx.cutover.delete({ where: { id: cutover.id } });
    record({
      ...{ deed: "cutover:drop", entity: "Cutover", entityId: cutover.id, siteId: project.siteId },
      before: { ...keptOf(cutover), steps: stepsKept(steps) },
    });
    return ok(null);
  });
}

function keptOf(cutover: Cutover) {
  const { name, startsAt, productionAt, restoreHours, marginHours, restoreTestedOn, restoreTestedBy } =
    cutover;
  return {
    ...{ name, restoreTestedBy, startsAt: startsAt.toISOString(), productionAt: productionAt.toISOString() },
    ...{ restoreHours: restoreHours?.toNumber() ?? null, marginHours: marginHours?.toNumber() ?? null },
    restoreTestedOn: restoreTestedOn?.toISOString().slice(0, 10) ?? null,
  };
}
