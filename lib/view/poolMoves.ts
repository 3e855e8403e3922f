import type { IsoDate } from "@/lib/kernel/isoDate";
import { sumAmounts } from "@/lib/kernel/money";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { ItemClass } from "@/lib/risk/evaluation";
import type { Move } from "@/lib/spares/transfers";
import type { Border } from "@/lib/view/customs";
import type { ToldPrice } from "@/lib/view/poolBoard";
import type { HeldShare } from "@/lib/view/sparesShares";

/** What a move must keep to; typed on the page, else these: own choice of the product, no source. */
export const TRANSFER_DEFAULTS = { target: 0.05, least: 500 } as const;

export interface TransferTermsRead {
  readonly terms: { readonly target: number; readonly least: number };
  /** Names of what was typed and cannot be used. */
  readonly unreadable: readonly string[];
}

function numberWithin(typed: unknown, [least, most]: readonly [number, number]): number | null | undefined {
  if (typed === undefined || typed === "") return undefined;
  const value = Number(typed);
  return typeof typed === "string" && value >= least && value <= most ? value : null;
}

/** The bounds typed into the address: `target` in percent from 0.1 to 50, `least` in EUR a year; else the defaults. */
export function readTransferTerms(asked: Readonly<Record<string, unknown>>): TransferTermsRead {
  const target = numberWithin(asked.target, [0.1, 50]);
  const least = numberWithin(asked.least, [0, 1_000_000]);
  return {
    terms: {
      target: target === null || target === undefined ? TRANSFER_DEFAULTS.target : target / 100,
      least: least ?? TRANSFER_DEFAULTS.least,
    },
    unreadable: [...(target === null ? ["target"] : []), ...(least === null ? ["least"] : [])],
  };
}

/** A site of a part's pool. */
export interface PoolSiteRow extends HeldShare {
  readonly siteId: string;
  readonly siteName: string;
  readonly currency: string;
  /** Pieces on the books, counted lots only. */
  readonly onBooks: number;
  /** Own no-spare chance over the first year: as it stands, and after all moves below. */
  readonly before: number;
  readonly after: number;
  /** Stops a year by the part here, and what an own shelf empty all year would cost on the way, EUR a year; null is not shown. */
  readonly stops: number;
  readonly wayLoss: number | null;
}

/** Pieces of one lot that go to one site. */
export interface ProposedMove {
  readonly lotId: string;
  readonly bin: string;
  readonly revision: string;
  readonly fromSite: string;
  readonly toSite: string;
  readonly toSiteId: string;
  readonly pieces: number;
  /** EUR a year; null is not shown. */
  readonly saves: number | null;
  readonly from: { readonly before: number; readonly after: number };
  readonly to: { readonly before: number; readonly after: number };
  readonly border: Border;
  /** Whether the reader may ask for it. */
  readonly mayAsk: boolean;
}

/** A lot that does not go somewhere, and why. */
export interface StayingLot {
  readonly siteCode: string;
  readonly bin: string;
  readonly revision: string;
  readonly pieces: number;
  readonly why: string;
}

export interface PoolOfPart {
  readonly asOf: IsoDate;
  readonly partId: string;
  readonly number: string;
  readonly maker: string;
  readonly description: string;
  readonly itemClass: ItemClass;
  readonly stage: SupplyStage;
  readonly installed: number;
  readonly usable: number;
  readonly book: number | null;
  /** Chance over the first year that no site has one. */
  readonly groupNoSpare: number;
  readonly price: ToldPrice | null;
  readonly transferHours: number;
  readonly target: number;
  readonly least: number;
  /** Whether all sites of the group are the reader's. */
  readonly everySite: boolean;
  readonly sites: readonly PoolSiteRow[];
  readonly moves: readonly ProposedMove[];
  readonly staying: readonly StayingLot[];
}

/** A pool as it leaves for somebody to whom amounts are not shown. */
export function poolWithoutAmounts(pool: PoolOfPart): PoolOfPart {
  return {
    ...pool,
    price: null,
    sites: pool.sites.map((site) => ({ ...site, wayLoss: null })),
    moves: pool.moves.map((move) => ({ ...move, saves: null })),
  };
}

/** What the pieces of a move are worth at the price on record; null without one. */
export function moveValue(
  { pieces }: Pick<ProposedMove, "pieces">,
  price: ToldPrice | null,
): { readonly amount: string; readonly currency: string } | null {
  if (price === null) return null;
  return { amount: sumAmounts(Array.from({ length: pieces }, () => price.amount)), currency: price.currency };
}

/** Single moves of one lot to one site put together, in the order first made. */
export function together(moves: readonly Move[]): (Move & { readonly pieces: number })[] {
  const out = new Map<string, Move & { pieces: number }>();
  for (const move of moves) {
    const key = `${move.lotId} ${move.toId}`;
    const known = out.get(key);
    out.set(
      key,
      known
        ? {
            ...known,
            pieces: known.pieces + 1,
            saves: known.saves + move.saves,
            from: { before: known.from.before, after: move.from.after },
            to: { before: known.to.before, after: move.to.after },
          }
        : { ...move, pieces: 1 },
    );
  }
  return [...out.values()];
}
