import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { inService } from "@/lib/data/quality/inService";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type LifecycleDates, supplyStage } from "@/lib/lifecycle/supplyStage";
import type { PoolResult } from "@/lib/risk/evaluation";
import type { ListedPart } from "@/lib/view/partList";

interface PartRow
  extends LifecycleDates,
    Pick<ListedPart, "id" | "maker" | "number" | "description" | "itemClass" | "family" | "installedHere"> {
  readonly installed: number | null;
  readonly book: number | null;
  readonly usable: number | null;
  readonly noSpare: PoolResult["noSpare"] | null;
  readonly depletionP80: IsoDate | null;
}

/** All parts of the group with their supply and spares on a day, by maker and number. */
export async function readParts(actor: Actor, asOf: IsoDate): Promise<ListedPart[]> {
  const evaluation = await currentEvaluation(asOf);
  const rows = await findParts(actor, asOf, evaluation.id);
  return rows.map((row) => {
    const { noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn, checkedOn, ...part } = row;
    const dates = { noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn, checkedOn };
    return {
      ...part,
      stage: supplyStage(dates, asOf),
      lastOrderOn,
      installed: part.installed ?? 0,
      usable: part.usable ?? 0,
    };
  });
}

function findParts(actor: Actor, asOf: IsoDate, evaluationId: string): Promise<PartRow[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  return database().$queryRaw<PartRow[]>`
    WITH here AS (
      SELECT coalesce(u."partId", p."partId") AS "partId", count(*)::int AS "units"
      FROM "Position" p
      JOIN "Machine" m ON m."id" = p."machineId"
      JOIN "Line" l ON l."id" = m."lineId"
      LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
        AND daterange(pl."fromOn", pl."untilOn") @> ${asOf}::date
      LEFT JOIN "Unit" u ON u."id" = pl."unitId"
      WHERE (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[])) AND ${inService(asOf)}
      GROUP BY 1
    )
    SELECT p."id"::text AS "id", p."maker", p."number", p."description", p."itemClass"::text AS "itemClass",
      family."name" AS "family", coalesce(here."units", 0) AS "installedHere",
      f."noticeOn"::text AS "noticeOn", f."lastOrderOn"::text AS "lastOrderOn", f."lastShipOn"::text AS "lastShipOn",
      f."repairUntilOn"::text AS "repairUntilOn", f."orderByOn"::text AS "orderByOn", f."checkedOn"::text AS "checkedOn",
      (e."result"->>'installed')::int AS "installed", (e."result"->>'book')::int AS "book",
      (e."result"->>'usable')::float8 AS "usable", e."result"->'noSpare' AS "noSpare",
      e."result"->>'depletionP80' AS "depletionP80"
    FROM "Part" p
    LEFT JOIN here ON here."partId" = p."id"
    LEFT JOIN "Family" family ON family."id" = p."familyId"
    LEFT JOIN "EvaluatedPool" e ON e."partId" = p."id" AND e."evaluationId" = ${evaluationId}::uuid
    LEFT JOIN LATERAL (
      SELECT * FROM "LifecycleFact" fact
      WHERE (fact."partId" = p."id" OR fact."familyId" = p."familyId") AND fact."recordedOn" <= ${asOf}::date
      ORDER BY (fact."partId" IS NULL), fact."recordedOn" DESC, fact."checkedOn" DESC, fact."id" DESC
      LIMIT 1
    ) f ON true
    WHERE ${maySomewhere(actor.grants, "read")} AND p."mergedIntoId" IS NULL
    ORDER BY p."maker", p."number"`;
}
