import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { eventsOfParts } from "@/lib/data/group/partRecords";
import type { PartQuestion } from "@/lib/data/partFacts";
import { siteIds } from "@/lib/data/scope";
import type { PartEvent } from "@/lib/view/partEvent";

/** Events of a part in the five years before the day at the actor's sites, newest first, those set aside among them. */
export function readPartEvents(
  actor: Actor,
  { partId, asOf }: Pick<PartQuestion, "partId" | "asOf">,
): Promise<PartEvent[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  return database().$queryRaw<PartEvent[]>`
    SELECT e."id"::text AS "id", (e."happenedAt" AT TIME ZONE s."timeZone")::date::text AS "day",
      to_char(e."happenedAt" AT TIME ZONE s."timeZone", 'HH24:MI') AS "time", e."kind"::text AS "kind",
      s."code" AS "siteCode", l."code" AS "lineCode", m."code" AS "machine",
      CASE WHEN a."code" IS NULL THEN p."designation" ELSE a."code" || ' ' || p."designation" END AS "place",
      e."downtimeHours"::float8 AS "downtimeHours", e."logisticHours"::float8 AS "logisticHours",
      e."spareAtHand", e."source", e."reference", e."text", e."commonCause", e."setAside"
    FROM (${eventsOfParts({ partIds: [partId], asOf })}) own
    JOIN "Event" e ON e."id" = own."id"
    JOIN "Site" s ON s."id" = e."siteId"
    LEFT JOIN "Position" p ON p."id" = e."positionId"
    LEFT JOIN "Axis" a ON a."id" = p."axisId"
    LEFT JOIN "Machine" m ON m."id" = coalesce(e."machineId", p."machineId")
    LEFT JOIN "Line" l ON l."id" = coalesce(e."lineId", m."lineId")
    WHERE ${ids}::uuid[] IS NULL OR e."siteId" = ANY(${ids}::uuid[])
    ORDER BY e."happenedAt" DESC, e."reference", e."id"`;
}
