import { requireCount, requireNumber, requireOpenShare } from "@/lib/kernel/requireNumber";
import { type OwnOutcome, type OwnShelf, ownOutcome } from "@/lib/spares/ownShelf";
import { stockChance } from "@/lib/spares/stockChance";

/** Pieces of a site that are alike. */
export interface ShelfLot {
  readonly id: string;
  /** Whole. */
  readonly count: number;
  /** Chance that each works, in [0, 1]. */
  readonly works: number;
  /** Sites whose places all take them; empty is kept where it is. */
  readonly goesTo: readonly string[];
}

export interface TransferSite extends OwnShelf {
  readonly lots: readonly ShelfLot[];
}

export interface TransferTerms {
  /** Own no-spare chance no giving site may pass, in (0, 1). */
  readonly target: number;
  /** EUR over the span a move must save, >= 0. */
  readonly least: number;
}

/** One piece that changes its site. */
export interface Move {
  readonly lotId: string;
  readonly fromId: string;
  readonly toId: string;
  /** EUR over the span the group loses less. */
  readonly saves: number;
  readonly from: { readonly before: number; readonly after: number };
  readonly to: { readonly before: number; readonly after: number };
}

/** A site with what has been moved so far. */
interface Standing {
  readonly site: TransferSite;
  /** Pieces left of each own lot. */
  readonly left: ReadonlyMap<string, number>;
  /** Pieces come from elsewhere, by their chance of working. */
  readonly come: ReadonlyMap<number, number>;
  readonly now: OwnOutcome;
  /** How it would stand with one more or one less, by the chance that piece works. */
  readonly would: Map<string, OwnOutcome>;
}

function outcomeOf(
  { site, left, come }: Pick<Standing, "site" | "left" | "come">,
  works: number,
  by: -1 | 0 | 1,
): OwnOutcome {
  const pieces = new Map(come);
  for (const lot of site.lots)
    pieces.set(lot.works, (pieces.get(lot.works) ?? 0) + (left.get(lot.id) ?? lot.count));
  if (by !== 0) pieces.set(works, (pieces.get(works) ?? 0) + by);
  const shelf = [...pieces]
    .filter(([chance, count]) => chance > 0 && count > 0)
    .map(([chance, count]) => ({ works: chance, count }));
  return ownOutcome(site, stockChance(shelf));
}

function standing(site: TransferSite, left: Standing["left"], come: Standing["come"]): Standing {
  return { site, left, come, now: outcomeOf({ site, left, come }, 0, 0), would: new Map() };
}

function would(here: Standing, works: number, by: -1 | 1): OwnOutcome {
  const key = `${by} ${works}`;
  const known = here.would.get(key);
  if (known) return known;
  const outcome = outcomeOf(here, works, by);
  here.would.set(key, outcome);
  return outcome;
}

interface Found {
  readonly lot: ShelfLot;
  readonly from: Standing;
  readonly to: Standing;
  readonly saves: number;
}

const leftOf = ({ left }: Standing, { id, count }: ShelfLot): number => left.get(id) ?? count;

/** Every move of one piece of a lot, with what it saves; none where its site would pass the target. */
function movesOf(
  from: Standing,
  lot: ShelfLot,
  { byId, target }: { readonly byId: ReadonlyMap<string, Standing>; readonly target: number },
): Found[] {
  if (leftOf(from, lot) === 0 || lot.works === 0 || lot.goesTo.length === 0) return [];
  const less = would(from, lot.works, -1);
  if (less.chance > target) return [];
  const costs = less.loss - from.now.loss;
  return lot.goesTo.flatMap((toId) => {
    const to = byId.get(toId);
    if (!to || to === from) return [];
    return [{ lot, from, to, saves: to.now.loss - would(to, lot.works, 1).loss - costs }];
  });
}

/** The move that saves most, if it saves the least asked for; of equals the first in the order of sites and lots. */
function bestMove(byId: ReadonlyMap<string, Standing>, { target, least }: TransferTerms): Found | null {
  const all = [...byId.values()].flatMap((from) =>
    from.site.lots.flatMap((lot) => movesOf(from, lot, { byId, target })),
  );
  let best: Found | null = null;
  for (const found of all) if (found.saves > (best?.saves ?? 0)) best = found;
  return best !== null && best.saves >= least ? best : null;
}

function requireSites(sites: readonly TransferSite[]): void {
  for (const { lots } of sites) for (const { count } of lots) requireCount(count, "count");
}

/**
 * Moves pieces between the shelves of a pool one at a time, each time where the group's expected loss falls most.
 *
 * A move takes a piece from a lot and puts it on the shelf of a site that can use it. It saves what the receiver's
 * `ownOutcome` loss falls by, less what the giver's rises by; the chance that the whole group has none stays as it is.
 * A site gives only while its own no-spare chance stays within the target. Ends when no move saves the least.
 *
 * Exact (no other set of as many moves saves more, and none saves more at the end) when all pieces work alike and fit
 * everywhere, `least` is 0 and each site's loss falls ever more slowly with each piece; that holds where X is
 * geometric-like (P(X = k) falling in k), so with fewer than about one removal under way at a site. Elsewhere one step
 * looks ahead by one piece only and may stop short, or take another piece than the best.
 *
 * @returns Moves in the order they are made.
 * @throws {RangeError} naming the argument and its value.
 * @see Marginal analysis, Sherbrooke, Optimal Inventory Modeling of Systems (from memory).
 */
export function proposeTransfers(sites: readonly TransferSite[], terms: TransferTerms): Move[] {
  requireOpenShare(terms.target, "target");
  requireNumber(terms.least, "least", { least: 0 });
  requireSites(sites);
  const byId = new Map(sites.map((site) => [site.id, standing(site, new Map(), new Map())]));
  const moves: Move[] = [];
  for (;;) {
    const found = bestMove(byId, terms);
    if (found === null) return moves;
    const { lot, from, to, saves } = found;
    const left = new Map(from.left).set(lot.id, leftOf(from, lot) - 1);
    const come = new Map(to.come).set(lot.works, (to.come.get(lot.works) ?? 0) + 1);
    const giver = standing(from.site, left, from.come);
    const taker = standing(to.site, to.left, come);
    byId.set(from.site.id, giver).set(to.site.id, taker);
    moves.push({
      ...{ lotId: lot.id, fromId: from.site.id, toId: to.site.id, saves },
      from: { before: from.now.chance, after: giver.now.chance },
      to: { before: to.now.chance, after: taker.now.chance },
    });
  }
}
