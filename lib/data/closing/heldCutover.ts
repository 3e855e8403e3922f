import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import type { Transaction } from "@/lib/data/change";
import { holdOpenProject } from "@/lib/data/closing/holdProject";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { DropCutover } from "@/lib/schema/cutover";
import type { Cutover, CutoverStep, Project } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such cutover in a project you may change." };
const conflict: Refusal = {
  code: "conflict",
  reason:
    "Somebody else changed this since you opened it. What you typed is still here; load the page in another window to see theirs.",
};

export interface HeldCutover {
  readonly project: Project;
  readonly cutover: Cutover;
}

/** A cutover the actor may change, held with its project; a version asks that it stands as it was seen. */
export async function heldCutover(
  tx: Transaction,
  actor: Actor,
  { cutoverId, version }: Omit<DropCutover, "version"> & { readonly version?: number },
): Promise<Result<HeldCutover, Refusal>> {
  const known = await tx.cutover.findUnique({ where: { id: cutoverId }, select: { projectId: true } });
  const held = known ? await holdOpenProject(tx, actor, known.projectId) : err(missing);
  if (!held.ok) return held.error.code === "missing" ? err(missing) : held;
  const cutover = await tx.cutover.findUnique({ where: { id: cutoverId } });
  if (!cutover) return err(missing);
  if (version !== undefined && cutover.version !== version) return err(conflict);
  return ok({ project: held.value, cutover });
}

/** A step of such a cutover, as it was seen. */
export async function heldStep(
  tx: Transaction,
  actor: Actor,
  { stepId, version }: { readonly stepId: string; readonly version: number },
): Promise<Result<HeldCutover & { readonly step: CutoverStep }, Refusal>> {
  const known = await tx.cutoverStep.findUnique({ where: { id: stepId }, select: { cutoverId: true } });
  const held = known ? await heldCutover(tx, actor, known) : err(missing);
  if (!held.ok) return held;
  const step = await tx.cutoverStep.findUnique({ where: { id: stepId } });
  if (!step) return err(missing);
  return step.version === version ? ok({ ...held.value, step }) : err(conflict);
}

/** Steps as the audit keeps them. */
export function stepsKept(steps: readonly CutoverStep[]) {
  return steps.map(({ title, afterHours, hours, who, phone, needs, caution, startedAt, endedAt }) => ({
    ...{ title, who, phone, needs, caution, afterHours: afterHours.toNumber(), hours: hours.toNumber() },
    startedAt: startedAt?.toISOString() ?? null,
    endedAt: endedAt?.toISOString() ?? null,
  }));
}
