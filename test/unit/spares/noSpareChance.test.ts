import { describe, expect, test } from "vitest";
import { demandChanceAtMost, poissonAtMost } from "@/lib/spares/demand";
import { depletionDay } from "@/lib/spares/depletion";
import { demandTails, noSpareChance, runOutChance } from "@/lib/spares/noSpareChance";
import { stockChance } from "@/lib/spares/stockChance";

describe("chance of each number of working spares", () => {
  test("two sure pieces are two", () => {
    expect(stockChance([{ count: 2, works: 1 }])).toEqual([0, 0, 1]);
    expect(stockChance([])).toEqual([1]);
  });
  test("unlike pieces multiply (derived)", () => {
    const chances = stockChance([
      { count: 1, works: 0.9 },
      { count: 1, works: 0.5 },
    ]);
    expect(chances[0]).toBeCloseTo(0.05, 12);
    expect(chances[1]).toBeCloseTo(0.5, 12);
    expect(chances[2]).toBeCloseTo(0.45, 12);
  });
  test("a shelf of thousands is cut at 400 and still sums to one", () => {
    const chances = stockChance([{ count: 5000, works: 0.9 }]);
    expect(chances.length).toBe(401);
    expect(chances.reduce((sum, c) => sum + c, 0)).toBeCloseTo(1, 9);
  });
});

describe("the fast sums agree with the distribution functions", () => {
  test.each([
    [0.3, 5, 2],
    [4.1, 100, 45],
    [900, 1000, 2000],
  ])("a %d, b %d, exposure %d", (a, b, exposure) => {
    const mean = Math.round((a * exposure) / b);
    const tails = demandTails({ a, b, exposure }, mean + 5);
    for (const k of [0, 1, Math.floor(mean / 2), mean, mean + 5])
      expect(tails[k]).toBeCloseTo(1 - demandChanceAtMost({ a, b, exposure }, k - 1), 10);
  });
  test.each([0.2, 10.8, 900])("Poisson of mean %d", (mean) => {
    const most = Math.ceil(mean) + 5;
    const tails = demandTails({ rate: mean, exposure: 1 }, most);
    for (const k of [0, 1, most - 3, most]) expect(tails[k]).toBeCloseTo(1 - poissonAtMost(mean, k - 1), 10);
  });
});

test("with one sure spare the shelf is empty once one is taken, run out once two are", () => {
  const shelf = stockChance([{ count: 1, works: 1 }]);
  const demand = { rate: 1, exposure: 1 };
  expect(noSpareChance(demand, shelf)).toBeCloseTo(1 - Math.exp(-1), 12);
  expect(runOutChance(demand, shelf)).toBeCloseTo(1 - 2 * Math.exp(-1), 12);
});
test("an empty shelf has no spare before anything fails, but has not run out yet", () => {
  expect(noSpareChance({ rate: 1, exposure: 0 }, [1])).toBe(1);
  expect(runOutChance({ rate: 1, exposure: 0 }, [1])).toBe(0);
});
test("a piece that may not work counts for what it may", () => {
  const demand = { rate: 1, exposure: 0.5 };
  const shelf = stockChance([{ count: 1, works: 0.7 }]);
  expect(noSpareChance(demand, shelf)).toBeCloseTo(0.3 + 0.7 * (1 - Math.exp(-0.5)), 12);
});

describe("depletion day", () => {
  const at = (years: number) => 1 - Math.exp(-years);
  const byMonth = Array.from({ length: 25 }, (_, m) => at(m / 12));
  const options = { asOf: "2026-11-30", at };
  test("is the first day at which the chance is reached", () => {
    const days = Math.ceil(Math.log(2) * 365.25);
    expect(days).toBe(254);
    expect(depletionDay(byMonth, { ...options, chance: 0.5 })).toBe("2027-08-11");
  });
  test("takes the day that reaches the chance exactly", () => {
    const step = (years: number) => (years * 365.25 > 99.5 ? 0.5 : 0);
    const months = Array.from({ length: 13 }, (_, m) => step(m / 12));
    expect(depletionDay(months, { asOf: "2026-11-30", at: step, chance: 0.5 })).toBe("2027-03-10");
  });
  test("is today when it is reached already and unknown beyond the months computed", () => {
    expect(depletionDay([0.9], { ...options, chance: 0.8 })).toBe("2026-11-30");
    expect(depletionDay(byMonth, { ...options, chance: 0.9 })).toBeNull();
  });
});
