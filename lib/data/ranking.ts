import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readDrawnTotals } from "@/lib/data/drawnTotals";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readLineControllers } from "@/lib/data/lineControllers";
import { readLineCosts } from "@/lib/data/lineCost";
import { readRankedPlaces } from "@/lib/data/linePlaces";
import { readObligations } from "@/lib/data/obligations";
import { atSites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import type { LineResult } from "@/lib/risk/evaluation";
import { partLabel } from "@/lib/view/linePart";
import { drawnLoss } from "@/lib/view/linePlace";
import type { LineCost, RankedLine, Ranking } from "@/lib/view/lineRanking";
import { type DutyMark, isNear, type Obligation } from "@/lib/view/obligation";

const evaluated = { lineId: true, rankByLoss: true, rankByScore: true, result: true, place: true } as const;
const line = { code: true, name: true, site: { select: { code: true, name: true } } } as const;

/** The ranking on a day, of the lines at the actor's sites, each with its place among all lines. */
export async function readRanking(actor: Actor, asOf: IsoDate): Promise<Ranking> {
  const { id: evaluationId, engine, dataVersion } = await currentEvaluation(asOf);
  const [rows, groupLines, controllers, costs, obligations, totals] = await Promise.all([
    database().evaluatedLine.findMany({
      where: { evaluationId, line: atSites(actor, "read") },
      orderBy: { line: { code: "asc" } },
      select: { ...evaluated, line: { select: line } },
    }),
    database().evaluatedLine.count({ where: { evaluationId } }),
    readLineControllers(actor),
    readLineCosts(actor),
    readObligations(actor, { asOf }),
    readDrawnTotals(actor, evaluationId),
  ]);
  const results = rows.map((row) => row.result as unknown as LineResult);
  const drawn = rows.map((row) => row.place as unknown as LinePlace | null);
  const [parts, places] = await Promise.all([
    readPartNames(results),
    readRankedPlaces(
      actor,
      drawn.filter((place) => place !== null),
    ),
  ]);
  const lines = rows.map((row, i): RankedLine => {
    const result = results[i] as LineResult;
    return {
      id: row.lineId,
      code: row.line.code,
      name: row.line.name,
      siteCode: row.line.site.code,
      siteName: row.line.site.name,
      rankByLoss: row.rankByLoss,
      rankByScore: row.rankByScore,
      place: places.get(row.lineId) ?? null,
      ...figuresOf(result),
      stopLoss: drawnLoss(result.stopLoss, drawn[i] ?? null),
      depletionPart: depletionPartOf(result, parts),
      cost: costs.get(row.lineId) ?? unknownCost,
      duties: dutiesOf(row.lineId, obligations, asOf),
      controllers: controllers.get(row.lineId) ?? [],
    };
  });
  return { asOf, engine, dataVersion, groupLines, totals, lines };
}

const unknownCost: LineCost = {
  perHour: null,
  fixed: null,
  steps: [],
  owner: null,
  approvedOn: null,
  validUntil: null,
  evidence: "assumed",
};

function dutiesOf(lineId: string, obligations: readonly Obligation[], asOf: IsoDate): DutyMark[] {
  return obligations
    .filter((duty) => duty.line?.id === lineId && isNear(duty, asOf))
    .map(({ kind, title, dueOn }) => ({ kind, title, dueOn }));
}

function figuresOf(result: LineResult) {
  const { score, scoreParts, stopLoss, baseLoss, shortageLoss, stopsPerYear } = result;
  const { depletionP80, worstStage, assumed } = result;
  const figures = { score, scoreParts, stopLoss, baseLoss, shortageLoss, stopsPerYear };
  return { ...figures, depletionP80, worstStage, assumed };
}

function depletionPartOf(
  { depletionPoolId }: LineResult,
  parts: ReadonlyMap<string, string>,
): RankedLine["depletionPart"] {
  if (depletionPoolId === null) return null;
  const number = parts.get(depletionPoolId);
  return { id: number === undefined ? null : depletionPoolId, label: partLabel(depletionPoolId, number) };
}

async function readPartNames(results: readonly LineResult[]): Promise<Map<string, string>> {
  const ids = results
    .map((result) => result.depletionPoolId)
    .filter((id) => id !== null && !id.startsWith("unidentified:")) as string[];
  const parts = await database().part.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, number: true },
  });
  return new Map(parts.map((part) => [part.id, part.number]));
}
