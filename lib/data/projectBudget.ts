import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { placesOf } from "@/lib/kernel/currency";
import { compareAmounts, fitsPlaces, sumAmounts } from "@/lib/kernel/money";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { SplitBudget, StateRest } from "@/lib/schema/projectMoney";
import { exactMoney } from "@/lib/view/format";
import type { Prisma } from "@/prisma/generated/client";

const missing: Refusal = { code: "missing", reason: "There is no such project that you may change." };

/** Splits the original budget by class, once; the parts are the whole to the last unit and never change again. */
export async function splitBudget(
  actor: Actor,
  { projectId, items }: SplitBudget,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const project = await findProject(tx, actor, projectId);
    if (!project) return err(missing);
    const { siteId, currency } = project;
    const places = placesOf(currency);
    const budget = project.budget.toFixed(places);
    const typed = items.map(({ amount }) => amount);
    if (!typed.every((amount) => fitsPlaces(amount, places)))
      return err(invalid(`${currency} has ${places} places behind the point.`));
    const sum = sumAmounts(typed, places);
    if (compareAmounts(sum, budget) !== 0)
      return err(
        invalid(
          `The classes add up to ${exactMoney(sum, currency)}, the budget is ${exactMoney(budget, currency)}.`,
        ),
      );
    if ((await tx.budgetItem.count({ where: { projectId } })) > 0)
      return err({ code: "conflict", reason: "The budget is split already and stays as it stands." });
    const kept = items.filter(({ amount }) => compareAmounts(amount, "0") > 0);
    await tx.budgetItem.createMany({ data: kept.map((item) => ({ projectId, ...item })) });
    record({
      ...{ deed: "project:split", entity: "BudgetItem", entityId: projectId, siteId },
      after: Object.fromEntries(kept.map(({ costClass, amount }) => [costClass, amount])),
    });
    return ok(null);
  });
}

/** States what a class still needs, or takes it back, if it still is what the person saw; swap both to undo. */
export async function stateRest(
  actor: Actor,
  { projectId, costClass, seen, wanted }: StateRest,
): Promise<Result<null, Refusal>> {
  const today = await readAsOf(actor, undefined);
  return change(actor, async (tx, record) => {
    const project = await findProject(tx, actor, projectId);
    if (!project) return err(missing);
    const { siteId, currency } = project;
    const places = placesOf(currency);
    if (wanted !== null && !fitsPlaces(wanted, places))
      return err(invalid(`${currency} has ${places} places behind the point.`, "wanted"));
    const key = { projectId, costClass };
    const stated = { statedOn: new Date(`${today}T00:00:00Z`), statedBy: actor.name };
    const data = wanted === null ? null : { toOrder: wanted, ...stated };
    if ((await writeSeen(tx, key, { seen, data })) === 0)
      return err({
        code: "conflict",
        reason:
          "Somebody else stated this since you opened the page. Nothing was changed; load the page again.",
      });
    record({
      ...{ deed: "project:rest", entity: "ClassForecast", entityId: projectId, siteId },
      ...{ before: { [costClass]: seen }, after: { [costClass]: wanted } },
    });
    return ok(null);
  });
}

interface SeenRest {
  readonly seen: string | null;
  readonly data: Omit<Prisma.ClassForecastCreateManyInput, "projectId" | "costClass"> | null;
}

/** Adds, changes or takes away what still is as seen; answers how many rows it was. */
async function writeSeen(
  tx: Transaction,
  key: Pick<StateRest, "projectId" | "costClass">,
  { seen, data }: SeenRest,
): Promise<number> {
  const where = { ...key, toOrder: seen ?? "0" };
  if (data === null) return (await tx.classForecast.deleteMany({ where })).count;
  if (seen !== null) return (await tx.classForecast.updateMany({ where, data })).count;
  return (await tx.classForecast.createMany({ data: [{ ...key, ...data }], skipDuplicates: true })).count;
}

function invalid(reason: string, field = "items"): Refusal {
  return { code: "invalid", reason, fields: { [field]: reason } };
}

function findProject(tx: Transaction, actor: Actor, id: string) {
  return tx.project.findFirst({
    where: { id, ...atSites(actor, "project:write") },
    select: { siteId: true, currency: true, budget: true },
  });
}
