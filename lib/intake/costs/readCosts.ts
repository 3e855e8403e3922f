import type { Problem, Values } from "@/lib/intake/checkRow";
import { COST_REGISTER } from "@/lib/intake/costs/costRegister";
import type { DialectFinding } from "@/lib/intake/dialect";
import { dialectOf, openRegister } from "@/lib/intake/openRegister";
import { readRegister } from "@/lib/intake/readRegister";
import { type DialectAnswers, openQuestions, settleDialect } from "@/lib/intake/settleDialect";
import { type MappingSuggestion, toMapping } from "@/lib/intake/suggestMapping";
import { isCurrency, placesOf } from "@/lib/kernel/currency";
import { ok, type Result } from "@/lib/kernel/result";
import type { CostClass } from "@/lib/schema/costClass";

/** One order or invoice as a file says it; amounts as decimal text in its own currency. */
export interface ReadCost {
  readonly kind: "committed" | "actual";
  readonly reference: string;
  readonly spentOn: string;
  readonly amount: string;
  /** ISO 4217. */
  readonly currency: string;
  readonly text: string;
  readonly costClass: CostClass | null;
  readonly orderReference: string | null;
}

export interface CostRow {
  readonly rowNumber: number;
  readonly problems: readonly Problem[];
  /** Null when the row cannot be used. */
  readonly cost: ReadCost | null;
}

export interface CostFile {
  readonly columns: readonly MappingSuggestion[];
  /** What is wrong with the file as a whole. */
  readonly problems: readonly string[];
  /** What the values leave open and a person must say before anything is taken over. */
  readonly questions: readonly {
    readonly custom: DialectFinding["ask"][number];
    readonly examples: readonly string[];
  }[];
  readonly rows: readonly CostRow[];
  /** Rows that are no entries: blank, totals, headings. */
  readonly skipped: number;
}

/**
 * Reads orders and invoices from the bytes of a table; columns are found by their names.
 *
 * @param currency of rows that name none: the project's.
 * @returns The rows, or what a person should do when the file is no table.
 */
export async function readCosts(
  bytes: Uint8Array,
  { currency, answers }: { readonly currency: string; readonly answers: DialectAnswers },
): Promise<Result<CostFile, string>> {
  const opened = await openRegister(bytes, COST_REGISTER);
  if (!opened.ok) return opened;
  const { body, suggestions } = opened.value;
  const mapping = toMapping(suggestions);
  const finding = dialectOf(body, mapping, COST_REGISTER);
  const dialect = settleDialect(finding, answers);
  const { rows, problems } = readRegister(body, { register: COST_REGISTER, mapping, dialect });
  return ok({
    columns: suggestions,
    problems: problems.map(({ problem, remedy }) => `${problem}. ${remedy}.`),
    questions: openQuestions(finding, dialect).map((custom) => ({
      custom,
      examples: finding[custom].examples,
    })),
    rows: rows.map((row) => finish(row, currency)),
    skipped: body.skipped.length,
  });
}

function finish(
  {
    rowNumber,
    values,
    problems,
  }: { readonly rowNumber: number; readonly values: Values; readonly problems: readonly Problem[] },
  currency: string,
): CostRow {
  const found = [...problems, ...moneyProblems(values, currency)];
  const refused = found.some(({ severity }) => severity === "error");
  return { rowNumber, problems: found, cost: refused ? null : costOf(values, currency) };
}

const textOf = (values: Values, key: string) => {
  const value = values[key];
  return typeof value === "string" && value !== "" ? value : null;
};

const currencyOf = (values: Values, currency: string) =>
  textOf(values, "currency")?.toUpperCase() ?? currency;

const error = (given: Pick<Problem, "field" | "found" | "problem" | "remedy">): Problem => ({
  ...{ column: null, ...given, severity: "error" },
});

/** What a code, the places of an amount or the order of an order makes unusable. */
function moneyProblems(values: Values, currency: string): Problem[] {
  const code = currencyOf(values, currency);
  if (!isCurrency(code))
    return [
      error({
        ...{ field: "currency", found: code, problem: "This is no currency of ISO 4217" },
        remedy: "Write its three letters, such as SEK",
      }),
    ];
  const order = values.kind === "committed" ? textOf(values, "orderReference") : null;
  return [...placeProblems(values.amount, code), ...(order === null ? [] : [orderOfOrder(order)])];
}

function placeProblems(amount: Values[string] | undefined, code: string): Problem[] {
  const places = placesOf(code);
  if (typeof amount !== "number" || Number(amount.toFixed(places)) === amount) return [];
  return [
    error({
      ...{ field: "amount", found: String(amount), problem: `${code} has ${places} places behind the point` },
      remedy: "Round the amount in the file",
    }),
  ];
}

const orderOfOrder = (found: string): Problem =>
  error({
    ...{
      field: "orderReference",
      found,
      problem: "Only a payment is for an order; an order has its own number",
    },
    remedy: "Leave the cell empty, or say that the row is a payment",
  });

function costOf(values: Values, currency: string): ReadCost {
  const code = currencyOf(values, currency);
  const reference = textOf(values, "reference") ?? "";
  return {
    kind: values.kind === "actual" ? "actual" : "committed",
    ...{ reference, spentOn: textOf(values, "spentOn") ?? "", currency: code },
    amount: Number(values.amount).toFixed(placesOf(code)),
    text: (textOf(values, "text") ?? reference).slice(0, 200),
    costClass: textOf(values, "costClass") as CostClass | null,
    orderReference: textOf(values, "orderReference"),
  };
}
