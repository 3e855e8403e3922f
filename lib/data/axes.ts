import "server-only";
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { AXES, chosen, inOrder, itemOfAxis, orderOf, seekAfter } from "@/lib/data/axisList/axisQuery";
import { database } from "@/lib/data/client";
import { siteIds, sites } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { recordedCountsPerUnit } from "@/lib/retrofit/scaling";
import type { AxisFilter, AxisPage, ListedAxis } from "@/lib/view/axisList";
import { Prisma } from "@/prisma/generated/client";

/** Rows of one page: more than a table draws at once, so that it scrolls alike from the first page on. */
export const AXES_A_PAGE = 250;

/** More designations than this are no choice; the address takes any. */
const PANELS_OFFERED = 200;

export interface AxesQuestion {
  readonly asOf: IsoDate;
  readonly filter: AxisFilter;
  /** Id of the last axis of the page before; null is the first page. */
  readonly after: string | null;
}

interface StoredAxis extends Omit<ListedAxis, "drive" | "motor" | "countsPerUnit"> {
  readonly driveId: string | null;
  readonly driveNumber: string | null;
  readonly motorId: string | null;
  readonly motorNumber: string | null;
  readonly countsPerRev: number | null;
  readonly motorRevs: number | null;
  readonly loadRevs: number | null;
  readonly unitsPerLoadRev: number | null;
}

/** A page of the axes at the actor's sites. It goes on after an axis, so that a deep page costs what the first does. */
export async function readAxes(actor: Actor, { asOf, filter, after }: AxesQuestion): Promise<AxisPage> {
  if (after !== null && !z.uuid().safeParse(after).success) return { axes: [], next: null };
  const scope = scopeOfAxes(actor);
  const order = orderOf(filter);
  const rows = await database().$queryRaw<StoredAxis[]>`
    SELECT a."id"::text AS "id", m."id"::text AS "machineId", s."code" AS "siteCode", l."code" AS "lineCode",
      m."code" AS "machineCode", a."code" AS "axisCode", a."name" AS "axisName",
      drive."id" AS "driveId", drive."number" AS "driveNumber", drive."family",
      motor."id" AS "motorId", motor."number" AS "motorNumber",
      n."name" AS "network", n."kind"::text AS "networkKind", n."profileFamily", a."nodeAddress", a."ringOrder",
      drive."panel", a."feedback", ${FACTS},
      a."countsPerRev", a."motorRevs", a."loadRevs", a."unitsPerLoadRev"::float8 AS "unitsPerLoadRev",
      a."inServiceYear", a."evidence"::text AS "evidence"
    FROM ${AXES}
    LEFT JOIN LATERAL (${itemOfAxis("drive", asOf)}) drive ON true
    LEFT JOIN LATERAL (${itemOfAxis("motor", asOf)}) motor ON true
    WHERE a."id" IN (
      SELECT a."id" FROM ${AXES}
      WHERE ${scope} AND ${chosen(filter, asOf)} AND ${seekAfter(order, after, scope)}
      ORDER BY ${inOrder(order)} LIMIT ${AXES_A_PAGE + 1})
    ORDER BY ${inOrder(order)}`;
  const axes = rows.slice(0, AXES_A_PAGE).map(axisOf);
  return { axes, next: rows.length > AXES_A_PAGE ? (axes.at(-1)?.id ?? null) : null };
}

/** The columns of cables, travel and homing. */
const FACTS = Prisma.sql`a."powerCable", a."powerCableLength"::float8 AS "powerCableLength", a."powerCableInChain",
  a."powerCableEvidence"::text AS "powerCableEvidence", a."powerCableReadOn"::text AS "powerCableReadOn",
  a."feedbackCable", a."feedbackCableLength"::float8 AS "feedbackCableLength", a."feedbackCableInChain",
  a."feedbackCableEvidence"::text AS "feedbackCableEvidence", a."feedbackCableReadOn"::text AS "feedbackCableReadOn",
  a."travelUnit", a."travel"::float8 AS "travel", a."hardLow"::float8 AS "hardLow", a."hardHigh"::float8 AS "hardHigh",
  a."softLow"::float8 AS "softLow", a."softHigh"::float8 AS "softHigh", a."travelEvidence"::text AS "travelEvidence",
  a."travelReadOn"::text AS "travelReadOn", a."homing"::text AS "homing", a."homeOffset"::float8 AS "homeOffset",
  a."homingEvidence"::text AS "homingEvidence", a."homingReadOn"::text AS "homingReadOn"`;

/** How many axes the filter leaves at the actor's sites. */
export async function countAxes(
  actor: Actor,
  { asOf, filter }: Pick<AxesQuestion, "asOf" | "filter">,
): Promise<number> {
  const [row] = await database().$queryRaw<{ axes: number }[]>`
    SELECT count(*)::int AS "axes" FROM ${AXES} WHERE ${scopeOfAxes(actor)} AND ${chosen(filter, asOf)}`;
  return row?.axes ?? 0;
}

/** What the list can be narrowed to: the actor's sites with their lines, and the families of drives. */
export async function readAxisChoices(actor: Actor): Promise<{
  readonly sites: readonly { readonly code: string; readonly lines: readonly string[] }[];
  readonly families: readonly string[];
  /** Designations of panels; a company numbers its panels alike at every machine, so they are few. */
  readonly panels: readonly string[];
}> {
  const where = sites(actor, "read");
  const found = await database().site.findMany({
    where,
    orderBy: { code: "asc" },
    select: { code: true, lines: { select: { code: true }, orderBy: { code: "asc" } } },
  });
  const families =
    found.length === 0
      ? []
      : await database().family.findMany({
          where: { itemClass: "drive" },
          distinct: ["name"],
          select: { name: true },
          orderBy: { name: "asc" },
        });
  const panels = await database().$queryRaw<{ designation: string }[]>`
    SELECT DISTINCT p."designation" FROM "Panel" p
    JOIN "Machine" m ON m."id" = p."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    WHERE ${scopeOfAxes(actor)}
    ORDER BY 1 LIMIT ${PANELS_OFFERED}`;
  return {
    panels: panels.map(({ designation }) => designation),
    sites: found.map(({ code, lines }) => ({ code, lines: lines.map((line) => line.code) })),
    families: families.map(({ name }) => name),
  };
}

function scopeOfAxes(actor: Actor): Prisma.Sql {
  const ids = siteIds(actor, "read")?.in ?? null;
  return Prisma.sql`(${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))`;
}

function axisOf(row: StoredAxis): ListedAxis {
  const { driveId, driveNumber, motorId, motorNumber, ...rest } = row;
  const { countsPerRev, motorRevs, loadRevs, unitsPerLoadRev, ...plain } = rest;
  return {
    ...plain,
    drive: driveId === null || driveNumber === null ? null : { id: driveId, number: driveNumber },
    motor: motorId === null || motorNumber === null ? null : { id: motorId, number: motorNumber },
    countsPerUnit: recordedCountsPerUnit({ countsPerRev, motorRevs, loadRevs, unitsPerLoadRev }),
  };
}
