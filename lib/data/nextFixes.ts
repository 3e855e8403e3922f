import "server-only";
import type { Actor } from "@/lib/access/actor";
import { scopeOf } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import type { EvaluatedLineRow, Footing } from "@/lib/data/footing";
import { inService } from "@/lib/data/quality/inService";
import type { IsoDate } from "@/lib/kernel/isoDate";
import { type FixHours, type FixKind, nextFixes } from "@/lib/risk/mending/nextFixes";
import { isUnidentified } from "@/lib/risk/poolOutlook";
import type { GapKey } from "@/lib/view/gap";
import { FIX_NORM, type NamedFix, nameFixes } from "@/lib/view/nextFix";

/** How many lines are looked at first where no plan says what is funded; the product's own choice. */
const FIRST_LINES = 5;

/** What to find out next at some sites, and where the cut between lines lies. */
export interface NextFixes {
  readonly fixes: readonly NamedFix[];
  readonly cut: number;
  /** The plan the cut is of; null is the first lines of the ranking. */
  readonly plan: string | null;
  readonly hours: FixHours;
}

/** What to find out next at the sites of a footing the person read: batched questions, whatever the number of fixes. */
export async function readNextFixes(
  actor: Actor,
  { footing, asOf }: { readonly footing: Footing; readonly asOf: IsoDate },
): Promise<NextFixes> {
  const siteIds = (footing.site === null ? footing.sites : [footing.site]).map(({ id }) => id);
  const [shelves, unread, plan] = await Promise.all([
    readShelves(siteIds),
    readUnread(siteIds, asOf),
    readCut(actor),
  ]);
  const each = (key: GapKey) => footing.rows.find((row) => row.key === key)?.hoursEach ?? 1;
  const hours = Object.fromEntries(
    Object.entries(FIX_NORM).map(([kind, key]) => [kind, each(key)]),
  ) as Record<FixKind, number>;
  const undated = new Set(await readUndated(footing.lines, asOf));
  const lots = new Map(shelves.map(({ partId, lots: pieces }) => [partId, pieces]));
  const fixes = nextFixes(footing.lines, { lots, unread, undated }, { hours, cut: plan.cut });
  return {
    ...{ ...plan, hours },
    fixes: nameFixes(fixes, {
      lines: new Map(footing.lines.map(({ id, code }) => [id, code])),
      parts: await readNumbers(fixes.flatMap(({ poolId }) => poolId ?? [])),
      shelves: new Map(shelves.map(({ partId, sites }) => [partId, sites])),
    }),
  };
}

interface ShelfRow {
  readonly partId: string;
  readonly lots: number;
  readonly sites: readonly string[];
}

/** Lots nobody counted or powered up on a known day, by part. */
function readShelves(siteIds: readonly string[]): Promise<ShelfRow[]> {
  return database().$queryRaw<ShelfRow[]>`
    SELECT t."partId"::text AS "partId", count(*)::int AS "lots", array_agg(DISTINCT s."code" ORDER BY s."code") AS "sites"
    FROM "StockLot" t JOIN "Site" s ON s."id" = t."siteId" JOIN "Part" part ON part."id" = t."partId"
    WHERE t."siteId" = ANY(${[...siteIds]}::uuid[]) AND (
      t."quantity" IS NULL OR t."quantity" > 0 AND t."state" = 'usable' AND t."lastPoweredOn" IS NULL
        AND part."itemClass" IN ('drive', 'power_supply', 'hmi'))
    GROUP BY 1 ORDER BY 1`;
}

/** Places nobody read, by line and class. */
async function readUnread(siteIds: readonly string[], asOf: IsoDate): Promise<Map<string, number>> {
  const rows = await database().$queryRaw<{ key: string; places: number }[]>`
    SELECT l."id"::text || ' unidentified:' || p."itemClass"::text AS "key", count(*)::int AS "places"
    FROM "Position" p JOIN "Machine" m ON m."id" = p."machineId" JOIN "Line" l ON l."id" = m."lineId"
    LEFT JOIN "Placement" pl ON pl."positionId" = p."id"
      AND coalesce(pl."fromOn" <= ${asOf}::date, true) AND coalesce(pl."untilOn" > ${asOf}::date, true)
    WHERE l."siteId" = ANY(${[...siteIds]}::uuid[]) AND p."partId" IS NULL AND pl."id" IS NULL
      AND ${inService(asOf)}
    GROUP BY 1`;
  return new Map(rows.map(({ key, places }) => [key, places]));
}

/** Parts on the lines whose supply dates no source of the last 24 months gives. */
async function readUndated(lines: readonly EvaluatedLineRow[], asOf: IsoDate): Promise<string[]> {
  const ids = lines.flatMap(({ result }) => result.pools.map(({ poolId }) => poolId));
  const known = [...new Set(ids)].filter((id) => !isUnidentified(id));
  const rows = await database().$queryRaw<{ id: string }[]>`
    SELECT part."id"::text AS "id" FROM "Part" part WHERE part."id" = ANY(${known}::uuid[])
      AND NOT EXISTS (SELECT 1 FROM "LifecycleFact" f
        WHERE (f."partId" = part."id" OR f."familyId" = part."familyId") AND f."recordedOn" <= ${asOf}::date
          AND f."checkedOn" >= ${asOf}::date - make_interval(months => 24))`;
  return rows.map(({ id }) => id);
}

/** Where money is cut: the lines funded in the last plan that was put forward, for who reads every site. */
async function readCut(actor: Actor): Promise<{ readonly cut: number; readonly plan: string | null }> {
  if (scopeOf(actor.grants, "read") !== "all") return { cut: FIRST_LINES, plan: null };
  const plan = await database().plan.findFirst({
    where: { kind: "cut", status: { in: ["put_forward", "funded"] } },
    orderBy: { createdAt: "desc" },
    select: { name: true, _count: { select: { lines: { where: { funded: true } } } } },
  });
  const funded = plan?._count.lines ?? 0;
  return plan !== null && funded > 0 ? { cut: funded, plan: plan.name } : { cut: FIRST_LINES, plan: null };
}

async function readNumbers(poolIds: readonly string[]): Promise<Map<string, string>> {
  const ids = [...new Set(poolIds)].filter((id) => !isUnidentified(id));
  const rows = await database().part.findMany({
    where: { id: { in: ids } },
    select: { id: true, number: true },
  });
  return new Map(rows.map(({ id, number }) => [id, number]));
}
