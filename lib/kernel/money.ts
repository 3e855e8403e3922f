import { Decimal } from "decimal.js";

/** An amount of one currency as decimal text, e.g. `"1234.50"`; never a binary fraction. */
export type Amount = string;

function amount(text: string): Decimal {
  if (!/^-?\d+(\.\d+)?$/.test(text)) throw new RangeError(`amount must be decimal text, got ${text}`);
  return new Decimal(text);
}

/** The one rounding of the product: to two places, halves away from zero. */
function write(value: Decimal): Amount {
  return value.toDecimalPlaces(2, Decimal.ROUND_HALF_UP).toFixed(2);
}

/**
 * Adds amounts of one currency exactly and rounds once, at the end.
 *
 * @throws {RangeError} naming the text that is not an amount.
 */
export function sumAmounts(amounts: readonly Amount[]): Amount {
  return write(amounts.reduce((sum, text) => sum.plus(amount(text)), new Decimal(0)));
}

/** `a` less `b`, rounded to two places. */
export function subtractAmounts(a: Amount, b: Amount): Amount {
  return write(amount(a).minus(amount(b)));
}

/**
 * Converts at a stated rate: units of the foreign currency for one EUR.
 *
 * @throws {RangeError} if an amount is not decimal text or the rate is not above zero.
 */
export function toEur(local: Amount, ratePerEur: Amount): Amount {
  const rate = amount(ratePerEur);
  if (!rate.gt(0)) throw new RangeError(`ratePerEur must be > 0, got ${ratePerEur}`);
  return write(amount(local).div(rate));
}

/** -1, 0 or 1 as `a` is less than, equal to or more than `b`. */
export function compareAmounts(a: Amount, b: Amount): number {
  return amount(a).comparedTo(amount(b));
}
