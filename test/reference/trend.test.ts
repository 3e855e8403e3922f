import chiSquareCdf from "@stdlib/stats-base-dists-chisquare-cdf";
import { describe, expect, test } from "vitest";
import { powerLaw, powerLawOfCounts, powerLawTrend } from "@/lib/reliability/trend";

const near = (value: number, printed: number, tolerance: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(tolerance);
const intervals = (ends: readonly number[], counts: readonly number[]) =>
  ends.map((end, i) => ({ end, events: counts[i] ?? 0 }));

test("ten repairs to 1500: 37.23, below it with chance 0.989 (NIST 8.2.3.4, from memory)", () => {
  const { statistic, degrees, p } = powerLawTrend([5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478], 1500);
  near(statistic, 37.22808, 5e-6);
  expect(degrees).toBe(20);
  near(1 - p / 2, 0.989, 5e-4);
});
test("the statistic is twice the count over beta (derived), and a single late event worsens", () => {
  const times = [20, 50, 80];
  near(powerLawTrend(times, 100).statistic, 6 / powerLaw(times, 100).beta, 1e-12);
  near(powerLawTrend([99], 100).p, 2 * (1 - 0.99), 1e-12);
});
test("ended by the last failure, that one is left out (derived)", () => {
  const ended = powerLawTrend([20, 50, 100], null);
  expect(ended).toEqual(powerLawTrend([20, 50], 100));
  near(ended.p, 2 * Math.min(1 - chiSquareCdf(ended.statistic, 4), chiSquareCdf(ended.statistic, 4)), 1e-12);
});

describe("power law of counts", () => {
  test("13, 16, 5, 8, 7 in five intervals of 20 (MIL-HDBK-189, grouped data, as quoted by a public copy)", () => {
    const { beta, lambda, intensity } = powerLawOfCounts(intervals([20, 40, 60, 80, 100], [13, 16, 5, 8, 7]));
    near(beta, 0.752851, 5e-7);
    near(lambda, 1.529306, 5e-7);
    near(intensity, 0.3688969345, 5e-9);
    near(1 / intensity, 2.71078425, 5e-8);
    near(20 / (49 - lambda * 80 ** beta), 2.63942564, 5e-8);
  });
  test("uneven intervals to 500 (unit tests of the reliability toolkit RTK, data of a public wiki)", () => {
    const { beta, lambda } = powerLawOfCounts(
      intervals([62, 100, 187, 210, 350, 500], [12, 6, 15, 3, 18, 16]),
    );
    near(beta, 0.8136085, 5e-8);
    near(lambda, 0.4458543, 5e-8);
  });
  test("counts over ever finer intervals fit what the times themselves fit", () => {
    const times = [5, 40, 43, 175, 389, 712, 747, 795, 1299, 1478];
    const ends = Array.from({ length: 30_000 }, (_, i) => (i + 1) / 20);
    const counts = new Map<number, number>();
    for (const time of times) counts.set(Math.ceil(time * 20), (counts.get(Math.ceil(time * 20)) ?? 0) + 1);
    const grouped = powerLawOfCounts(
      intervals(
        ends,
        ends.map((_, i) => counts.get(i + 1) ?? 0),
      ),
    );
    near(grouped.beta, powerLaw(times, 1500).beta, 1e-3);
  });
  test("counts in proportion to the time show beta 1 (derived)", () => {
    const { beta, intensity } = powerLawOfCounts(intervals([10, 30, 100], [2, 4, 14]));
    near(beta, 1, 1e-9);
    near(intensity, 0.2, 1e-9);
  });
  test.each<[string, () => unknown]>([
    ["events", () => powerLawOfCounts([])],
    ["events", () => powerLawOfCounts(intervals([1, 2], [3, 0]))],
    ["events", () => powerLawOfCounts(intervals([1, 2], [0, 3]))],
    ["events", () => powerLawOfCounts(intervals([1, 2], [0.5, 3]))],
    ["end", () => powerLawOfCounts(intervals([2, 2], [1, 3]))],
    ["end", () => powerLawOfCounts(intervals([0, 2], [1, 3]))],
  ])("bad %s are refused by name", (name, run) => {
    expect(run).toThrow(RangeError);
    expect(run).toThrow(name);
  });
});

test("an event at the very end is no trend test, and none at all is refused by name", () => {
  expect(() => powerLawTrend([], 10)).toThrow("times");
  expect(() => powerLawTrend([7], null)).toThrow("times");
});
