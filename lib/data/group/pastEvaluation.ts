import "server-only";
import type { Transaction } from "@/lib/data/change";
import { database, presentDatabase } from "@/lib/data/client";
import { assumptionsInUse, type SetInUse, storedAssumptions } from "@/lib/data/group/assumptionsInUse";
import { type EvaluationMark, ways } from "@/lib/data/group/evaluationMark";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { type PastBasis, pastBasis } from "@/lib/data/group/pastBasis";
import { thaw } from "@/lib/data/group/snapshotBytes";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { watchEvaluation } from "@/lib/metrics/meters";
import { ENGINE } from "@/lib/risk/evaluate";
import { evaluateGroup } from "@/lib/risk/evaluateGroup";
import type { GroupInput } from "@/lib/risk/evaluation";
import { poolsToStore } from "@/lib/risk/evaluationRows";
import type { Prisma } from "@/prisma/generated/client";

const LONGEST_MS = 120_000;
/** One process computes at a time; the others then find it. */
const LOCK = 72_707_372;
const MOST_KEPT = 8;
const ROWS_AT_ONCE = 1000;

/**
 * The evaluation of the group at a day on what was known at the instant the request looks back to, by the computation
 * of now: computed once from the rows as they stood, or from the snapshot of that day where rows of then are not kept.
 */
export async function pastEvaluation(asOf: IsoDate): Promise<EvaluationMark> {
  const basis = await pastBasis(asOf);
  const known = await stored(presentDatabase(), asOf, basis);
  if (known) return known;
  return presentDatabase().$transaction(
    async (tx) => {
      await tx.$queryRaw`SELECT pg_advisory_xact_lock(${LOCK})::text`;
      return (await stored(tx, asOf, basis)) ?? compute(tx, asOf, basis);
    },
    { timeout: LONGEST_MS, maxWait: LONGEST_MS },
  );
}

async function stored(tx: Transaction, asOf: IsoDate, { key }: PastBasis): Promise<EvaluationMark | null> {
  const row = await tx.pastEvaluation.findUnique({
    where: { asOf_basis_engine: { asOf: dateOf(asOf), basis: key, engine: ENGINE } },
    select: {
      ...{ id: true, dataVersion: true, engine: true, assumptions: true },
      ...{ assumptionKind: true, assumptionVersion: true },
    },
  });
  if (!row) return null;
  const { id, dataVersion, engine, assumptionKind: kind, assumptionVersion: version } = row;
  const assumptions = storedAssumptions(row.assumptions);
  return {
    id,
    asOf,
    engine,
    dataVersion: Number(dataVersion),
    assumptionSet: { kind, version },
    assumptions,
  };
}

interface Read {
  readonly input: GroupInput;
  readonly set: SetInUse;
  readonly dataVersion: bigint;
  readonly lineIds: ReadonlySet<string>;
  readonly partIds: ReadonlySet<string>;
}

async function compute(tx: Transaction, asOf: IsoDate, basis: PastBasis): Promise<EvaluationMark> {
  const read = await database().$transaction((past) => readAll(past, asOf, basis), {
    ...{ isolationLevel: "RepeatableRead", timeout: LONGEST_MS, maxWait: LONGEST_MS },
  });
  const { input, set, dataVersion } = read;
  const group = await watchEvaluation("whole", async () => evaluateGroup(input, set.values));
  const { id } = await tx.pastEvaluation.create({
    data: {
      ...{ asOf: dateOf(asOf), basis: basis.key, dataVersion, engine: ENGINE },
      ...{ assumptionKind: set.kind, assumptionVersion: set.version, assumptions: asJson(set.values) },
      totals: asJson(group.drawn.totals),
    },
    select: { id: true },
  });
  const lines = group.lines.filter(({ lineId }) => read.lineIds.has(lineId));
  for (const some of inParts(lines))
    await tx.pastLine.createMany({
      data: some.map(({ result, place, ...line }) => ({
        ...{ ...line, evaluationId: id, result: asJson(result) },
        ...(place === null ? {} : { place: asJson(place) }),
      })),
    });
  const pools = poolsToStore(group.staged.result.pools).filter(({ partId }) => read.partIds.has(partId));
  for (const some of inParts(pools))
    await tx.pastPool.createMany({
      data: some.map(({ partId, result, noSpareByMonth }) => ({
        ...{ partId, evaluationId: id, result: asJson(result), noSpareByMonth: [...noSpareByMonth] },
      })),
    });
  await dropOld(tx);
  return { id, asOf, dataVersion: Number(dataVersion), ...ways(set) };
}

async function readAll(past: Transaction, asOf: IsoDate, basis: PastBasis): Promise<Read> {
  const { version } = await past.dataVersion.findUniqueOrThrow({ where: { id: 1 } });
  const inUse = await assumptionsInUse(past);
  const ids = { select: { id: true } } as const;
  const of = (rows: readonly { readonly id: string }[]) => new Set(rows.map(({ id }) => id));
  const there = {
    dataVersion: version,
    // What is gone from the records has no name to be shown under.
    lineIds: of(await past.line.findMany(ids)),
    partIds: of(await past.part.findMany(ids)),
  };
  if (basis.kind === "records") return { ...there, input: await loadGroupInput(past, asOf), set: inUse };
  const { input, assumptions } = thaw(await past.snapshot.findUniqueOrThrow({ where: { id: basis.id } }));
  return { ...there, input, set: { ...inUse, values: assumptions } };
}

async function dropOld(tx: Transaction): Promise<void> {
  const old = await tx.pastEvaluation.findMany({
    ...{ orderBy: { takenAt: "desc" }, skip: MOST_KEPT, select: { id: true } },
  });
  await tx.pastEvaluation.deleteMany({ where: { id: { in: old.map(({ id }) => id) } } });
}

const dateOf = (day: IsoDate) => new Date(`${day}T00:00:00Z`);

function asJson(value: unknown): Prisma.InputJsonValue {
  return value as Prisma.InputJsonValue;
}

function inParts<T>(rows: readonly T[]): (readonly T[])[] {
  return Array.from({ length: Math.ceil(rows.length / ROWS_AT_ONCE) }, (_, part) =>
    rows.slice(part * ROWS_AT_ONCE, (part + 1) * ROWS_AT_ONCE),
  );
}
