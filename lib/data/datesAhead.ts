import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readLineCosts } from "@/lib/data/lineCost";
import { readObligations } from "@/lib/data/obligations";
import { readProjects } from "@/lib/data/project";
import { readReportParts } from "@/lib/data/reportParts";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LineResult } from "@/lib/risk/evaluation";
import type { DatedLine, DatesInput, RemovalAhead } from "@/lib/view/datesAhead";

/** Everything with a day at the sites the actor may read, as known on a day. */
export async function readDatesAhead(actor: Actor, asOf: IsoDate): Promise<DatesInput> {
  const { id: evaluationId } = await currentEvaluation(asOf);
  const lines = await readLines(actor, evaluationId);
  const poolIds = [...new Set(lines.flatMap(({ result }) => result.pools.map(({ poolId }) => poolId)))];
  const [parts, obligations, projects, removals, checks] = await Promise.all([
    readReportParts(actor, { asOf, evaluationId, poolIds }),
    readObligations(actor, { asOf }),
    readProjects(actor),
    readRemovals(actor),
    readChecks(actor),
  ]);
  return {
    ...{ asOf, lines, obligations, removals },
    parts: parts.map(({ id, number, datesOf, lastOrderOn, orderByOn, lastShipOn, repairUntilOn }) => ({
      ...{ id, number, datesOf, lastOrderOn, orderByOn, lastShipOn, repairUntilOn },
    })),
    projects: projects.map(({ code, name, siteCode, lineCode, status, endsOn }) => ({
      ...{ code, name, siteCode, lineCode, status, endsOn, ...checks.get(code) },
    })),
  };
}

async function readLines(actor: Actor, evaluationId: string): Promise<DatedLine[]> {
  const [rows, costs] = await Promise.all([
    database().evaluatedLine.findMany({
      where: { evaluationId, line: atSites(actor, "read") },
      select: {
        lineId: true,
        result: true,
        line: { select: { code: true, site: { select: { code: true } } } },
      },
      orderBy: { line: { code: "asc" } },
    }),
    readLineCosts(actor),
  ]);
  return rows.map(({ lineId, line, result }) => {
    const { depletionP80, depletionPoolId, pools } = result as unknown as LineResult;
    const cost = costs.get(lineId) ?? null;
    return {
      code: line.code,
      siteCode: line.site.code,
      cost,
      result: { depletionP80, depletionPoolId, pools },
    };
  });
}

async function readRemovals(actor: Actor): Promise<RemovalAhead[]> {
  const rows = await database().plannedRemoval.findMany({
    where: { line: atSites(actor, "read"), project: { status: { notIn: ["closed", "parked"] } } },
    select: {
      ...{ units: true, leavesOn: true },
      line: { select: { code: true, site: { select: { code: true } } } },
      project: { select: { code: true } },
    },
    orderBy: [{ leavesOn: "asc" }, { id: "asc" }],
  });
  return rows.map(({ units, leavesOn, line, project }) => ({
    projectCode: project.code,
    lineCode: line.code,
    siteCode: line.site.code,
    leavesOn: leavesOn.toISOString().slice(0, 10),
    units,
  }));
}

/** When the benefit of closed projects is to be checked, by code, where nobody did yet. */
async function readChecks(actor: Actor): Promise<Map<string, { readonly checkOn: IsoDate }>> {
  const rows = await database().projectClosing.findMany({
    where: { checkedOn: null, project: atSites(actor, "read") },
    select: { checkOn: true, project: { select: { code: true } } },
  });
  return new Map(
    rows.map(({ checkOn, project }) => [project.code, { checkOn: checkOn.toISOString().slice(0, 10) }]),
  );
}
