import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, type Transaction } from "@/lib/data/change";
import { loadRates, type Rates } from "@/lib/data/projectRates";
import { atSites } from "@/lib/data/scope";
import { placesOf } from "@/lib/kernel/currency";
import { atRate, fitsPlaces } from "@/lib/kernel/money";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { AddCost, RemoveCost } from "@/lib/schema/projectMoney";
import type { CostEntry, Prisma } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such project that you may change." };
const noEntry: Refusal = { code: "missing", reason: "There is no such entry in this project." };

/** Books money ordered or paid; a number of the ledger is booked once in each kind. */
export async function addCost(
  actor: Actor,
  { projectId, ...typed }: AddCost,
): Promise<Result<{ id: string }, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await findProject(tx, actor, projectId);
    if (!project) return err(missing);
    const entry = entryOf(actor, typed, { wanted: project.currency, rates: await loadRates(actor, tx) });
    if (!entry.ok) return entry;
    const [added] = await tx.costEntry.createManyAndReturn({
      data: [{ projectId, ...entry.value }],
      skipDuplicates: true,
    });
    if (!added) return err(bookedAlready(typed.reference));
    record({
      ...{ deed: "project:cost", entity: "CostEntry", entityId: added.id, siteId: project.siteId },
      after: { ...saidOf(added, project.currency), currency: project.currency },
    });
    return ok({ id: added.id });
  });
}

export type TypedCost = Omit<AddCost, "projectId">;

/** The entry as it is kept: in the project's money, with the rate where it was in another. */
export function entryOf(
  _actor: Actor,
  { currency, amount, spentOn, ...plain }: TypedCost,
  { wanted, rates }: { readonly wanted: string; readonly rates: Rates },
): Result<Omit<Prisma.CostEntryCreateManyInput, "projectId">, Refusal> {
  const own = currency ?? wanted;
  if (!fitsPlaces(amount, placesOf(own)))
    return err(wrong("amount", `${own} has ${placesOf(own)} places behind the point.`));
  const kept = {
    ...{ ...plain, orderReference: plain.orderReference || null },
    spentOn: new Date(`${spentOn}T00:00:00Z`),
  };
  if (own === wanted) return ok({ ...kept, amount });
  const found = rates(own, wanted, spentOn);
  if (!found)
    return err(
      wrong("currency", `No rate from ${own} to ${wanted} is stated; enter it under the rates first.`),
    );
  const turned = atRate(amount, found.rate, placesOf(wanted));
  return ok({
    ...{ ...kept, amount: turned, ownAmount: amount, ownCurrency: own },
    ...{ rate: found.rate, ratedOn: new Date(`${found.ratedOn}T00:00:00Z`), rateSource: found.source },
  });
}

function wrong(field: string, reason: string): Refusal {
  return { code: "invalid", reason, fields: { [field]: reason } };
}

function bookedAlready(reference: string): Refusal {
  return { ...wrong("reference", `${reference} is booked in this project already.`), code: "conflict" };
}

/** Takes an entry back; the audit keeps what it said. */
export async function removeCost(
  actor: Actor,
  { projectId, costId }: RemoveCost,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await findProject(tx, actor, projectId);
    if (!project) return err(missing);
    const entry = await tx.costEntry.findFirst({ where: { id: costId, projectId } });
    const { count } = await tx.costEntry.deleteMany({ where: { id: costId, projectId } });
    if (!entry || count === 0) return err(noEntry);
    record({
      ...{ deed: "project:cost", entity: "CostEntry", entityId: costId, siteId: project.siteId },
      before: saidOf(entry, project.currency),
    });
    return ok(null);
  });
}

/** What the audit keeps of an entry: days and amounts as text. */
function saidOf({ ownAmount, rate, ratedOn, ...entry }: CostEntry, currency: string): Prisma.InputJsonObject {
  return {
    ...entry,
    amount: entry.amount.toFixed(placesOf(currency)),
    spentOn: entry.spentOn.toISOString().slice(0, 10),
    ...(ownAmount && rate && ratedOn
      ? { ownAmount: ownAmount.toFixed(), rate: rate.toFixed(), ratedOn: ratedOn.toISOString().slice(0, 10) }
      : {}),
  };
}

function findProject(tx: Transaction, actor: Actor, id: string) {
  return tx.project.findFirst({
    where: { id, ...atSites(actor, "project:write") },
    select: { siteId: true, currency: true },
  });
}
