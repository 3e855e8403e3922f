import { expect, test } from "vitest";
import { chanceAtLeast } from "@/lib/risk/stopShares";

test("four displays of 0.9, three needed: 0.9477 (Rome Laboratory toolkit example, blog of reliabilityanalytics.com)", () => {
  const down = [0.1, 0.1, 0.1, 0.1];
  expect(1 - chanceAtLeast(down, 2)).toBeCloseTo(0.9477, 12);
});

test("chances 0.1, 0.2, 0.2: none 0.576, at most one 0.928, at most two 0.996 (documentation of fast-poibin)", () => {
  const chances = [0.1, 0.2, 0.2];
  for (const [most, expected] of [0.576, 0.928, 0.996].entries())
    expect(1 - chanceAtLeast(chances, most + 1)).toBeCloseTo(expected, 12);
});

// As in IEC 61078 and any textbook of reliability; from memory.
test("two of three alike: 3 a^2 - 2 a^3", () => {
  const a = 0.83;
  expect(1 - chanceAtLeast([1 - a, 1 - a, 1 - a], 2)).toBeCloseTo(3 * a ** 2 - 2 * a ** 3, 12);
});
test("parallel: all down is the product; series: all up is the product", () => {
  expect(chanceAtLeast([0.1, 0.2, 0.3], 3)).toBeCloseTo(0.1 * 0.2 * 0.3, 12);
  expect(1 - chanceAtLeast([0.1, 0.2, 0.3], 1)).toBeCloseTo(0.9 * 0.8 * 0.7, 12);
});
