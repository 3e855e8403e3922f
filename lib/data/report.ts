import "server-only";
import type { Actor } from "@/lib/access/actor";
import { readAcceptances } from "@/lib/data/acceptances";
import { database } from "@/lib/data/client";
import { readDrawnTotals } from "@/lib/data/drawnTotals";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readLineCosts } from "@/lib/data/lineCost";
import { readObligations } from "@/lib/data/obligations";
import { readPlans } from "@/lib/data/plan";
import { readProjects } from "@/lib/data/project";
import { readReportGaps } from "@/lib/data/reportGaps";
import { readReportParts } from "@/lib/data/reportParts";
import { readLateActions } from "@/lib/data/reviewActions";
import { atOneSite, atSites } from "@/lib/data/scope";
import { readSiteNames } from "@/lib/data/siteNames";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import { seedOf } from "@/lib/risk/evaluateGroup";
import type { LineResult } from "@/lib/risk/evaluation";
import { speakingByLine } from "@/lib/view/acceptance";
import type { SeenTotals } from "@/lib/view/drawnTotals";
import { drawnLoss } from "@/lib/view/linePlace";
import { isNear } from "@/lib/view/obligation";
import type { ReportInput, ReportLine, ReportSite } from "@/lib/view/report";

/** The day of a report and its site; null is all sites the person may see. */
export interface ReportQuestion {
  readonly asOf: IsoDate;
  readonly siteCode: string | null;
}

/**
 * What a monthly report is made of; null when there is no such site or the person may not see it.
 *
 * A report of one site says what anybody who reads that site may see, whoever asks.
 */
export async function readReport(
  actor: Actor,
  { asOf, siteCode }: ReportQuestion,
): Promise<ReportInput | null> {
  const choices = await readSiteNames(actor);
  const chosen = siteCode === null ? choices : choices.filter(({ code }) => code === siteCode);
  const [first, second] = chosen;
  if (!first) return null;
  const reader = second ? actor : atOneSite(actor, first.id);
  const { id: evaluationId, engine, dataVersion, assumptionSet } = await currentEvaluation(asOf);
  const lines = await readLines(reader, { evaluationId, chosen });
  const [parts, gaps, obligations, projects, plans, totals, allSites, acceptances, late] = await Promise.all([
    readReportParts(reader, { asOf, evaluationId, poolIds: poolsOf(lines) }),
    readReportGaps(
      reader,
      chosen.map(({ id }) => id),
    ),
    readObligations(reader, { asOf }),
    readProjects(reader),
    readPlans(
      reader,
      chosen.map(({ id }) => id),
    ),
    readDrawnTotals(reader, evaluationId),
    database().site.count(),
    readAcceptances(reader, { asOf }),
    readLateActions(reader, { asOf, siteIds: chosen.map(({ id }) => id) }),
  ]);
  const codes = new Set(chosen.map(({ code }) => code));
  const lineCodes = new Set(lines.map(({ code }) => code));
  return {
    ...{ asOf, engine, dataVersion, assumptionSet, choices, lines, parts, gaps, plans },
    sites: chosen,
    seed: seedOf(asOf),
    drawnSites: totals.sites,
    drawnTotal: drawnOver(chosen, totals),
    wholeGroup: siteCode === null && choices.length === allSites,
    obligations: obligations.filter((duty) => codes.has(duty.siteCode) && isNear(duty, asOf)),
    projects: projects.filter((project) => codes.has(project.siteCode)),
    acceptances: [...speakingByLine(acceptances, asOf).values()].filter((one) => lineCodes.has(one.lineCode)),
    lateActions: late.map(({ text, siteCode, owner, dueOn }) => ({
      ...{ text, siteCode, dueOn, owner: owner.name },
      href: `/review?site=${encodeURIComponent(siteCode)}`,
    })),
  };
}

/** The drawn span of the sum over some sites: of one, or of all a person who may see everything chose. */
function drawnOver(chosen: readonly ReportSite[], { group, sites }: SeenTotals): ReportInput["drawnTotal"] {
  const [first, second] = chosen;
  return first && !second ? (sites[first.code] ?? null) : group;
}

interface LinesAsked {
  readonly evaluationId: string;
  readonly chosen: readonly ReportSite[];
}

async function readLines(actor: Actor, { evaluationId, chosen }: LinesAsked): Promise<ReportLine[]> {
  const at = { in: chosen.map(({ id }) => id) };
  const [rows, costs] = await Promise.all([
    database().evaluatedLine.findMany({
      where: { evaluationId, line: { AND: [atSites(actor, "read"), { siteId: at }] } },
      select: {
        ...{ lineId: true, result: true, place: true },
        line: { select: { code: true, name: true, siteId: true } },
      },
      orderBy: { line: { code: "asc" } },
    }),
    readLineCosts(actor),
  ]);
  return rows.map(({ lineId, line, ...row }) => {
    const result = row.result as unknown as LineResult;
    const stopLoss = drawnLoss(result.stopLoss, row.place as unknown as LinePlace | null);
    return { ...line, cost: costs.get(lineId) ?? null, result: { ...result, stopLoss } };
  });
}

function poolsOf(lines: readonly ReportLine[]): string[] {
  return [...new Set(lines.flatMap(({ result }) => result.pools.map(({ poolId }) => poolId)))];
}
