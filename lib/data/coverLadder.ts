import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere, seesAmounts } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import type { EvaluationMark } from "@/lib/data/group/evaluationMark";
import { loadInstalled } from "@/lib/data/group/loadInstalled";
import { loadLeaving } from "@/lib/data/group/loadLeaving";
import { loadPoolsOf } from "@/lib/data/group/loadPools";
import { placesOf } from "@/lib/data/group/placesOf";
import { siteIds } from "@/lib/data/scope";
import { priceInEuro, toldPrice } from "@/lib/data/stock/partPrice";
import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import type { PoolFigures, PoolInput } from "@/lib/risk/evaluation";
import { monthsStored } from "@/lib/risk/evaluationRows";
import { leavingByPool } from "@/lib/risk/leavingByPool";
import { piecesAhead } from "@/lib/risk/shelfAdditions";
import { withLeaves } from "@/lib/risk/withLeaves";
import { type CoverFacts, type CoverLadder, comingByDay, coverLadder } from "@/lib/view/coverLadder";
import { Prisma } from "@/prisma/generated/client";

const DAYS_PER_YEAR = 365.25;

/** The ladders of all installed parts on a day. */
export async function readCoverLadders(actor: Actor, asOf: IsoDate): Promise<CoverLadder[]> {
  if (!maySomewhere(actor.grants, "read")) return [];
  return laddersOf(actor, asOf, null);
}

/** The ladder of one part; null when it is not installed or the actor may read nowhere. */
export async function readCoverLadder(
  actor: Actor,
  { partId, asOf }: { readonly partId: string; readonly asOf: IsoDate },
): Promise<CoverLadder | null> {
  if (!z.uuid().safeParse(partId).success || !maySomewhere(actor.grants, "read")) return null;
  return (await laddersOf(actor, asOf, [partId]))[0] ?? null;
}

async function laddersOf(
  actor: Actor,
  asOf: IsoDate,
  partIds: readonly string[] | null,
): Promise<CoverLadder[]> {
  const mark = await currentEvaluation(asOf);
  const leaves = await loadLeaving(database(), asOf);
  const leftLines = [...new Set(leaves.map(({ lineId }) => lineId))];
  const [stored, losses, installed, rates] = await Promise.all([
    findPools(mark.id, partIds),
    readShortages(actor, mark.id, partIds),
    loadInstalled(database(), asOf, leftLines),
    database().currencyRate.findMany({ select: { currency: true, perEuro: true } }),
  ]);
  const ids = stored.map(({ partId }) => partId);
  const inputs = new Map((await loadPoolsOf(database(), asOf, ids)).map((pool) => [pool.id, pool]));
  const nothing = { lines: [], pools: [], experience: [], restorations: [] };
  const basis = {
    ...{
      mark,
      losses,
      leaving: leavingByPool({ asOf, installed: withLeaves(installed, leaves), ...nothing }),
    },
    perEuro: new Map(rates.map(({ currency, perEuro }) => [currency, perEuro.toNumber()])),
    tellsPrices: seesAmounts(actor.grants),
  };
  return stored.flatMap((row) => {
    const pool = inputs.get(row.partId);
    const figures = row.result as unknown as PoolFigures;
    return pool && figures.installed > 0 ? [coverLadder(factsOf(row, { pool, figures }, basis), asOf)] : [];
  });
}

type StoredRow = Awaited<ReturnType<typeof findPools>>[number];

function findPools(evaluationId: string, partIds: readonly string[] | null) {
  return database().evaluatedPool.findMany({
    where: { evaluationId, ...(partIds === null ? {} : { partId: { in: [...partIds] } }) },
    select: {
      ...{ partId: true, result: true, noSpareByMonth: true },
      part: {
        select: {
          ...{ number: true, maker: true, itemClass: true, family: { select: { name: true } } },
          ...{ price: true, priceCurrency: true, pricedOn: true },
        },
      },
    },
  });
}

/** EUR a year lost for want of a spare, by part, over the lines with a cost per hour whose amounts the actor sees. */
async function readShortages(
  actor: Actor,
  evaluationId: string,
  partIds: readonly string[] | null,
): Promise<ReadonlyMap<string, number>> {
  const ids = siteIds(actor, "money:read")?.in ?? null;
  // Lines that hold none of the parts need not be opened.
  const opened = partIds
    ? Prisma.sql`SELECT DISTINCT m."lineId" FROM "Position" p JOIN "Machine" m ON m."id" = p."machineId"
        WHERE p."id" IN (${placesOf(partIds)})`
    : Prisma.sql`SELECT "id" AS "lineId" FROM "Line"`;
  const rows = await database().$queryRaw<{ partId: string; loss: number }[]>`
    WITH opened AS MATERIALIZED (${opened})
    SELECT pool ->> 'poolId' AS "partId", sum((pool ->> 'shortageLoss')::float8) AS "loss"
    FROM opened
    JOIN "Line" l ON l."id" = opened."lineId"
    JOIN "EvaluatedLine" e ON e."lineId" = opened."lineId" AND e."evaluationId" = ${evaluationId}::uuid
    CROSS JOIN LATERAL jsonb_array_elements(e."result"::jsonb -> 'pools') AS pool
    WHERE pool ->> 'shortageLoss' IS NOT NULL
      AND (${partIds}::text[] IS NULL OR pool ->> 'poolId' = ANY(${partIds}::text[]))
      AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
    GROUP BY 1`;
  return new Map(rows.map(({ partId, loss }) => [partId, loss]));
}

interface Basis {
  readonly mark: EvaluationMark;
  readonly losses: ReadonlyMap<string, number>;
  readonly leaving: ReturnType<typeof leavingByPool>;
  readonly perEuro: ReadonlyMap<string, number>;
  /** A price is the group's, so it is told to whom every amount is. */
  readonly tellsPrices: boolean;
}

function factsOf(
  { partId, part, noSpareByMonth }: StoredRow,
  { pool, figures }: { readonly pool: PoolInput; readonly figures: PoolFigures },
  { mark: { asOf, assumptions }, losses, leaving: byPool, perEuro, tellsPrices }: Basis,
): CoverFacts {
  const leaving = byPool.get(partId) ?? [];
  const { stage, installed, book, usable, removalsPerYear, noSpare, depletionP50, depletionP80 } = figures;
  return {
    ...{ partId, number: part.number, maker: part.maker, itemClass: part.itemClass },
    ...{ family: part.family?.name ?? null, stage, installed, book, usable, removalsPerYear },
    ...{ noSpare, noSpareByMonth: monthsStored(noSpareByMonth), depletionP50, depletionP80 },
    leaving: leaving.map(({ on, units }) => ({ on, units })),
    coming: comingByDay(
      piecesAhead(pool, { asOf, leaving }, assumptions).map(({ from, at, count, works }) => ({
        ...{ from, pieces: count, works },
        on: addDays(asOf, Math.round(at * DAYS_PER_YEAR)),
      })),
    ),
    shortageLoss: losses.get(partId) ?? null,
    price: tellsPrices ? toldPrice(part) : null,
    priceEuro: tellsPrices ? priceInEuro(part, perEuro) : null,
  };
}
