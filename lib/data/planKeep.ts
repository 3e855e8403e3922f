import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, holdData } from "@/lib/data/change";
import { readCandidates } from "@/lib/data/planCandidates";
import { err, ok, type Result } from "@/lib/kernel/result";
import type { KeepPlan } from "@/lib/schema/plan";
import { type Candidates, type CutRow, type PlanCut, planCut } from "@/lib/view/planCut";

const moved: Refusal = {
  code: "conflict",
  reason:
    "The data changed since you saw this cut. Nothing was kept; load the page again and look at it first.",
};

/**
 * Keeps a cut as a draft plan: the lines with a cost, as ranked and funded on the data the person saw.
 *
 * The cut is made again here from the stored data; only what was chosen comes from the page.
 */
export async function keepPlan(actor: Actor, wish: KeepPlan): Promise<Result<{ id: string }, Refusal>> {
  const candidates = await readCandidates(actor, wish.asOf);
  const cut = planCut(candidates.lines, {
    budget: Number(wish.budget),
    costs: Object.fromEntries(Object.entries(wish.costs).map(([code, cost]) => [code, Number(cost)])),
    ...{ by: wish.by, fill: wish.fill, pinnedIn: wish.pinnedIn, pinnedOut: wish.pinnedOut },
  });
  const doubt = doubtOf(candidates, wish, cut);
  if (doubt) return err(doubt);
  return change(actor, async (tx, record) => {
    await holdData(tx);
    const { version } = await tx.dataVersion.findUniqueOrThrow({ where: { id: 1 } });
    if (Number(version) !== candidates.dataVersion) return err(moved);
    const { name, year, budget, by } = wish;
    const head = { name, year, budget, rankedBy: by, engine: candidates.engine };
    const plan = await tx.plan.create({
      data: {
        ...head,
        asOf: new Date(`${candidates.asOf}T00:00:00Z`),
        dataVersion: candidates.dataVersion,
        createdBy: actor.userId,
        lines: { create: cut.rows.flatMap(lineOf) },
      },
      select: { id: true },
    });
    record({ deed: "plan:keep", entity: "Plan", entityId: plan.id, after: { ...head, asOf: wish.asOf } });
    return ok({ id: plan.id });
  });
}

function doubtOf(candidates: Candidates, wish: KeepPlan, cut: PlanCut): Refusal | null {
  if (candidates.dataVersion !== wish.dataVersion) return moved;
  const known = new Set(candidates.lines.map((line) => line.code));
  if ([...wish.pinnedIn, ...wish.pinnedOut, ...Object.keys(wish.costs)].some((code) => !known.has(code)))
    return { code: "missing", reason: "There is no such line where you may plan." };
  if (cut.outcome?.ok !== true)
    return { code: "impossible", reason: "The lines pinned in cannot be kept within this budget." };
  if (cut.rows.flatMap(lineOf).length === 0)
    return {
      code: "impossible",
      reason: "No line has a cost and a known stop loss, so there is nothing to plan.",
    };
  const blind = cut.rows.filter(({ funded, line }) => funded && line.stopLoss === null);
  if (blind.length > 0)
    return {
      code: "impossible",
      reason: `The stop loss of ${blind.map(({ line }) => line.code).join(", ")} is not known. Record its cost per hour first.`,
    };
  return null;
}

function lineOf({ line, cost, place, funded, pin }: CutRow, index: number) {
  // A line without a cost or a known loss has no figures a plan could be held to.
  if (cost === null || line.stopLoss === null) return [];
  const figures = {
    cost: cost.toFixed(2),
    stopLoss: line.stopLoss.mean.toFixed(2),
    score: line.score.toFixed(3),
  };
  return [{ lineId: line.id, rank: place ?? index + 1, funded, pin, ...figures }];
}
