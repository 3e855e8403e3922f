import { describe, expect, test } from "vitest";
import { randomStream } from "@/lib/kernel/random";
import {
  lognormalExceeds,
  lognormalMean,
  lognormalWithMean,
  meanBeyond,
  shrinkLognormal,
} from "@/lib/reliability/lognormal";
import { sumsOf } from "../../support/sumsOf";

const sixty = { mu: Math.log(60), sigma: 0.8 };

test("mean and median stand as exp(sigma^2 / 2) to one (derived)", () => {
  expect(lognormalMean(sixty)).toBeCloseTo(60 * Math.exp(0.32), 10);
  expect(lognormalMean(lognormalWithMean(82.6, 0.8))).toBeCloseTo(82.6, 10);
  expect(lognormalExceeds(sixty, 60)).toBeCloseTo(0.5, 12);
});

describe("mean beyond a buffer", () => {
  test("without a buffer it is the mean; a delay adds in full", () => {
    expect(meanBeyond(sixty, 0)).toBe(lognormalMean(sixty));
    expect(meanBeyond(sixty, -30)).toBeCloseTo(lognormalMean(sixty) + 30, 10);
  });
  test("is continuous at zero and falls to nothing", () => {
    expect(meanBeyond(sixty, 1e-9)).toBeCloseTo(lognormalMean(sixty), 6);
    expect(meanBeyond(sixty, 1e6)).toBeCloseTo(0, 6);
  });
  test("agrees with 200 000 drawn times", () => {
    const stream = randomStream(7, "beyond");
    const n = 200_000;
    let sum = 0;
    let squares = 0;
    for (let i = 0; i < n; i += 1) {
      const over = Math.max(0, Math.exp(sixty.mu + sixty.sigma * stream.normal()) - 48);
      sum += over;
      squares += over * over;
    }
    const standardError = Math.sqrt((squares / n - (sum / n) ** 2) / n);
    expect(Math.abs(sum / n - meanBeyond(sixty, 48))).toBeLessThan(4 * standardError);
  });
  test("needs a spread", () => {
    expect(() => meanBeyond({ mu: 1, sigma: 0 }, 1)).toThrow("sigma");
  });
});

describe("shrinking to the class", () => {
  const prior = { ...sixty, weight: 5 };
  test("nothing seen leaves the belief", () => {
    expect(shrinkLognormal(prior, sumsOf([]))).toEqual(sixty);
  });
  test("as many stops as the weight meet the believed mean in the middle, by hand", () => {
    const pulled = shrinkLognormal(prior, sumsOf([2, 4, 6, 8, 30]));
    expect(lognormalMean(pulled)).toBeCloseTo((60 * Math.exp(0.32) + 10) / 2, 9);
    expect(pulled.sigma).toBe(0.8);
  });
  test("one very short stop lowers the mean", () => {
    expect(lognormalMean(shrinkLognormal(prior, sumsOf([0.01])))).toBeCloseTo(
      (5 * 60 * Math.exp(0.32) + 0.01) / 6,
      9,
    );
  });
  test("many stops win, whatever their spread", () => {
    const stream = randomStream(3, "stops");
    const hours = Array.from({ length: 5000 }, () => Math.exp(Math.log(20) + 1.2 * stream.normal()));
    const mean = 20 * Math.exp(1.2 ** 2 / 2);
    expect(lognormalMean(shrinkLognormal(prior, sumsOf(hours))) / mean).toBeCloseTo(1, 1);
  });
  test("without the sum of hours the logarithms stand for it", () => {
    const { sumHours: _, ...logs } = sumsOf([5, 5, 5]);
    expect(lognormalMean(shrinkLognormal(prior, logs))).toBeCloseTo(
      lognormalMean(shrinkLognormal(prior, { ...logs, sumHours: 15 })),
      9,
    );
  });
});
