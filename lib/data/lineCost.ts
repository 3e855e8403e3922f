import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import type { LineCost } from "@/lib/view/lineRanking";

/**
 * What a stop costs on each line the actor may see, or on one of them, by line id.
 *
 * EUR at the site's budget rate, as the evaluation takes it; without a rate it is not known.
 */
export async function readLineCosts(
  actor: Actor,
  lineId: string | null = null,
): Promise<Map<string, LineCost>> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<(LineCost & { readonly lineId: string })[]>`
    SELECT l."id"::text AS "lineId", (l."costPerHour" / r."perEuro")::float8 AS "perHour",
      (l."costFixed" / r."perEuro")::float8 AS "fixed",
      CASE WHEN r."perEuro" IS NULL THEN '[]' ELSE (
        SELECT coalesce(jsonb_agg(jsonb_build_object(
          'afterHours', (step->>'afterHours')::float8, 'cost', ((step->>'cost')::numeric / r."perEuro")::float8
        ) ORDER BY (step->>'afterHours')::float8), '[]')
        FROM jsonb_array_elements(l."costSteps") step
      ) END AS "steps",
      l."costOwner" AS "owner", l."costApprovedOn"::text AS "approvedOn",
      l."costValidUntil"::text AS "validUntil", l."costEvidence"::text AS "evidence"
    FROM "Line" l
    JOIN "Site" s ON s."id" = l."siteId"
    LEFT JOIN "CurrencyRate" r ON r."currency" = s."currency"
    WHERE (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
      AND (${lineId}::uuid IS NULL OR l."id" = ${lineId}::uuid)`;
  return new Map(rows.map(({ lineId, ...cost }) => [lineId, cost]));
}
