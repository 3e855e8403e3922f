import { describe, expect, it, test } from "vitest";
import { type LevelQuestion, smallestLevel, stockLevels, toOrder } from "@/lib/spares/stockLevels";

/** A rate as good as known: gamma with a huge weight is its mean. */
const known = (rate: number) => ({ a: rate * 1e9, b: 1e9 });

const question = (given: Partial<LevelQuestion> = {}): LevelQuestion => ({
  rate: known(0.05),
  supply: {
    installed: [{ from: 0, to: null, units: 40 }],
    ...{ leadTime: 0.25, lastOrderAt: null, repair: null },
  },
  ...{ canOrder: true, target: 0.05, reviewYears: 0.25, keepYears: 5 },
  ...given,
});

const leaving = (units: readonly (readonly [number, number | null])[]) => ({
  ...question().supply,
  installed: units.map(([n, to]) => ({ from: 0, to, units: n })),
});

describe("the smallest level", () => {
  // Cumulative Poisson tables in textbooks: mean 1, P(X <= 2) = .920, P(X <= 3) = .981; mean 2, P(X <= 4) = .947, <= 5 = .983.
  it.each([
    [1, 0.05, 4],
    [1, 0.1, 3],
    [2, 0.05, 6],
    [2, 0.06, 5],
  ])("for a mean of %s and a target of %s is %s", (mean, target, level) => {
    expect(smallestLevel(known(1), mean, target)).toBe(level);
  });

  it("of no demand is none, and of a rate nobody knows well is more", () => {
    expect(smallestLevel(known(1), 0, 0.05)).toBe(0);
    expect(smallestLevel({ a: 0.5, b: 0.5 }, 2, 0.05)).toBeGreaterThan(6);
    expect(() => smallestLevel(known(1), 1, 0)).toThrow("target");
  });
});

test("a part that is restocked covers its lead time, and lead time and review, at the target", () => {
  // 40 units, 0.05 a unit-year: 0.5 removals in a quarter, 1.0 in two. P(X<=1) at 0.5 is .910, P(X<=2) .986; at 1.0 .920, .981.
  const levels = stockLevels(question());
  expect(levels).toMatchObject({ kind: "restock", min: 3, max: 4, keep: 4, gone: null });
  expect(levels.leadExposure).toBeCloseTo(10, 10);
  expect(levels.reviewExposure).toBeCloseTo(20, 10);
  expect(toOrder(levels, 2.9)).toBe(2);
  expect(toOrder(levels, 3)).toBe(0);
  expect(toOrder(levels, 0)).toBe(4);
});

test("a part whose units all have a day to leave is never ordered, and less is kept the nearer the day", () => {
  const far = stockLevels(question({ supply: leaving([[40, 2]]) }));
  const near = stockLevels(question({ supply: leaving([[40, 0.1]]) }));
  expect(far).toMatchObject({ kind: "retires", min: 0, max: 0, gone: 2 });
  expect(toOrder(far, 0)).toBe(0);
  // 4.0 removals until then: P(X <= 7) = .949, P(X <= 8) = .979.
  expect(far.keep).toBe(9);
  expect(near.keep).toBeLessThan(far.keep);
  expect(stockLevels(question({ supply: leaving([[40, 0]]) })).keep).toBe(0);
  expect(
    stockLevels(
      question({
        supply: leaving([
          [39, 2],
          [1, null],
        ]),
      }),
    ).kind,
  ).toBe("restock");
});

test("where nothing is installed every level is zero, and all that lies there is surplus", () => {
  for (const supply of [leaving([]), leaving([[0, null]])])
    expect(stockLevels(question({ supply }))).toMatchObject({ kind: "unused", min: 0, max: 0, keep: 0 });
});

test("a part that can no longer be ordered keeps for the years asked for, less what repair brings back", () => {
  const ended = question({ canOrder: false });
  const kept = stockLevels(ended);
  expect(kept).toMatchObject({ kind: "ended", min: 0, max: 0 });
  expect(kept.keepExposure).toBeCloseTo(200, 10);
  const repair = { turnaround: 0.1, yield: 0.6, untilAt: null };
  const repaired = stockLevels({ ...ended, supply: { ...ended.supply, repair } });
  // 0.4 of 200 are lost, and 0.6 of the last tenth of a year are still away.
  expect(repaired.keepExposure).toBeCloseTo(0.4 * 200 + 0.6 * 40 * 0.1, 10);
  expect(repaired.keep).toBeLessThan(kept.keep);
});
