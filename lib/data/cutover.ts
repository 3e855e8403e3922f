import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { projects } from "@/lib/data/scope";
import type { CutoverPlan } from "@/lib/view/cutover";
import type { ProjectHead } from "@/lib/view/projectHead";
import type { Cutover, CutoverStep } from "@/prisma/generated/client";

export interface ProjectCutovers extends ProjectHead {
  /** The last one first. */
  readonly cutovers: readonly CutoverPlan[];
}

/** The cutovers of a project with their steps; null when there is none or the actor may not see it. */
export async function readCutovers(actor: Actor, code: string): Promise<ProjectCutovers | null> {
  const found = await database().project.findFirst({
    where: { code, ...projects(actor, "read") },
    include: {
      site: { select: { timeZone: true } },
      cutovers: {
        include: { steps: { orderBy: [{ afterHours: "asc" }, { id: "asc" }] } },
        orderBy: [{ startsAt: "desc" }, { name: "asc" }],
      },
    },
  });
  if (!found) return null;
  const { id, name, siteId, status, currency, version, site } = found;
  return {
    ...{ id, code, name, siteId, status, currency, version, timeZone: site.timeZone },
    cutovers: found.cutovers.map(planOf),
  };
}

function planOf(stored: Cutover & { readonly steps: readonly CutoverStep[] }): CutoverPlan {
  const { id, name, version, restoreTestedBy, restoreTestedOn, restoreHours, marginHours } = stored;
  return {
    ...{ id, name, version, restoreTestedBy },
    startsAt: stored.startsAt.toISOString(),
    productionAt: stored.productionAt.toISOString(),
    restoreHours: restoreHours?.toNumber() ?? null,
    marginHours: marginHours?.toNumber() ?? null,
    restoreTestedOn: restoreTestedOn?.toISOString().slice(0, 10) ?? null,
    steps: stored.steps.map(({ cutoverId: _, afterHours, hours, startedAt, endedAt, ...step }) => ({
      ...step,
      ...{ afterHours: afterHours.toNumber(), hours: hours.toNumber() },
      startedAt: startedAt?.toISOString() ?? null,
      endedAt: endedAt?.toISOString() ?? null,
    })),
  };
}
