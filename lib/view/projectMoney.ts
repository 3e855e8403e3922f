import { locale } from "@/lib/kernel/locale";
import { NOT_KNOWN, plainNumber, significant, THIN } from "@/lib/view/number";

/** An amount with the mark of its size and its currency, in the order of the reader's language. */
function sized(amount: string, [english, german]: readonly [string, string], currency: string): string {
  const parts = locale().language === "de" ? [amount, german, currency] : [currency, amount, english];
  return parts.filter((part) => part !== "").join(THIN);
}

/**
 * An estimate in a project's own currency, to three digits from a million, whole thousands below: `SEK 6.55 M`.
 *
 * @param value null is not defined.
 */
export function localMoney(value: number | null, currency: string): string {
  if (value === null) return NOT_KNOWN;
  const size = Math.abs(value);
  const sign = value < 0 ? "\u2212" : "";
  if (size >= 1_000_000) return sign + sized(significant(size / 1_000_000, 3), ["M", "Mio."], currency);
  if (size >= 10_000) return sign + sized(plainNumber(size / 1_000), ["k", "Tsd."], currency);
  return sign + sized(plainNumber(size), ["", ""], currency);
}

/** Lowest and highest of several forecasts; empty when there is none. */
export function localRange(
  span: { readonly low: number; readonly high: number } | null,
  currency: string,
): string {
  return span === null ? "" : `${localMoney(span.low, currency)} to ${localMoney(span.high, currency)}`;
}

/** An index of cost or schedule to two places; undefined ones are said to be so. */
export function index(value: number | null | undefined): string {
  return value === null || value === undefined ? "not defined" : plainNumber(value, 2);
}
