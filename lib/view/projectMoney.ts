import { NOT_KNOWN, plainNumber, significant, THIN } from "@/lib/view/number";

/**
 * An estimate in a project's own currency, to three digits from a million, whole thousands below: `SEK 6.55 M`.
 *
 * @param value null is not defined.
 */
export function localMoney(value: number | null, currency: string): string {
  if (value === null) return NOT_KNOWN;
  const size = Math.abs(value);
  const sign = value < 0 ? "\u2212" : "";
  if (size >= 1_000_000) return `${sign}${currency}${THIN}${significant(size / 1_000_000, 3)}${THIN}M`;
  if (size >= 10_000) return `${sign}${currency}${THIN}${plainNumber(size / 1_000)}${THIN}k`;
  return `${sign}${currency}${THIN}${plainNumber(size)}`;
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
