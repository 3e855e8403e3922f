import fc from "fast-check";
import { expect, test } from "vitest";
import { noSpareSeries } from "@/lib/view/noSpareSeries";
import { roundTicks } from "@/lib/view/spanChart";

const pool = {
  noSpareByMonth: [
    { mean: 0.02, low: 0.01, high: 0.0444 },
    { mean: 0.5, low: 0.25, high: 0.75 },
    { mean: 0.9, low: 0.8, high: 1 },
  ],
  depletionP50: "2027-02-28",
  depletionP80: null,
};

test("month by month in percent, from the month of the evaluation on", () => {
  const chart = noSpareSeries(pool, "2026-12-31");
  expect(chart.points).toEqual([
    { label: "Dec 2026", band: [1, 4.4], values: { mean: 2 } },
    { label: "Jan 2027", band: [25, 75], values: { mean: 50 } },
    { label: "Feb 2027", band: [80, 100], values: { mean: 90 } },
  ]);
});

test("a depletion day is marked only where the chart reaches it", () => {
  expect(noSpareSeries(pool, "2026-12-31").marks).toEqual([{ at: "Feb 2027", label: "1 in 2" }]);
  expect(noSpareSeries({ ...pool, depletionP50: "2031-01-01" }, "2026-12-31").marks).toEqual([]);
});

test("all parts share one scale, so that two charts compare by eye", () => {
  const calm = { ...pool, noSpareByMonth: [{ mean: 0.01, low: 0, high: 0.02 }] };
  expect(noSpareSeries(calm, "2026-12-31").domain).toEqual(noSpareSeries(pool, "2026-12-31").domain);
});

test("a part without any month draws nothing rather than zero", () => {
  expect(noSpareSeries({ ...pool, noSpareByMonth: [] }, "2026-12-31").points).toEqual([]);
});

test.each([
  [0, [0, 1]],
  [1, [0, 0.2, 0.4, 0.6, 0.8, 1]],
  [790, [0, 200, 400, 600, 800]],
  [12_000, [0, 5_000, 10_000, 15_000]],
])("the scale up to %s has round steps", (highest, ticks) => {
  expect(roundTicks(highest)).toEqual(ticks);
});

test("a scale reaches its highest value in three to six steps and never twice as far as needed", () => {
  fc.assert(
    fc.property(fc.double({ min: 1e-3, max: 1e9, noNaN: true }), (highest) => {
      const ticks = roundTicks(highest);
      const top = ticks.at(-1) ?? 0;
      expect(top).toBeGreaterThanOrEqual(highest * (1 - 1e-8));
      expect(top).toBeLessThan(highest * 2);
      expect(ticks.length).toBeGreaterThanOrEqual(3);
      expect(ticks.length).toBeLessThanOrEqual(7);
    }),
    { seed: 20261130 },
  );
});
