import "server-only";
import type { Actor } from "@/lib/access/actor";
import { mayAt } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readLineCompatibility } from "@/lib/data/lineCompatibility";
import { readLineCosts } from "@/lib/data/lineCost";
import { readLineDrivers } from "@/lib/data/lineDrivers";
import { readLineEvents } from "@/lib/data/lineEvents";
import { readLineMachines } from "@/lib/data/lineMachines";
import { readPlaceDossier } from "@/lib/data/linePlaces";
import { readObligations } from "@/lib/data/obligations";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import type { LineResult } from "@/lib/risk/evaluation";
import { COST_METHODS } from "@/lib/schema/costMethod";
import type { LineDossier, StoredFigures } from "@/lib/view/lineDossier";
import { drawnLoss } from "@/lib/view/linePlace";
import { dossierWithoutAmounts } from "@/lib/view/lineWithoutAmounts";
import type { Line } from "@/prisma/generated/client";

/** Which line, and on which day. */
export interface LineQuestion {
  readonly code: string;
  readonly asOf: IsoDate;
}

/**
 * The dossier of a line; null when there is none or it is at a site the actor may not see. Where amounts are not shown
 * to the actor it leaves without them.
 */
export async function readLine(actor: Actor, question: LineQuestion): Promise<LineDossier | null> {
  const line = await readWhole(actor, question);
  if (line === null || mayAt(actor.grants, "money:read", line.site.id)) return line;
  return dossierWithoutAmounts(line);
}

async function readWhole(actor: Actor, { code, asOf }: LineQuestion): Promise<LineDossier | null> {
  const evaluation = await currentEvaluation(asOf);
  const line = await findLine(actor, code, evaluation.id);
  const evaluated = line?.evaluations[0];
  if (!line || !evaluated) return null;
  const result = evaluated.result as unknown as LineResult;
  const drawn = evaluated.place as unknown as LinePlace | null;
  const at = { lineId: line.id, asOf };
  const [groupLines, compatibility, costs, drivers, machines, events, obligations, place] = await Promise.all(
    [
      database().evaluatedLine.count({ where: { evaluationId: evaluation.id } }),
      readLineCompatibility(actor, at),
      readLineCosts(actor, line.id),
      readLineDrivers(actor, {
        ...at,
        evaluationId: evaluation.id,
        siteId: line.siteId,
        pools: result.pools,
      }),
      readLineMachines(actor, at),
      readLineEvents(actor, at),
      readObligations(actor, { asOf, of: { lineId: line.id, siteId: line.siteId } }),
      drawn && readPlaceDossier(actor, { evaluationId: evaluation.id, place: drawn }),
    ],
  );
  const cost = costs.get(line.id);
  if (!cost) return null;
  const { id, name, note, inServiceYear, site } = line;
  return {
    asOf,
    engine: evaluation.engine,
    dataVersion: evaluation.dataVersion,
    assumptionSet: evaluation.assumptionSet,
    assumptions: evaluation.assumptions,
    ...{ id, code: line.code, name, note, inServiceYear, site, groupLines, compatibility },
    ...{ showsAmounts: true, cost, obligations, place, drivers, machines, events },
    result: { ...result, stopLoss: drawnLoss(result.stopLoss, drawn) },
    stored: storedFigures(line),
    unrecoveredShare: line.unrecoveredShare.toNumber(),
    rankByLoss: evaluated.rankByLoss,
    rankByScore: evaluated.rankByScore,
    projects: line.projects,
    plans: line.planLines.map(({ plan, rank, funded, pin }) => ({ ...plan, rank, funded, pin })),
  };
}

function findLine(actor: Actor, code: string, evaluationId: string) {
  return database().line.findFirst({
    where: { code, ...atSites(actor, "read") },
    include: {
      site: { select: { id: true, code: true, name: true, currency: true, timeZone: true } },
      evaluations: {
        where: { evaluationId },
        select: { rankByLoss: true, rankByScore: true, result: true, place: true },
      },
      projects: { select: { code: true, name: true, status: true }, orderBy: { code: "asc" } },
      planLines: {
        select: {
          rank: true,
          funded: true,
          pin: true,
          plan: { select: { id: true, name: true, year: true, status: true } },
        },
        orderBy: [{ plan: { year: "asc" } }, { plan: { name: "asc" } }],
      },
    },
  });
}

function storedFigures(line: Line): StoredFigures {
  return {
    costPerHour: line.costPerHour?.toFixed() ?? null,
    costFixed: line.costFixed?.toFixed() ?? null,
    costSteps: line.costSteps as unknown as StoredFigures["costSteps"],
    costMethod: COST_METHODS.find((method) => method === line.costMethod) ?? null,
    costOwner: line.costOwner,
    costApprovedOn: dayOf(line.costApprovedOn),
    costValidUntil: dayOf(line.costValidUntil),
    costEvidence: line.costEvidence,
    bufferHours: line.bufferHours?.toFixed() ?? null,
    shiftsPerWeek: line.shiftsPerWeek,
  };
}

function dayOf(date: Date | null): IsoDate | null {
  return date?.toISOString().slice(0, 10) ?? null;
}
