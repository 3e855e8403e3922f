import { expect, test } from "vitest";
import { laplaceTrend, powerLaw } from "@/lib/reliability/trend";

test("events in the middle show no trend; late ones a rise, early ones a fall", () => {
  expect(laplaceTrend([25, 50, 75], 100).u).toBeCloseTo(0, 12);
  expect(laplaceTrend([25, 50, 75], 100).p).toBeCloseTo(1, 12);
  expect(laplaceTrend([80, 90, 95], 100).u).toBeGreaterThan(1.96);
  expect(laplaceTrend([5, 10, 20], 100).u).toBeLessThan(-1.96);
});
test("ended by the last failure, that one is left out of the mean (derived)", () => {
  const { u } = laplaceTrend([20, 100], null);
  expect(u).toBeCloseTo((20 - 50) / (100 * Math.sqrt(1 / 12)), 12);
});
test("evenly spaced events fit a beta near one, and the curve passes through the last count", () => {
  const times = Array.from({ length: 200 }, (_, i) => i + 1);
  const { beta, lambda } = powerLaw(times, 200);
  expect(beta).toBeCloseTo(1, 1);
  expect(lambda * 200 ** beta).toBeCloseTo(200, 8);
});
test.each<[string, () => unknown]>([
  ["times", () => laplaceTrend([], 10)],
  ["times", () => laplaceTrend([5], null)],
  ["times", () => laplaceTrend([5, 4], 10)],
  ["times[0]", () => laplaceTrend([0], 10)],
  ["end", () => laplaceTrend([5, 12], 10)],
  ["times", () => powerLaw([7], 7)],
])("bad %s are refused by name", (name, run) => {
  expect(run).toThrow(RangeError);
  expect(run).toThrow(name);
});
