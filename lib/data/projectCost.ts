import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddCost, RemoveCost } from "@/lib/schema/project";

const missing: Refusal = { code: "missing", reason: "There is no such project that you may change." };
const noEntry: Refusal = { code: "missing", reason: "There is no such entry in this project." };

/** Books money ordered or paid; a number of the ledger is booked once in each kind. */
export async function addCost(
  actor: Actor,
  { projectId, kind, amount, spentOn, text, reference }: AddCost,
): Promise<Result<{ id: string }, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await findProject(tx, actor, projectId);
    if (!project) return err(missing);
    const added = await tx.costEntry.createManyAndReturn({
      data: [{ projectId, kind, amount, text, reference, spentOn: new Date(`${spentOn}T00:00:00Z`) }],
      skipDuplicates: true,
      select: { id: true },
    });
    const [entry] = added;
    if (!entry) return err(bookedAlready(reference));
    record({
      ...{ deed: "project:cost", entity: "CostEntry", entityId: entry.id, siteId: project.siteId },
      after: { projectId, kind, amount, spentOn, text, reference, currency: project.currency },
    });
    return ok({ id: entry.id });
  });
}

function bookedAlready(reference: string): Refusal {
  const reason = `${reference} is booked in this project already.`;
  return { code: "conflict", reason, fields: { reference: reason } };
}

/** Takes an entry back; the audit keeps what it said. */
export async function removeCost(
  actor: Actor,
  { projectId, costId }: RemoveCost,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await findProject(tx, actor, projectId);
    if (!project) return err(missing);
    const [entry] = await tx.$queryRaw<
      { kind: string; amount: string; text: string; reference: string; spentOn: string }[]
    >`
      DELETE FROM "CostEntry" WHERE "id" = ${costId}::uuid AND "projectId" = ${projectId}::uuid
      RETURNING "kind"::text AS "kind", "amount"::text AS "amount", "text", "reference", "spentOn"::text AS "spentOn"`;
    if (!entry) return err(noEntry);
    record({
      ...{ deed: "project:cost", entity: "CostEntry", entityId: costId, siteId: project.siteId },
      before: { projectId, ...entry },
    });
    return ok(null);
  });
}

function findProject(tx: Transaction, actor: Actor, id: string) {
  return tx.project.findFirst({
    where: { id, ...atSites(actor, "project:write") },
    select: { siteId: true, currency: true },
  });
}
