import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { inService } from "@/lib/data/quality/inService";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";

interface HoldingRow {
  readonly partId: string;
  readonly siteId: string;
  readonly siteCode: string;
  readonly units: number;
  readonly book: number;
}

/** Units installed and pieces on the books of every part, at each of the actor's sites. */
export function readHoldings(actor: Actor, asOf: IsoDate): Promise<HoldingRow[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  return database().$queryRaw<HoldingRow[]>`
    WITH placed AS (
      SELECT coalesce(u."partId", p."partId") AS "partId", l."siteId", count(*)::int AS "units"
      FROM "Position" p
      JOIN "Machine" m ON m."id" = p."machineId"
      JOIN "Line" l ON l."id" = m."lineId"
      LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
        AND daterange(pl."fromOn", pl."untilOn") @> ${asOf}::date
      LEFT JOIN "Unit" u ON u."id" = pl."unitId"
      WHERE coalesce(u."partId", p."partId") IS NOT NULL AND ${inService(asOf)}
      GROUP BY 1, 2
    ), shelved AS (
      SELECT "partId", "siteId", sum(coalesce("quantity", 0))::int AS "book" FROM "StockLot" GROUP BY 1, 2
    )
    SELECT "partId"::text AS "partId", s."id"::text AS "siteId", s."code" AS "siteCode",
      coalesce(placed."units", 0) AS "units", coalesce(shelved."book", 0) AS "book"
    FROM placed FULL JOIN shelved USING ("partId", "siteId")
    JOIN "Site" s ON s."id" = "siteId"
    WHERE ${ids}::uuid[] IS NULL OR s."id" = ANY(${ids}::uuid[])
    ORDER BY s."code"`;
}

interface WeekRow {
  readonly partId: string;
  readonly newRemovals: number;
  readonly repairsOut: number;
  readonly repairsOverdue: number;
}

/** Days of a weekly look: after `before`, up to and with `asOf`. */
export interface Week {
  readonly asOf: IsoDate;
  readonly before: IsoDate;
}

/** Removals of the week and units out for repair, by part, at the actor's sites. */
export function readWeek(actor: Actor, { asOf, before }: Week): Promise<WeekRow[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  return database().$queryRaw<WeekRow[]>`
    WITH removed AS (
      SELECT coalesce(e."partId", p."partId") AS "partId",
        count(DISTINCT coalesce(e."commonCause", e."id"::text))::int AS "newRemovals"
      FROM "Event" e
      LEFT JOIN "Position" p ON p."id" = e."positionId"
      WHERE e."setAside" IS NULL AND e."happenedAt" >= ${before}::date + 1 AND e."happenedAt" < ${asOf}::date + 1
        AND (${ids}::uuid[] IS NULL OR e."siteId" = ANY(${ids}::uuid[]))
      GROUP BY 1
    ), away AS (
      SELECT r."partId", count(*)::int AS "repairsOut",
        (count(*) FILTER (WHERE r."dueOn" < ${asOf}::date))::int AS "repairsOverdue"
      FROM "RepairOrder" r
      WHERE r."sentOn" <= ${asOf}::date AND (r."returnedOn" IS NULL OR r."returnedOn" > ${asOf}::date)
        AND (${ids}::uuid[] IS NULL OR r."siteId" = ANY(${ids}::uuid[]))
      GROUP BY 1
    )
    SELECT "partId"::text AS "partId", coalesce(removed."newRemovals", 0) AS "newRemovals",
      coalesce(away."repairsOut", 0) AS "repairsOut", coalesce(away."repairsOverdue", 0) AS "repairsOverdue"
    FROM removed FULL JOIN away USING ("partId")
    WHERE "partId" IS NOT NULL`;
}
