import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database, looks } from "@/lib/data/client";
import { readDrawnTotals } from "@/lib/data/drawnTotals";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readLineControllers } from "@/lib/data/lineControllers";
import { readLineCosts } from "@/lib/data/lineCost";
import { readRankedPlaces } from "@/lib/data/linePlaces";
import { readObligations } from "@/lib/data/obligations";
import { unknownCost, withShownAmounts } from "@/lib/data/rankingAmounts";
import { readRulesInForce } from "@/lib/data/rules";
import { atSites, siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Rule } from "@/lib/retrofit/compatibility/facts";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import type { LineResult } from "@/lib/risk/evaluation";
import { partLabel } from "@/lib/view/linePart";
import { drawnLoss } from "@/lib/view/linePlace";
import type { RankedLine, Ranking } from "@/lib/view/lineRanking";
import { isNear } from "@/lib/view/obligation";

const evaluated = { lineId: true, rankByLoss: true, rankByScore: true, result: true, place: true } as const;
const line = { siteId: true, code: true, name: true, site: { select: { code: true, name: true } } } as const;

/** Lines without their duties, which may change while no figure does. */
type FiguredLine = Omit<RankedLine, "duties">;

interface Figured extends Pick<Ranking, "groupLines" | "totals"> {
  readonly lines: readonly FiguredLine[];
}

const MOST_KEPT = 20;

/** Rankings by what they were read from; kept over hot reloads. */
const kept = globalThis as typeof globalThis & { ebblineRankings?: Map<string, Promise<Figured>> };

/** The ranking on a day, of the lines at the actor's sites, each with its place among all lines. */
export async function readRanking(actor: Actor, asOf: IsoDate): Promise<Ranking> {
  const evaluation = await currentEvaluation(asOf);
  const [rules, obligations] = await Promise.all([readRulesInForce(actor), readObligations(actor, { asOf })]);
  const { lines, ...rest } = await keptFigures(actor, evaluation.id, rules);
  const near = obligations.filter((duty) => isNear(duty, asOf));
  const dutiesOf = (id: string) =>
    near.filter((duty) => duty.line?.id === id).map(({ kind, title, dueOn }) => ({ kind, title, dueOn }));
  const { engine, dataVersion } = evaluation;
  return withShownAmounts(actor, {
    ...{ asOf, engine, dataVersion, ...rest },
    lines: lines.map((figured) => ({ ...figured, duties: dutiesOf(figured.id) })),
  });
}

/**
 * What an evaluation says of the lines of some sites, with what else raises the data version when it changes: read once
 * by a process, until there is a newer evaluation or other rules are in force.
 */
function keptFigures(actor: Actor, evaluationId: string, rules: readonly Rule[]): Promise<Figured> {
  kept.ebblineRankings ??= new Map();
  const found = kept.ebblineRankings;
  const key = JSON.stringify([
    evaluationId,
    looks().getStore()?.at,
    siteIds(actor, "read")?.in.toSorted(),
    rules,
  ]);
  const known = found.get(key);
  if (known) return known;
  const [oldest] = found.keys();
  if (found.size >= MOST_KEPT && oldest !== undefined) found.delete(oldest);
  const reading = readFigures(actor, evaluationId, rules);
  found.set(key, reading);
  reading.catch(() => found.delete(key));
  return reading;
}

async function readFigures(actor: Actor, evaluationId: string, rules: readonly Rule[]): Promise<Figured> {
  const [rows, groupLines, controllers, costs, totals] = await Promise.all([
    database().evaluatedLine.findMany({
      where: { evaluationId, line: atSites(actor, "read") },
      orderBy: { line: { code: "asc" } },
      select: { ...evaluated, line: { select: line } },
    }),
    database().evaluatedLine.count({ where: { evaluationId } }),
    readLineControllers(actor, rules),
    readLineCosts(actor),
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
  const lines = rows.map((row, i): FiguredLine => {
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
      controllers: controllers.get(row.lineId) ?? [],
    };
  });
  return { groupLines, totals, lines };
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
