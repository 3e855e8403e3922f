import "server-only";
import type { Transaction } from "@/lib/data/change";
import { loadArrivals } from "@/lib/data/group/loadArrivals";
import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LifecycleDates } from "@/lib/lifecycle/supplyStage";
import type { ArrivalInput, InstalledInput, ItemClass, PoolInput, StockInput } from "@/lib/risk/evaluation";

const WEEKS_PER_YEAR = 52.1775;
const DAYS_PER_YEAR = 365.25;

interface PartRow extends LifecycleDates {
  readonly id: string;
  readonly itemClass: ItemClass;
  readonly familyId: string | null;
  readonly leadWeeks: number | null;
  readonly repairYield: number | null;
  readonly repairTurnaroundDays: number | null;
}

interface StockRow extends StockInput {
  readonly partId: string;
}

const undated: LifecycleDates = {
  noticeOn: null,
  lastOrderOn: null,
  lastShipOn: null,
  repairUntilOn: null,
  orderByOn: null,
  checkedOn: null,
};

/** Each part that is installed or on a shelf, with its dates and stock, and the places nobody has read. */
export async function loadPools(
  tx: Transaction,
  asOf: IsoDate,
  installed: readonly InstalledInput[],
): Promise<PoolInput[]> {
  const used = new Set(installed.map((row) => row.poolId));
  const known = (await loadKnown(tx, asOf, null)).filter(({ id, stock }) => used.has(id) || stock.length > 0);
  const unread = [...used].filter((id) => id.startsWith("unidentified:")).sort();
  return [...known, ...unread.map(unreadPool)];
}

/** The pools of some parts, whether anything of them is installed or on a shelf or not. */
export async function loadPoolsOf(
  tx: Transaction,
  asOf: IsoDate,
  partIds: readonly string[],
): Promise<PoolInput[]> {
  return loadKnown(tx, asOf, partIds);
}

/** @param partIds Null for all parts. */
async function loadKnown(
  tx: Transaction,
  asOf: IsoDate,
  partIds: readonly string[] | null,
): Promise<PoolInput[]> {
  const parts = await loadParts(tx, asOf, partIds);
  const stock = new Map<string, StockRow[]>();
  for (const lot of await loadStock(tx, partIds))
    stock.set(lot.partId, [...(stock.get(lot.partId) ?? []), lot]);
  const arrivals = await loadArrivals(tx, asOf);
  return parts.map((part) => poolOf(part, stock.get(part.id) ?? [], arrivals.get(part.id) ?? []));
}

function poolOf(part: PartRow, lots: readonly StockRow[], arrivals: readonly ArrivalInput[]): PoolInput {
  const { id, itemClass, familyId, leadWeeks, repairYield, repairTurnaroundDays, ...dates } = part;
  return {
    id,
    itemClass,
    familyId,
    dates,
    leadYears: leadWeeks === null ? null : leadWeeks / WEEKS_PER_YEAR,
    repair:
      repairYield === null || repairTurnaroundDays === null
        ? null
        : { yield: repairYield, turnaroundYears: repairTurnaroundDays / DAYS_PER_YEAR },
    stock: lots.map(({ siteId, state, quantity, lastPoweredOn }) => ({
      siteId,
      state,
      quantity,
      lastPoweredOn,
    })),
    arrivals,
  };
}

function unreadPool(id: string): PoolInput {
  const itemClass = id.slice(id.indexOf(":") + 1) as ItemClass;
  return { id, itemClass, familyId: null, dates: undated, leadYears: null, repair: null, stock: [] };
}

function loadParts(tx: Transaction, asOf: IsoDate, ids: readonly string[] | null): Promise<PartRow[]> {
  return tx.$queryRaw<PartRow[]>`
    SELECT p."id"::text AS "id", p."itemClass"::text AS "itemClass", p."familyId"::text AS "familyId",
      p."leadWeeks"::float8 AS "leadWeeks", p."repairYield"::float8 AS "repairYield", p."repairTurnaroundDays",
      f."noticeOn"::text AS "noticeOn", f."lastOrderOn"::text AS "lastOrderOn", f."lastShipOn"::text AS "lastShipOn",
      f."repairUntilOn"::text AS "repairUntilOn", f."orderByOn"::text AS "orderByOn", f."checkedOn"::text AS "checkedOn"
    FROM "Part" p
    LEFT JOIN LATERAL (
      SELECT * FROM "LifecycleFact" fact
      WHERE (fact."partId" = p."id" OR fact."familyId" = p."familyId") AND fact."recordedOn" <= ${asOf}::date
      ORDER BY (fact."partId" IS NULL), fact."recordedOn" DESC, fact."checkedOn" DESC, fact."id" DESC
      LIMIT 1
    ) f ON true
    WHERE ${ids}::uuid[] IS NULL OR p."id" = ANY(${ids}::uuid[])
    ORDER BY p."maker", p."number"`;
}

function loadStock(tx: Transaction, ids: readonly string[] | null): Promise<StockRow[]> {
  return tx.$queryRaw<StockRow[]>`
    SELECT "partId"::text AS "partId", "siteId"::text AS "siteId", "state"::text AS "state", "quantity",
      "lastPoweredOn"::text AS "lastPoweredOn"
    FROM "StockLot"
    WHERE ${ids}::uuid[] IS NULL OR "partId" = ANY(${ids}::uuid[])
    ORDER BY "partId", "siteId", "bin", "revision", "state"`;
}
