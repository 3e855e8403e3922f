import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { ItemClass } from "@/lib/risk/evaluation";
import type { SiteHolding } from "@/lib/view/sparesLook";
import { type HeldShare, heldShares } from "@/lib/view/sparesShares";

/** A price as told: amount of one piece, decimal text. */
export interface ToldPrice {
  readonly amount: string;
  readonly currency: string;
  readonly pricedOn: IsoDate | null;
}

/** A part's pool as the board shows it. */
export interface BoardPool {
  readonly partId: string;
  readonly number: string;
  readonly maker: string;
  readonly itemClass: ItemClass;
  readonly family: { readonly id: string; readonly name: string } | null;
  readonly stage: SupplyStage;
  /** Units and pieces of the whole group. */
  readonly installed: number;
  readonly book: number | null;
  readonly usable: number;
  readonly removalRate: number;
  /** Null is not known. */
  readonly price: ToldPrice | null;
  /** Price of one piece at the budget rate, EUR; null is not known. */
  readonly priceEuro: number | null;
  /** The reader's sites. */
  readonly sites: readonly SiteHolding[];
}

/** Pieces that are off one shelf and not yet on another. */
export interface UnderWay {
  readonly partId: string;
  readonly pieces: number;
}

/** Share of the usable pieces against share of the demand, by site: `heldShares` with usable pieces for book pieces. */
export function usableShares(pools: readonly BoardPool[]): HeldShare[] {
  return heldShares(
    pools.map(({ installed, usable, removalRate, sites }) => ({
      ...{ installed, book: usable, removalRate },
      sites: sites.map((site) => ({ ...site, book: site.usable })),
    })),
  );
}

/** The highest index of a pool's sites: where pieces lie without any demand it has no bound. */
export function highestIndex(pool: BoardPool): number | null {
  const shares = usableShares([pool]);
  if (shares.some(({ hoards, index }) => hoards && index === null)) return Number.POSITIVE_INFINITY;
  const known = shares.flatMap(({ index }) => index ?? []);
  return known.length === 0 ? null : Math.max(...known);
}

/** Most pieces any site holds beyond its share of the demand; all of them where nothing is asked for. */
function mostBeyond(pool: BoardPool): number {
  return Math.max(0, ...usableShares([pool]).map(({ excess, usable }) => excess ?? usable));
}

/** The pools with the most pieces beyond a site's share first: an index alone is high for a single piece too. */
export function byUnevenness<Row extends BoardPool>(pools: readonly Row[]): Row[] {
  const keyed = pools.map((pool) => ({ pool, beyond: mostBeyond(pool) }));
  return keyed.sort((a, b) => b.beyond - a.beyond).map(({ pool }) => pool);
}

/** What lies at one site, over all pools. */
export interface SiteWorth {
  readonly siteCode: string;
  readonly book: number;
  readonly usable: number;
  /** EUR at list price of the pieces on the books whose price is known. */
  readonly bookEuro: number;
  readonly usableEuro: number;
  /** Pieces on the books whose price nobody knows: in no sum. */
  readonly unpriced: number;
}

/** What the shelves of each site are worth at list price. */
export function siteWorths(pools: readonly BoardPool[]): SiteWorth[] {
  const out = new Map<string, SiteWorth>();
  for (const { priceEuro, sites } of pools)
    for (const { siteCode, book, usable } of sites) {
      const sum = out.get(siteCode) ?? {
        ...{ siteCode, book: 0, usable: 0, bookEuro: 0, usableEuro: 0, unpriced: 0 },
      };
      out.set(siteCode, {
        siteCode,
        book: sum.book + book,
        usable: sum.usable + usable,
        bookEuro: sum.bookEuro + (priceEuro ?? 0) * book,
        usableEuro: sum.usableEuro + (priceEuro ?? 0) * usable,
        unpriced: sum.unpriced + (priceEuro === null ? book : 0),
      });
    }
  return [...out.values()].sort((a, b) => (a.siteCode < b.siteCode ? -1 : 1));
}
