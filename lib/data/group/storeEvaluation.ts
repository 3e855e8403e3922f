import "server-only";
import { randomUUID } from "node:crypto";
import type { Transaction } from "@/lib/data/change";
import type { SetInUse } from "@/lib/data/group/assumptionsInUse";
import { binaryNumbers } from "@/lib/data/group/binaryNumbers";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { DrawnTotals } from "@/lib/risk/draws/drawTotals";
import { ENGINE } from "@/lib/risk/evaluate";
import type { GroupRows, PackedLines, PackedPools } from "@/lib/risk/tellGroup";
import type { Prisma } from "@/prisma/generated/client";

/** What an evaluation is of. */
export interface Evaluated {
  readonly asOf: IsoDate;
  readonly dataVersion: bigint;
  readonly set: SetInUse;
}

/** Stores an evaluation of everything with rows of its own; returns its id, which names its rows too. */
export async function storeWhole(tx: Transaction, evaluated: Evaluated, rows: GroupRows): Promise<string> {
  const id = randomUUID();
  await createEvaluation(tx, evaluated, { id, rowsId: id, totals: rows.totals });
  const of = { rowsId: id, version: evaluated.dataVersion };
  await insertLines(tx, of, rows.lines);
  await insertPools(tx, of, rows.pools);
  return id;
}

/** Stores an evaluation that shares all rows of `rowsId` but those given, which changed; returns its id. */
export async function storeStep(
  tx: Transaction,
  evaluated: Evaluated,
  { rowsId, totals, lines, pools }: GroupRows & { readonly rowsId: string },
): Promise<string> {
  const id = randomUUID();
  const version = evaluated.dataVersion;
  await createEvaluation(tx, evaluated, { id, rowsId, totals });
  const lineIds = lines.flatMap((some) => some.lineIds);
  const partIds = pools.flatMap((some) => some.partIds);
  await tx.$executeRaw`
    UPDATE "LineRow" SET "untilVersion" = ${version}
    WHERE "rowsId" = ${rowsId}::uuid AND "lineId" = ANY(${lineIds}::uuid[]) AND "untilVersion" > ${version}`;
  await tx.$executeRaw`
    UPDATE "PoolRow" SET "untilVersion" = ${version}
    WHERE "rowsId" = ${rowsId}::uuid AND "partId" = ANY(${partIds}::uuid[]) AND "untilVersion" > ${version}`;
  await insertLines(tx, { rowsId, version }, lines);
  await insertPools(tx, { rowsId, version }, pools);
  return id;
}

async function createEvaluation(
  tx: Transaction,
  { asOf, dataVersion, set }: Evaluated,
  { totals, ...ids }: { readonly id: string; readonly rowsId: string; readonly totals: DrawnTotals },
): Promise<void> {
  await tx.evaluation.create({
    data: {
      ...ids,
      ...{ asOf: new Date(`${asOf}T00:00:00Z`), dataVersion, engine: ENGINE },
      ...{ assumptionKind: set.kind, assumptionVersion: set.version, assumptions: asJson(set.values) },
      totals: asJson(totals),
    },
  });
}

function asJson(value: unknown): Prisma.InputJsonValue {
  return value as Prisma.InputJsonValue;
}

interface Of {
  readonly rowsId: string;
  readonly version: bigint;
}

/** A line that comes without a result keeps that of the row it follows. */
async function insertLines(
  tx: Transaction,
  { rowsId, version }: Of,
  lines: readonly PackedLines[],
): Promise<void> {
  for (const { text } of lines)
    await tx.$executeRaw`
      INSERT INTO "LineRow" ("rowsId", "lineId", "fromVersion", "rankByLoss", "rankByScore", "result", "place")
      SELECT ${rowsId}::uuid, r."lineId", ${version}, r."rankByLoss", r."rankByScore",
        coalesce(r."result", old."result"), r."place"
      FROM json_to_recordset(${text}::json)
        AS r("lineId" uuid, "rankByLoss" int, "rankByScore" int, "result" jsonb, "place" jsonb)
      LEFT JOIN "LineRow" old ON old."rowsId" = ${rowsId}::uuid AND old."lineId" = r."lineId"
        AND old."untilVersion" = ${version}`;
}

/** The months go beside the rows as one list of numbers, so many for each. */
async function insertPools(
  tx: Transaction,
  { rowsId, version }: Of,
  pools: readonly PackedPools[],
): Promise<void> {
  for (const { text, months, each } of pools)
    await tx.$executeRaw`
      INSERT INTO "PoolRow" ("rowsId", "partId", "fromVersion", "result", "noSpareByMonth")
      SELECT ${rowsId}::uuid, (r."row"->>'partId')::uuid, ${version}, r."row"->'result',
        m."numbers"[(r."place" - 1) * ${each}::int + 1 : r."place" * ${each}::int]
      FROM jsonb_array_elements(${text}::jsonb) WITH ORDINALITY AS r("row", "place"),
        (SELECT ${binaryNumbers(months)}::float8[] AS "numbers") m`;
}
