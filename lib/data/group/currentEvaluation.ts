import "server-only";
import { holdData, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { assumptionsInUse, type SetInUse } from "@/lib/data/group/assumptionsInUse";
import { drawPlaces } from "@/lib/data/group/drawPlaces";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { LinePlace } from "@/lib/risk/draws/linePlace";
import { ENGINE, evaluate } from "@/lib/risk/evaluate";
import type { GroupResult, LineResult } from "@/lib/risk/evaluation";
import type { AssumptionChoice } from "@/lib/schema/assumptions";
import type { Prisma } from "@/prisma/generated/client";

/** A page that began to read an evaluation has finished after this. */
const READING_MINUTES = 10;
const LONGEST_EVALUATION_MS = 120_000;

/** Which rows a page reads, and on what they were computed. */
export interface EvaluationMark {
  readonly id: string;
  readonly asOf: IsoDate;
  readonly dataVersion: number;
  readonly engine: string;
  /** Set of assumptions in use, and its values. */
  readonly assumptionSet: AssumptionChoice;
  readonly assumptions: Assumptions;
}

/**
 * The evaluation of the group at a day on the data and with the assumptions in use now, computed when nobody has yet.
 *
 * Evaluations of older data are dropped once whoever was reading them has long finished.
 */
export async function currentEvaluation(asOf: IsoDate): Promise<EvaluationMark> {
  return (
    (await stored(database(), asOf)) ??
    database().$transaction(
      async (tx) => {
        await holdData(tx);
        return (await stored(tx, asOf)) ?? compute(tx, asOf);
      },
      { timeout: LONGEST_EVALUATION_MS, maxWait: LONGEST_EVALUATION_MS },
    )
  );
}

async function stored(tx: Transaction, asOf: IsoDate): Promise<EvaluationMark | null> {
  const set = await assumptionsInUse(tx);
  const [row] = await tx.$queryRaw<{ id: string; dataVersion: bigint }[]>`
    SELECT e."id"::text AS "id", e."dataVersion" FROM "Evaluation" e
    JOIN "DataVersion" v ON v."version" = e."dataVersion"
    WHERE e."asOf" = ${asOf}::date AND e."engine" = ${ENGINE}
      AND e."assumptionKind" = ${set.kind}::"AssumptionKind" AND e."assumptionVersion" = ${set.version}`;
  return row ? { id: row.id, asOf, dataVersion: Number(row.dataVersion), ...ways(set) } : null;
}

async function compute(tx: Transaction, asOf: IsoDate): Promise<EvaluationMark> {
  const { version } = await tx.dataVersion.findUniqueOrThrow({ where: { id: 1 } });
  const set = await assumptionsInUse(tx);
  const input = await loadGroupInput(tx, asOf);
  const result = evaluate(input, set.values);
  const day = new Date(`${asOf}T00:00:00Z`);
  await tx.$executeRaw`
    DELETE FROM "Evaluation" WHERE "dataVersion" < ${version} AND "takenAt" < now() - make_interval(mins => ${READING_MINUTES}::int)`;
  const { id } = await tx.evaluation.create({
    data: {
      ...{ asOf: day, dataVersion: version, engine: ENGINE, assumptions: asJson(set.values) },
      ...{ assumptionKind: set.kind, assumptionVersion: set.version },
    },
    select: { id: true },
  });
  await tx.evaluatedLine.createMany({ data: rankedRows(id, result, drawPlaces(input, set.values, result)) });
  await tx.evaluatedPool.createMany({
    data: result.pools
      .filter((pool) => !pool.poolId.startsWith("unidentified:"))
      .map((pool) => ({ evaluationId: id, partId: pool.poolId, result: asJson(pool) })),
  });
  return { id, asOf, dataVersion: Number(version), ...ways(set) };
}

function ways({ kind, version, values }: SetInUse) {
  return { engine: ENGINE, assumptionSet: { kind, version }, assumptions: values };
}

function rankedRows(evaluationId: string, { lines }: GroupResult, places: ReadonlyMap<string, LinePlace>) {
  const byLoss = placesBy(lines, (line) => line.stopLoss?.mean ?? null);
  const byScore = placesBy(lines, (line) => line.score);
  return lines.map((line, i) => ({
    evaluationId,
    lineId: line.lineId,
    rankByLoss: byLoss[i] ?? null,
    rankByScore: byScore[i] ?? lines.length,
    result: asJson(line),
    ...(places.has(line.lineId) ? { place: asJson(places.get(line.lineId)) } : {}),
  }));
}

/** Place of each line from 1, largest first; equal values share a place; unknown has none. */
function placesBy(
  lines: readonly LineResult[],
  value: (line: LineResult) => number | null,
): (number | null)[] {
  const values = lines.map(value);
  const sorted = values.filter((v) => v !== null).sort((a, b) => b - a);
  const place = new Map<number, number>();
  sorted.forEach((v, i) => {
    if (!place.has(v)) place.set(v, i + 1);
  });
  return values.map((v) => (v === null ? null : (place.get(v) ?? null)));
}

function asJson(value: unknown): Prisma.InputJsonValue {
  return value as Prisma.InputJsonValue;
}
