import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change } from "@/lib/data/change";
import { holdProject, noProject } from "@/lib/data/scheduleChange";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddGateItem, DecideGate, SetGateItem } from "@/lib/schema/schedule";

const noGate: Refusal = { code: "missing", reason: "There is no such gate in this project." };
const isPassed: Refusal = {
  code: "impossible",
  reason: "The gate is passed. Open it again before anything in it is changed.",
};

/** Says that an item of a gate holds, by name and day, or that it does not any more. */
export async function setGateItem(
  actor: Actor,
  { projectId, itemId, seen, done }: SetGateItem,
): Promise<Result<null, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const project = await holdProject(tx, actor, projectId);
    if (!project) return err(noProject);
    const item = await tx.gateItem.findFirst({
      where: { id: itemId, gate: { projectId } },
      include: { gate: { select: { decision: true } } },
    });
    if (!item) return err(noGate);
    if (item.gate.decision === "passed") return err(isPassed);
    if ((item.doneOn !== null) !== seen)
      return err({
        code: "conflict",
        reason: `${item.doneBy ?? "Somebody else"} changed this item meanwhile. Nothing was changed.`,
      });
    const sign = done
      ? { doneOn: new Date(`${today}T00:00:00Z`), doneBy: actor.name }
      : { doneOn: null, doneBy: null };
    await tx.gateItem.update({ where: { id: itemId }, data: sign });
    record({
      ...{ deed: "gate:item", entity: "ProjectGate", entityId: item.gateId, siteId: project.siteId },
      ...{
        before: { text: item.text, doneBy: item.doneBy },
        after: { text: item.text, doneBy: sign.doneBy },
      },
    });
    return ok(null);
  });
}

/** Passes a gate when all its items hold, holds it with a reason, or opens it again. */
export async function decideGate(
  actor: Actor,
  { projectId, gateId, version, decision, reason }: DecideGate,
): Promise<Result<null, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const project = await holdProject(tx, actor, projectId);
    if (!project) return err(noProject);
    const gate = await tx.projectGate.findFirst({
      where: { id: gateId, projectId },
      include: { items: { where: { doneOn: null }, orderBy: { sequence: "asc" } } },
    });
    if (!gate) return err(noGate);
    if (gate.version !== version)
      return err({
        code: "conflict",
        reason: `${gate.decidedBy ?? "Somebody else"} decided this gate meanwhile: it is ${gate.decision}. Nothing was changed.`,
      });
    if (decision === "passed" && gate.items.length > 0) return err(stillOpen(gate.items));
    const sign =
      decision === "open"
        ? { decidedOn: null, decidedBy: null }
        : { decidedOn: new Date(`${today}T00:00:00Z`), decidedBy: actor.name };
    await tx.projectGate.update({
      where: { id: gateId },
      data: { decision, reason, ...sign, version: { increment: 1 } },
    });
    record({
      ...{ deed: `gate:${decision}`, entity: "ProjectGate", entityId: gateId, siteId: project.siteId },
      before: { decision: gate.decision, reason: gate.reason, decidedBy: gate.decidedBy },
      after: { decision, reason, decidedBy: sign.decidedBy },
    });
    return ok(null);
  });
}

function stillOpen(items: readonly { readonly text: string }[]): Refusal {
  const many = items.length === 1 ? "1 item is" : `${items.length} items are`;
  return {
    code: "impossible",
    reason: `The gate cannot be passed: ${many} open. First: ${items[0]?.text}.`,
  };
}

/** Adds an item to a gate that is not passed. */
export async function addGateItem(
  actor: Actor,
  { projectId, gateId, text, who }: AddGateItem,
): Promise<Result<{ id: string }, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await holdProject(tx, actor, projectId);
    if (!project) return err(noProject);
    const gate = await tx.projectGate.findFirst({
      where: { id: gateId, projectId },
      include: { _count: { select: { items: true } } },
    });
    if (!gate) return err(noGate);
    if (gate.decision === "passed") return err(isPassed);
    const { id } = await tx.gateItem.create({
      data: { gateId, text, who, sequence: gate._count.items + 1 },
      select: { id: true },
    });
    record({
      ...{ deed: "gate:add", entity: "ProjectGate", entityId: gateId, siteId: project.siteId },
      after: { text, who },
    });
    return ok({ id });
  });
}
