import type { Values } from "@/lib/intake/checkRow";
import type { Intent, Kept } from "@/lib/intake/intents/intent";
import { numberValue } from "@/lib/intake/rowValues";

/** What stands against taking a row over, found only beside what is known already. */
export interface RowProblem {
  readonly field: string | null;
  readonly problem: string;
  readonly remedy: string;
}

/** What a row says, and what stands against taking it over. */
export interface RowIntents {
  readonly intents: readonly Intent[];
  readonly problems: readonly RowProblem[];
}

/** The fields a row fills; an empty cell says nothing about what is stored. */
export function given(fields: Readonly<Record<string, Kept>>): Record<string, Kept> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null));
}

/** A number of a field, rounded to the decimals it is stored with, so that the same file changes nothing. */
export function storedNumber(values: Values, key: string, decimals = 0): number | null {
  const value = numberValue(values, key);
  return value === null ? null : Number(value.toFixed(decimals));
}
