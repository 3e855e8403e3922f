import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { WINDOW_YEARS } from "@/lib/data/group/loadExperience";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LineEvent } from "@/lib/view/lineDossier";
import { Prisma } from "@/prisma/generated/client";

/** Which line's history, up to which day. */
export interface HistoryQuestion {
  readonly lineId: string;
  readonly asOf: IsoDate;
}

interface EventRow extends Omit<LineEvent, "part"> {
  readonly partId: string | null;
  readonly partNumber: string | null;
}

/**
 * Ids of the events of the window that name the line, a machine of it or a place on one; which of them counts is for
 * the reader.
 */
function eventsThatName({ lineId, asOf }: HistoryQuestion): Prisma.Sql {
  const inWindow = Prisma.sql`named."happenedAt" < ${asOf}::date + 1
    AND named."happenedAt" >= ${asOf}::date - make_interval(years => ${WINDOW_YEARS}::int)`;
  return Prisma.sql`
    SELECT named."id" FROM "Event" named WHERE named."lineId" = ${lineId}::uuid AND ${inWindow}
    UNION
    SELECT named."id" FROM "Machine" m JOIN "Event" named ON named."machineId" = m."id"
    WHERE m."lineId" = ${lineId}::uuid AND ${inWindow}
    UNION
    SELECT named."id" FROM "Machine" m
    JOIN "Position" p ON p."machineId" = m."id"
    JOIN "Event" named ON named."positionId" = p."id"
    WHERE m."lineId" = ${lineId}::uuid AND ${inWindow}`;
}

/** Events of a line in the five years before the day, newest first, those that do not count among them. */
export async function readLineEvents(actor: Actor, { lineId, asOf }: HistoryQuestion): Promise<LineEvent[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<EventRow[]>`
    SELECT e."id"::text AS "id", (e."happenedAt" AT TIME ZONE s."timeZone")::date::text AS "day",
      to_char(e."happenedAt" AT TIME ZONE s."timeZone", 'HH24:MI') AS "time", e."kind"::text AS "kind",
      coalesce(part."itemClass", p."itemClass", e."itemClass")::text AS "itemClass",
      coalesce(m."code", pm."code") AS "machine",
      CASE WHEN a."code" IS NULL THEN p."designation" ELSE a."code" || ' ' || p."designation" END AS "place",
      part."id"::text AS "partId", part."number" AS "partNumber",
      e."downtimeHours"::float8 AS "downtimeHours", e."logisticHours"::float8 AS "logisticHours",
      e."spareAtHand", e."source", e."reference", e."text", e."commonCause", e."setAside"
    FROM "Event" e
    JOIN "Site" s ON s."id" = e."siteId"
    LEFT JOIN "Machine" m ON m."id" = e."machineId"
    LEFT JOIN "Position" p ON p."id" = e."positionId"
    LEFT JOIN "Machine" pm ON pm."id" = p."machineId"
    LEFT JOIN "Axis" a ON a."id" = p."axisId"
    LEFT JOIN "Part" part ON part."id" = e."partId"
    WHERE e."id" IN (${eventsThatName({ lineId, asOf })})
      AND coalesce(e."lineId", m."lineId", pm."lineId") = ${lineId}::uuid
      AND (${ids}::uuid[] IS NULL OR e."siteId" = ANY(${ids}::uuid[]))
    ORDER BY e."happenedAt" DESC, e."reference"`;
  return rows.map(({ partId, partNumber, ...event }) => ({
    ...event,
    part: partId === null || partNumber === null ? null : { id: partId, number: partNumber },
  }));
}
