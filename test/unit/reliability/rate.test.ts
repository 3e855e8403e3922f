import { describe, expect, test } from "vitest";
import { borrow, borrowAndCount } from "@/lib/reliability/borrow";
import { gammaPriorFromMtbf, posterior, rateInterval } from "@/lib/reliability/rate";

describe("borrowing, worked through with a class prior of 2 events in 57.1 unit-years", () => {
  const family = posterior({ a: 2, b: 57.1 }, { events: 61, unitYears: 1470 });
  const mean = ({ a, b }: { a: number; b: number }) => a / b;
  test("the family: 63 in 1527.1", () => {
    expect(mean(family)).toBeCloseTo(0.0413, 4);
  });
  test("no removal in 24 unit-years is not a zero rate", () => {
    expect(mean(borrowAndCount(family, { events: 0, unitYears: 24 }))).toBeCloseTo(0.0333, 4);
  });
  test("three removals in 24 unit-years are not a disaster", () => {
    expect(mean(borrowAndCount(family, { events: 3, unitYears: 24 }))).toBeCloseTo(0.0575, 4);
  });
  test("a wider group of little experience lends no more than it has", () => {
    expect(borrow({ a: 2, b: 57.1 })).toEqual({ a: 2, b: 57.1 });
    expect(borrow(family).b).toBe(100);
    expect(mean(borrow(family))).toBeCloseTo(mean(family), 12);
  });
});

test("the range covers the mean of a settled rate and narrows with experience", () => {
  const few = rateInterval({ a: 2, b: 50 }, 0.9);
  const many = rateInterval({ a: 200, b: 5000 }, 0.9);
  expect(few.low).toBeLessThan(few.mean);
  expect(few.high).toBeGreaterThan(few.mean);
  expect(many.high - many.low).toBeLessThan(few.high - few.low);
});

test.each<[string, () => unknown]>([
  ["a", () => rateInterval({ a: 0, b: 1 }, 0.9)],
  ["b", () => rateInterval({ a: 1, b: Number.NaN }, 0.9)],
  ["level", () => rateInterval({ a: 1, b: 1 }, 1)],
  ["events", () => posterior({ a: 1, b: 1 }, { events: 0.5, unitYears: 1 })],
  ["unitYears", () => posterior({ a: 1, b: 1 }, { events: 0, unitYears: -1 })],
  ["low5", () => gammaPriorFromMtbf({ median: 600, low5: 0 })],
  ["median", () => gammaPriorFromMtbf({ median: 250, low5: 250 })],
])("a bad %s is refused by name", (name, run) => {
  expect(run).toThrow(RangeError);
  expect(run).toThrow(name);
});
