import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { loadPoolsOf } from "@/lib/data/group/loadPools";
import { inService } from "@/lib/data/quality/inService";
import { atSites, siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LineResult, PoolFigures } from "@/lib/risk/evaluation";
import type { InstalledPart, LastBuyInput, MissingCost } from "@/lib/view/lastBuyBasis";

interface Asked {
  readonly familyId: string;
  readonly asOf: IsoDate;
}

/** What the last buy of a family rests on, at the actor's sites; null when there is no such family to read of. */
export async function readLastBuy(actor: Actor, { familyId, asOf }: Asked): Promise<LastBuyInput | null> {
  if (!z.uuid().safeParse(familyId).success || !maySomewhere(actor.grants, "read")) return null;
  const { id: evaluationId, ...mark } = await currentEvaluation(asOf);
  const family = await database().family.findUnique({
    where: { id: familyId },
    include: { parts: { orderBy: { number: "asc" } } },
  });
  if (!family) return null;
  const partIds = family.parts.map(({ id }) => id);
  const [pools, results, installed, leaving, costs, rates] = await Promise.all([
    loadPoolsOf(database(), asOf, partIds),
    database().evaluatedPool.findMany({
      where: { evaluationId, partId: { in: partIds } },
      select: { partId: true, result: true },
    }),
    readInstalled(actor, partIds, asOf),
    readLeaving(actor, partIds, asOf),
    readMissingCosts(actor, evaluationId, partIds),
    database().currencyRate.findMany({ select: { currency: true, perEuro: true } }),
  ]);
  const perEuro = new Map(rates.map(({ currency, perEuro: rate }) => [currency, rate.toNumber()]));
  const sites = await database().site.findMany({
    where: { id: siteIds(actor, "read") ?? {} },
    select: { id: true, code: true },
  });
  return {
    ...{
      asOf,
      family: { id: family.id, maker: family.maker, name: family.name, itemClass: family.itemClass },
    },
    ...{ pools, installed, leaving, costs, assumptions: mark.assumptions },
    basis: { engine: mark.engine, dataVersion: mark.dataVersion, assumptionSet: mark.assumptionSet },
    everySite: siteIds(actor, "read") === undefined,
    sites: Object.fromEntries(sites.map(({ id, code }) => [id, code])),
    parts: family.parts.map((part) => ({
      ...{ id: part.id, number: part.number, pricedOn: part.pricedOn?.toISOString().slice(0, 10) ?? null },
      price: inEuro(part.price?.toNumber() ?? null, perEuro.get(part.priceCurrency ?? "")),
    })),
    results: Object.fromEntries(
      results.map(({ partId, result }) => [partId, result as unknown as PoolFigures]),
    ),
  };
}

function inEuro(amount: number | null, perEuro: number | undefined): number | null {
  return amount === null || perEuro === undefined ? null : amount / perEuro;
}

/** Units of the parts on each line of the actor's sites on the day. */
function readInstalled(actor: Actor, partIds: readonly string[], asOf: IsoDate): Promise<InstalledPart[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  return database().$queryRaw<InstalledPart[]>`
    SELECT coalesce(u."partId", p."partId")::text AS "partId", l."siteId"::text AS "siteId", l."code" AS "lineCode",
      count(*)::int AS "units"
    FROM "Position" p
    JOIN "Machine" m ON m."id" = p."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
      AND daterange(pl."fromOn", pl."untilOn") @> ${asOf}::date
    LEFT JOIN "Unit" u ON u."id" = pl."unitId"
    WHERE coalesce(u."partId", p."partId") = ANY(${partIds}::uuid[]) AND ${inService(asOf)}
      AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
    GROUP BY 1, 2, 3
    ORDER BY 1, 2, 3`;
}

/** What projects under way take out, by part, site and day. */
async function readLeaving(actor: Actor, partIds: readonly string[], asOf: IsoDate) {
  const rows = await database().plannedRemoval.findMany({
    where: {
      ...{ partId: { in: [...partIds] }, leavesOn: { gte: new Date(`${asOf}T00:00:00Z`) } },
      ...{ line: atSites(actor, "read"), project: { status: { notIn: ["closed", "parked"] } } },
    },
    select: { partId: true, units: true, leavesOn: true, line: { select: { siteId: true, code: true } } },
    orderBy: [{ leavesOn: "asc" }, { id: "asc" }],
  });
  return rows.map(({ partId, units, leavesOn, line }) => ({
    ...{ partId, units, siteId: line.siteId, lineCode: line.code },
    on: leavesOn.toISOString().slice(0, 10),
  }));
}

/** What a stop costs more without a spare than with one, by part and line with a cost per hour. */
async function readMissingCosts(
  actor: Actor,
  evaluationId: string,
  partIds: readonly string[],
): Promise<MissingCost[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<
    { siteId: string; lineCode: string; pool: LineResult["pools"][number] }[]
  >`
    SELECT l."siteId"::text AS "siteId", l."code" AS "lineCode", pool AS "pool"
    FROM "EvaluatedLine" e
    JOIN "Line" l ON l."id" = e."lineId"
    CROSS JOIN LATERAL jsonb_array_elements(e."result"::jsonb -> 'pools') AS pool
    WHERE e."evaluationId" = ${evaluationId}::uuid AND pool ->> 'poolId' = ANY(${partIds}::text[])
      AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))`;
  return rows.flatMap(({ siteId, lineCode, pool }) =>
    pool.costWithSpare === null || pool.costWithoutSpare === null
      ? []
      : [
          {
            ...{ partId: pool.poolId, siteId, lineCode, units: pool.units },
            more: pool.costWithoutSpare - pool.costWithSpare,
          },
        ],
  );
}
