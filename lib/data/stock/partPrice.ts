import "server-only";
import type { ToldPrice } from "@/lib/view/poolBoard";

interface PricedRow {
  readonly price: { toNumber(): number; toFixed(places: number): string } | null;
  readonly priceCurrency: string | null;
  readonly pricedOn: Date | null;
}

/** The price of a part as told; null is not known. */
export function toldPrice({ price, priceCurrency, pricedOn }: PricedRow): ToldPrice | null {
  if (price === null || priceCurrency === null) return null;
  const told = pricedOn?.toISOString().slice(0, 10) ?? null;
  return { amount: price.toFixed(2), currency: priceCurrency, pricedOn: told };
}

/** The same at the budget rate, EUR; null without a price or a rate. */
export function priceInEuro(
  { price, priceCurrency }: PricedRow,
  rates: ReadonlyMap<string, number>,
): number | null {
  const perEuro = rates.get(priceCurrency ?? "");
  return price === null || perEuro === undefined ? null : price.toNumber() / perEuro;
}
