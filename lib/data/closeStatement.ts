import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change } from "@/lib/data/change";
import { holdOpenProject } from "@/lib/data/closing/holdProject";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { StateForClosing, WithdrawStatement } from "@/lib/schema/closing";

const saidAlready: Refusal = {
  code: "conflict",
  reason: "Somebody answers for this already. Load the page again to see who.",
};
const noWord: Refusal = { code: "missing", reason: "Nobody answers for this." };
const why: Refusal = {
  code: "invalid",
  reason: "Say why the orders may stay open. Nothing was kept.",
  fields: { note: "Write the reason." },
};

/** Keeps who answers for something before a project is closed, with the day. */
export async function stateForProject(
  actor: Actor,
  { projectId, kind, statedBy, note }: StateForClosing,
): Promise<Result<null, Refusal>> {
  if (kind === "commitments" && note === "") return err(why);
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const held = await holdOpenProject(tx, actor, projectId);
    if (!held.ok) return held;
    const statedOn = new Date(`${today}T00:00:00Z`);
    const [stated] = await tx.closeStatement.createManyAndReturn({
      data: [{ projectId, kind, statedBy, note, statedOn }],
      skipDuplicates: true,
      select: { id: true },
    });
    if (!stated) return err(saidAlready);
    record({
      ...{ deed: "close:state", entity: "CloseStatement", entityId: stated.id, siteId: held.value.siteId },
      after: { projectId, kind, statedBy, note, statedOn: today },
    });
    return ok(null);
  });
}

/** Takes such a word back; the audit keeps it. */
export async function withdrawFromProject(
  actor: Actor,
  { projectId, kind }: WithdrawStatement,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const held = await holdOpenProject(tx, actor, projectId);
    if (!held.ok) return held;
    const at = { projectId_kind: { projectId, kind } };
    const stated = await tx.closeStatement.findUnique({ where: at });
    if (!stated) return err(noWord);
    await tx.closeStatement.delete({ where: at });
    const { id, statedBy, statedOn, note } = stated;
    record({
      ...{ deed: "close:withdraw", entity: "CloseStatement", entityId: id, siteId: held.value.siteId },
      before: { projectId, kind, statedBy, note, statedOn: statedOn.toISOString().slice(0, 10) },
    });
    return ok(null);
  });
}
