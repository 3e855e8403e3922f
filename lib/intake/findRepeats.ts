import type { Values } from "@/lib/intake/checkRow";
import { foldText } from "@/lib/intake/foldText";
import type { FieldValue } from "@/lib/intake/readCell";

function fold(value: FieldValue | undefined): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "object") return "fullKey" in value ? value.fullKey : value.raw.toLowerCase();
  // Codes such as "-G1" and "+G1" differ by their sign alone, so only case and edges are folded.
  return String(value).trim().toLowerCase();
}

function firstFilled(values: Values, keys: readonly string[]): FieldValue {
  const filled = keys.find((key) => (values[key] ?? null) !== null);
  return filled === undefined ? null : (values[filled] ?? null);
}

/**
 * A row's identity as one text, or null when none of its parts is known. Rows alike in it speak of one thing.
 */
export function identify(values: Values, keys: readonly string[]): string | null {
  const parts = keys.map((key) => fold(firstFilled(values, key.split("|"))));
  return parts.every((part) => part === "") ? null : parts.join("\u0000");
}

/** What the rows of a file before these were marked with, for a file that is read in pieces. */
export class SeenMarks {
  readonly #kinds = new Map<string, Map<string, number>>();

  /** Row number by mark, of one kind of mark. */
  of(kind: string): Map<string, number> {
    const known = this.#kinds.get(kind) ?? new Map<string, number>();
    this.#kinds.set(kind, known);
    return known;
  }
}

/** Of each row the number of the first row with the same mark; null when it is the first or has none. */
export function findRepeats<Row extends { rowNumber: number }>(
  rows: readonly Row[],
  markOf: (row: Row) => string | null,
  first = new Map<string, number>(),
): (number | null)[] {
  return rows.map((row) => {
    const { rowNumber } = row;
    const mark = markOf(row);
    if (mark === null) return null;
    const seen = first.get(mark);
    if (seen === undefined) first.set(mark, rowNumber);
    return seen ?? null;
  });
}

/** The mark of a unit: part and serial number together; null unless both are known. */
export function markUnit(values: Values, partField: string, serialField: string): string | null {
  const part = values[partField] ?? null;
  const serial = values[serialField] ?? null;
  if (part === null || typeof part !== "object" || typeof serial !== "string") return null;
  return "key" in part && foldText(serial) !== "" ? `${part.key}\u0000${foldText(serial)}` : null;
}
