import "server-only";
import type { Transaction } from "@/lib/data/change";
import { WINDOW_YEARS } from "@/lib/data/group/loadExperience";
import { placesOf } from "@/lib/data/group/placesOf";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { Prisma } from "@/prisma/generated/client";

/** Which parts, up to which day. */
export interface RecordsQuestion {
  readonly partIds: readonly string[];
  readonly asOf: IsoDate;
}

const since = (asOf: IsoDate) =>
  Prisma.sql`(${asOf}::date - make_interval(years => ${WINDOW_YEARS}::int))::date`;

/**
 * Events of the window with the part each belongs to, as `id` and `partId`, those set aside among them.
 *
 * The same parts the group's experience counts them for: the one named, else the one in the place.
 */
export function eventsOfParts({ partIds, asOf }: RecordsQuestion): Prisma.Sql {
  const window = Prisma.sql`e."happenedAt" >= ${since(asOf)} AND e."happenedAt" < ${asOf}::date + 1`;
  return Prisma.sql`
    SELECT e."id", e."partId" FROM "Event" e WHERE e."partId" = ANY(${partIds}::uuid[]) AND ${window}
    UNION ALL
    SELECT e."id", coalesce(u."partId", p."partId") FROM "Event" e
    JOIN "Position" p ON p."id" = e."positionId"
    -- On the day of a change the event belongs to the unit that left.
    LEFT JOIN "Placement" pl ON pl."positionId" = e."positionId"
      AND daterange(pl."fromOn", pl."untilOn", '(]') @> e."happenedAt"::date
    LEFT JOIN "Unit" u ON u."id" = pl."unitId"
    WHERE e."partId" IS NULL AND e."positionId" IN (${placesOf(partIds)})
      AND coalesce(u."partId", p."partId") = ANY(${partIds}::uuid[]) AND ${window}`;
}

/** Units of the parts in service in the window, as `partId`, `siteId`, `fromDay` and `untilDay` from its start. */
function serviceOfParts({ partIds, asOf }: RecordsQuestion): Prisma.Sql {
  return Prisma.sql`
    SELECT "partId", "siteId", "fromOn" - ${since(asOf)} AS "fromDay", "untilOn" - ${since(asOf)} AS "untilDay"
    FROM (
      SELECT coalesce(u."partId", p."partId") AS "partId", l."siteId",
        greatest(${since(asOf)}, pl."fromOn", make_date(coalesce(a."inServiceYear", m."inServiceYear"), 1, 1)) AS "fromOn",
        least(pl."untilOn", ${asOf}::date, p."retiredOn", m."retiredOn") AS "untilOn"
      FROM "Position" p
      JOIN "Machine" m ON m."id" = p."machineId"
      JOIN "Line" l ON l."id" = m."lineId"
      LEFT JOIN "Axis" a ON a."id" = p."axisId"
      LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
      LEFT JOIN "Unit" u ON u."id" = pl."unitId"
      WHERE p."id" IN (${placesOf(partIds)}) AND coalesce(u."partId", p."partId") = ANY(${partIds}::uuid[])
    ) service WHERE "untilOn" > "fromOn"`;
}

/** One thing that counts: an event, or all events of one cause at one site. */
export interface PartMark {
  readonly siteId: string;
  /** Days from the start of the window to the first event, and to the first that is a failure; null is none. */
  readonly day: number;
  readonly failureDay: number | null;
}

const markOf = Prisma.sql`coalesce(e."commonCause", e."id"::text)`;

/** What counts for a part at every site, oldest first. */
export function loadPartMarks(
  tx: Transaction,
  { partId, asOf }: { readonly partId: string; readonly asOf: IsoDate },
): Promise<PartMark[]> {
  const passed = Prisma.sql`extract(epoch FROM e."happenedAt" - ${since(asOf)}) / 86400`;
  return tx.$queryRaw<PartMark[]>`
    SELECT e."siteId"::text AS "siteId", min(${passed})::float8 AS "day",
      (min(${passed}) FILTER (WHERE e."kind" <> 'no_fault_found'))::float8 AS "failureDay"
    FROM (${eventsOfParts({ partIds: [partId], asOf })}) own
    JOIN "Event" e ON e."id" = own."id"
    WHERE e."setAside" IS NULL
    GROUP BY e."siteId", ${markOf}
    ORDER BY 2, 1`;
}

/** Units of a part in service together at a site, in days from the start of the window. */
export interface PartService {
  readonly siteId: string;
  readonly fromDay: number;
  readonly untilDay: number;
  readonly units: number;
}

/** When how many units of a part were in service, at every site. */
export function loadPartService(
  tx: Transaction,
  { partId, asOf }: { readonly partId: string; readonly asOf: IsoDate },
): Promise<PartService[]> {
  return tx.$queryRaw<PartService[]>`
    SELECT "siteId"::text AS "siteId", "fromDay", "untilDay", count(*)::int AS "units"
    FROM (${serviceOfParts({ partIds: [partId], asOf })}) own
    GROUP BY 1, 2, 3 ORDER BY 1, 2, 3`;
}
