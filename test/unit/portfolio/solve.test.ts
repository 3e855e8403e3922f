import { expect, test } from "vitest";
import { ratesOfReturn } from "@/lib/portfolio/cashFlow";
import { relaxSelection, solveSelection } from "@/lib/portfolio/solve";

test("nothing to choose from is worth nothing, unless even nothing is too much", async () => {
  const nothing = { values: [], costs: [[]] };
  expect(await solveSelection({ ...nothing, limits: [0] })).toEqual({
    status: "optimal",
    objective: 0,
    bound: 0,
    chosen: [],
  });
  expect((await solveSelection({ ...nothing, limits: [-1] })).status).toBe("infeasible");
});

test("a limit below what nothing takes is infeasible, in part as well", async () => {
  const selection = { values: [1], costs: [[1]], limits: [-1] };
  expect(await solveSelection(selection)).toEqual({
    status: "infeasible",
    objective: null,
    bound: null,
    chosen: [],
  });
  expect(await relaxSelection(selection)).toBeNull();
});

test("of a group one item at most is taken", async () => {
  const selection = { values: [5, 4, 3], costs: [[1, 1, 1]], limits: [9], groups: [[0, 1]] };
  expect((await solveSelection(selection)).chosen).toEqual([0, 2]);
});

test("cents are not lost in a tolerance", async () => {
  const selection = { values: [1, 1], costs: [[1_000_000.01, 1_000_000]], limits: [2_000_000] };
  expect((await solveSelection(selection)).chosen).toHaveLength(1);
});

test.each([
  [{ values: [1], costs: [[1, 2]], limits: [1] }, "costs[0] must have 1 entries, got 2"],
  [{ values: [1], costs: [[1]], limits: [] }, "costs must have a row for each of 0 limits, got 1"],
  [{ values: [Number.NaN], costs: [[1]], limits: [1] }, "values must be finite"],
  [{ values: [1], costs: [[1]], limits: [1], groups: [[1]] }, "groups must hold items from 0 to 0, got 1"],
  [{ values: [1], costs: [[1]], limits: [1], gap: -1 }, "gap must be finite and >= 0, got -1"],
  [
    { values: [1], costs: [[1]], limits: [1], timeLimitSeconds: 0 },
    "timeLimitSeconds must be finite and > 0, got 0",
  ],
])("%j is refused", async (selection, message) => {
  await expect(solveSelection(selection)).rejects.toThrow(message);
});

test("flows that never turn have no rate of return", () => {
  expect(ratesOfReturn([0, 0])).toEqual([]);
  expect(ratesOfReturn([-5])).toEqual([]);
  expect(ratesOfReturn([5, 4, 3])).toEqual([]);
});

test("a rate met twice is found once", () => {
  expect(ratesOfReturn([1, -2.2, 1.21])[0]).toBeCloseTo(0.1, 6);
  expect(ratesOfReturn([1, -2.2, 1.21])).toHaveLength(1);
});
