import "server-only";
import type { Transaction } from "@/lib/data/change";
import type { ListedEvent } from "@/lib/view/eventPair";
import { Prisma } from "@/prisma/generated/client";

interface EventRow extends Omit<ListedEvent, "part"> {
  readonly partId: string | null;
  readonly partNumber: string | null;
}

/** Events with the names of their places, newest first. */
export async function loadListed(
  tx: Transaction,
  { where, most }: { readonly where: Prisma.Sql; readonly most: number },
): Promise<ListedEvent[]> {
  const rows = await tx.$queryRaw<EventRow[]>`
    SELECT e."id"::text AS "id", (e."happenedAt" AT TIME ZONE s."timeZone")::date::text AS "day",
      to_char(e."happenedAt" AT TIME ZONE s."timeZone", 'HH24:MI') AS "time", e."kind"::text AS "kind",
      s."code" AS "siteCode", l."code" AS "lineCode", m."code" AS "machine",
      coalesce(part."itemClass", p."itemClass", e."itemClass")::text AS "itemClass",
      CASE WHEN a."code" IS NULL THEN p."designation" ELSE a."code" || ' ' || p."designation" END AS "place",
      part."id"::text AS "partId", part."number" AS "partNumber",
      e."downtimeHours"::float8 AS "downtimeHours", e."logisticHours"::float8 AS "logisticHours",
      e."spareAtHand", e."source", e."reference", e."text", e."commonCause", e."setAside"
    FROM "Event" e
    JOIN "Site" s ON s."id" = e."siteId"
    LEFT JOIN "Position" p ON p."id" = e."positionId"
    LEFT JOIN "Axis" a ON a."id" = p."axisId"
    LEFT JOIN "Machine" m ON m."id" = coalesce(e."machineId", p."machineId")
    LEFT JOIN "Line" l ON l."id" = coalesce(e."lineId", m."lineId")
    LEFT JOIN "Part" part ON part."id" = e."partId"
    WHERE ${where}
    ORDER BY e."happenedAt" DESC, e."reference", e."id"
    LIMIT ${most}`;
  return rows.map(({ partId, partNumber, ...event }) => ({
    ...event,
    part: partId === null || partNumber === null ? null : { id: partId, number: partNumber },
  }));
}

/** `where` of the events of some sites; null is all of them. */
export const atSiteIds = (ids: readonly string[] | null) =>
  Prisma.sql`(${ids}::uuid[] IS NULL OR e."siteId" = ANY(${ids}::uuid[]))`;
