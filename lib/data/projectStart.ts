import "server-only";
import { z } from "zod";
import type { Refusal } from "@/lib/access/action";
import type { Actor } from "@/lib/access/actor";
import { readAsOf } from "@/lib/data/asOf";
import { change, holdData, type Transaction } from "@/lib/data/change";
import { createTasks, type UsualWork, usualWorkOf } from "@/lib/data/projectTasks";
import { atSites } from "@/lib/data/scope";
import { placesOf } from "@/lib/kernel/currency";
import { compareAmounts } from "@/lib/kernel/money";
import { err, ok, type Result } from "@/lib/kernel/result";
import { defaultMilestones } from "@/lib/projects/defaultMilestones";
import { scopeBudget } from "@/lib/projects/scopeBudget";
import { quarterDays, type SlotDays, slotDates } from "@/lib/projects/slotDates";
import type { StartProject } from "@/lib/schema/plan";

const missing: Refusal = {
  code: "missing",
  reason: "There is no such funded line where you may start a project.",
};

/**
 * Starts the project of a funded line: its cost in the site's money at the budget rate, split by class as the line's
 * scope costs it, in the time the plan placed it, with the usual milestones, tasks and gates.
 */
export async function startProject(
  actor: Actor,
  { planLineId }: StartProject,
): Promise<Result<{ code: string }, Refusal>> {
  const work = await usualWorkOf(actor, planLineId);
  const today = await readAsOf(actor, undefined);
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
    const places = placesOf(currency);
    const budget = funded.cost.mul(rate.perEuro).toFixed(places);
    const dates = slotDates(await slotDaysOf(tx, funded), {
      workingDaysBefore: work.scope?.beforeWindow[1] ?? 0,
      today,
    });
    const created = await tx.project.create({
      data: {
        ...{ code, currency, planLineId, budget, siteId: line.siteId, lineId: line.id },
        ...{ budgetRate: rate.perEuro, budgetRatedOn: rate.validFrom },
        name: `${line.name}: retrofit ${plan.year}`,
        ...(dates ? { startsOn: dateOf(dates.startsOn), endsOn: dateOf(dates.endsOn) } : {}),
        budgetItems: { create: itemsOf(budget, work, places) },
        milestones: { create: defaultMilestones.map((one, i) => ({ ...one, sequence: i + 1 })) },
      },
      select: { id: true },
    });
    await createTasks(tx, { projectId: created.id, tasks: work.tasks });
    const after = { code, currency, budget, perEuro: rate.perEuro.toString() };
    record({
      ...{ deed: "project:start", entity: "Project", entityId: created.id, siteId: line.siteId, after },
      // Nothing is planned to leave the line yet.
      beside: true,
    });
    return ok({ code });
  });
}

/** The budget by class, as the scope of the line costs it; none where that is not known. */
function itemsOf(budget: string, { scope, norms }: UsualWork, places: number) {
  if (!scope || compareAmounts(budget, "0") <= 0) return [];
  return scopeBudget(budget, { money: scope.money, hourlyRate: norms.spans.hourlyRate[1], places });
}

/** The stretches of time the plan placed the line's work in: shutdowns, weekends of none, or quarters. */
async function slotDaysOf(tx: Transaction, { slots }: Pick<Funded, "slots">): Promise<SlotDays[]> {
  const keys = slots.map(({ slot }) => slot);
  const windows = await tx.shutdownWindow.findMany({
    where: { id: { in: keys.filter((key) => z.uuid().safeParse(key).success) } },
    select: { startsOn: true, endsOn: true },
  });
  return [
    ...windows.map(({ startsOn, endsOn }) => ({ startsOn: dayOf(startsOn), endsOn: dayOf(endsOn) })),
    ...keys.flatMap((key) => quarterDays(key.replace(/^weekend \S+ /, "")) ?? []),
  ];
}

const dayOf = (date: Date): string => date.toISOString().slice(0, 10);
const dateOf = (day: string) => new Date(`${day}T00:00:00Z`);

type Funded = NonNullable<Awaited<ReturnType<typeof findFunded>>>;

function findFunded(tx: Transaction, actor: Actor, planLineId: string) {
  return tx.planLine.findFirst({
    where: { id: planLineId, line: atSites(actor, "project:write") },
    include: {
      plan: { select: { status: true, year: true } },
      project: { select: { code: true } },
      slots: { select: { slot: true } },
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
