import "server-only";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { change, holdData, type Transaction } from "@/lib/data/change";
import { atSites } from "@/lib/data/scope";
import { err, ok, type Result } from "@/lib/kernel/result";
import { defaultMilestones } from "@/lib/projects/defaultMilestones";
import type { StartProject } from "@/lib/schema/plan";

const missing: Refusal = {
  code: "missing",
  reason: "There is no such funded line where you may start a project.",
};

/** Starts the project of a funded line: its cost in the site's money at the budget rate, with the usual milestones. */
export async function startProject(
  actor: Actor,
  { planLineId }: StartProject,
): Promise<Result<{ code: string }, Refusal>> {
  return change(actor, async (tx, record) => {
    // Held so that two starts on one line get two codes.
    await holdData(tx);
    const funded = await findFunded(tx, actor, planLineId);
    if (!funded) return err(missing);
    const { line, plan, project } = funded;
    if (project)
      return err({ code: "conflict", reason: `Project ${project.code} was started from this line already.` });
    if (!funded.funded || plan.status !== "funded")
      return err({ code: "impossible", reason: "Only a funded line of a funded plan can become a project." });
    const { currency } = line.site;
    const rate = await tx.currencyRate.findUnique({ where: { currency } });
    if (!rate)
      return err({
        code: "impossible",
        reason: `No budget rate is recorded for ${currency}, so there is no budget.`,
      });
    const code = await nextCode(tx, line.code);
    const created = await tx.project.create({
      data: {
        ...{ code, currency, planLineId, siteId: line.siteId, lineId: line.id },
        name: `${line.name}: retrofit ${plan.year}`,
        budget: funded.cost.mul(rate.perEuro).toFixed(2),
        milestones: { create: defaultMilestones.map((one, i) => ({ ...one, sequence: i + 1 })) },
      },
      select: { id: true, budget: true },
    });
    const after = { code, currency, budget: created.budget.toFixed(2), perEuro: rate.perEuro.toString() };
    record({ deed: "project:start", entity: "Project", entityId: created.id, siteId: line.siteId, after });
    return ok({ code });
  });
}

function findFunded(tx: Transaction, actor: Actor, planLineId: string) {
  return tx.planLine.findFirst({
    where: { id: planLineId, line: atSites(actor, "project:write") },
    include: {
      plan: { select: { status: true, year: true } },
      project: { select: { code: true } },
      line: { include: { site: { select: { currency: true } } } },
    },
  });
}

/** The line's code with the next free number. */
async function nextCode(tx: Transaction, lineCode: string): Promise<string> {
  const taken = await tx.project.findMany({
    where: { code: { startsWith: `${lineCode}-R` } },
    select: { code: true },
  });
  const numbers = taken.map(({ code }) => Number(code.slice(lineCode.length + 2)));
  return `${lineCode}-R${1 + Math.max(0, ...numbers.filter(Number.isSafeInteger))}`;
}
