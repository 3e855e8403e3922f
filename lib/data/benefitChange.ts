import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { holdProject } from "@/lib/data/closing/holdProject";
import { loadBenefit } from "@/lib/data/closing/loadBenefit";
import { err, ok, type Result } from "@/lib/kernel/result";
import { benefitState } from "@/lib/projects/benefit";
import type { CheckBenefit, ReopenBenefit } from "@/lib/schema/closing";
import { benefitFigures } from "@/lib/view/benefit";
import { Prisma, type Project, type ProjectClosing } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such closed project that you may change." };
const tooEarly: Refusal = {
  code: "impossible",
  reason: "A whole year after closing has not passed yet, so it is too early to judge.",
};
const already: Refusal = {
  code: "conflict",
  reason: "The benefit was checked already. Load the page again.",
};
const nothing: Refusal = {
  code: "impossible",
  reason: "No unit is recorded as removed and the project has no start, so there is no time before it.",
};

/** Keeps what came of a project, with the figures as they stand today. */
export async function checkThisBenefit(
  actor: Actor,
  { projectId, conclusion }: CheckBenefit,
): Promise<Result<null, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdClosing(tx, actor, projectId);
    if (!held.ok) return held;
    const { project, closing } = held.value;
    const closedOn = closing.closedOn.toISOString().slice(0, 10);
    const checkOn = closing.checkOn.toISOString().slice(0, 10);
    const state = benefitState({ checkOn, checkedOn: null }, today);
    if (closing.checkedOn !== null) return err(already);
    if (state === "too-early") return err(tooEarly);
    const facts = await loadBenefit(tx, project, { closedOn, asOf: today });
    if (!facts) return err(nothing);
    const checked = { ...benefitFigures(facts) } as unknown as Prisma.InputJsonObject;
    await tx.projectClosing.update({
      where: { projectId },
      data: {
        ...{ checked, conclusion, checkedBy: actor.name },
        checkedOn: new Date(`${today}T00:00:00Z`),
      },
    });
    record({ ...deedOf("benefit:check", closing, project), after: { conclusion, checkedOn: today } });
    return ok(null);
  });
}

/** Takes a check back; the audit keeps what was said. */
export function reopenThisBenefit(
  actor: Actor,
  { projectId }: ReopenBenefit,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdClosing(tx, actor, projectId);
    if (!held.ok) return held;
    const { project, closing } = held.value;
    const { conclusion, checkedBy, checkedOn } = closing;
    if (checkedOn === null) return err(missing);
    await tx.projectClosing.update({
      where: { projectId },
      data: { checkedOn: null, checkedBy: null, conclusion: null, checked: Prisma.DbNull },
    });
    record({ ...deedOf("benefit:reopen", closing, project), before: { conclusion, checkedBy } });
    return ok(null);
  });
}

async function holdClosing(
  tx: Transaction,
  actor: Actor,
  projectId: string,
): Promise<Result<{ project: Project; closing: ProjectClosing }, Refusal>> {
  const project = await holdProject(tx, actor, projectId);
  const closing = project && (await tx.projectClosing.findUnique({ where: { projectId } }));
  return project && closing ? ok({ project, closing }) : err(missing);
}

/** What was concluded touches no figure. */
function deedOf(deed: string, { id }: ProjectClosing, { siteId }: Project) {
  return { deed, entity: "ProjectClosing", entityId: id, siteId, beside: true } as const;
}
