import { expect, test } from "vitest";
import { presentWorth, ratesOfReturn } from "@/lib/portfolio/cashFlow";
import { relaxSelection, solveSelection } from "@/lib/portfolio/solve";

/** Lorie and Savage, J. Business 28 (1955): outlay in year 1 and 2, present worth; budgets 50 and 20. From memory. */
const projects = {
  values: [14, 17, 17, 15, 40, 12, 14, 10, 12],
  costs: [
    [12, 54, 6, 6, 30, 6, 48, 36, 18],
    [3, 7, 6, 2, 35, 6, 4, 3, 3],
  ],
  limits: [50, 20],
};

test("nine projects under two budgets in part: 70.27, duals 0.136 and 1.864 (Weingartner 1963)", async () => {
  const relaxed = await relaxSelection(projects);
  expect(relaxed?.objective).toBeCloseTo(70.272727, 6);
  expect(relaxed?.worthOfLimit[0]).toBeCloseTo(0.136364, 6);
  expect(relaxed?.worthOfLimit[1]).toBeCloseTo(1.863636, 6);
  expect(relaxed?.parts[5]).toBeCloseTo(0.9697, 4);
  expect(relaxed?.parts[6]).toBeCloseTo(0.0455, 4);
});

test("the same whole: 70 with projects 1, 3, 4, 6 and 9 (recomputed, unique)", async () => {
  const result = await solveSelection(projects);
  expect(result).toEqual({ status: "optimal", objective: 70, bound: 70, chosen: [0, 2, 3, 5, 8] });
});

test.each([
  {
    values: [15, 100, 90, 60, 40, 15, 10, 1],
    weights: [2, 20, 20, 30, 40, 30, 60, 10],
    limit: 102,
    best: 280,
  },
  { values: [70, 20, 39, 37, 7, 5, 10], weights: [31, 10, 20, 19, 4, 3, 6], limit: 50, best: 107 },
])("knapsack example of the R package adagio: $best", async ({ values, weights, limit, best }) => {
  const result = await solveSelection({ values, costs: [weights], limits: [limit] });
  expect(result).toMatchObject({ status: "optimal", objective: best, bound: best });
  expect(result.chosen).toEqual(best === 280 ? [0, 1, 2, 3, 5] : [0, 3]);
});

test("budget of 550 000 (textbook capital rationing case): the two smaller projects, 230 000", async () => {
  const values = [150_000, 120_000, 110_000];
  const result = await solveSelection({ values, costs: [[500_000, 300_000, 250_000]], limits: [550_000] });
  expect(result).toMatchObject({ status: "optimal", objective: 230_000, chosen: [1, 2] });
});

test.each([
  [0.08, [-40_000, 5000, 8000, 12_000, 30_000], 3065.22267],
  [0, [-4000, 500, 800], -2700],
  [0.05, [-4000, 500, 800], -2798.19],
  [0.1, [-4000, 500, 800], -2884.3],
  [0, [-5000, 600, 900], -3500],
  [0.05, [-5000, 600, 900], -3612.24],
  [0.1, [-5000, 600, 900], -3710.74],
])("present worth at %d of %j is %d (documentation of numpy-financial)", (rate, flows, worth) => {
  expect(presentWorth(rate, flows)).toBeCloseTo(worth, 2);
});

test.each([
  [[-100, 39, 59, 55, 20], [0.28095]],
  [[-100, 0, 0, 74], [-0.0955]],
  [[-100, 100, 0, -7], [-0.0833]],
  [[-100, 100, 0, 7], [0.06206]],
  [
    [-5, 10.5, 1, -8, 1],
    [-0.8702, 0.0886, 0.70956],
  ],
])("rates of return of %j hold those of the documentation of numpy-financial: %j", (flows, rates) => {
  const found = ratesOfReturn(flows);
  for (const rate of rates) expect(found.some((r) => Math.abs(r - rate) <= 0.00006)).toBe(true);
  for (const rate of found) expect(presentWorth(rate, flows)).toBeCloseTo(0, 8);
});

test.each([
  [0.1, [0, 1, 1, 1, 1, 1], 3.7907868],
  [0.08, [0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], 6.7100814],
  [0.1, [0, 0, 0, 0, 0, 1], 0.6209213],
])("at %d the flows %j are worth %d, as interest tables say (recomputed)", (rate, flows, factor) => {
  expect(presentWorth(rate, flows)).toBeCloseTo(factor, 6);
});
