import { yearsBetween } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { Span } from "@/lib/risk/evaluation";
import { leadYearsOf, type PoolLine, type PoolSite, type SeenPool } from "@/lib/risk/poolSites";
import { piecesAhead, shelfAdditions } from "@/lib/risk/shelfAdditions";
import type { Ground } from "@/lib/risk/stages";
import { storageRules } from "@/lib/risk/storageRules";
import { type SupplyCase, supplyOutlook } from "@/lib/risk/supplyOutlook";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import { noSpareChance } from "@/lib/spares/noSpareChance";
import { noSpareAhead } from "@/lib/spares/shelfAhead";
import type { NextPiece } from "@/lib/spares/spendBest";
import { stockChance } from "@/lib/spares/stockChance";
import { usableCount } from "@/lib/spares/usableCount";

const MONTHS_PER_YEAR = 12;
const ORDERABLE: ReadonlySet<SupplyStage> = new Set(["open", "notice", "buy-window", "closing"]);

/** Why no piece of a part is offered. */
export type NoOffer = "not-orderable" | "undated" | "retires" | "not-installed";

/** Whether a piece of the part may be bought today at all, and why not. */
export function refusesOffer(seen: SeenPool, ground: Ground): NoOffer | null {
  if ((ground.units.get(seen.pool.id) ?? 0) === 0) return "not-installed";
  if (seen.stage === "undated") return "undated";
  if (!ORDERABLE.has(seen.stage)) return "not-orderable";
  const leaving = ground.leaving.get(seen.pool.id) ?? [];
  const arrives = leadYearsOf(seen.pool, ground);
  const units = ground.units.get(seen.pool.id) ?? 0;
  const gone = leaving.filter(({ on }) => yearsBetween(ground.asOf, on) <= arrives);
  return gone.reduce((left, leave) => left - leave.units, units) <= 0 ? "retires" : null;
}

/** Units of a line in service over a month; one that leaves within it counts for the part it is there. */
function shareIn(month: number, { units, leaves }: PoolLine): number {
  if (units === 0) return 0;
  let left = 0;
  for (const leave of leaves)
    left += leave.units * Math.min(1, Math.max(0, month + 1 - leave.at * MONTHS_PER_YEAR));
  return Math.max(0, units - left) / units;
}

/** EUR, discounted, that hang on an end of a month: on the own shelf being empty, and on no site having one. */
interface Worth {
  readonly own: readonly number[];
  readonly group: readonly number[];
  /** EUR lost whatever lies on the shelves. */
  readonly always: number;
}

function worthOf(site: PoolSite, { months, discountRate }: Ground["assumptions"]): Worth {
  const own = new Array<number>(months + 1).fill(0);
  const group = new Array<number>(months + 1).fill(0);
  let always = 0;
  for (const line of site.lines) {
    if (!line.costs) continue;
    for (let month = 0; month < months; month += 1) {
      const worth = (1 + discountRate) ** (-(month + 0.5) / MONTHS_PER_YEAR);
      const stops = (worth * line.stops * shareIn(month, line)) / MONTHS_PER_YEAR;
      always += stops * line.costs.own;
      for (const end of [month, month + 1]) {
        own[end] = (own[end] as number) + (stops * (line.costs.other - line.costs.own)) / 2;
        group[end] = (group[end] as number) + (stops * (line.costs.none - line.costs.other)) / 2;
      }
    }
  }
  return { own, group, always };
}

/** A pool laid out so that the loss with some pieces bought is quickly told. */
export interface BuyPool {
  /** EUR over all months computed that pieces could avoid at the most: no piece avoids more. */
  readonly most: number;
  /** EUR over all months computed, nothing bought. */
  readonly loss: () => number;
  /** Mean chance over the months, pieces weighed alike, that no site has one: with pieces bought or without. */
  readonly noSpare: (bought: readonly string[]) => number;
  readonly next: (bought: readonly string[]) => NextPiece | null;
}

interface Laid {
  readonly seen: SeenPool;
  readonly ground: Ground;
  readonly cases: readonly SupplyCase[];
  /** When what is bought today is on the shelf, years. */
  readonly arrives: number;
  /** Chance that a new piece works. */
  readonly works: number;
}

/** Chance by month that no site has one, with so many pieces bought today. */
function groupEmpty({ seen, ground, cases, arrives, works }: Laid, pieces: number): number[] {
  const { pool, removal } = seen;
  const { asOf, assumptions } = ground;
  const leaving = ground.leaving.get(pool.id) ?? [];
  const count = usableCount(pool.stock, storageRules(pool.itemClass, asOf, assumptions));
  const coming = shelfAdditions(piecesAhead(pool, { asOf, leaving }, assumptions));
  const bought = pieces === 0 ? [] : [{ at: arrives, pieces: stockChance([{ count: pieces, works }]) }];
  const additions = [...coming, ...bought].sort((a, b) => a.at - b.at);
  const stock = stockChance(count.pieces);
  const rate = { a: removal.a, b: removal.b };
  const ways = cases.map(({ chance, supply }) => ({
    chance,
    at: noSpareAhead({ supply, stock, additions }, rate),
  }));
  return Array.from({ length: assumptions.months + 1 }, (_, month) =>
    ways.reduce((sum, { chance, at }) => sum + chance * at(month / MONTHS_PER_YEAR), 0),
  );
}

/** Chance by month that a site's own shelf is empty, with so many of the pieces bought for it. */
function ownEmpty({ seen, ground, arrives, works }: Laid, site: PoolSite, pieces: number): number[] {
  const { pool, removal } = seen;
  const own = pool.stock.filter(({ siteId }) => siteId === site.siteId);
  const { pieces: now } = usableCount(own, storageRules(pool.itemClass, ground.asOf, ground.assumptions));
  const shelf = stockChance(now);
  const later = stockChance([...now, { count: pieces, works }]);
  return Array.from({ length: ground.assumptions.months + 1 }, (_, month) => {
    const years = month / MONTHS_PER_YEAR;
    return site.cases.reduce((sum, { chance, supply }) => {
      const demand = { a: removal.a, b: removal.b, exposure: unreplenishedExposure(supply, years) };
      return sum + chance * noSpareChance(demand, years < arrives ? shelf : later);
    }, 0);
  });
}

/** EUR over the months at one site that hang on an empty shelf, the own shelf taken as always empty. */
function atMost({ own, group }: Worth, noSpareByMonth: readonly Span[]): number {
  return own.reduce(
    (sum, worth, month) => sum + worth + (group[month] as number) * (noSpareByMonth[month]?.mean ?? 1),
    0,
  );
}

/** EUR over the months at one site. */
function lossAt(
  { own, group, always }: Worth,
  ownChance: readonly number[],
  none: readonly number[],
): number {
  let sum = always;
  for (const [month, empty] of none.entries())
    sum +=
      (own[month] as number) * Math.max(ownChance[month] as number, empty) + (group[month] as number) * empty;
  return sum;
}

function remember<T>(make: (count: number) => T): (count: number) => T {
  const known = new Map<number, T>();
  return (count) => {
    const found = known.get(count) ?? make(count);
    known.set(count, found);
    return found;
  };
}

/**
 * A pool with pieces bought for its shelves: what is lost over all months computed, as `horizonLoss` sums them.
 *
 * Loss = sum over months and lines of stops * [own + max(own shelf empty, group empty) * (other - own) + group empty *
 * (none - other)], discounted; own, other and none are the costs of a stop by where its spare comes from. A piece is
 * ordered today, reaches its shelf after the lead time and works as one stored for a short time does. The group's
 * chance is the evaluation's, with the piece added on that day; the own shelf is looked at as in `ownOutcome`.
 *
 * @param sites Shelves a piece may be bought for, and whose lines count.
 */
export function buyPool(
  seen: SeenPool & { readonly noSpareByMonth: readonly Span[] },
  sites: readonly PoolSite[],
  ground: Ground,
): BuyPool {
  const { pool, stage, noSpareByMonth } = seen;
  const { asOf, assumptions } = ground;
  const asked = { pool, stage, asOf, units: ground.units.get(pool.id) ?? 0 };
  const cases = supplyOutlook({ ...asked, leaving: ground.leaving.get(pool.id) ?? [] }, assumptions);
  const works = assumptions.classes[pool.itemClass].storage[0]?.works ?? 1;
  const laid: Laid = { seen, ground, cases, arrives: leadYearsOf(pool, ground), works };
  const none = remember((pieces) => groupEmpty(laid, pieces));
  const shelves = sites.map((site) => ({
    site,
    worth: worthOf(site, assumptions),
    own: remember((pieces) => ownEmpty(laid, site, pieces)),
  }));
  const countOf = (bought: readonly string[], id: string) => bought.filter((shelf) => shelf === id).length;
  const lossWith = (bought: readonly string[]) =>
    shelves.reduce(
      (sum, { site, worth, own }) =>
        sum + lossAt(worth, own(countOf(bought, site.siteId)), none(bought.length)),
      0,
    );
  return {
    most: shelves.reduce((sum, { worth }) => sum + atMost(worth, noSpareByMonth), 0),
    loss: () => lossWith([]),
    noSpare: (bought) =>
      none(bought.length).reduce((sum, chance) => sum + chance, 0) / (assumptions.months + 1),
    next: (bought) => {
      let best: NextPiece | null = null;
      for (const { site } of shelves) {
        const loss = lossWith([...bought, site.siteId]);
        if (site.units > 0 && loss < (best?.loss ?? Number.POSITIVE_INFINITY))
          best = { shelf: site.siteId, loss };
      }
      return best;
    },
  };
}
