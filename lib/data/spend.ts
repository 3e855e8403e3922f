import "server-only";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { loadSeenGroup, type SeenGroup, type StoredPool } from "@/lib/data/group/loadSeenGroup";
import { siteIds, sites } from "@/lib/data/scope";
import { priceInEuro, toldPrice } from "@/lib/data/stock/partPrice";
import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { type BuyPool, buyPool, refusesOffer } from "@/lib/risk/buyOffer";
import { leadYearsOf, poolSites } from "@/lib/risk/poolSites";
import { type BoughtPiece, type Offer, spendBest } from "@/lib/spares/spendBest";
import {
  MOST_PIECES_BOUGHT,
  type NotOffered,
  type SpendList,
  type SpendPart,
  type SpendStep,
} from "@/lib/view/spend";

const DAYS_PER_YEAR = 365.25;
/** How much further than the budget the curve goes. */
const CURVE_BEYOND = 1.5;
const UNPRICED_WORKED_OUT = 20;

interface Asked {
  readonly asOf: IsoDate;
  /** EUR. */
  readonly budget: number;
}

interface Priced {
  readonly pool: StoredPool;
  readonly part: PartRow;
  readonly euro: number;
  readonly buy: BuyPool;
}

/**
 * The next best pieces to buy for the sites of the actor, one at a time to a budget, by loss avoided per money.
 *
 * Losses of lines the actor may not see are left out, and nothing is bought for their sites.
 */
export async function readSpend(actor: Actor, { asOf, budget }: Asked): Promise<SpendList> {
  const [group, parts, places, rates] = await Promise.all([
    loadSeenGroup(asOf, null),
    findParts(),
    database().site.findMany({ where: sites(actor, "read"), select: { id: true, code: true } }),
    database().currencyRate.findMany({ select: { currency: true, perEuro: true } }),
  ]);
  const perEuro = new Map(rates.map(({ currency, perEuro: rate }) => [currency, rate.toNumber()]));
  const partOf = new Map(parts.map((part) => [part.id, part]));
  const codes = new Map(places.map(({ id, code }) => [id, code]));
  const { ground } = group.byPool;
  const notOffered: NotOffered[] = [];
  const unpriced: { part: SpendPart; buy: BuyPool }[] = [];
  const priced: Priced[] = [];
  for (const pool of group.pools) {
    const part = partOf.get(pool.pool.id);
    if (!part) continue;
    const refused = refusesOffer(pool, ground);
    if (refused !== null) {
      notOffered.push({ ...nameOf(part, pool), why: refused, firstAvoids: null });
      continue;
    }
    const euro = priceInEuro(part, perEuro);
    const buy = buyPool(pool, shelvesOf(group, pool, codes), ground);
    if (euro !== null && euro > 0) priced.push({ pool, part, euro, buy });
    else unpriced.push({ part: nameOf(part, pool), buy });
  }
  notOffered.push(...withoutPrice(unpriced));
  return {
    ...listOf(priced, { group, budget, codes }),
    asOf,
    notOffered,
    seesAll: siteIds(actor, "read") === undefined,
  };
}

type PartRow = Awaited<ReturnType<typeof findParts>>[number];

function findParts() {
  const price = { price: true, priceCurrency: true, pricedOn: true } as const;
  return database().part.findMany({ select: { id: true, number: true, maker: true, ...price } });
}

function nameOf(part: PartRow, { stage }: StoredPool) {
  return { partId: part.id, number: part.number, maker: part.maker, stage };
}

function firstAvoided({ loss, next }: BuyPool): number | null {
  const first = next([]);
  return first === null ? null : loss() - first.loss;
}

/** Parts without a price, those that may avoid most first; only so many are worked out. */
function withoutPrice(
  unpriced: readonly { readonly part: SpendPart; readonly buy: BuyPool }[],
): NotOffered[] {
  return [...unpriced]
    .sort((a, b) => b.buy.most - a.buy.most)
    .map(({ part, buy }, place) => ({
      ...part,
      why: "no-price" as const,
      firstAvoids: place < UNPRICED_WORKED_OUT ? firstAvoided(buy) : null,
    }));
}

function shelvesOf({ byPool }: SeenGroup, pool: StoredPool, codes: ReadonlyMap<string, string>) {
  return poolSites(pool, byPool).filter(({ siteId }) => codes.has(siteId));
}

interface Basis {
  readonly group: SeenGroup;
  readonly budget: number;
  readonly codes: ReadonlyMap<string, string>;
}

function listOf(priced: readonly Priced[], basis: Basis): Omit<SpendList, "asOf" | "notOffered" | "seesAll"> {
  const { budget, group } = basis;
  const offers = priced.map(({ pool, euro, buy }): Offer => {
    return { id: pool.pool.id, unitCost: euro, most: buy.most, loss: buy.loss, next: buy.next };
  });
  const { months, discountRate, transferHours } = group.mark.assumptions;
  const curve = spendBest(offers, budget * CURVE_BEYOND, MOST_PIECES_BOUGHT);
  return {
    ...{ budget, discountRate, transferHours, years: months / 12, offered: offers.length },
    steps: stepsOf(spendBest(offers, budget, MOST_PIECES_BOUGHT), priced, basis),
    curve: curve.map(({ spent, avoided }) => ({ spent, avoided })),
  };
}

function stepsOf(bought: readonly BoughtPiece[], priced: readonly Priced[], basis: Basis): SpendStep[] {
  const byId = new Map(priced.map((one) => [one.pool.pool.id, one]));
  const soFar = new Map<string, string[]>();
  return bought.flatMap((piece, i) => {
    const found = byId.get(piece.id);
    if (!found) return [];
    const before = soFar.get(piece.id) ?? [];
    const after = [...before, piece.shelf];
    soFar.set(piece.id, after);
    return stepOf(piece, found, { place: i + 1, before, after, ...basis });
  });
}

interface Place extends Basis {
  readonly place: number;
  readonly before: readonly string[];
  readonly after: readonly string[];
}

function stepOf(piece: BoughtPiece, { pool, part, buy }: Priced, at: Place): SpendStep[] {
  const { ground } = at.group.byPool;
  const price = toldPrice(part);
  if (price === null) return [];
  const { unitCost, avoids, spent, avoided, shelf } = piece;
  const days = Math.round(leadYearsOf(pool.pool, ground) * DAYS_PER_YEAR);
  return [
    {
      ...nameOf(part, pool),
      ...{ place: at.place, nth: at.after.length, siteCode: at.codes.get(shelf) ?? "" },
      ...{ price, unitCost, avoids, spent, avoided, usable: pool.figures.usable },
      noSpare: { before: buy.noSpare(at.before), after: buy.noSpare(at.after) },
      arrivesOn: addDays(ground.asOf, days),
      lastOrderOn: pool.pool.dates.lastOrderOn,
      leadAssumed: pool.pool.leadYears === null,
    },
  ];
}
