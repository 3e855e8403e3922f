import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { placesOf } from "@/lib/data/group/placesOf";
import type { PartQuestion } from "@/lib/data/partFacts";
import { inService } from "@/lib/data/quality/inService";
import { siteIds } from "@/lib/data/scope";
import type { PartPlace } from "@/lib/view/partDossier";

/**
 * The places that hold the part on a day at the actor's sites: what sits there counts, else what belongs there.
 */
export function readPartPlaces(actor: Actor, { partId, asOf }: PartQuestion): Promise<PartPlace[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  return database().$queryRaw<PartPlace[]>`
    SELECT p."id"::text AS "id", s."code" AS "siteCode", s."name" AS "siteName",
      l."code" AS "lineCode", l."name" AS "lineName", m."code" AS "machineCode", m."name" AS "machineName",
      a."code" AS "axisCode", p."designation", u."serial", u."revision", pl."fromOn"::text AS "sinceOn",
      p."evidence"::text AS "evidence"
    FROM "Position" p
    JOIN "Machine" m ON m."id" = p."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    JOIN "Site" s ON s."id" = l."siteId"
    LEFT JOIN "Axis" a ON a."id" = p."axisId"
    LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
      AND daterange(pl."fromOn", pl."untilOn") @> ${asOf}::date
    LEFT JOIN "Unit" u ON u."id" = pl."unitId"
    WHERE p."id" IN (${placesOf([partId])}) AND coalesce(u."partId", p."partId") = ${partId}::uuid AND ${inService(asOf)}
      AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
    ORDER BY s."code", l."code", m."code", a."code" NULLS LAST, p."designation"`;
}
