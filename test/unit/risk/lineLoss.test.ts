import { describe, expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import { lineLoss } from "@/lib/risk/lineLoss";
import type { PoolOnLine } from "@/lib/risk/lineStops";
import { line, smallGroup } from "../../support/smallGroup";

const [oakResult] = evaluate(smallGroup, likelyAssumptions).pools;
if (!oakResult) throw new Error("no pool");

// Spreads near zero make the hours as good as certain: 5 with a spare, 50 without.
const times = {
  withSpare: { mu: Math.log(5), sigma: 1e-4 },
  withoutSpare: { mu: Math.log(50), sigma: 1e-4 },
  hoursWithSpare: 5,
  hoursWithoutSpare: 50,
};
const oak: PoolOnLine = {
  result: { ...oakResult, noSpare: { mean: 0.4, low: 0.2, high: 0.7 } },
  units: 10,
  atSite: { removals: 31, failures: 25, unitYears: 500 },
  failure: { mean: 0.05, low: 0.03, high: 0.08 },
  times,
};
const velmark = line("VEL-03", "VEL", { costPerHour: 1000, bufferHours: 2, unrecoveredShare: 0.8 });
const result = lineLoss(velmark, { pools: [oak], assumptions: likelyAssumptions });
const cost = (hours: number) => 1000 * 0.8 * (hours - 2);

describe("10 units, half a failure a year, no spare in two cases of five: by hand", () => {
  test("base and shortage part", () => {
    expect(result.baseLoss).toBeCloseTo(0.5 * 0.6 * cost(5), 2);
    expect(result.shortageLoss).toBeCloseTo(0.5 * 0.4 * cost(50), 2);
    expect(result.stopsPerYear).toBeCloseTo(0.5, 12);
  });
  test("the span puts failures and empty shelf at their low ends, and at their high ends, together", () => {
    expect(result.stopLoss?.low).toBeCloseTo(0.3 * (0.8 * cost(5) + 0.2 * cost(50)), 2);
    expect(result.stopLoss?.high).toBeCloseTo(0.8 * (0.3 * cost(5) + 0.7 * cost(50)), 2);
  });
  test("score: 23 hours on average against a tolerable stop of 10", () => {
    const repair = 1 - Math.exp(-(0.6 * 5 + 0.4 * 50) / (2 + 8));
    const u = 0.3 * 1 + 0.4 * 0.4 + 0.3 * repair;
    const score = 100 * (1 - Math.exp(-0.5)) * u;
    expect(result.score).toBeCloseTo(score, 9);
    expect(result.pools[0]).toMatchObject({ stagePart: 1, sparesPart: 0.4, share: 1 });
    expect(result.scoreParts.repair).toBeCloseTo((score * 0.3 * repair) / u, 9);
  });
  test("a site without own spares waits for the way", () => {
    const away = lineLoss({ ...velmark, siteId: "TAD" }, { pools: [oak], assumptions: likelyAssumptions });
    expect(away.pools[0]?.costWithSpare).toBeCloseTo(cost(5 + 30), 2);
    expect(away.pools[0]?.hoursWithSpare).toBe(35);
  });
});

test("the worst stage of a line is the one that weighs most, not the last in the list", () => {
  const undated = { ...oak, result: { ...oak.result, stage: "undated" as const } };
  const notice = { ...oak, result: { ...oak.result, stage: "notice" as const } };
  const worst = (pools: PoolOnLine[]) =>
    lineLoss(velmark, { pools, assumptions: likelyAssumptions }).worstStage;
  expect(worst([notice, undated])).toBe("undated");
  expect(worst([undated, oak])).toBe("own-stock");
});

describe("fixed cost and steps, hours as good as certain: by hand", () => {
  const stepped = {
    ...velmark,
    fixedCost: 700,
    costSteps: [
      { afterHours: 4, cost: 3000 },
      { afterHours: 40, cost: 90_000 },
      { afterHours: 60, cost: 500_000 },
    ],
  };
  const [pool] = lineLoss(stepped, { pools: [oak], assumptions: likelyAssumptions }).pools;
  test("a stop of 5 hours passes the first step, one of 50 hours two of them", () => {
    expect(pool?.costWithSpare).toBeCloseTo(700 + cost(5) + 3000, 2);
    expect(pool?.costWithoutSpare).toBeCloseTo(700 + cost(50) + 93_000, 2);
    expect(pool?.stopWithSpare).toEqual({
      hoursBeyond: expect.closeTo(3, 3),
      stepChances: [expect.closeTo(1, 9), expect.closeTo(0, 9), expect.closeTo(0, 9)],
    });
  });
  test("the way of a spare from another site counts towards the steps", () => {
    const away = lineLoss({ ...stepped, siteId: "TAD" }, { pools: [oak], assumptions: likelyAssumptions });
    expect(away.pools[0]?.costWithSpare).toBeCloseTo(700 + cost(35) + 3000, 2);
  });
  test("no steps at no cost change nothing, to the last bit", () => {
    const none = { ...velmark, fixedCost: 0, costSteps: [] };
    expect(lineLoss(none, { pools: [oak], assumptions: likelyAssumptions })).toEqual(result);
  });
  test("a negative step is refused by name", () => {
    const bad = { ...velmark, costSteps: [{ afterHours: 3, cost: -1 }] };
    expect(() => lineLoss(bad, { pools: [oak], assumptions: likelyAssumptions })).toThrow("cost of a step");
  });
});
