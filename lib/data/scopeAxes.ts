import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { machineInService } from "@/lib/data/quality/inService";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { PartFact, ScopeAxis, ScopeItem } from "@/lib/retrofit/scope/scopeFacts";
import { Prisma } from "@/prisma/generated/client";

/** Which line, or (null) all the actor may see, on which day, and where parts are found. */
export interface ScopeQuestion {
  readonly lineId: string | null;
  readonly asOf: IsoDate;
  readonly partOf: (id: string | null) => PartFact | null;
}

interface AxisRow extends Omit<ScopeAxis, "drive" | "motor"> {
  readonly drivePartId: string | null;
  readonly motorNumber: string | null;
  readonly motorFamily: string | null;
  readonly powerKw: number | null;
}

type ItemRow = Omit<ScopeItem, "part"> & { readonly partId: string | null; readonly lineCode: string };

/** The part in a place on a day: that of the unit there, else the one that belongs there. */
function placed(asOf: IsoDate): Prisma.Sql {
  return Prisma.sql`
    SELECT p."machineId", p."axisId", p."itemClass", p."evidence", coalesce(u."partId", p."partId") AS "partId"
    FROM "Position" p
    LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
      AND daterange(pl."fromOn", pl."untilOn") @> ${asOf}::date
    LEFT JOIN "Unit" u ON u."id" = pl."unitId"`;
}

/** The axes of a line, and those of other lines at the actor's sites that are nodes of the same rings. */
export async function readScopeAxes(
  actor: Actor,
  { lineId, asOf, partOf }: ScopeQuestion,
): Promise<ScopeAxis[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<AxisRow[]>`
    WITH ring AS (
      SELECT DISTINCT n."id" FROM "Network" n
      JOIN "Axis" a ON a."networkId" = n."id"
      JOIN "Machine" m ON m."id" = a."machineId"
      WHERE n."kind" = 'fibre_ring' AND (${lineId}::uuid IS NULL OR m."lineId" = ${lineId}::uuid)
    ), wanted AS (
      SELECT a.*, m."code" AS "machine", m."controllerId", l."code" AS "lineCode"
      FROM "Axis" a
      JOIN "Machine" m ON m."id" = a."machineId"
      JOIN "Line" l ON l."id" = m."lineId"
      WHERE (${lineId}::uuid IS NULL OR m."lineId" = ${lineId}::uuid OR a."networkId" IN (SELECT "id" FROM ring))
        AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[])) AND ${machineInService(asOf)}
    ), held AS (${placed(asOf)} WHERE p."axisId" IN (SELECT "id" FROM wanted))
    SELECT DISTINCT ON (a."lineCode", a."machine", a."code") a."id"::text AS "id", a."lineCode", a."machine", a."code",
      d."partId"::text AS "drivePartId", mp."number" AS "motorNumber", mf."name" AS "motorFamily",
      mp."powerKw"::float8 AS "powerKw", a."feedback", CASE WHEN n."kind" = 'fibre_ring' THEN n."name" END AS "ring",
      n."name" AS "network", c."designation" AS "controller",
      coalesce(greatest(d."evidence", mo."evidence"), a."evidence")::text AS "evidence"
    FROM wanted a
    LEFT JOIN "Network" n ON n."id" = a."networkId"
    LEFT JOIN "Controller" c ON c."id" = a."controllerId"
    LEFT JOIN held d ON d."axisId" = a."id" AND d."itemClass" = 'drive'
    LEFT JOIN held mo ON mo."axisId" = a."id" AND mo."itemClass" = 'motor'
    LEFT JOIN "Part" mp ON mp."id" = mo."partId"
    LEFT JOIN "Family" mf ON mf."id" = mp."familyId"
    ORDER BY a."lineCode", a."machine", a."code", d."partId", mp."number"`;
  return rows.map(({ drivePartId, motorNumber, motorFamily, powerKw, ...axis }) => ({
    ...axis,
    drive: partOf(drivePartId),
    motor: motorNumber === null ? null : { number: motorNumber, family: motorFamily, powerKw },
  }));
}

/** The controllers, racks and panels in the places of a line's machines. */
export async function readScopeItems(
  actor: Actor,
  { lineId, asOf, partOf }: ScopeQuestion,
): Promise<(ScopeItem & { readonly lineCode: string })[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<ItemRow[]>`
    SELECT l."code" AS "lineCode", m."code" AS "machine", h."itemClass"::text AS "itemClass", h."partId"::text AS "partId",
      c."designation" AS "controller"
    FROM (${placed(asOf)} WHERE p."axisId" IS NULL) h
    JOIN "Machine" m ON m."id" = h."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    LEFT JOIN "Controller" c ON c."id" = m."controllerId"
    WHERE (${lineId}::uuid IS NULL OR m."lineId" = ${lineId}::uuid) AND h."itemClass" IN ('controller', 'io', 'hmi')
      AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
    ORDER BY l."code", m."code", h."itemClass", h."partId"`;
  return rows.map(({ partId, ...item }) => ({ ...item, part: partOf(partId) }));
}
