import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import { type StockLevels, toOrder } from "@/lib/spares/stockLevels";
import { count, plainNumber, significant } from "@/lib/view/number";
import { stageView } from "@/lib/view/stage";
import { day } from "@/lib/view/time";

/** Chances of an empty shelf one may aim at. The first is the usual; own choice of the product, no source. */
export const TARGETS = [0.05, 0.02, 0.1] as const;
/** Years between two looks at the shelf. Own choice of the product, no source. */
export const REVIEW_YEARS = 0.25;

/** A part at a site with its levels. */
export interface LevelRow {
  readonly partId: string;
  readonly part: string;
  readonly description: string;
  readonly siteCode: string;
  readonly stage: SupplyStage;
  readonly units: number;
  /** Units at all sites, the reader's and others'. */
  readonly unitsInGroup: number;
  /** Null is not counted. */
  readonly book: number | null;
  readonly usable: number;
  readonly removalRate: number;
  readonly leadYears: number;
  /** The lead time is the class's assumption, not the part's own. */
  readonly leadAssumed: boolean;
  readonly levels: StockLevels;
  /** In its own currency, as decimal text; null is not known. */
  readonly price: string | null;
  readonly priceCurrency: string | null;
  /** EUR a piece. */
  readonly priceEuro: number | null;
  readonly pricedOn: IsoDate | null;
}

/** The target asked for in an address; the usual one for anything else. */
export function readTarget(asked: string | undefined): number {
  return TARGETS.find((target) => String(target) === asked) ?? TARGETS[0];
}

/** Why a part has the levels it has, and what must not be done. */
export function levelReason({ levels, stage, leadAssumed }: LevelRow, asOf: IsoDate): string {
  const { kind, gone } = levels;
  if (kind === "unused") return "Nothing installed here needs it: never re-order.";
  if (kind === "retires")
    return `All its places here retire by ${day(addDays(asOf, Math.ceil((gone ?? 0) * 365.25)))}: never re-order.`;
  if (kind === "ended") return `${stageView(stage).name}: cannot be ordered; keep what the years ahead need.`;
  const undated = stage === "undated" ? " No source says that it can still be ordered." : "";
  return `Order up to the maximum below the minimum.${leadAssumed ? " Lead time assumed for the class." : ""}${undated}`;
}

/** Why pieces of a part are surplus. */
export const surplusReason = (row: LevelRow, asOf: IsoDate): string =>
  row.levels.kind === "restock" ? "More than is kept here." : levelReason(row, asOf);

/** Pieces to order now; always 0 for a part that retires, has ended or is not used. */
export const ordered = ({ levels, usable, book }: LevelRow): number | null =>
  book === null && levels.kind === "restock" ? null : toOrder(levels, usable);

/** Pieces short of what must be kept where nothing may be ordered. */
export function shortOf({ levels, usable, book }: LevelRow): number {
  if (levels.kind === "restock" || book === null) return 0;
  return Math.max(0, levels.keep - Math.floor(usable + 1e-9));
}

/**
 * Pieces beyond what is needed: whole pieces expected to work beyond those to keep, or the whole book where nothing needs it.
 */
export function surplusOf({ levels, usable, book }: LevelRow): number {
  if (levels.kind === "unused") return book ?? 0;
  return Math.max(0, Math.floor(usable - levels.keep + 1e-9));
}

/** Surplus in EUR at the price on record; null is not known. */
export function surplusEuro(row: LevelRow): number | null {
  return row.priceEuro === null ? null : surplusOf(row) * row.priceEuro;
}

/** The arithmetic of a level: `0.045 a unit-year × 12.5 unit-years`. */
export function demandWords(rate: number, exposure: number): string {
  return `${significant(rate, 2)} a unit-year × ${count(Number(exposure.toFixed(1)), "unit-year")}`;
}

/** Rows with a surplus, the most valuable first, what cannot be valued last. */
export function bySurplus(rows: readonly LevelRow[]): LevelRow[] {
  return rows
    .filter((row) => surplusOf(row) > 0)
    .sort((a, b) => (surplusEuro(b) ?? -1) - (surplusEuro(a) ?? -1) || (a.part < b.part ? -1 : 1));
}

/** Minimum and maximum in one cell: `2 / 3`, or that nothing is ordered. */
export function levelWords({ min, max, kind }: StockLevels): string {
  return kind === "restock" ? `${plainNumber(min)} / ${plainNumber(max)}` : "0 / 0";
}
