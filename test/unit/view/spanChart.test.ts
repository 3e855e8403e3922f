import fc from "fast-check";
import { expect, test } from "vitest";
import { roundTicks } from "@/lib/view/spanChart";

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
