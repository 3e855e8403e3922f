import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { siteIds } from "@/lib/data/scope";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LifecycleDates } from "@/lib/lifecycle/supplyStage";
import type { ItemClass, LinePoolResult, PoolFigures } from "@/lib/risk/evaluation";
import type { Driver, DriverPart, DriverPool } from "@/lib/view/lineDossier";
import { partLabel } from "@/lib/view/linePart";

/** The pools of one evaluated line. */
export interface DriverQuestion {
  readonly lineId: string;
  readonly siteId: string;
  readonly evaluationId: string;
  readonly asOf: IsoDate;
  readonly pools: readonly LinePoolResult[];
}

interface PartRow extends LifecycleDates, Omit<DriverPart, "dates"> {
  readonly itemClass: ItemClass;
  readonly result: PoolFigures | null;
}

/** The pools of a line with their parts, dates and stock, those that cost most first. */
export async function readLineDrivers(actor: Actor, question: DriverQuestion): Promise<Driver[]> {
  const { siteId, pools } = question;
  const parts = new Map((await readParts(actor, question)).map((row) => [row.id, row]));
  const drivers = pools.map((pool) => driverOf(pool, parts.get(pool.poolId), siteId));
  return drivers.sort((a, b) => lossOf(b) - lossOf(a) || b.share - a.share);
}

function lossOf({ baseLoss, shortageLoss }: LinePoolResult): number {
  return baseLoss === null || shortageLoss === null ? 0 : baseLoss + shortageLoss;
}

function driverOf(own: LinePoolResult, row: PartRow | undefined, siteId: string): Driver {
  const label = partLabel(own.poolId, row?.number);
  if (!row) {
    const itemClass = own.poolId.slice(own.poolId.indexOf(":") + 1) as ItemClass;
    return { ...own, label, itemClass, part: null, pool: null };
  }
  const { itemClass, result, id, maker, number, description, family, datesSource, ...rest } = row;
  const { leadWeeks, repairYield, repairTurnaroundDays, ...dates } = rest;
  return {
    ...own,
    label,
    itemClass,
    part: {
      ...{ id, maker, number, description, family, datesSource },
      ...{ leadWeeks, repairYield, repairTurnaroundDays, dates },
    },
    pool: result === null ? null : poolAt(result, siteId),
  };
}

/** The pool as one site sees it: its own shelf, and one sum for all the others. */
function poolAt(pool: PoolFigures, siteId: string): DriverPool {
  const { poolId: _, usableBySite, ...rest } = pool;
  const here = usableBySite[siteId] ?? { book: 0, usable: 0 };
  const elsewhere = { book: 0, usable: 0 };
  for (const [id, stock] of Object.entries(usableBySite)) {
    if (id === siteId) continue;
    elsewhere.book += stock.book;
    elsewhere.usable += stock.usable;
  }
  return { ...rest, here, elsewhere };
}

function readParts(actor: Actor, { lineId, evaluationId, asOf, pools }: DriverQuestion): Promise<PartRow[]> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const partIds = pools.map((pool) => pool.poolId).filter((id) => !id.startsWith("unidentified:"));
  return database().$queryRaw<PartRow[]>`
    SELECT p."id"::text AS "id", p."maker", p."number", p."description", p."itemClass"::text AS "itemClass",
      family."name" AS "family", f."source" AS "datesSource",
      p."leadWeeks"::float8 AS "leadWeeks", p."repairYield"::float8 AS "repairYield", p."repairTurnaroundDays",
      f."noticeOn"::text AS "noticeOn", f."lastOrderOn"::text AS "lastOrderOn", f."lastShipOn"::text AS "lastShipOn",
      f."repairUntilOn"::text AS "repairUntilOn", f."orderByOn"::text AS "orderByOn", f."checkedOn"::text AS "checkedOn",
      e."result"
    FROM "Part" p
    LEFT JOIN "Family" family ON family."id" = p."familyId"
    LEFT JOIN "EvaluatedPool" e ON e."partId" = p."id" AND e."evaluationId" = ${evaluationId}::uuid
    LEFT JOIN LATERAL (
      SELECT * FROM "LifecycleFact" fact
      WHERE (fact."partId" = p."id" OR fact."familyId" = p."familyId") AND fact."recordedOn" <= ${asOf}::date
      ORDER BY (fact."partId" IS NULL), fact."recordedOn" DESC, fact."checkedOn" DESC, fact."id" DESC
      LIMIT 1
    ) f ON true
    WHERE p."id" = ANY(${partIds}::uuid[]) AND EXISTS (
      SELECT 1 FROM "Line" l WHERE l."id" = ${lineId}::uuid
        AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
    )`;
}
