import "server-only";
import { ownDay } from "@/lib/data/asOf";
import { holdData, type Transaction } from "@/lib/data/change";
import { database, presentDatabase } from "@/lib/data/client";
import { assumptionsInUse } from "@/lib/data/group/assumptionsInUse";
import { dropStale, markStale } from "@/lib/data/group/dropStale";
import { type EvaluationMark, ways } from "@/lib/data/group/evaluationMark";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { pastEvaluation } from "@/lib/data/group/pastEvaluation";
import { stepEvaluation, type Wanted, type WarmGroup } from "@/lib/data/group/stepEvaluation";
import { storeWhole } from "@/lib/data/group/storeEvaluation";
import { lookedBackTo } from "@/lib/data/lookBack";
import { evaluator } from "@/lib/jobs/evaluator";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { watchEvaluation } from "@/lib/metrics/meters";
import { ENGINE } from "@/lib/risk/evaluate";

const LONGEST_EVALUATION_MS = 120_000;

const kept = globalThis as typeof globalThis & {
  /** The last evaluation this process computed; kept over hot reloads. */
  ebblineGroup?: WarmGroup;
  /** Those this process computes right now, by day. */
  ebblineUnderWay?: Map<IsoDate, Promise<EvaluationMark>>;
  /** While it makes itself ready to step. */
  ebblineWarming?: Promise<void>;
};

/**
 * The evaluation of the group at a day on the data and with the assumptions in use now, computed when nobody has yet.
 *
 * Where only the stock of some parts changed since this process computed it last, no more than that is computed again.
 * Evaluations of older data are dropped once whoever was reading them has long finished. A request that looks back
 * gets the evaluation of what was known then.
 */
export async function currentEvaluation(asOf: IsoDate): Promise<EvaluationMark> {
  if (lookedBackTo() !== null) return pastEvaluation(asOf);
  for (;;) {
    const known = await stored(database(), asOf);
    if (known) return known;
    const other = underWay().get(asOf);
    if (!other) return begin(asOf);
    // It may have begun on older data; and what it fails of is told to who began it.
    await other.catch(() => undefined);
  }
}

function underWay(): Map<IsoDate, Promise<EvaluationMark>> {
  kept.ebblineUnderWay ??= new Map();
  return kept.ebblineUnderWay;
}

/** Computes for all who wait in this process: each of them in a transaction of its own would leave none to the rest. */
function begin(asOf: IsoDate): Promise<EvaluationMark> {
  const run = computeAlone(asOf).finally(() => underWay().delete(asOf));
  underWay().set(asOf, run);
  return run;
}

async function computeAlone(asOf: IsoDate): Promise<EvaluationMark> {
  // What is nearly there to step from is sooner there than everything anew.
  await kept.ebblineWarming;
  const found = await database().$transaction(
    async (tx) => {
      await holdData(tx);
      return (await stored(tx, asOf)) ?? compute(tx, asOf);
    },
    { timeout: LONGEST_EVALUATION_MS, maxWait: LONGEST_EVALUATION_MS },
  );
  if (!("held" in found)) return found;
  // Only what is committed may be started from.
  kept.ebblineGroup = found;
  return { id: found.id, asOf, dataVersion: Number(found.dataVersion), ...ways(found.set) };
}

/**
 * Works out what the stored evaluation of today came from and keeps it in mind, so that the first change of stock after
 * a start is a step too; without it that one would wait for a whole evaluation. Nothing is written, nobody is held up.
 */
export function warmUp(): Promise<void> {
  const run = warmUpNow();
  kept.ebblineWarming = run.catch(() => undefined);
  return run;
}

async function warmUpNow(): Promise<void> {
  const warm = await presentDatabase().$transaction(
    async (tx) => {
      const asOf = await ownDay(tx);
      const mark = await stored(tx, asOf);
      if (!mark) return null;
      const { rowsId, dataVersion } = await tx.evaluation.findUniqueOrThrow({
        where: { id: mark.id },
        select: { rowsId: true, dataVersion: true },
      });
      const set = await assumptionsInUse(tx);
      await tx.$executeRaw`SET LOCAL work_mem = '64MB'`;
      const { held } = await evaluator().whole(await loadGroupInput(tx, asOf), set.values);
      return { id: mark.id, rowsId, asOf, dataVersion, set, held };
    },
    // One state of the records, however long reading them takes.
    { isolationLevel: "RepeatableRead", timeout: LONGEST_EVALUATION_MS, maxWait: LONGEST_EVALUATION_MS },
  );
  if (warm) kept.ebblineGroup ??= warm;
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

async function compute(tx: Transaction, asOf: IsoDate): Promise<WarmGroup> {
  const { version } = await tx.dataVersion.findUniqueOrThrow({ where: { id: 1 } });
  const wanted = { asOf, dataVersion: version, set: await assumptionsInUse(tx) };
  const warm = kept.ebblineGroup;
  const step = warm && (await watchEvaluation("step", () => stepEvaluation(tx, warm, wanted)));
  return step ?? watchEvaluation("whole", () => computeWhole(tx, wanted));
}

async function computeWhole(tx: Transaction, wanted: Wanted): Promise<WarmGroup> {
  // The default spills the sums of a million records to disk.
  await tx.$executeRaw`SET LOCAL work_mem = '64MB'`;
  const { held, rows } = await evaluator().whole(await loadGroupInput(tx, wanted.asOf), wanted.set.values);
  await markStale(tx, wanted.dataVersion);
  const id = await storeWhole(tx, wanted, rows);
  await dropStale(tx, id);
  return { ...wanted, id, rowsId: id, held };
}
