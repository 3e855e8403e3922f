import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { sites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { PoolFigures } from "@/lib/risk/evaluation";
import type { ReportPart } from "@/lib/view/report";

/** Pools whose parts are asked for, on which evaluation and day. */
export interface PartsQuestion {
  readonly asOf: IsoDate;
  readonly evaluationId: string;
  readonly poolIds: readonly string[];
}

/** The parts with the dates in force on the day and their pools; stock of sites not seen is in no single place. */
export async function readReportParts(
  actor: Actor,
  { asOf, evaluationId, poolIds }: PartsQuestion,
): Promise<ReportPart[]> {
  const partIds = poolIds.filter((id) => !id.startsWith("unidentified:"));
  const [rows, seen] = await Promise.all([
    database().$queryRaw<ReportPart[]>`
      SELECT p."id"::text AS "id", p."number", p."itemClass"::text AS "itemClass",
        CASE WHEN f."familyId" IS NULL THEN p."number" ELSE coalesce(family."name", p."number") END AS "datesOf",
        f."lastOrderOn"::text AS "lastOrderOn", f."orderByOn"::text AS "orderByOn",
        f."lastShipOn"::text AS "lastShipOn", f."repairUntilOn"::text AS "repairUntilOn", e."result" AS "pool"
      FROM "Part" p
      JOIN "EvaluatedPool" e ON e."partId" = p."id" AND e."evaluationId" = ${evaluationId}::uuid
      LEFT JOIN "Family" family ON family."id" = p."familyId"
      LEFT JOIN LATERAL (
        SELECT * FROM "LifecycleFact" fact
        WHERE (fact."partId" = p."id" OR fact."familyId" = p."familyId") AND fact."recordedOn" <= ${asOf}::date
        ORDER BY (fact."partId" IS NULL), fact."recordedOn" DESC, fact."checkedOn" DESC, fact."id" DESC
        LIMIT 1
      ) f ON true
      WHERE p."id" = ANY(${partIds}::uuid[])
      ORDER BY p."number"`,
    database().site.findMany({ where: sites(actor, "read"), select: { id: true } }),
  ]);
  const own = new Set(seen.map(({ id }) => id));
  return rows.map((row) => ({ ...row, pool: withOwnShelves(row.pool, own) }));
}

function withOwnShelves(pool: PoolFigures, own: ReadonlySet<string>): PoolFigures {
  const shelves = Object.entries(pool.usableBySite).filter(([siteId]) => own.has(siteId));
  return { ...pool, usableBySite: Object.fromEntries(shelves) };
}
