import { database } from "@/lib/data/client";

/** Signs and codes that only stand beside amounts. */
const SIGNS = /€\s?\d|\b(EUR|SEK|GBP|PLN)\s\d/;

/** Smaller numbers stand for much else. */
const LEAST = 5_000;

/** Every amount on record, and every loss that was worked out, as pages would hand it down. */
export async function knownAmounts(): Promise<ReadonlySet<string>> {
  const stored = database().$queryRaw<{ n: number | null }[]>`
    SELECT unnest(ARRAY["costPerHour", "costFixed"])::float8 AS n FROM "Line"
    UNION SELECT unnest(ARRAY["budget", "forecast"])::float8 FROM "Project"
    UNION SELECT "amount"::float8 FROM "CostEntry"
    UNION SELECT "amount"::float8 FROM "BudgetItem"
    UNION SELECT "amount"::float8 FROM "ChangeAmount"
    UNION SELECT unnest(ARRAY["cost", "stopLoss"])::float8 FROM "PlanLine"
    UNION SELECT "effectHigh"::float8 FROM "ProjectRisk"
    UNION SELECT "price"::float8 FROM "Part"
    UNION SELECT "cost"::float8 FROM "RepairOrder"
    UNION SELECT "value"::float8 FROM "PlanFigure"`;
  const worked = database().$queryRaw<{ n: number | null }[]>`
    SELECT (jsonb_path_query("result", '$.**.mean'))::float8 AS n FROM "LineRow"`;
  const found = (await Promise.all([stored, worked])).flat().flatMap(({ n }) => n ?? []);
  return new Set(found.filter((n) => Math.abs(n) >= LEAST).flatMap((n) => [String(n), n.toFixed(2)]));
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
