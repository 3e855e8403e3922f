import type { IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { ItemClass, Span } from "@/lib/risk/evaluation";

/** One site's part in a pool. */
export interface SiteHolding {
  readonly siteCode: string;
  /** Units installed. */
  readonly units: number;
  /** Pieces on the books, counted lots only. */
  readonly book: number;
  readonly usable: number;
}

/** What was computed for the day a week earlier. */
export interface PoolBefore {
  readonly stage: SupplyStage;
  readonly noSpare: number;
  readonly depletionP50: IsoDate | null;
  readonly depletionP80: IsoDate | null;
}

/** A spares pool in the weekly look. */
export interface SparesPool {
  /** The day looked at. */
  readonly asOf: IsoDate;
  readonly partId: string;
  readonly maker: string;
  readonly number: string;
  readonly description: string;
  readonly itemClass: ItemClass;
  readonly family: { readonly id: string; readonly name: string } | null;
  readonly stage: SupplyStage;
  readonly installed: number;
  readonly book: number | null;
  readonly usable: number;
  /** Removals per unit-year. */
  readonly removalRate: number;
  readonly removalsPerYear: number;
  /** Mean chance of an empty shelf over the next 12 months. */
  readonly noSpare: Span;
  readonly depletionP50: IsoDate | null;
  readonly depletionP80: IsoDate | null;
  /** Null when the pool was not there a week earlier. */
  readonly before: PoolBefore | null;
  /** Removals that happened in the week. */
  readonly newRemovals: number;
  readonly repairsOut: number;
  readonly repairsOverdue: number;
  /** The reader's sites only. */
  readonly sites: readonly SiteHolding[];
}

/** The weekly look at the spares of the group. */
export interface SparesLook {
  readonly asOf: IsoDate;
  /** The day compared with. */
  readonly before: IsoDate;
  /** That day is looked at on its own shelf; else on that of the day looked at, since its own is not known. */
  readonly ownShelf: boolean;
  readonly engine: string;
  readonly dataVersion: number;
  /** Whether the reader sees every site. */
  readonly seesAll: boolean;
  readonly pools: readonly SparesPool[];
}
