import { marks } from "@/lib/kernel/locale";

/** The word for a figure nobody knows; unknown is never shown as zero. */
export const NOT_KNOWN = "not known";

/** Narrow space that does not break: between groups of digits. */
export const THIN = "\u202f";
/** Space that does not break: between a number and its unit. */
export const NBSP = "\u00a0";
const MINUS = "\u2212";

/** Digits in threes, in the marks of whoever reads. */
export function grouped(digits: string): string {
  return digits.replace(/\B(?=(\d{3})+$)/g, marks().group);
}

/**
 * A number in plain numerals, digits in threes: `1 234.5`, with a true minus sign and the marks of whoever reads.
 *
 * @param places Digits after the point, 0 to 20.
 * @throws {RangeError} if the value is not finite.
 */
export function plainNumber(value: number, places = 0): string {
  if (!Number.isFinite(value)) throw new RangeError(`a shown number must be finite, got ${value}`);
  const [whole = "0", fraction] = Math.abs(value).toFixed(places).split(".");
  const text = fraction === undefined ? grouped(whole) : grouped(whole) + marks().decimal + fraction;
  return value < 0 && /[1-9]/.test(text) ? MINUS + text : text;
}

/** A number to a count of significant digits, never in powers of ten: `412`, `41.2`, `0.041`. */
export function significant(value: number, digits: number): string {
  if (value === 0) return "0";
  const rounded = Number(value.toPrecision(digits));
  const magnitude = Math.floor(Math.log10(Math.abs(rounded)));
  return plainNumber(rounded, Math.min(20, Math.max(0, digits - 1 - magnitude)));
}

/** All digits of a stated or measured value, to twelve: `29 127.3741`; a quotient that never ends stops there. */
export function exactNumber(value: number): string {
  const [digits = "", power = "0"] = value.toPrecision(12).split("e");
  const places = digits.replace(/\.?0+$/, "").split(".")[1]?.length ?? 0;
  return plainNumber(value, Math.min(20, Math.max(0, places - Number(power))));
}

/** A whole number, or one decimal where the quantity is an expectation: `12`, `3.4`. */
export function quantity(value: number | null): string {
  if (value === null) return NOT_KNOWN;
  return Number.isInteger(value) ? plainNumber(value) : plainNumber(value, 1);
}

/**
 * A count with its noun: `1 drive`, `12 drives`.
 *
 * @param many Plural where adding `s` is wrong.
 */
export function count(value: number | null, one: string, many = `${one}s`): string {
  if (value === null) return `${many} ${NOT_KNOWN}`;
  return `${quantity(value)} ${value === 1 ? one : many}`;
}
