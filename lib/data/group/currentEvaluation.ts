import "server-only";
import { holdData, type Transaction } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { ENGINE, evaluate } from "@/lib/risk/evaluate";
import type { GroupResult, LineResult } from "@/lib/risk/evaluation";
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
}

/**
 * The evaluation of the group at a day on the data as they are now, computed when nobody has yet.
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
  const [row] = await tx.$queryRaw<{ id: string; dataVersion: bigint }[]>`
    SELECT e."id"::text AS "id", e."dataVersion" FROM "Evaluation" e
    JOIN "DataVersion" v ON v."version" = e."dataVersion"
    WHERE e."asOf" = ${asOf}::date AND e."engine" = ${ENGINE}`;
  return row ? { id: row.id, asOf, dataVersion: Number(row.dataVersion), engine: ENGINE } : null;
}

async function compute(tx: Transaction, asOf: IsoDate): Promise<EvaluationMark> {
  const { version } = await tx.dataVersion.findUniqueOrThrow({ where: { id: 1 } });
  const result = evaluate(await loadGroupInput(tx, asOf), likelyAssumptions);
  const day = new Date(`${asOf}T00:00:00Z`);
  await tx.$executeRaw`
    DELETE FROM "Evaluation" WHERE "dataVersion" < ${version} AND "takenAt" < now() - make_interval(mins => ${READING_MINUTES}::int)`;
  const { id } = await tx.evaluation.create({
    data: { asOf: day, dataVersion: version, engine: ENGINE, assumptions: asJson(likelyAssumptions) },
    select: { id: true },
  });
  await tx.evaluatedLine.createMany({ data: rankedRows(id, result) });
  await tx.evaluatedPool.createMany({
    data: result.pools
      .filter((pool) => !pool.poolId.startsWith("unidentified:"))
      .map((pool) => ({ evaluationId: id, partId: pool.poolId, result: asJson(pool) })),
  });
  return { id, asOf, dataVersion: Number(version), engine: ENGINE };
}

function rankedRows(evaluationId: string, { lines }: GroupResult) {
  const byLoss = placesBy(lines, (line) => line.stopLoss?.mean ?? null);
  const byScore = placesBy(lines, (line) => line.score);
  return lines.map((line, i) => ({
    evaluationId,
    lineId: line.lineId,
    rankByLoss: byLoss[i] ?? null,
    rankByScore: byScore[i] ?? lines.length,
    result: asJson(line),
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
