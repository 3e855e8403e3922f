import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import type { Deed } from "@/lib/access/policy";
import { change, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { DecidePlan, DeletePlan, MovePlan } from "@/lib/schema/plan";
import { reasonGiven } from "@/lib/schema/why";
import type { PlanStatus } from "@/lib/view/plan";

const missing: Refusal = { code: "missing", reason: "There is no such plan that you may change." };
const conflict: Refusal = {
  code: "conflict",
  reason: "Somebody else changed this plan since you opened it. Nothing was changed; load the page again.",
};
const keptWhole: Refusal = {
  code: "impossible",
  reason: "A plan over years is put forward on its board and not taken back; the next issue starts from it.",
};
const impossible = (reason: string): Refusal => ({ code: "impossible", reason });

/** From which states a step may start. */
const STEPS = {
  move: { put_forward: ["draft"], draft: ["put_forward"] },
  decide: { funded: ["put_forward"], declined: ["put_forward"], put_forward: ["funded", "declined"] },
} as const;

/** Puts a draft forward, or takes it back. */
export function movePlan(
  actor: Actor,
  { planId, version, to, why }: MovePlan,
): Promise<Result<null, Refusal>> {
  return step(actor, { deed: "plan:write", planId, version, to, why, from: STEPS.move[to] });
}

/** Funds or declines a plan put forward, or takes that decision back while no project was started. */
export function decidePlan(
  actor: Actor,
  { planId, version, to, why }: DecidePlan,
): Promise<Result<null, Refusal>> {
  return step(actor, { deed: "plan:approve", planId, version, to, why, from: STEPS.decide[to] });
}

interface Step {
  readonly deed: Deed;
  readonly planId: string;
  readonly version: number;
  readonly to: PlanStatus;
  readonly why: string | undefined;
  readonly from: readonly PlanStatus[];
}

async function step(actor: Actor, wanted: Step): Promise<Result<null, Refusal>> {
  const { deed, planId, version, to, why } = wanted;
  return change(actor, async (tx, record) => {
    const plan = await findPlan(tx, actor, wanted);
    if (!plan) return err(missing);
    if (plan.version !== version) return err(conflict);
    const refusal = refusalOf(plan, wanted);
    if (refusal) return err(refusal);
    const { count } = await tx.plan.updateMany({
      where: { id: planId, version },
      data: { status: to, version: { increment: 1 } },
    });
    if (count === 0) return err(conflict);
    const change = { before: { status: plan.status }, after: { status: to } };
    record({ deed, entity: "Plan", entityId: planId, ...change, why: reasonGiven(why) });
    return ok(null);
  });
}

type FoundPlan = NonNullable<Awaited<ReturnType<typeof findPlan>>>;

function refusalOf({ kind, status, lines }: FoundPlan, { deed, from, to }: Step): Refusal | null {
  if (kind === "board" && deed === "plan:write") return keptWhole;
  if (!from.includes(status))
    return impossible(`A plan that is ${spoken(status)} cannot become ${spoken(to)}.`);
  return lines.some((line) => line.project !== null)
    ? impossible("Projects were started from this plan, so its decision stands.")
    : null;
}

const spoken = (status: PlanStatus) => status.replace("_", " ");

/** Only somebody with the deed at the site of every one of its lines changes a plan. */
function findPlan(tx: Transaction, actor: Actor, { planId, deed }: { planId: string; deed: Deed }) {
  const line = atSites(actor, deed);
  return tx.plan.findFirst({
    where: { id: planId, lines: { some: { line }, every: { line } } },
    include: { lines: { include: { project: { select: { id: true } } } } },
  });
}

/** Throws a draft away, with its lines. */
export async function deletePlan(
  actor: Actor,
  { planId, version }: DeletePlan,
): Promise<Result<null, Refusal>> {
  return change(actor, async (tx, record) => {
    const plan = await findPlan(tx, actor, { planId, deed: "plan:write" });
    if (!plan) return err(missing);
    if (plan.status !== "draft") return err(impossible("Only a draft can be thrown away."));
    const { count } = await tx.plan.deleteMany({ where: { id: planId, version, status: "draft" } });
    if (count === 0) return err(conflict);
    const before = { name: plan.name, year: plan.year, budget: plan.budget.toFixed(2) };
    record({ deed: "plan:delete", entity: "Plan", entityId: planId, before });
    return ok(null);
  });
}
