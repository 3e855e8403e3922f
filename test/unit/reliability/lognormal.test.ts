import { describe, expect, test } from "vitest";
import { randomStream } from "@/lib/kernel/random";
import {
  lognormalExceeds,
  lognormalMean,
  lognormalWithMean,
  meanBeyond,
  shrinkLognormal,
} from "@/lib/reliability/lognormal";

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
  const seen = (hours: readonly number[]) => ({
    stops: hours.length,
    sumLog: hours.reduce((sum, h) => sum + Math.log(h), 0),
    sumLogSquared: hours.reduce((sum, h) => sum + Math.log(h) ** 2, 0),
  });
  test("nothing seen leaves the belief", () => {
    expect(shrinkLognormal(prior, seen([]))).toEqual(sixty);
  });
  test("as many stops as the weight meet in the middle of the logarithms", () => {
    const { mu } = shrinkLognormal(prior, seen([10, 10, 10, 10, 10]));
    expect(Math.exp(mu)).toBeCloseTo(Math.sqrt(60 * 10), 9);
  });
  test("many stops win, in place and in spread", () => {
    const stream = randomStream(3, "stops");
    const hours = Array.from({ length: 5000 }, () => Math.exp(Math.log(20) + 0.5 * stream.normal()));
    const { mu, sigma } = shrinkLognormal(prior, seen(hours));
    expect(Math.exp(mu) / 20).toBeCloseTo(1, 1);
    expect(sigma).toBeCloseTo(0.5, 1);
  });
  test("stops that contradict the belief widen it", () => {
    expect(shrinkLognormal(prior, seen([1, 1])).sigma).toBeGreaterThan(prior.sigma);
  });
});
