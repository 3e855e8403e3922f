import "server-only";
import type { Transaction } from "@/lib/data/change";

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

/** What people call stored things, by id; ids that are none of ours are left out. */
export async function readNames(tx: Transaction, ids: Iterable<string>): Promise<Map<string, string>> {
  const wanted = [...new Set(ids)].filter((id) => UUID.test(id));
  if (wanted.length === 0) return new Map();
  const rows = await tx.$queryRaw<{ id: string; name: string }[]>`
    WITH wanted AS (SELECT unnest(${wanted}::uuid[]) AS "id"),
    machine AS (SELECT m."id", l."code" || ' ' || m."code" AS "name"
      FROM "Machine" m JOIN "Line" l ON l."id" = m."lineId"),
    part AS (SELECT "id", "maker" || ' ' || "number" AS "name" FROM "Part"),
    unit AS (SELECT u."id", p."name" || ' serial ' || u."serial" AS "name"
      FROM "Unit" u JOIN part p ON p."id" = u."partId"),
    position AS (SELECT p."id", m."name" || ' ' || p."designation" AS "name"
      FROM "Position" p JOIN machine m ON m."id" = p."machineId"),
    named AS (
      SELECT "id", "code" AS "name" FROM "Site"
      UNION ALL SELECT "id", "code" FROM "Line"
      UNION ALL SELECT * FROM machine
      UNION ALL SELECT c."id", s."code" || ' ' || c."designation" FROM "Controller" c
        JOIN "Site" s ON s."id" = c."siteId"
      UNION ALL SELECT n."id", s."code" || ' ' || n."name" FROM "Network" n JOIN "Site" s ON s."id" = n."siteId"
      UNION ALL SELECT p."id", m."name" || ' ' || p."designation" FROM "Panel" p JOIN machine m ON m."id" = p."machineId"
      UNION ALL SELECT a."id", m."name" || ' ' || a."code" FROM "Axis" a JOIN machine m ON m."id" = a."machineId"
      UNION ALL SELECT "id", "maker" || ' ' || "name" FROM "Family"
      UNION ALL SELECT * FROM part
      UNION ALL SELECT a."id", a."alias" || ' for ' || p."name" FROM "PartAlias" a JOIN part p ON p."id" = a."partId"
      UNION ALL SELECT s."id", p."name" || ' by ' || n."name" FROM "Successor" s
        JOIN part p ON p."id" = s."partId" JOIN part n ON n."id" = s."successorId"
      UNION ALL SELECT f."id", coalesce(p."name", y."maker" || ' ' || y."name") || ', ' || f."source"
        FROM "LifecycleFact" f LEFT JOIN part p ON p."id" = f."partId" LEFT JOIN "Family" y ON y."id" = f."familyId"
      UNION ALL SELECT * FROM position
      UNION ALL SELECT * FROM unit
      UNION ALL SELECT p."id", o."name" || ': ' || u."name" FROM "Placement" p
        JOIN position o ON o."id" = p."positionId" JOIN unit u ON u."id" = p."unitId"
      UNION ALL SELECT k."id", s."code" || ' ' || k."bin" || ' ' || p."name" FROM "StockLot" k
        JOIN "Site" s ON s."id" = k."siteId" JOIN part p ON p."id" = k."partId"
      UNION ALL SELECT e."id", s."code" || ' ' || coalesce(e."reference", '') FROM "Event" e
        JOIN "Site" s ON s."id" = e."siteId"
      UNION ALL SELECT b."id", c."designation" || ' ' || b."kind" || ' ' || b."takenOn" FROM "Backup" b
        JOIN "Controller" c ON c."id" = b."controllerId"
      UNION ALL SELECT c."id", coalesce(l."code", s."code") || ' ' || c."role" FROM "Contact" c
        JOIN "Site" s ON s."id" = c."siteId" LEFT JOIN "Line" l ON l."id" = c."lineId"
      UNION ALL SELECT w."id", coalesce(l."code", s."code") || ' ' || w."name" FROM "ShutdownWindow" w
        JOIN "Site" s ON s."id" = w."siteId" LEFT JOIN "Line" l ON l."id" = w."lineId"
    )
    SELECT n."id"::text AS "id", n."name" FROM wanted JOIN named n USING ("id")`;
  return new Map(rows.map(({ id, name }) => [id, name]));
}
