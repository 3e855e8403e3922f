import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { inService, machineInService } from "@/lib/data/quality/inService";
import { atSites, siteIds, sites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { InstalledLevel, InstalledMap, InstalledRow } from "@/lib/view/installed";
import { Prisma } from "@/prisma/generated/client";

/** What is installed on a day, one level below the one asked for; null when the actor may not see that level. */
export async function readInstalled(
  actor: Actor,
  { asOf, level }: { readonly asOf: IsoDate; readonly level: InstalledLevel },
): Promise<InstalledMap | null> {
  if (level.of === "group") {
    const rows = await countInstalled(actor, { asOf, by: Prisma.sql`s`, of: Prisma.sql`true` });
    return { level: level.of, site: null, line: null, rows };
  }
  if (level.of === "site") {
    const site = await database().site.findFirst({
      where: { code: level.code, ...sites(actor, "read") },
      select: { code: true, name: true },
    });
    const of = Prisma.sql`s."code" = ${level.code}`;
    return (
      site && {
        ...{ level: level.of, site, line: null },
        rows: await countInstalled(actor, { asOf, by: Prisma.sql`l`, of }),
      }
    );
  }
  const line = await database().line.findFirst({
    where: { code: level.code, ...atSites(actor, "read") },
    select: { code: true, name: true, site: { select: { code: true, name: true } } },
  });
  const of = Prisma.sql`l."code" = ${level.code}`;
  return (
    line && {
      ...{ level: level.of, site: line.site, line: { code: line.code, name: line.name } },
      rows: await countInstalled(actor, { asOf, by: Prisma.sql`m`, of }),
    }
  );
}

interface Counting {
  readonly asOf: IsoDate;
  /** Table the rows are of: `s`, `l` or `m`. */
  readonly by: Prisma.Sql;
  /** Condition on `s` or `l`: what is counted. */
  readonly of: Prisma.Sql;
}

type CountedRow = Omit<InstalledRow, "evidence"> & InstalledRow["evidence"];

async function countInstalled(actor: Actor, { asOf, by, of }: Counting): Promise<InstalledRow[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const chosen = Prisma.sql`${of} AND (${ids}::uuid[] IS NULL OR s."id" = ANY(${ids}::uuid[]))`;
  const rows = await database().$queryRaw<CountedRow[]>`
    WITH places AS (
      SELECT m."id" AS "machineId", count(*) AS "places", count(pl."id") AS "units",
        count(*) FILTER (WHERE coalesce(pl."unitId", p."partId") IS NULL) AS "unidentified",
        count(*) FILTER (WHERE p."evidence" = 'measured') AS "measured",
        count(*) FILTER (WHERE p."evidence" = 'documented') AS "documented",
        count(*) FILTER (WHERE p."evidence" = 'inferred') AS "inferred",
        count(*) FILTER (WHERE p."evidence" = 'assumed') AS "assumed",
        count(*) FILTER (WHERE p."panelId" IS NULL) AS "unplaced",
        max(pl."fromOn") AS "lastChangeOn"
      FROM "Position" p
      JOIN "Machine" m ON m."id" = p."machineId"
      JOIN "Line" l ON l."id" = m."lineId"
      JOIN "Site" s ON s."id" = l."siteId"
      LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
        AND coalesce(pl."fromOn" <= ${asOf}::date, true) AND coalesce(pl."untilOn" > ${asOf}::date, true)
      WHERE ${chosen} AND ${inService(asOf)}
      GROUP BY m."id"
    ), panels AS (
      SELECT "machineId", count(*) AS "panels" FROM "Panel" GROUP BY "machineId"
    ), axes AS (
      SELECT m."id" AS "machineId", count(*) AS "axes"
      FROM "Axis" a
      JOIN "Machine" m ON m."id" = a."machineId"
      JOIN "Line" l ON l."id" = m."lineId"
      JOIN "Site" s ON s."id" = l."siteId"
      WHERE ${chosen}
      GROUP BY m."id"
    )
    SELECT ${by}."id"::text AS "id", ${by}."code", ${by}."name",
      count(DISTINCT l."id")::int AS "lines", count(m."id")::int AS "machines",
      coalesce(sum("panels"), 0)::int AS "panels", coalesce(sum("unplaced"), 0)::int AS "unplaced",
      coalesce(sum("axes"), 0)::int AS "axes", coalesce(sum("places"), 0)::int AS "places",
      coalesce(sum("units"), 0)::int AS "units", coalesce(sum("unidentified"), 0)::int AS "unidentified",
      coalesce(sum("measured"), 0)::int AS "measured", coalesce(sum("documented"), 0)::int AS "documented",
      coalesce(sum("inferred"), 0)::int AS "inferred", coalesce(sum("assumed"), 0)::int AS "assumed",
      max("lastChangeOn")::text AS "lastChangeOn",
      min(c."readOn") FILTER (WHERE c."readOn" <= ${asOf}::date)::text AS "readSince",
      count(DISTINCT c."id") FILTER (WHERE c."firmware" IS NULL)::int AS "controllersUnread"
    FROM "Site" s
    LEFT JOIN "Line" l ON l."siteId" = s."id"
    LEFT JOIN "Machine" m ON m."lineId" = l."id" AND ${machineInService(asOf)}
    LEFT JOIN "Controller" c ON c."id" = m."controllerId"
    LEFT JOIN places ON places."machineId" = m."id"
    LEFT JOIN axes ON axes."machineId" = m."id"
    LEFT JOIN panels ON panels."machineId" = m."id"
    WHERE ${chosen} AND ${by}."id" IS NOT NULL
    GROUP BY ${by}."id"
    ORDER BY ${by}."code"`;
  return rows.map(({ measured, documented, inferred, assumed, ...row }) => ({
    ...row,
    evidence: { measured, documented, inferred, assumed },
  }));
}
