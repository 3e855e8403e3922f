import "server-only";
import type { Actor } from "@/lib/access/actor";
import { maySomewhere } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import {
  firstOf,
  holds,
  MOST_HITS,
  onLine,
  type RankedHit,
  rankOf,
  type Wanted,
} from "@/lib/data/search/matching";
import { Prisma } from "@/prisma/generated/client";

const NUMBER = Prisma.sql`p."number"`;
const ALIAS = Prisma.sql`a."alias"`;
const SERIAL = Prisma.sql`u."serial"`;

interface PartRow {
  readonly id: string;
  readonly maker: string;
  readonly number: string;
  readonly description: string;
  readonly alias: string | null;
  readonly aliasSite: string | null;
  readonly rank: number;
}

/** Parts by their number or another spelling of it; a storeroom's number only where the actor may read. */
export async function searchParts(actor: Actor, { key }: Wanted): Promise<RankedHit[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<PartRow[]>`
    (SELECT p."id"::text AS "id", p."maker", p."number", p."description",
      NULL AS "alias", NULL AS "aliasSite", ${rankOf(key, NUMBER)} AS "rank"
    FROM "Part" p
    WHERE ${maySomewhere(actor.grants, "read")} AND p."mergedIntoId" IS NULL AND ${holds(key, NUMBER)}
    ORDER BY "rank", p."number" LIMIT ${MOST_HITS})
    UNION ALL
    (SELECT p."id"::text, p."maker", p."number", p."description",
      a."alias", s."code", ${rankOf(key, ALIAS)} AS "rank"
    FROM "PartAlias" a
    JOIN "Part" p ON p."id" = a."partId"
    LEFT JOIN "Site" s ON s."id" = a."siteId"
    WHERE ${maySomewhere(actor.grants, "read")} AND ${holds(key, ALIAS)}
      AND (a."siteId" IS NULL OR ${ids}::uuid[] IS NULL OR a."siteId" = ANY(${ids}::uuid[]))
    ORDER BY "rank", a."alias" LIMIT ${MOST_HITS})`;
  return rows.map(({ id, maker, number, description, alias, aliasSite, rank }) => ({
    kind: "part",
    title: number,
    detail: [
      maker,
      description,
      ...(alias === null ? [] : [`also ${alias}${aliasSite === null ? "" : ` at ${aliasSite}`}`]),
    ].join(" · "),
    href: `/parts/${id}`,
    rank,
  }));
}

interface SerialRow {
  readonly serial: string;
  readonly partId: string;
  readonly number: string;
  readonly revision: string | null;
  readonly lineCode: string | null;
  readonly machineCode: string | null;
  readonly designation: string | null;
  readonly untilOn: string | null;
  readonly rank: number;
}

/** Units by serial number: where each is on the day, or where it last was. */
export async function searchSerials(actor: Actor, { key, asOf }: Wanted): Promise<RankedHit[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const units = {
    id: Prisma.sql`u."id"`,
    text: SERIAL,
    // Where a unit is decides only who may see it; who may see all need not be told for each.
    from:
      ids === null
        ? Prisma.sql`"Unit" u`
        : Prisma.sql`"Unit" u LEFT JOIN LATERAL (${lastPlace(asOf)}) there ON true`,
    where: ids === null ? Prisma.sql`true` : Prisma.sql`there."siteId" = ANY(${ids}::uuid[])`,
  };
  const rows = await database().$queryRaw<SerialRow[]>`
    SELECT found.*, there."lineCode", there."machineCode", there."designation", there."untilOn"
    FROM (
      SELECT u."id", u."serial", p."id"::text AS "partId", p."number", u."revision", ${rankOf(key, SERIAL)} AS "rank"
      FROM "Unit" u JOIN "Part" p ON p."id" = u."partId"
      WHERE u."id" IN (${firstOf(key, units)})
      ORDER BY "rank", u."serial" LIMIT ${MOST_HITS}
    ) found LEFT JOIN LATERAL (${lastPlace(asOf, Prisma.sql`found."id"`)}) there ON true
    ORDER BY found."rank", found."serial"`;
  return rows.map((row) => ({
    kind: "serial",
    title: row.serial,
    detail: `${row.number}${row.revision === null ? "" : ` revision ${row.revision}`} · ${whereabouts(row)}`,
    href: placeHref(row) ?? `/parts/${row.partId}#${encodeURIComponent(row.serial)}`,
    rank: row.rank,
  }));
}

/** Where a unit is on the day, or where it last was. */
function lastPlace(asOf: Wanted["asOf"], unitId = Prisma.sql`u."id"`): Prisma.Sql {
  return Prisma.sql`
    SELECT l."siteId", l."code" AS "lineCode", m."code" AS "machineCode", pos."designation",
      CASE WHEN pl."untilOn" <= ${asOf}::date THEN pl."untilOn"::text END AS "untilOn"
    FROM "Placement" pl
    JOIN "Position" pos ON pos."id" = pl."positionId"
    JOIN "Machine" m ON m."id" = pos."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    WHERE pl."unitId" = ${unitId} AND (pl."fromOn" IS NULL OR pl."fromOn" <= ${asOf}::date)
    ORDER BY pl."fromOn" DESC NULLS LAST LIMIT 1`;
}

function placeHref({ lineCode, machineCode, designation, untilOn }: SerialRow): string | null {
  if (lineCode === null || machineCode === null || designation === null || untilOn !== null) return null;
  return onLine(lineCode, "place", machineCode, designation);
}

function whereabouts({ lineCode, machineCode, designation, untilOn }: SerialRow): string {
  if (lineCode === null) return "in no place on record";
  const place = `${lineCode} / ${machineCode} / ${designation}`;
  return untilOn === null ? `in ${place}` : `taken out of ${place} on ${untilOn}`;
}
