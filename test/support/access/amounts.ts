import { database } from "@/lib/data/client";

/** Signs and codes that only stand beside amounts. */
const SIGNS = /€\s?\d|\b(EUR|SEK|GBP|PLN)\s\d/;

/** Where amounts are stored: table and column. */
const STORED: readonly (readonly [table: string, column: string])[] = [
  ...([
    ["Line", "costPerHour"],
    ["Line", "costFixed"],
    ["Project", "budget"],
    ["Project", "forecast"],
  ] as const),
  ...([
    ["CostEntry", "amount"],
    ["BudgetItem", "amount"],
    ["ChangeAmount", "amount"],
  ] as const),
  ...([
    ["PlanLine", "cost"],
    ["PlanLine", "stopLoss"],
    ["ProjectRisk", "effectHigh"],
  ] as const),
  ...([
    ["Part", "price"],
    ["RepairOrder", "cost"],
    ["PlanFigure", "value"],
  ] as const),
];

/** Smaller numbers stand for much else. */
const LEAST = 5_000;

/** Every amount on record, and every loss that was worked out, as pages would hand it down. */
export async function knownAmounts(): Promise<ReadonlySet<string>> {
  const db = database();
  const stored = STORED.map(([table, column]) =>
    db.$queryRawUnsafe<{ n: number }[]>(
      `SELECT DISTINCT "${column}"::float8 AS n FROM "${table}" WHERE abs("${column}") >= ${LEAST}`,
    ),
  );
  const worked = db.$queryRaw<{ n: number }[]>`
    SELECT (jsonb_path_query("result", '$.**.mean'))::float8 AS n FROM "LineRow"`;
  const found = (await Promise.all([...stored, worked])).flat().filter(({ n }) => Math.abs(n) >= LEAST);
  return new Set(found.flatMap(({ n }) => [String(n), n.toFixed(2)]));
}

/** The first amount among the words of a page, with what stands beside it; null is none. */
export function amountIn(words: string, known: ReadonlySet<string>): string | null {
  const tokens = words.split("\n");
  const at = tokens.findIndex((token) => SIGNS.test(token) || known.has(token));
  return at < 0
    ? null
    : tokens
        .slice(Math.max(0, at - 2), at + 3)
        .join(" | ")
        .slice(0, 200);
}
