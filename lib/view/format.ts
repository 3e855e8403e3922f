import { placesOf } from "@/lib/kernel/currency";
import { type Language, locale, marks } from "@/lib/kernel/locale";
import type { Amount } from "@/lib/kernel/money";
import type { Span } from "@/lib/risk/evaluation";
import { grouped, NBSP, NOT_KNOWN, plainNumber, significant } from "@/lib/view/number";

const MINUS = "\u2212";
const SIGN: Readonly<Record<string, string>> = { EUR: "€", GBP: "£", USD: "$" };

interface MoneyUnit {
  readonly divisor: number;
  readonly marks: Readonly<Record<Language, string>>;
}

const ONES: MoneyUnit = { divisor: 1, marks: { en: "", de: "" } };
const THOUSANDS: MoneyUnit = { divisor: 1_000, marks: { en: `${NBSP}k`, de: `${NBSP}Tsd.` } };
const MILLIONS: MoneyUnit = { divisor: 1_000_000, marks: { en: `${NBSP}M`, de: `${NBSP}Mio.` } };

const markOf = (unit: MoneyUnit) => unit.marks[locale().language];

/** An amount beside its currency: the sign stands before it in English and behind it in German. */
const withCurrency = (amount: string, currency: string) =>
  locale().language === "de" ? `${amount}${NBSP}${currency}` : `${currency}${NBSP}${amount}`;

/** Rounded to the digits shown first, so that 999 999 reads 1.00 M and not 1 000 k. */
function unitOf(value: number): MoneyUnit {
  const shown = Math.abs(Number(value.toPrecision(3)));
  if (shown >= 1_000_000) return MILLIONS;
  return shown >= 10_000 ? THOUSANDS : ONES;
}

function scaled(value: number, unit: MoneyUnit, digits: number): string {
  if (unit === ONES) return plainNumber(Number(value.toPrecision(Math.max(digits, 2))));
  return significant(value / unit.divisor, digits);
}

/**
 * An estimated amount to three significant digits: `€ 412 k`, `€ 1.24 M`, `€ 860`.
 *
 * @param value EUR; null is not known.
 */
export function money(value: number | null): string {
  if (value === null) return NOT_KNOWN;
  const unit = unitOf(value);
  const sign = value < 0 ? MINUS : "";
  return sign + withCurrency(`${scaled(Math.abs(value), unit, 3)}${markOf(unit)}`, "€");
}

/** The bounds of a span to two digits, the unit said once where both share it: `180–790 k`. */
function bounds(low: number, high: number): string {
  const [lowUnit, highUnit] = [unitOf(low), unitOf(high)];
  const shared = lowUnit === highUnit || low === 0;
  return `${scaled(low, lowUnit, 2)}${shared ? "" : markOf(lowUnit)}–${scaled(high, highUnit, 2)}${markOf(highUnit)}`;
}

/** Only the range of an estimate, EUR: `€ 180–790 k`. */
export function moneyRange(span: Span | null): string {
  return span === null ? NOT_KNOWN : withCurrency(bounds(span.low, span.high), "€");
}

/**
 * An estimated amount with the range it may truly have: `€ 412 k (180–790 k)`.
 *
 * @param span EUR: mean, 5 % and 95 % points; null is not known.
 */
export function moneySpan(span: Span | null): string {
  return span === null ? NOT_KNOWN : `${money(span.mean)} (${bounds(span.low, span.high)})`;
}

/** EUR in whole thousands for a column headed `k€`; something above zero never reads as zero. */
export function thousands(value: number | null): string {
  if (value === null) return NOT_KNOWN;
  if (value > 0 && value < 500) return "<1";
  return plainNumber(Math.round(value / 1_000));
}

/**
 * A booked amount with the decimals of its currency: `€ 1 234.50`, `PLN 980.00`, `JPY 980`.
 *
 * @param amount   Decimal text; null is not known.
 * @param currency ISO 4217 code.
 */
export function exactMoney(amount: Amount | null, currency = "EUR"): string {
  if (amount === null) return NOT_KNOWN;
  const sign = amount.startsWith("-") ? MINUS : "";
  return sign + withCurrency(exactAmount(amount.replace("-", ""), currency), SIGN[currency] ?? currency);
}

/** The same without the currency, for a table whose head names it: `1 234.50`, `−980.00`. */
export function exactAmount(amount: Amount | null, currency: string): string {
  if (amount === null) return NOT_KNOWN;
  const [, minus = "", whole = "0", fraction = ""] = /^(-?)(\d+)(?:\.(\d+))?$/.exec(amount) ?? [];
  const places = placesOf(currency);
  const rest = places === 0 ? "" : marks().decimal + fraction.padEnd(places, "0").slice(0, places);
  return `${minus === "" ? "" : MINUS}${grouped(whole)}${rest}`;
}

/** An exchange rate as stated: `4.30 PLN for € 1`. */
export function exchangeRate(ratePerEur: string, currency: string): string {
  return `${ratePerEur.replace(".", marks().decimal)} ${currency} for ${withCurrency("1", "€")}`;
}
