import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Deed } from "@/lib/access/policy";
import { type AxisCounts, countAxes } from "@/lib/data/axisCounts";
import type { Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { projects as seenProjects } from "@/lib/data/scope";
import { placesOf } from "@/lib/kernel/currency";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ProjectChange, ProjectCost, ProjectFile } from "@/lib/view/project";
import type { Prisma } from "@/prisma/generated/client";

const projectParts = {
  site: { select: { code: true, name: true } },
  line: { select: { code: true, name: true } },
  planLine: { select: { planId: true } },
  milestones: { orderBy: { sequence: "asc" } },
  costs: { orderBy: [{ spentOn: "desc" }, { reference: "asc" }] },
  budgetItems: true,
  changeOrders: { orderBy: { number: "asc" }, include: { amounts: true } },
  classForecasts: true,
} satisfies Prisma.ProjectInclude;

type StoredProject = Prisma.ProjectGetPayload<{ include: typeof projectParts }>;

/** The projects at the sites the person may see, by code. */
export async function readProjects(actor: Actor): Promise<ProjectFile[]> {
  const projects = await database().project.findMany({
    where: seenProjects(actor, "read"),
    include: projectParts,
    orderBy: { code: "asc" },
  });
  const axes = await countAxes(
    database(),
    projects.map(({ id }) => id),
  );
  return projects.map((project) => fileOf(project, axes));
}

/** One project; null when there is none or it is at a site the person may not see. */
export async function readProject(actor: Actor, code: string): Promise<ProjectFile | null> {
  return findProjectFile(actor, database(), { code, deed: "read" });
}

/** Which project, and what the person wants to do with it. */
type WhichProject = ({ readonly id: string } | { readonly code: string }) & { readonly deed: Deed };

/** The project where the person may do the deed, also within a change; null when there is none. */
export async function findProjectFile(
  actor: Actor,
  tx: Transaction,
  { deed, ...key }: WhichProject,
): Promise<ProjectFile | null> {
  const project = await tx.project.findFirst({
    where: { ...key, ...seenProjects(actor, deed) },
    include: projectParts,
  });
  return project ? fileOf(project, await countAxes(tx, [project.id])) : null;
}

function fileOf(project: StoredProject, axes: AxisCounts): ProjectFile {
  const { id, code, name, status, siteId, currency, cause, version, budgetRate, budgetRatedOn } = project;
  const places = placesOf(currency);
  return {
    ...{ id, code, name, status, siteId, currency, cause, version },
    siteCode: project.site.code,
    siteName: project.site.name,
    lineCode: project.line.code,
    lineName: project.line.name,
    planId: project.planLine?.planId ?? null,
    budget: project.budget.toFixed(places),
    budgetRate:
      budgetRate && budgetRatedOn ? { perEuro: budgetRate.toFixed(), on: dayText(budgetRatedOn) } : null,
    items: project.budgetItems.map(({ costClass, amount }) => ({
      costClass,
      amount: amount.toFixed(places),
    })),
    changes: project.changeOrders.map((one) => changeOf(one, places)),
    toOrder: project.classForecasts.map(({ costClass, toOrder, statedOn, statedBy }) => ({
      ...{ costClass, amount: toOrder.toFixed(places), statedOn: dayText(statedOn), statedBy },
    })),
    forecast: project.forecast?.toFixed(places) ?? null,
    startsOn: dayOf(project.startsOn),
    endsOn: dayOf(project.endsOn),
    milestones: project.milestones.map((one) => ({
      ...{ id: one.id, sequence: one.sequence, name: one.name, weight: one.weight.toNumber() },
      ...{ dueOn: dayOf(one.dueOn), doneOn: dayOf(one.doneOn) },
      ...{ axisStep: one.axisStep, axes: axes.of(one) },
    })),
    costs: project.costs.map((one) => costOf(one, places)),
  };
}

function costOf(one: StoredProject["costs"][number], places: number): ProjectCost {
  const { id, kind, text, reference, costClass, orderReference } = one;
  const { ownAmount, ownCurrency, rate, ratedOn, rateSource } = one;
  return {
    ...{ id, kind, text, reference, costClass, orderReference },
    amount: one.amount.toFixed(places),
    spentOn: dayText(one.spentOn),
    own:
      ownAmount && ownCurrency && rate && ratedOn && rateSource
        ? {
            amount: ownAmount.toFixed(placesOf(ownCurrency)),
            currency: ownCurrency,
            ...{ rate: rate.toFixed(), ratedOn: dayText(ratedOn), source: rateSource },
          }
        : null,
  };
}

function changeOf(one: StoredProject["changeOrders"][number], places: number): ProjectChange {
  const { projectId: _, askedOn, decidedOn, amounts, ...plain } = one;
  return {
    ...plain,
    askedOn: dayText(askedOn),
    decidedOn: dayOf(decidedOn),
    amounts: amounts.map(({ costClass, amount }) => ({ costClass, amount: amount.toFixed(places) })),
  };
}

const dayText = (date: Date): IsoDate => date.toISOString().slice(0, 10);

function dayOf(date: Date | null): IsoDate | null {
  return date?.toISOString().slice(0, 10) ?? null;
}
