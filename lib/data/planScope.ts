import "server-only";
import type { Actor } from "@/lib/access/actor";
import type { Deed } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { inService } from "@/lib/data/quality/inService";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { RetrofitScope } from "@/lib/view/planCut";

/** Which lines are asked for, by what the person may do there, and on which evaluation. */
export interface ScopeQuestion {
  readonly asOf: IsoDate;
  readonly evaluationId: string;
  readonly deed: Deed;
}

interface ScopeRow extends RetrofitScope {
  readonly lineId: string;
}

/**
 * What a retrofit would replace on each line, by line id; a line without such units is not in the map.
 *
 * Drives out of open supply, undated or not identified; motors out of open supply on the same axes; controllers
 * and operator panels of those machines that can no longer be ordered. A raise of firmware alone is not in it.
 */
export async function readRetrofitScopes(
  actor: Actor,
  { asOf, evaluationId, deed }: ScopeQuestion,
): Promise<Map<string, RetrofitScope>> {
  const ids = siteIds(actor, deed)?.in ?? null;
  const rows = await database().$queryRaw<ScopeRow[]>`
    WITH placed AS (
      SELECT m."lineId", m."id" AS "machineId", p."axisId", p."itemClass", e."result"->>'stage' AS "stage",
        coalesce(u."partId", p."partId") AS "partId"
      FROM "Position" p
      JOIN "Machine" m ON m."id" = p."machineId"
      JOIN "Line" l ON l."id" = m."lineId"
      LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
        AND daterange(pl."fromOn", pl."untilOn") @> ${asOf}::date
      LEFT JOIN "Unit" u ON u."id" = pl."unitId"
      LEFT JOIN "EvaluatedPool" e ON e."partId" = coalesce(u."partId", p."partId")
        AND e."evaluationId" = ${evaluationId}::uuid
      WHERE (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[])) AND ${inService(asOf)}
    ), old_drive AS (
      SELECT * FROM placed WHERE "itemClass" = 'drive' AND "stage" IS DISTINCT FROM 'open'
    ), successor AS (
      SELECT s."partId", avg(part."price" / rate."perEuro") AS "price"
      FROM "Successor" s
      JOIN "Part" part ON part."id" = s."successorId"
      JOIN "CurrencyRate" rate ON rate."currency" = part."priceCurrency"
      GROUP BY s."partId"
    ), others AS (
      SELECT o."lineId",
        count(*) FILTER (WHERE o."itemClass" = 'motor' AND o."stage" IS DISTINCT FROM 'open'
          AND o."axisId" IN (SELECT "axisId" FROM old_drive))::int AS "motors",
        count(*) FILTER (WHERE o."itemClass" = 'controller'
          AND o."stage" IN ('orders-shut', 'repair-fed', 'own-stock'))::int AS "controllers",
        count(*) FILTER (WHERE o."itemClass" = 'hmi'
          AND o."stage" IN ('orders-shut', 'repair-fed', 'own-stock'))::int AS "hmis"
      FROM placed o
      WHERE o."machineId" IN (SELECT "machineId" FROM old_drive)
      GROUP BY o."lineId"
    )
    SELECT d."lineId"::text AS "lineId", count(DISTINCT d."machineId")::int AS "machines", count(*)::int AS "drives",
      count(*) FILTER (WHERE d."stage" IS NULL OR d."stage" = 'undated')::int AS "undatedDrives",
      o."motors", o."controllers", o."hmis", avg(successor."price")::float8 AS "drivePrice"
    FROM old_drive d
    JOIN others o ON o."lineId" = d."lineId"
    LEFT JOIN successor ON successor."partId" = d."partId"
    GROUP BY d."lineId", o."motors", o."controllers", o."hmis"`;
  return new Map(rows.map(({ lineId, ...scope }) => [lineId, scope]));
}
