import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { ProjectFile } from "@/lib/view/project";
import type { Prisma } from "@/prisma/generated/client";

const projectParts = {
  site: { select: { code: true, name: true } },
  line: { select: { code: true, name: true } },
  planLine: { select: { planId: true } },
  milestones: { orderBy: { sequence: "asc" } },
  costs: { orderBy: [{ spentOn: "desc" }, { reference: "asc" }] },
} satisfies Prisma.ProjectInclude;

type StoredProject = Prisma.ProjectGetPayload<{ include: typeof projectParts }>;

/** The projects at the sites the person may see, by code. */
export async function readProjects(actor: Actor): Promise<ProjectFile[]> {
  const projects = await database().project.findMany({
    where: atSites(actor, "read"),
    include: projectParts,
    orderBy: { code: "asc" },
  });
  return projects.map(fileOf);
}

/** One project; null when there is none or it is at a site the person may not see. */
export async function readProject(actor: Actor, code: string): Promise<ProjectFile | null> {
  const project = await database().project.findFirst({
    where: { code, ...atSites(actor, "read") },
    include: projectParts,
  });
  return project ? fileOf(project) : null;
}

function fileOf(project: StoredProject): ProjectFile {
  const { id, code, name, status, siteId, currency, cause, version } = project;
  return {
    ...{ id, code, name, status, siteId, currency, cause, version },
    siteCode: project.site.code,
    siteName: project.site.name,
    lineCode: project.line.code,
    lineName: project.line.name,
    planId: project.planLine?.planId ?? null,
    budget: project.budget.toFixed(2),
    forecast: project.forecast?.toFixed(2) ?? null,
    startsOn: dayOf(project.startsOn),
    endsOn: dayOf(project.endsOn),
    milestones: project.milestones.map((one) => ({
      ...{ id: one.id, sequence: one.sequence, name: one.name, weight: one.weight.toNumber() },
      ...{ dueOn: dayOf(one.dueOn), doneOn: dayOf(one.doneOn) },
    })),
    costs: project.costs.map((one) => ({
      ...{
        id: one.id,
        kind: one.kind,
        amount: one.amount.toFixed(2),
        text: one.text,
        reference: one.reference,
      },
      spentOn: one.spentOn.toISOString().slice(0, 10),
    })),
  };
}

function dayOf(date: Date | null): IsoDate | null {
  return date?.toISOString().slice(0, 10) ?? null;
}
