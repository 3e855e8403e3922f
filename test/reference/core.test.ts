import { expect, test } from "vitest";
import { earnedValue } from "../../lib/projects/earnedValue";
import { kendallTauB } from "../../lib/risk/rankAgreement";

test("earned value meets the printed CPI of the CRAN package PRA, its other figures derived", () => {
  const v = earnedValue({ budgetAtCompletion: 100000, planned: 40000, earned: 35000, actual: 36000 });
  expect(v.cpi).toBeCloseTo(0.9722222, 7);
  expect(v.spi).toBeCloseTo(0.875, 12);
  expect(v.eac.trend).toBeCloseTo(102857.14, 2);
  expect(v.tcpi).toBeCloseTo(1.015625, 12);
});
test("the three estimates at completion differ as the formulas say (derived)", () => {
  const v = earnedValue({ budgetAtCompletion: 400, planned: 120, earned: 100, actual: 115 });
  expect(v.eac.trend).toBeCloseTo(460, 9);
  expect(v.eac.plannedRest).toBe(415);
  expect(v.eac.costAndSchedule).toBeCloseTo(529, 9);
});
test("no cost yet means an undefined index, not an infinite one", () => {
  expect(earnedValue({ budgetAtCompletion: 10, planned: 0, earned: 0, actual: 0 }).cpi).toBeNull();
});
test("a negative cost is refused by name", () => {
  expect(() => earnedValue({ budgetAtCompletion: 1, planned: 0, earned: 0, actual: -1 })).toThrow("actual");
});
test("Kendall's tau of five ranks is 0.2 (derived)", () => {
  expect(kendallTauB([1, 2, 3, 4, 5], [3, 4, 1, 2, 5])).toBeCloseTo(0.2, 12);
});
test("tau-b divides by the untied pairs of each side: 2 of 3 on one side give 2 / sqrt(6) (derived)", () => {
  expect(kendallTauB([1, 1, 2], [1, 2, 3])).toBeCloseTo(2 / Math.sqrt(6), 12);
});
test("tau-b of five values with two ties (documentation of SciPy, from memory)", () => {
  expect(kendallTauB([12, 2, 1, 12, 2], [1, 4, 7, 1, 0])).toBeCloseTo(-0.47140452079103173, 12);
});
test("tau of ten untied pairs, 20 pairs in order and 25 against: -1/9 (encyclopaedia data, from memory)", () => {
  const iq = [106, 100, 86, 101, 99, 103, 97, 113, 112, 110];
  const hours = [7, 27, 2, 50, 28, 29, 20, 12, 6, 17];
  expect(kendallTauB(iq, hours)).toBeCloseTo(-1 / 9, 12);
});
test("a side of equal values has no rank agreement to speak of", () => {
  expect(() => kendallTauB([1, 1], [1, 2])).toThrow("all ties");
});
