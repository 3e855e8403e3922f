import { describe, expect, test } from "vitest";
import { randomStream } from "@/lib/kernel/random";

const take = (n: number, draw: () => number) => Array.from({ length: n }, draw);
const mean = (values: readonly number[]) => values.reduce((sum, v) => sum + v, 0) / values.length;
const variance = (values: readonly number[]) => {
  const m = mean(values);
  return mean(values.map((v) => (v - m) ** 2));
};

test("same seed and name give the same draws; another name or seed gives others", () => {
  const draws = (seed: number, name: string) => {
    const stream = randomStream(seed, name);
    return take(5, stream.next);
  };
  expect(draws(20261130, "site")).toEqual(draws(20261130, "site"));
  expect(draws(20261130, "site")).not.toEqual(draws(20261130, "line"));
  expect(draws(20261130, "site")).not.toEqual(draws(20261131, "site"));
});

test("the first draws of a seed stay as they are, or every stored demo changes", () => {
  const stream = randomStream(20261130, "site");
  expect(take(3, () => stream.integer(1, 1000))).toEqual([994, 803, 556]);
});

describe("each draw has the moments of its distribution", () => {
  const n = 40_000;
  test("uniform", () => {
    const values = take(n, randomStream(1, "uniform").next);
    expect(values.every((v) => v >= 0 && v < 1)).toBe(true);
    expect(Math.abs(mean(values) - 0.5)).toBeLessThan(4 / Math.sqrt(12 * n));
    expect(Math.abs(variance(values) - 1 / 12)).toBeLessThan(0.003);
  });
  test("standard normal", () => {
    const values = take(n, randomStream(1, "normal").normal);
    expect(Math.abs(mean(values))).toBeLessThan(4 / Math.sqrt(n));
    expect(Math.abs(variance(values) - 1)).toBeLessThan(0.03);
  });
  test.each([0.3, 4, 75])("Poisson of mean %d", (m) => {
    const stream = randomStream(1, `poisson ${m}`);
    const values = take(n, () => stream.poisson(m));
    expect(Math.abs(mean(values) - m)).toBeLessThan(4 * Math.sqrt(m / n));
    expect(Math.abs(variance(values) / m - 1)).toBeLessThan(0.05);
  });
  test.each([0.5, 1, 6])("gamma of shape %d", (shape) => {
    const stream = randomStream(1, `gamma ${shape}`);
    const values = take(n, () => stream.gamma(shape));
    expect(Math.abs(mean(values) - shape)).toBeLessThan(4 * Math.sqrt(shape / n));
    expect(Math.abs(variance(values) / shape - 1)).toBeLessThan(0.08);
  });
  test("whole numbers reach both ends alike often", () => {
    const stream = randomStream(1, "integer");
    const values = take(n, () => stream.integer(-1, 2));
    for (const wanted of [-1, 0, 1, 2]) {
      const share = values.filter((v) => v === wanted).length / n;
      expect(Math.abs(share - 0.25)).toBeLessThan(4 * Math.sqrt(0.1875 / n));
    }
  });
});

test("a shuffle keeps every entry and leaves the list alone", () => {
  const list = Array.from({ length: 50 }, (_, i) => i);
  const shuffled = randomStream(3, "shuffle").shuffle(list);
  expect(shuffled).not.toEqual(list);
  expect([...shuffled].sort((a, b) => a - b)).toEqual(list);
});

test("draws out of range are refused by name", () => {
  const stream = randomStream(1, "refusals");
  expect(() => stream.poisson(-1)).toThrow("mean");
  expect(() => stream.gamma(0)).toThrow("shape");
  expect(() => stream.integer(2, 1)).toThrow("lo");
  expect(() => stream.pick([])).toThrow("list");
  expect(() => randomStream(0.5, "x")).toThrow("seed");
});
