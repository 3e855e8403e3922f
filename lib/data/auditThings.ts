import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import { Prisma } from "@/prisma/generated/client";

/** What an audited row is called, and the page that shows it. */
export interface ThingName {
  readonly label: string;
  readonly href: string | null;
}

interface NameRow {
  readonly id: string;
  readonly label: string;
  readonly href: string | null;
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/;

/** Names of audited rows by their ids, of the actor's sites and of what belongs to none. */
export async function readThingNames(
  actor: Actor,
  entityIds: readonly string[],
): Promise<ReadonlyMap<string, ThingName>> {
  const ids = [...new Set(entityIds)].filter((id) => UUID.test(id));
  const own = siteIds(actor, "read")?.in ?? null;
  const at = (site: Prisma.Sql) => Prisma.sql`(${own}::uuid[] IS NULL OR ${site} = ANY(${own}::uuid[]))`;
  const rows = await database().$queryRaw<NameRow[]>`
    SELECT l."id"::text AS "id", l."code" AS "label", '/lines/' || l."code" AS "href" FROM "Line" l
      WHERE l."id" = ANY(${ids}::uuid[]) AND ${at(Prisma.sql`l."siteId"`)}
    UNION ALL SELECT m."id"::text, l."code" || ' ' || m."code", '/machines/' || m."id" FROM "Machine" m
      JOIN "Line" l ON l."id" = m."lineId" WHERE m."id" = ANY(${ids}::uuid[]) AND ${at(Prisma.sql`l."siteId"`)}
    UNION ALL SELECT a."id"::text, l."code" || ' ' || m."code" || ' ' || a."code", '/machines/' || m."id" FROM "Axis" a
      JOIN "Machine" m ON m."id" = a."machineId" JOIN "Line" l ON l."id" = m."lineId"
      WHERE a."id" = ANY(${ids}::uuid[]) AND ${at(Prisma.sql`l."siteId"`)}
    UNION ALL SELECT p."id"::text, p."maker" || ' ' || p."number", '/parts/' || p."id" FROM "Part" p
      WHERE p."id" = ANY(${ids}::uuid[])
    UNION ALL SELECT t."id"::text, s."code" || ', ' || p."number" || ', bin ' || t."bin", '/parts/' || p."id" || '#stock'
      FROM "StockLot" t JOIN "Site" s ON s."id" = t."siteId" JOIN "Part" p ON p."id" = t."partId"
      WHERE t."id" = ANY(${ids}::uuid[]) AND ${at(Prisma.sql`t."siteId"`)}
    UNION ALL SELECT r."id"::text, r."reference", '/repairs' FROM "RepairOrder" r
      WHERE r."id" = ANY(${ids}::uuid[]) AND ${at(Prisma.sql`r."siteId"`)}
    UNION ALL SELECT c."id"::text, c."reference", '/counts/' || c."id" FROM "StockCount" c
      WHERE c."id" = ANY(${ids}::uuid[]) AND ${at(Prisma.sql`c."siteId"`)}
    UNION ALL SELECT p."id"::text, p."code", '/projects/' || p."code" FROM "Project" p
      WHERE p."id" = ANY(${ids}::uuid[]) AND ${at(Prisma.sql`p."siteId"`)}
    UNION ALL SELECT o."id"::text, o."title", '/dates#binding' FROM "Obligation" o
      WHERE o."id" = ANY(${ids}::uuid[]) AND ${at(Prisma.sql`o."siteId"`)}
    UNION ALL SELECT p."id"::text, p."name", '/plans/' || p."id" FROM "Plan" p
      WHERE p."id" = ANY(${ids}::uuid[]) AND ${own}::uuid[] IS NULL
    UNION ALL SELECT b."id"::text, b."fileName", '/import/' || b."id" FROM "ImportBatch" b
      WHERE b."id" = ANY(${ids}::uuid[]) AND ${own}::uuid[] IS NULL`;
  return new Map(rows.map(({ id, ...name }) => [id, name]));
}
