import { expect, test } from "vitest";
import { likelyNorms, retrofitCost } from "@/lib/retrofit/costNorm";

const units = { machines: 7, drives: 50, motors: 0, controllers: 0, hmis: 0, drivePrice: null };

test("one drive at typical norms, added up by hand", () => {
  const { typical } = retrofitCost({ ...units, machines: 0, drives: 1 });
  expect(typical).toBeCloseTo((16 * 90 + 2200 + 450) * 1.15, 9);
});
test("each thing replaced adds its own, and nothing replaced costs nothing", () => {
  const more = retrofitCost({ ...units, motors: 10, controllers: 7, hmis: 1 });
  const plain = retrofitCost(units);
  expect(more.typical - plain.typical).toBeCloseTo((10 * 1600 + 7 * 12_000 + 4000 + 7 * 160 * 90) * 1.15, 6);
  expect(retrofitCost({ ...units, machines: 0, drives: 0 })).toEqual({
    mean: 0,
    low: 0,
    typical: 0,
    high: 0,
  });
});
test("the span holds the typical value and the mean leans to its long side", () => {
  const { low, typical, mean, high } = retrofitCost(units);
  expect(low).toBeLessThan(typical);
  expect(typical).toBeLessThan(mean);
  expect(mean).toBeLessThan(high);
});
test("a known price of the successor replaces the norm at every point", () => {
  const priced = retrofitCost({ ...units, drivePrice: likelyNorms.drive[1] });
  const plain = retrofitCost(units);
  expect(priced.typical).toBe(plain.typical);
  expect(priced.low).toBeGreaterThan(plain.low);
  expect(priced.high).toBeLessThan(plain.high);
});
test("half a drive or a negative price is refused by name", () => {
  expect(() => retrofitCost({ ...units, drives: 0.5 })).toThrow("drives");
  expect(() => retrofitCost({ ...units, drivePrice: -1 })).toThrow("drivePrice");
});
