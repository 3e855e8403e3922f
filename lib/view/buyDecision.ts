import type { IsoDate } from "@/lib/kernel/isoDate";
import { type BuyDocument, priceOfSlip, type ShelfRow } from "@/lib/view/buyDocument";

/** Pieces decided for one part on one site's shelf. */
export interface DecidedRow extends ShelfRow {
  readonly quantity: number;
}

/** A decision as it is frozen: the sheet it rests on, and what was decided of it. */
export interface DecisionSheet {
  /** Form of this text, so that a later reader knows how to show it. */
  readonly form: 1;
  readonly document: BuyDocument;
  readonly rows: readonly DecidedRow[];
  readonly quantity: number;
  /** EUR at the parts' own prices; null when one is missing. */
  readonly money: number | null;
  readonly orderBy: IsoDate | null;
  readonly slip: { readonly units: number; readonly price: number | null } | null;
  readonly names: string;
  readonly reason: string;
  readonly keptBy: string;
  readonly keptOn: IsoDate;
  /** The decision it takes the place of; null is none. */
  readonly supersedes: string | null;
}

/** Who decided what, and why. */
export interface Said {
  readonly orderBy: IsoDate | null;
  readonly names: string;
  readonly reason: string;
  readonly keptBy: string;
  readonly keptOn: IsoDate;
  readonly supersedes: string | null;
}

interface Pieces {
  readonly partId: string;
  readonly siteId: string;
  readonly quantity: number;
}

/** The sheet with its decision; pieces for a part and site the sheet does not have are null's reason. */
export function decisionSheet(
  document: BuyDocument,
  pieces: readonly Pieces[],
  said: Said,
): DecisionSheet | null {
  const keyOf = ({ partId, siteId }: Omit<Pieces, "quantity">) => `${partId} ${siteId}`;
  const asked = new Map(pieces.map((one) => [keyOf(one), one.quantity]));
  const known = new Set(document.shelves.map(keyOf));
  if (asked.size !== pieces.length || pieces.some((one) => !known.has(keyOf(one)))) return null;
  const rows = document.shelves.map((row) => ({ ...row, quantity: asked.get(keyOf(row)) ?? 0 }));
  const prices = new Map(document.prices.map(({ number, price }) => [number, price]));
  const bought = rows.filter(({ quantity }) => quantity > 0);
  const isPriced = bought.every(({ number }) => (prices.get(number) ?? null) !== null);
  return {
    ...{ form: 1, document, rows, ...said, slip: priceOfSlip(document) },
    quantity: rows.reduce((sum, { quantity }) => sum + quantity, 0),
    money: isPriced
      ? bought.reduce((sum, { number, quantity }) => sum + quantity * (prices.get(number) ?? 0), 0)
      : null,
  };
}
