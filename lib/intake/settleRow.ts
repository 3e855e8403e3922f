import type { Problem, Values } from "@/lib/intake/checkRow";
import { settleStop } from "@/lib/intake/eventStop";
import type { LearnedWords } from "@/lib/intake/learnedWords";
import type { FieldValue } from "@/lib/intake/readCell";
import { settleCurrency } from "@/lib/intake/rowCurrency";

/** What the cells of a row say together. */
export interface SettledRow {
  readonly values: Readonly<Record<string, FieldValue>>;
  readonly inferred: readonly string[];
  readonly problems: readonly Omit<Problem, "column">[];
}

/** An amount's own currency, a stop's start and end, and the source's words for lines, machines and what happened. */
export function settleRow(
  values: Values,
  { beside, words }: { readonly beside: string | null; readonly words: LearnedWords | undefined },
): SettledRow {
  const { currency, problem } = settleCurrency(values, beside);
  const stop = "endedAt" in values ? settleStop(values) : null;
  const translated = words?.translate(values);
  return {
    values: { ...(currency === null ? {} : { currency }), ...stop?.values, ...translated?.values },
    inferred: [
      ...(currency === null ? [] : ["currency"]),
      ...(stop?.inferred ?? []),
      ...(translated?.inferred ?? []),
    ],
    problems: [...(problem === null ? [] : [problem]), ...(stop?.problems ?? [])],
  };
}
