import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { holdOpenProject } from "@/lib/data/closing/holdProject";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddRisk, ChangeRisk, DropRisk } from "@/lib/schema/projectPoints";
import type { Project, ProjectRisk } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such risk in a project you may change." };
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else changed this risk since you opened it. What you typed is still here; load the page in another window to see theirs.",
};

export interface RiskMark {
  readonly riskId: string;
  readonly version: number;
}

/** Records what may go wrong in a project. */
export function addProjectRisk(
  actor: Actor,
  { projectId, ...said }: AddRisk,
): Promise<Result<RiskMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdOpenProject(tx, actor, projectId);
    if (!held.ok) return held;
    const { id, version } = await tx.projectRisk.create({ data: { projectId, ...said } });
    record({ ...deedOf("project-risk:add", id, held.value), after: { projectId, ...said } });
    return ok({ riskId: id, version });
  });
}

/** Writes what is said of a risk, if nobody else did meanwhile. */
export function changeProjectRisk(
  actor: Actor,
  { riskId, version, ...said }: ChangeRisk,
): Promise<Result<RiskMark, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdRisk(tx, actor, { riskId, version });
    if (!held.ok) return held;
    const { project, risk } = held.value;
    await tx.projectRisk.update({ where: { id: riskId }, data: { ...said, version: { increment: 1 } } });
    record({ ...deedOf("project-risk:change", riskId, project), before: saidOf(risk), after: said });
    return ok({ riskId, version: version + 1 });
  });
}

/** Takes a risk away; the audit keeps what it said. */
export function dropProjectRisk(actor: Actor, asked: DropRisk): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdRisk(tx, actor, asked);
    if (!held.ok) return held;
    const { project, risk } = held.value;
    await tx.projectRisk.delete({ where: { id: asked.riskId } });
    record({ ...deedOf("project-risk:drop", asked.riskId, project), before: saidOf(risk) });
    return ok(null);
  });
}

async function holdRisk(
  tx: Transaction,
  actor: Actor,
  { riskId, version }: DropRisk,
): Promise<Result<{ project: Project; risk: ProjectRisk }, Refusal>> {
  const known = await tx.projectRisk.findUnique({ where: { id: riskId }, select: { projectId: true } });
  const held = known ? await holdOpenProject(tx, actor, known.projectId) : err(missing);
  if (!held.ok) return held.error.code === "missing" ? err(missing) : held;
  const risk = await tx.projectRisk.findUnique({ where: { id: riskId } });
  if (!risk) return err(missing);
  return risk.version === version ? ok({ project: held.value, risk }) : err(conflict);
}

function deedOf(deed: string, entityId: string, { siteId }: Project) {
  return { deed, entity: "ProjectRisk", entityId, siteId };
}

function saidOf({ what, action, owner, state, chanceLow, chanceHigh, effectLow, effectHigh }: ProjectRisk) {
  return {
    ...{ what, action, owner, state, chanceLow, chanceHigh },
    ...{ effectLow: effectLow?.toFixed(2) ?? null, effectHigh: effectHigh?.toFixed(2) ?? null },
  };
}
