import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { machineInService } from "@/lib/data/quality/inService";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { AxisGroup, ControllerFacts } from "@/lib/retrofit/compatibility/facts";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import { Prisma } from "@/prisma/generated/client";

/** Which lines: one, or (undefined) all the actor may see, with the units in their places on a day. */
export interface FactsQuestion {
  readonly asOf: IsoDate;
  readonly lineId?: string | undefined;
}

/** A controller hangs on a line by the machines it runs there. */
interface Place {
  readonly lineId: string;
  readonly controllerId: string;
}

interface ControllerRow extends Place {
  readonly designation: string;
  readonly model: string;
  readonly firmware: number | null;
  readonly firmwareRaw: string | null;
  readonly hardware: string | null;
  readonly axisLimit: number | null;
  readonly axesInAll: number | null;
  readonly memoryPercent: number | null;
  readonly evidence: ControllerFacts["evidence"];
  readonly readOn: IsoDate | null;
  readonly leads: boolean;
}

type GroupRow = Place & AxisGroup;
type CardRow = Place &
  ControllerFacts["cards"][number] & { readonly itemClass: string; readonly pieces: number };
type RingRow = Place & ControllerFacts["rings"][number];

/** What the compatibility rules ask about the controllers, by line id. */
export async function readControllerFacts(
  actor: Actor,
  question: FactsQuestion,
): Promise<Map<string, ControllerFacts[]>> {
  const terms = { ...question, ids: siteIds(actor, "read")?.in ?? null };
  const [controllers, groups, cards, rings] = await Promise.all([
    readControllers(terms),
    readGroups(terms),
    readCards(terms),
    readRings(terms),
  ]);
  const [groupsAt, cardsAt, ringsAt] = [byPlace(groups), byPlace(cards), byPlace(rings)];
  const lines = new Map<string, ControllerFacts[]>();
  for (const { lineId, controllerId, firmware, firmwareRaw, ...own } of controllers) {
    const key = `${lineId} ${controllerId}`;
    const items = cardsAt.get(key) ?? [];
    const facts: ControllerFacts = {
      ...own,
      level: parseFirmwareLevel(firmwareRaw ?? firmware?.toString() ?? null),
      groups: (groupsAt.get(key) ?? []).map(bare),
      cards: items.filter(({ itemClass }) => itemClass === "network_card").map(bareCard),
      racks: items
        .filter(({ itemClass }) => itemClass === "io")
        .map(({ family, pieces }) => ({ family, pieces })),
      rings: (ringsAt.get(key) ?? []).map(bare),
    };
    lines.set(lineId, [...(lines.get(lineId) ?? []), facts]);
  }
  return lines;
}

function byPlace<Row extends Place>(rows: readonly Row[]): Map<string, Row[]> {
  const found = new Map<string, Row[]>();
  for (const row of rows) {
    const key = `${row.lineId} ${row.controllerId}`;
    const list = found.get(key);
    if (list) list.push(row);
    else found.set(key, [row]);
  }
  return found;
}

function bare<Row extends Place>({
  lineId: _line,
  controllerId: _controller,
  ...row
}: Row): Omit<Row, keyof Place> {
  return row;
}

const bareCard = ({ family, revision, evidence }: CardRow) => ({ family, revision, evidence });

interface Terms extends FactsQuestion {
  /** Sites the actor may read; null is all. */
  readonly ids: readonly string[] | null;
}

/** Machines with a controller at the sites of the actor, of one line or of all. */
function seen({ ids, lineId, asOf }: Terms): Prisma.Sql {
  return Prisma.sql`(${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
    AND (${lineId ?? null}::uuid IS NULL OR l."id" = ${lineId ?? null}::uuid) AND m."controllerId" IS NOT NULL
    AND ${machineInService(asOf)}`;
}

function readControllers(terms: Terms): Promise<ControllerRow[]> {
  return database().$queryRaw<ControllerRow[]>`
    WITH machine AS (
      SELECT m."controllerId", m."id", count(a."id") AS "axes"
      FROM "Machine" m LEFT JOIN "Axis" a ON a."machineId" = m."id"
      WHERE m."controllerId" IN (
        SELECT m."controllerId" FROM "Machine" m JOIN "Line" l ON l."id" = m."lineId" WHERE ${seen(terms)})
      GROUP BY m."controllerId", m."id"
    ), driven AS (
      SELECT "controllerId", CASE WHEN min("axes") > 0 THEN sum("axes")::int END AS "axes"
      FROM machine GROUP BY "controllerId"
    )
    SELECT DISTINCT m."lineId"::text AS "lineId", c."id"::text AS "controllerId", c."designation", c."model",
      c."firmware", c."firmwareRaw", c."hardware", c."axisLimit", driven."axes" AS "axesInAll",
      c."memoryPercent"::float8 AS "memoryPercent", c."evidence"::text AS "evidence",
      c."readOn"::text AS "readOn", c."leadsLineId" IS NOT DISTINCT FROM m."lineId" AS "leads"
    FROM "Machine" m
    JOIN "Line" l ON l."id" = m."lineId"
    JOIN "Controller" c ON c."id" = m."controllerId"
    JOIN driven ON driven."controllerId" = c."id"
    WHERE ${seen(terms)}
    ORDER BY "lineId", c."designation"`;
}

/**
 * The part in a place on a day: that of the unit there, else the one that belongs there.
 *
 * The days are compared one by one, because the planner takes a range that holds a day for a rare thing.
 */
function placed({ asOf }: Terms, itemClasses: readonly string[]): Prisma.Sql {
  return Prisma.sql`
    SELECT p."machineId", p."axisId", p."itemClass", p."evidence", coalesce(u."partId", p."partId") AS "partId",
      u."revision"
    FROM "Position" p
    LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
      AND (pl."fromOn" IS NULL OR pl."fromOn" <= ${asOf}::date)
      AND (pl."untilOn" IS NULL OR pl."untilOn" > ${asOf}::date)
    LEFT JOIN "Unit" u ON u."id" = pl."unitId"
    WHERE p."itemClass" = ANY(${[...itemClasses]}::"ItemClass"[])
      AND p."machineId" IN (SELECT m."id" FROM "Machine" m JOIN "Line" l ON l."id" = m."lineId" WHERE `;
}

function readGroups(terms: Terms): Promise<GroupRow[]> {
  return database().$queryRaw<GroupRow[]>`
    WITH placed AS (${placed(terms, ["drive", "motor"])} ${seen(terms)})
    ), target AS (
      SELECT s."partId", array_agg(DISTINCT f."name" ORDER BY f."name") AS "families"
      FROM "Successor" s JOIN "Part" part ON part."id" = s."successorId" JOIN "Family" f ON f."id" = part."familyId"
      WHERE part."itemClass" = 'drive'
      GROUP BY s."partId"
    )
    SELECT m."lineId"::text AS "lineId", m."controllerId"::text AS "controllerId", count(*)::int AS "axes",
      df."name" AS "drive", coalesce(t."families", '{}') AS "targets", mf."name" AS "motor",
      mp."powerKw"::float8 AS "powerKw", a."feedback", max(greatest(d."evidence", mo."evidence"))::text AS "evidence"
    FROM "Axis" a
    JOIN "Machine" m ON m."id" = a."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    LEFT JOIN placed d ON d."axisId" = a."id" AND d."itemClass" = 'drive'
    LEFT JOIN "Part" dp ON dp."id" = d."partId"
    LEFT JOIN "Family" df ON df."id" = dp."familyId"
    LEFT JOIN target t ON t."partId" = d."partId"
    LEFT JOIN placed mo ON mo."axisId" = a."id" AND mo."itemClass" = 'motor'
    LEFT JOIN "Part" mp ON mp."id" = mo."partId"
    LEFT JOIN "Family" mf ON mf."id" = mp."familyId"
    WHERE ${seen(terms)}
    GROUP BY m."lineId", m."controllerId", df."name", t."families", mf."name", mp."powerKw", a."feedback"
    ORDER BY m."lineId", m."controllerId", df."name", mf."name", mp."powerKw", a."feedback"`;
}

function readCards(terms: Terms): Promise<CardRow[]> {
  return database().$queryRaw<CardRow[]>`
    WITH placed AS (${placed(terms, ["network_card", "io"])} ${seen(terms)}))
    SELECT m."lineId"::text AS "lineId", m."controllerId"::text AS "controllerId", p."itemClass"::text AS "itemClass",
      f."name" AS "family", p."revision", p."evidence"::text AS "evidence", count(*)::int AS "pieces"
    FROM placed p
    JOIN "Machine" m ON m."id" = p."machineId"
    JOIN "Part" part ON part."id" = p."partId"
    JOIN "Family" f ON f."id" = part."familyId"
    GROUP BY m."lineId", m."controllerId", p."itemClass", f."name", p."revision", p."evidence"
    ORDER BY m."lineId", m."controllerId", f."name", p."revision"`;
}

function readRings(terms: Terms): Promise<RingRow[]> {
  return database().$queryRaw<RingRow[]>`
    WITH ring AS (
      SELECT n."id", n."name", count(*)::int AS "axes"
      FROM "Network" n JOIN "Axis" a ON a."networkId" = n."id"
      WHERE n."kind" = 'fibre_ring' AND n."id" IN (
        SELECT a."networkId" FROM "Axis" a JOIN "Machine" m ON m."id" = a."machineId"
        JOIN "Line" l ON l."id" = m."lineId" WHERE ${seen(terms)})
      GROUP BY n."id", n."name"
    )
    SELECT m."lineId"::text AS "lineId", m."controllerId"::text AS "controllerId", ring."name",
      count(*)::int AS "axes", ring."axes" - count(*)::int AS "elsewhere"
    FROM "Axis" a
    JOIN ring ON ring."id" = a."networkId"
    JOIN "Machine" m ON m."id" = a."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    WHERE ${seen(terms)}
    GROUP BY m."lineId", m."controllerId", ring."id", ring."name", ring."axes"
    ORDER BY m."lineId", m."controllerId", ring."name"`;
}
