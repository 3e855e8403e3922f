import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { projects } from "@/lib/data/scope";
import type { ProjectHead } from "@/lib/view/projectHead";
import type { OpenPointRow, ProjectRiskRow } from "@/lib/view/projectPoints";
import type { ProjectRisk } from "@/prisma/generated/client";

export interface ProjectPoints extends ProjectHead {
  readonly points: readonly OpenPointRow[];
  readonly risks: readonly ProjectRiskRow[];
}

/** What is open and what may go wrong in a project; null when there is none or the actor may not see it. */
export async function readProjectPoints(actor: Actor, code: string): Promise<ProjectPoints | null> {
  const found = await database().project.findFirst({
    where: { code, ...projects(actor, "read") },
    include: {
      site: { select: { timeZone: true } },
      openPoints: { orderBy: [{ dueOn: { sort: "asc", nulls: "last" } }, { id: "asc" }] },
      risks: { orderBy: { id: "asc" } },
    },
  });
  if (!found) return null;
  const { id, name, siteId, status, currency, version } = found;
  return {
    ...{ id, code, name, siteId, status, currency, version, timeZone: found.site.timeZone },
    points: found.openPoints.map(({ projectId: _, raisedOn, dueOn, doneOn, ...point }) => ({
      ...point,
      raisedOn: raisedOn.toISOString().slice(0, 10),
      dueOn: dueOn?.toISOString().slice(0, 10) ?? null,
      doneOn: doneOn?.toISOString().slice(0, 10) ?? null,
    })),
    risks: found.risks.map(riskRow),
  };
}

function riskRow(stored: ProjectRisk): ProjectRiskRow {
  const { projectId: _, chanceLow, chanceHigh, effectLow, effectHigh, ...risk } = stored;
  const isRange = chanceLow !== null && chanceHigh !== null;
  return {
    ...risk,
    chance: isRange ? { low: chanceLow, high: chanceHigh } : null,
    effect:
      effectLow !== null && effectHigh !== null
        ? { low: effectLow.toFixed(2), high: effectHigh.toFixed(2) }
        : null,
  };
}
