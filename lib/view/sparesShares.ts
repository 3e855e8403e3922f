import type { SparesPool } from "@/lib/view/sparesLook";

/** An index above this means the spares lie where they are not needed. */
export const HOARD_INDEX = 1.5;

/** How a site's share of the spares compares with its share of the demand. */
export interface HeldShare {
  readonly siteCode: string;
  readonly units: number;
  readonly book: number;
  readonly usable: number;
  /** Share of the group's pieces on the books, in [0, 1]; null when there are none. */
  readonly ofSpares: number | null;
  /** Share of the group's units, in [0, 1]; null when none is installed. */
  readonly ofUnits: number | null;
  /** Share of the group's expected removals, in [0, 1]; null when there are none. */
  readonly ofDemand: number | null;
  /** Share of spares ÷ share of demand; null when either is unknown or there is no demand. */
  readonly index: number | null;
  /** Pieces beyond the site's share of the demand; negative is short, null when there is no demand. */
  readonly excess: number | null;
  /** Whether the index is above 1.5, or spares lie where nothing is installed. */
  readonly hoards: boolean;
}

/** What the shares are computed from: one pool, or all pools of a family. */
export type SharedPool = Pick<SparesPool, "installed" | "book" | "removalRate" | "sites">;

interface Tally {
  units: number;
  book: number;
  usable: number;
  demand: number;
}

/**
 * Share of spares against share of demand, site by site, over the pools given together.
 *
 * demand of a site = sum over pools of its units * the pool's removal rate (one rate for all sites).
 */
export function heldShares(pools: readonly SharedPool[]): HeldShare[] {
  const group = { book: 0, demand: 0, units: 0 };
  const bySite = new Map<string, Tally>();
  for (const pool of pools) {
    group.book += pool.book ?? 0;
    group.units += pool.installed;
    group.demand += pool.installed * pool.removalRate;
    for (const site of pool.sites) {
      const tally = bySite.get(site.siteCode) ?? { units: 0, book: 0, usable: 0, demand: 0 };
      tally.units += site.units;
      tally.book += site.book;
      tally.usable += site.usable;
      tally.demand += site.units * pool.removalRate;
      bySite.set(site.siteCode, tally);
    }
  }
  return [...bySite].sort(([a], [b]) => (a < b ? -1 : 1)).map(([code, tally]) => shareOf(code, tally, group));
}

function shareOf(
  siteCode: string,
  { units, book, usable, demand }: Tally,
  group: { readonly book: number; readonly demand: number; readonly units: number },
): HeldShare {
  const ofSpares = share(book, group.book);
  const ofDemand = share(demand, group.demand);
  const index = ofSpares === null || ofDemand === null || ofDemand === 0 ? null : ofSpares / ofDemand;
  return {
    ...{ siteCode, units, book, usable, ofSpares, ofDemand, index },
    excess: ofDemand === null ? null : book - ofDemand * group.book,
    ofUnits: share(units, group.units),
    hoards: index === null ? book > 0 && demand === 0 : index > HOARD_INDEX,
  };
}

function share(part: number, whole: number): number | null {
  return whole === 0 ? null : Math.min(1, part / whole);
}

/** A site's share of one family. */
export interface FamilyShare extends HeldShare {
  readonly familyId: string;
  readonly family: string;
  readonly maker: string;
  /** Pieces of the family on the books of the whole group. */
  readonly groupBook: number;
  readonly groupUnits: number;
}

/** Each family at each site, where the most pieces lie beyond the share of the demand first. */
export function familyShares(pools: readonly SparesPool[]): FamilyShare[] {
  const members = new Map<string, SparesPool[]>();
  for (const pool of pools)
    if (pool.family !== null) members.set(pool.family.id, [...(members.get(pool.family.id) ?? []), pool]);
  const rows = [...members.values()].flatMap((own) => {
    const [lead] = own;
    if (!lead?.family) return [];
    const sum = (value: (pool: SparesPool) => number) => own.reduce((all, pool) => all + value(pool), 0);
    const family = {
      familyId: lead.family.id,
      family: lead.family.name,
      maker: lead.maker,
      groupBook: sum((pool) => pool.book ?? 0),
      groupUnits: sum((pool) => pool.installed),
    };
    return family.groupBook === 0 ? [] : heldShares(own).map((share) => ({ ...family, ...share }));
  });
  return rows.sort((a, b) => (b.excess ?? 0) - (a.excess ?? 0) || (a.family < b.family ? -1 : 1));
}
