import type { Problem, Values } from "@/lib/intake/checkRow";
import { plainText, type RawCell } from "@/lib/intake/reading";
import { isCurrency } from "@/lib/kernel/currency";

/** Signs that stand for one currency; "$" and "kr" are several countries', so they name none. */
const SIGNS: Readonly<Record<string, string>> = {
  "€": "EUR",
  "£": "GBP",
  ZŁ: "PLN",
  KČ: "CZK",
  US$: "USD",
  MX$: "MXN",
};

/** The currency written beside an amount, ISO 4217; null when none is, or its sign is several countries'. */
export function currencyBeside(cell: RawCell): string | null {
  const words = plainText(cell)
    .toUpperCase()
    .split(/[\d.,’'\s+−-]+/u)
    .filter((word) => word !== "");
  const named = words.flatMap((word) => SIGNS[word] ?? (isCurrency(word) ? word : []));
  return named[0] ?? null;
}

/** What an amount's own currency says to the row's: fills it where it is empty, speaks against it where it differs. */
export function settleCurrency(
  values: Values,
  beside: string | null,
): { readonly currency: string | null; readonly problem: Omit<Problem, "column"> | null } {
  const stated = typeof values.currency === "string" ? values.currency.toUpperCase() : null;
  if (beside === null || stated === beside) return { currency: null, problem: null };
  if (stated === null) return { currency: beside, problem: null };
  return {
    currency: null,
    problem: {
      ...{ field: "currency", found: stated, severity: "error" },
      problem: `The amount is written in ${beside}, the row says ${stated}`,
      remedy: "Correct the one that is wrong",
    },
  };
}
