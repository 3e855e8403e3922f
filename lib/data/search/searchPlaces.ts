import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { inService, machineInService } from "@/lib/data/quality/inService";
import { siteIds } from "@/lib/data/scope";
import { axesAcross, machinesAcross } from "@/lib/data/search/acrossCodes";
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

const LINE = [Prisma.sql`l."code"`, Prisma.sql`l."name"`];
const MACHINE = [Prisma.sql`m."code"`, Prisma.sql`m."name"`, Prisma.sql`l."code" || m."code"`];
const AXIS = [
  Prisma.sql`a."code"`,
  Prisma.sql`a."name"`,
  Prisma.sql`m."code" || a."code"`,
  Prisma.sql`l."code" || m."code" || a."code"`,
];
const POSITION = [Prisma.sql`p."designation"`];

/** What is out of service stands behind what is in service, however well it matches. */
const BEHIND = 3;

/** Where a found place is, in which words, and whether it may be seen. */
function atSites(actor: Actor): Prisma.Sql {
  const ids = siteIds(actor, "read")?.in ?? null;
  return Prisma.sql`(${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))`;
}

/** Lines by code or name. */
export async function searchLines(actor: Actor, { key }: Wanted): Promise<RankedHit[]> {
  const rows = await database().$queryRaw<{ code: string; name: string; site: string; rank: number }[]>`
    SELECT l."code", l."name", s."name" AS "site", ${rankOf(key, ...LINE)} AS "rank"
    FROM "Line" l JOIN "Site" s ON s."id" = l."siteId"
    WHERE ${holds(key, ...LINE)} AND ${atSites(actor)}
    ORDER BY "rank", l."code" LIMIT ${MOST_HITS}`;
  return rows.map(({ code, name, site, rank }) => ({
    kind: "line",
    title: code,
    detail: `${name} · ${site}`,
    href: `/lines/${encodeURIComponent(code)}`,
    rank,
  }));
}

interface PlaceRow {
  readonly code: string;
  readonly name: string | null;
  readonly lineCode: string;
  readonly lineName: string;
  readonly machineCode: string;
  readonly inService: boolean;
  readonly rank: number;
}

/** Machines by code, name, or line and machine code together. */
export async function searchMachines(actor: Actor, { key, asOf }: Wanted): Promise<RankedHit[]> {
  const rows = await database().$queryRaw<(PlaceRow & { id: string })[]>`
    SELECT m."id"::text AS "id", m."code", m."name", l."code" AS "lineCode", l."name" AS "lineName", m."code" AS "machineCode",
      ${machineInService(asOf)} AS "inService", ${rankOf(key, ...MACHINE)} AS "rank"
    FROM "Machine" m JOIN "Line" l ON l."id" = m."lineId"
    WHERE m."id" IN (
      SELECT m."id" FROM "Machine" m WHERE ${holds(key, Prisma.sql`m."code"`, Prisma.sql`m."name"`)}
      UNION ${machinesAcross(key, atSites(actor))}
    ) AND ${atSites(actor)}
    ORDER BY "inService" DESC, "rank", l."code", m."code" LIMIT ${MOST_HITS}`;
  return rows.map((row) => ({
    ...hitOf(row, "machine", `${row.lineCode} / ${row.code}`),
    href: `/machines/${row.id}`,
  }));
}

/** Axes by code, name, or the codes of line, machine and axis together. */
export async function searchAxes(actor: Actor, { key, asOf }: Wanted): Promise<RankedHit[]> {
  const axes = {
    id: Prisma.sql`a."id"`,
    from: Prisma.sql`"Axis" a JOIN "Machine" m ON m."id" = a."machineId" JOIN "Line" l ON l."id" = m."lineId"`,
    where: atSites(actor),
  };
  const rows = await database().$queryRaw<PlaceRow[]>`
    SELECT a."code", a."name", l."code" AS "lineCode", l."name" AS "lineName", m."code" AS "machineCode",
      ${machineInService(asOf)} AS "inService", ${rankOf(key, ...AXIS)} AS "rank"
    FROM "Axis" a JOIN "Machine" m ON m."id" = a."machineId" JOIN "Line" l ON l."id" = m."lineId"
    WHERE a."id" IN (
      ${firstOf(key, { ...axes, text: Prisma.sql`a."code"` })}
      UNION ${firstOf(key, { ...axes, text: Prisma.sql`a."name"` })}
      UNION ${axesAcross(key, atSites(actor))}
    )
    ORDER BY "inService" DESC, "rank", l."code", m."code", a."code" LIMIT ${MOST_HITS}`;
  return rows.map((row) => ({
    ...hitOf(row, "axis", `${row.lineCode} / ${row.machineCode} / ${row.code}`),
    href: onLine(row.lineCode, "axis", row.machineCode, row.code),
  }));
}

/** Places by their reference designation. */
export async function searchPositions(actor: Actor, { key, asOf }: Wanted): Promise<RankedHit[]> {
  const places = {
    id: Prisma.sql`p."id"`,
    text: Prisma.sql`p."designation"`,
    from: Prisma.sql`"Position" p JOIN "Machine" m ON m."id" = p."machineId" JOIN "Line" l ON l."id" = m."lineId"`,
    where: atSites(actor),
  };
  const rows = await database().$queryRaw<PlaceRow[]>`
    SELECT p."designation" AS "code", part."number" AS "name", l."code" AS "lineCode", l."name" AS "lineName",
      m."code" AS "machineCode", ${inService(asOf)} AS "inService", ${rankOf(key, ...POSITION)} AS "rank"
    FROM "Position" p JOIN "Machine" m ON m."id" = p."machineId" JOIN "Line" l ON l."id" = m."lineId"
    LEFT JOIN "Part" part ON part."id" = p."partId"
    WHERE p."id" IN (${firstOf(key, places)})
    ORDER BY "inService" DESC, "rank", l."code", m."code", p."designation" LIMIT ${MOST_HITS}`;
  return rows.map((row) => ({
    ...hitOf(row, "position", `${row.lineCode} / ${row.machineCode} / ${row.code}`),
    href: onLine(row.lineCode, "place", row.machineCode, row.code),
  }));
}

function hitOf(row: PlaceRow, kind: RankedHit["kind"], title: string): Omit<RankedHit, "href"> {
  const where = row.name === null ? row.lineName : `${row.name} · ${row.lineName}`;
  const detail = row.inService ? where : `${where} · out of service`;
  return { kind, title, detail, rank: row.inService ? row.rank : row.rank + BEHIND };
}
