import "server-only";
import type { Actor } from "@/lib/access/actor";
import { seesAmounts } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { loadPoolsOf } from "@/lib/data/group/loadPools";
import { inService } from "@/lib/data/quality/inService";
import { atSites, siteIds, sites } from "@/lib/data/scope";
import { type IsoDate, yearsBetween } from "@/lib/kernel/isoDate";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { PoolFigures, PoolInput } from "@/lib/risk/evaluation";
import type { InstalledSpan, PoolSupply } from "@/lib/spares/exposure";
import { stockLevels } from "@/lib/spares/stockLevels";
import { type LevelRow, REVIEW_YEARS } from "@/lib/view/stockLevels";

interface Asked {
  readonly asOf: IsoDate;
  /** No-spare chance aimed at. */
  readonly target: number;
}

interface Standing {
  readonly partId: string;
  readonly siteId: string;
  readonly units: number;
}

interface Leave extends Standing {
  readonly on: IsoDate;
}

/** The levels of each part at each of the actor's sites where it is installed or on the books, by part and site. */
export async function readStockLevels(actor: Actor, { asOf, target }: Asked): Promise<LevelRow[]> {
  const { id: evaluationId, assumptions } = await currentEvaluation(asOf);
  const [evaluated, standing, leaves, places, lots, rates] = await Promise.all([
    findPools(actor, evaluationId),
    readStanding(actor, asOf),
    readLeaves(actor, asOf),
    database().site.findMany({ where: sites(actor, "read"), select: { id: true, code: true } }),
    readBook(actor),
    database().currencyRate.findMany({ select: { currency: true, perEuro: true } }),
  ]);
  const inputs = await loadPoolsOf(
    database(),
    asOf,
    evaluated.map(({ partId }) => partId),
  );
  const pools = new Map(inputs.map((pool) => [pool.id, pool]));
  // A price is the group's, so it is told to whom every amount is.
  const perEuro = seesAmounts(actor.grants)
    ? new Map(rates.map(({ currency, perEuro: rate }) => [currency, rate.toNumber()]))
    : null;
  return evaluated.flatMap((row): LevelRow[] => {
    const pool = pools.get(row.partId);
    const result = row.result as unknown as PoolFigures;
    if (!pool) return [];
    return places.flatMap((site): LevelRow[] => {
      const key = keyOf({ partId: row.partId, siteId: site.id });
      const units = standing.get(key) ?? 0;
      const book = lots.get(key);
      if (units === 0 && !book?.there) return [];
      const supply = supplyOf(pool, { asOf, units, leaves: leaves.get(key) ?? [], assumptions });
      return [
        {
          ...masterOf(row, perEuro),
          ...{ siteCode: site.code, stage: result.stage, units, unitsInGroup: result.installed },
          book: book?.pieces ?? (book ? null : 0),
          usable: result.usableBySite[site.id]?.usable ?? 0,
          removalRate: result.removal.mean,
          ...{ leadYears: supply.leadTime, leadAssumed: pool.leadYears === null },
          levels: stockLevels({
            ...{ rate: result.removal, supply, target, reviewYears: REVIEW_YEARS },
            canOrder: ORDERABLE.has(result.stage),
            keepYears: assumptions.months / 12,
          }),
        },
      ];
    });
  });
}

/** Stages in which an order is taken; what nobody has a source for is asked for and said so. */
const ORDERABLE: ReadonlySet<string> = new Set(["undated", "open", "notice", "buy-window", "closing"]);

const keyOf = ({ partId, siteId }: { readonly partId: string; readonly siteId: string }): string =>
  `${partId} ${siteId}`;

interface SupplyQuestion {
  readonly asOf: IsoDate;
  readonly units: number;
  readonly leaves: readonly Leave[];
  readonly assumptions: Assumptions;
}

function supplyOf(pool: PoolInput, { asOf, units, leaves, assumptions }: SupplyQuestion): PoolSupply {
  const until = (day: IsoDate | null) => (day === null ? null : yearsBetween(asOf, day));
  let left = units;
  const installed = leaves.map(({ on, units: going }): InstalledSpan => {
    const own = Math.min(left, going);
    left -= own;
    return { from: 0, to: until(on), units: own };
  });
  const { repair, dates } = pool;
  const repairUntil = until(dates.repairUntilOn);
  return {
    installed: [...installed, { from: 0, to: null, units: left }],
    leadTime: pool.leadYears ?? assumptions.classes[pool.itemClass].leadYears,
    lastOrderAt: until(dates.lastOrderOn),
    repair:
      repair === null || (repairUntil !== null && repairUntil < 0)
        ? null
        : { turnaround: repair.turnaroundYears, yield: repair.yield, untilAt: repairUntil },
  };
}

function findPools(actor: Actor, evaluationId: string) {
  const nowhere = siteIds(actor, "read")?.in.length === 0;
  return database().evaluatedPool.findMany({
    where: { evaluationId, ...(nowhere ? { partId: { in: [] } } : {}) },
    select: {
      partId: true,
      result: true,
      part: {
        select: { number: true, description: true, price: true, priceCurrency: true, pricedOn: true },
      },
    },
    orderBy: [{ part: { number: "asc" } }, { partId: "asc" }],
  });
}

type FoundPool = Awaited<ReturnType<typeof findPools>>[number];

/** @param perEuro Null where prices are not told. */
function masterOf({ partId, part }: FoundPool, perEuro: ReadonlyMap<string, number> | null) {
  const { number, description, price, priceCurrency, pricedOn } = part;
  if (perEuro === null)
    return {
      ...{ partId, part: number, description },
      ...{ price: null, priceCurrency: null, priceEuro: null, pricedOn: null },
    };
  const rate = perEuro.get(priceCurrency ?? "");
  return {
    ...{ partId, part: number, description, priceCurrency },
    price: price?.toFixed(2) ?? null,
    priceEuro: price === null || rate === undefined ? null : price.toNumber() / rate,
    pricedOn: pricedOn?.toISOString().slice(0, 10) ?? null,
  };
}

/** Units of each part at each of the actor's sites on the day. */
async function readStanding(actor: Actor, asOf: IsoDate): Promise<Map<string, number>> {
  const ids = siteIds(actor, "read")?.in ?? null;
  const rows = await database().$queryRaw<Standing[]>`
    SELECT coalesce(u."partId", p."partId")::text AS "partId", l."siteId"::text AS "siteId", count(*)::int AS "units"
    FROM "Position" p
    JOIN "Machine" m ON m."id" = p."machineId"
    JOIN "Line" l ON l."id" = m."lineId"
    LEFT JOIN "Placement" pl ON pl."positionId" = p."id" AND daterange(pl."fromOn", pl."untilOn") @> ${asOf}::date
    LEFT JOIN "Unit" u ON u."id" = pl."unitId"
    WHERE coalesce(u."partId", p."partId") IS NOT NULL AND ${inService(asOf)}
      AND (${ids}::uuid[] IS NULL OR l."siteId" = ANY(${ids}::uuid[]))
    GROUP BY 1, 2`;
  return new Map(rows.map((row) => [keyOf(row), row.units]));
}

/** What projects under way take out, by part and site, the earliest first. */
async function readLeaves(actor: Actor, asOf: IsoDate): Promise<Map<string, Leave[]>> {
  const rows = await database().plannedRemoval.findMany({
    where: {
      leavesOn: { gte: new Date(`${asOf}T00:00:00Z`) },
      ...{ line: atSites(actor, "read"), project: { status: { notIn: ["closed", "parked"] } } },
    },
    select: { partId: true, units: true, leavesOn: true, line: { select: { siteId: true } } },
    orderBy: [{ leavesOn: "asc" }, { id: "asc" }],
  });
  const leaves = new Map<string, Leave[]>();
  for (const { partId, units, leavesOn, line } of rows) {
    const leave = { partId, units, siteId: line.siteId, on: leavesOn.toISOString().slice(0, 10) };
    leaves.set(keyOf(leave), [...(leaves.get(keyOf(leave)) ?? []), leave]);
  }
  return leaves;
}

/** Pieces on the book of each part at each of the actor's sites; null pieces where no lot is counted. */
async function readBook(actor: Actor) {
  const rows = await database().stockLot.groupBy({
    by: ["partId", "siteId"],
    where: { ...atSites(actor, "read"), OR: [{ quantity: null }, { quantity: { gt: 0 } }] },
    _sum: { quantity: true },
  });
  return new Map(rows.map(({ _sum, ...at }) => [keyOf(at), { there: true, pieces: _sum.quantity }] as const));
}
