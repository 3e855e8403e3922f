import { Decimal } from "decimal.js";

/** An amount of one currency as decimal text, e.g. `"1234.50"`; never a binary fraction. */
export type Amount = string;

/** Digits enough that sums and products of amounts and rates are exact before the one rounding. */
const Exact = Decimal.clone({ precision: 60 });

function amount(text: string): Decimal {
  if (!/^-?\d+(\.\d+)?$/.test(text)) throw new RangeError(`amount must be decimal text, got ${text}`);
  return new Exact(text);
}

/** The one rounding of the product: to the places of the currency, halves away from zero. */
function write(value: Decimal, places = 2): Amount {
  const rounded = value.toDecimalPlaces(places, Decimal.ROUND_HALF_UP);
  return (rounded.isZero() ? new Exact(0) : rounded).toFixed(places);
}

/**
 * Adds amounts of one currency exactly and rounds once, at the end.
 *
 * @param places of the currency, see `placesOf`.
 * @throws {RangeError} naming the text that is not an amount.
 */
export function sumAmounts(amounts: readonly Amount[], places = 2): Amount {
  return write(
    amounts.reduce((sum, text) => sum.plus(amount(text)), new Exact(0)),
    places,
  );
}

/** `a` less `b`, rounded to the places of the currency. */
export function subtractAmounts(a: Amount, b: Amount, places = 2): Amount {
  return write(amount(a).minus(amount(b)), places);
}

/** The amount with as many places as its currency has, rounded once. */
export function roundAmount(text: Amount, places: number): Amount {
  return write(amount(text), places);
}

/**
 * Converts at a stated rate: units of the wanted currency for one of the amount's.
 *
 * @throws {RangeError} if an amount is not decimal text or the rate is not above zero.
 */
export function atRate(text: Amount, rate: Amount, places: number): Amount {
  if (!amount(rate).gt(0)) throw new RangeError(`rate must be > 0, got ${rate}`);
  return write(amount(text).times(amount(rate)), places);
}

/**
 * Units of one currency for one of another, from the units of each for one EUR; ten places.
 *
 * @throws {RangeError} if a rate is not decimal text above zero.
 */
export function crossRate(wantedPerEur: Amount, ownPerEur: Amount): Amount {
  const [wanted, own] = [amount(wantedPerEur), amount(ownPerEur)];
  if (!(wanted.gt(0) && own.gt(0)))
    throw new RangeError(`rates must be > 0, got ${wantedPerEur} and ${ownPerEur}`);
  return wanted.div(own).toDecimalPlaces(10, Decimal.ROUND_HALF_UP).toFixed();
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

/** Whether an amount has no more places than its currency; zeros at the end do not count. */
export function fitsPlaces(text: Amount, places: number): boolean {
  return amount(text).decimalPlaces() <= places;
}

/**
 * Splits an amount in the proportions of some weights; the parts add up to it exactly, the last takes the remainder.
 *
 * @param weights finite, above 0.
 * @throws {RangeError} when a weight is not above 0.
 */
export function splitAmount(text: Amount, weights: readonly number[], places: number): Amount[] {
  for (const weight of weights)
    if (!(Number.isFinite(weight) && weight > 0)) throw new RangeError(`weight must be > 0, got ${weight}`);
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const whole = amount(text);
  const parts = weights.slice(0, -1).map((weight) => write(whole.times(weight).div(all), places));
  return weights.length === 0 ? [] : [...parts, subtractAmounts(text, sumAmounts(parts, places), places)];
}
