import { expect, test } from "vitest";
import { cutByBudget } from "@/lib/portfolio/cutByBudget";

const costs: Readonly<Record<string, number>> = { X: 500_000, Y: 300_000, Z: 250_000 };
const worth: Readonly<Record<string, number>> = { X: 150_000, Y: 120_000, Z: 110_000 };

test.each([
  ["by worth", ["X", "Y", "Z"], 150_000],
  ["by worth for money", ["Z", "Y", "X"], 230_000],
])("a budget of 550 000 spent down the ranking %s (textbook capital rationing case)", (_, order, total) => {
  const cut = cutByBudget(
    order.map((id) => ({ id, cost: costs[id] ?? null, pin: "none" as const })),
    { budget: 550_000, fill: false },
  );
  if (!cut.ok) throw new Error(cut.error.reason);
  expect(cut.value.funded.reduce((sum, id) => sum + (worth[id] ?? 0), 0)).toBe(total);
});
