import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readDrawnTotals } from "@/lib/data/drawnTotals";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readLineControllers } from "@/lib/data/lineControllers";
import { readLineCosts } from "@/lib/data/lineCost";
import { readRankedPlaces } from "@/lib/data/linePlaces";
import { lookedBackTo } from "@/lib/data/lookBack";
import { readObligations } from "@/lib/data/obligations";
import { withShownAmounts } from "@/lib/data/rankingAmounts";
import { readRulesInForce } from "@/lib/data/rules";
import { siteIds } from "@/lib/data/scope";
import { gathered } from "@/lib/kernel/gathered";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Rule } from "@/lib/retrofit/compatibility/facts";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import type { LineResult } from "@/lib/risk/evaluation";
import { partLabel } from "@/lib/view/linePart";
import { drawnLoss } from "@/lib/view/linePlace";
import type { RankedLine, Ranking } from "@/lib/view/lineRanking";
import { UNKNOWN_COST } from "@/lib/view/lineWithoutAmounts";
import { isNear } from "@/lib/view/obligation";

/** A line as it was evaluated, without its parts. */
interface EvaluatedRow extends Pick<RankedLine, "code" | "name" | "siteCode" | "siteName"> {
  readonly lineId: string;
  readonly rankByLoss: number | null;
  readonly rankByScore: number;
  readonly result: Omit<LineResult, "pools">;
  readonly place: LinePlace | null;
}

/** Lines as if they had no duties, which may change while no figure does. */
type Figured = Pick<Ranking, "groupLines" | "totals" | "lines">;

const MOST_KEPT = 20;

/** Rankings by what they were read from; kept over hot reloads. */
const kept = globalThis as typeof globalThis & { ebblineRankings?: Map<string, Promise<Figured>> };

/** The ranking on a day, of the lines at the actor's sites, each with its place among all lines. */
export async function readRanking(actor: Actor, asOf: IsoDate): Promise<Ranking> {
  const evaluation = await currentEvaluation(asOf);
  const [rules, obligations] = await Promise.all([readRulesInForce(actor), readObligations(actor, { asOf })]);
  const { lines, ...rest } = await keptFigures(actor, evaluation.id, rules);
  const near = gathered(
    obligations.filter((duty) => isNear(duty, asOf)),
    ({ line }) => line?.id,
  );
  const { engine, dataVersion } = evaluation;
  return withShownAmounts(actor, {
    ...{ asOf, engine, dataVersion, ...rest },
    // A line without duties stays the same object, and with it what was worked out for showing it.
    lines: lines.map((line) => {
      const duties = near.get(line.id)?.map(({ kind, title, dueOn }) => ({ kind, title, dueOn }));
      return duties ? { ...line, duties } : line;
    }),
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
    lookedBackTo()?.at,
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
    readEvaluated(actor, evaluationId),
    database().evaluatedLine.count({ where: { evaluationId } }),
    readLineControllers(actor, rules),
    readLineCosts(actor),
    readDrawnTotals(actor, evaluationId),
  ]);
  const [parts, places] = await Promise.all([
    readPartNames(rows.map(({ result }) => result)),
    readRankedPlaces(
      actor,
      rows.flatMap(({ place }) => place ?? []),
    ),
  ]);
  const lines = rows.map(
    ({ lineId, result, place, ...row }): RankedLine => ({
      id: lineId,
      ...row,
      place: places.get(lineId) ?? null,
      ...figuresOf(result),
      stopLoss: drawnLoss(result.stopLoss, place),
      depletionPart: depletionPartOf(result, parts),
      cost: costs.get(lineId) ?? UNKNOWN_COST,
      controllers: controllers.get(lineId) ?? [],
      duties: [],
    }),
  );
  return { groupLines, totals, lines };
}

/** The parts of a line are nine tenths of it, and only its own page shows them. */
function readEvaluated(actor: Actor, evaluationId: string): Promise<EvaluatedRow[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  return database().$queryRaw<EvaluatedRow[]>`
    SELECT e."lineId"::text AS "lineId", l."code", l."name", s."code" AS "siteCode", s."name" AS "siteName",
      e."rankByLoss", e."rankByScore", e."result" - 'pools' AS "result", e."place"
    FROM "EvaluatedLine" e
    JOIN "Line" l ON l."id" = e."lineId"
    JOIN "Site" s ON s."id" = l."siteId"
    WHERE e."evaluationId" = ${evaluationId}::uuid AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
    ORDER BY l."code"`;
}

function figuresOf(result: EvaluatedRow["result"]) {
  const { score, scoreParts, stopLoss, baseLoss, shortageLoss, stopsPerYear } = result;
  const { depletionP80, worstStage, assumed } = result;
  const figures = { score, scoreParts, stopLoss, baseLoss, shortageLoss, stopsPerYear };
  return { ...figures, depletionP80, worstStage, assumed };
}

function depletionPartOf(
  { depletionPoolId }: EvaluatedRow["result"],
  parts: ReadonlyMap<string, string>,
): RankedLine["depletionPart"] {
  if (depletionPoolId === null) return null;
  const number = parts.get(depletionPoolId);
  return { id: number === undefined ? null : depletionPoolId, label: partLabel(depletionPoolId, number) };
}

async function readPartNames(results: readonly EvaluatedRow["result"][]): Promise<Map<string, string>> {
  const ids = results
    .map((result) => result.depletionPoolId)
    .filter((id) => id !== null && !id.startsWith("unidentified:")) as string[];
  const parts = await database().part.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, number: true },
  });
  return new Map(parts.map((part) => [part.id, part.number]));
}
