import { describe, expect, test } from "vitest";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { lognormalExceeds, lognormalMean, meanBeyond } from "@/lib/reliability/lognormal";
import { mtbfBounds } from "@/lib/reliability/mtbf";
import { gammaPriorFromMtbf, rateInterval } from "@/lib/reliability/rate";
import { powerLawTrend } from "@/lib/reliability/trend";
import { demandChanceAtMost, expectedBackorders, expectedShort, poissonAtMost } from "@/lib/spares/demand";
import { demandTails } from "@/lib/spares/noSpareChance";
import {
  atLeast,
  atMost,
  beyondBySimpson,
  demandMean,
  demandTerms,
  gammaAtMost,
  lognormalAbove,
  poissonTerms,
  shortOf,
} from "./decimals";

/** Ten to a power drawn evenly: as many tiny numbers as large ones. */
const spread = (stream: RandomStream, from: number, to: number) => 10 ** stream.between(from, to);
const within = ([value, wanted]: readonly [number, number], tolerance: number, told: unknown) => {
  const apart = Math.abs(value - wanted);
  expect(apart, `${value} against ${wanted} for ${JSON.stringify(told)}`).toBeLessThanOrEqual(tolerance);
};

function poissonCase(stream: RandomStream) {
  const mean = spread(stream, -12, 3.6);
  return { mean, k: Math.max(0, Math.round(mean + stream.between(-4, 8) * Math.sqrt(mean + 1))) };
}

function demandCase(stream: RandomStream) {
  for (;;) {
    const [a, b] = [spread(stream, -2, 4), spread(stream, -1, 4)];
    const demand = { a, b, exposure: spread(stream, -9, 4) };
    const mean = (a * demand.exposure) / b;
    const spreadOf = Math.sqrt(mean * (1 + demand.exposure / b)) + 1;
    const k = Math.max(0, Math.round(mean + stream.between(-3, 8) * spreadOf));
    if (k <= 3000) return { demand, k };
  }
}

describe("500 Poisson counts, means 1e-12 to 4000, against sums of fifty digits", () => {
  const stream = randomStream(101, "Poisson");
  const cases = Array.from({ length: 500 }, () => {
    const drawn = poissonCase(stream);
    return { ...drawn, terms: poissonTerms(drawn.mean, drawn.k) };
  });
  test("at most k: to 1e-12", () => {
    for (const { mean, k, terms } of cases)
      within([poissonAtMost(mean, k), atMost(terms)], 1e-12, { mean, k });
  });
  test("at least k + 1, as the shelf uses it: to 1e-12", () => {
    for (const { mean, k, terms } of cases)
      within([demandTails({ rate: mean, exposure: 1 }, k + 1)[k + 1] ?? Number.NaN, atLeast(terms)], 1e-12, {
        mean,
        k,
      });
  });
  test("expected backorders: to 1e-12 of a unit or of the mean", () => {
    for (const { mean, k, terms } of cases)
      within([expectedBackorders(mean, k), shortOf(mean, terms)], 1e-12 * Math.max(1, mean), { mean, k });
  });
});

describe("500 demands at an uncertain rate, shapes 0.01 to 10 000, against sums of fifty digits", () => {
  const stream = randomStream(102, "demand");
  const cases = Array.from({ length: 500 }, () => {
    const drawn = demandCase(stream);
    return { ...drawn, terms: demandTerms(drawn.demand, drawn.k) };
  });
  test("at most k: to 1e-11", () => {
    for (const { demand, k, terms } of cases)
      within([demandChanceAtMost(demand, k), atMost(terms)], 1e-11, { demand, k });
  });
  test("at least k + 1, as the shelf uses it: to 1e-11", () => {
    for (const { demand, k, terms } of cases)
      within([demandTails(demand, k + 1)[k + 1] ?? Number.NaN, atLeast(terms)], 1e-11, { demand, k });
  });
  test("short units: to 1e-11 of a unit or of the mean", () => {
    for (const { demand, k, terms } of cases) {
      const mean = demandMean(demand);
      const tolerance = 1e-11 * Math.max(1, mean.toNumber());
      within([expectedShort(demand, k), shortOf(mean, terms)], tolerance, { demand, k });
    }
  });
});

describe("gamma points against the series of the incomplete gamma function", () => {
  test("200 rate intervals, shapes 0.05 to 10 000: the stated chance lies outside each end, to 1e-7 of itself", () => {
    const stream = randomStream(103, "intervals");
    for (let i = 0; i < 200; i += 1) {
      const [a, b] = [spread(stream, -1.3, 4), spread(stream, -1, 4)];
      const level = stream.pick([0.5, 0.8, 0.9, 0.99]);
      const { low, high } = rateInterval({ a, b }, level);
      const outside = (1 - level) / 2;
      within([gammaAtMost(a, low * b) / outside, 1], 1e-7, { a, b, level });
      within([(1 - gammaAtMost(a, high * b)) / outside, 1], 1e-7, { a, b, level });
    }
  });
  test("100 MTBF bounds, 0 to 2000 failures: the stated risk, to 1e-6 of itself", () => {
    const stream = randomStream(104, "bounds");
    for (let i = 0; i < 100; i += 1) {
      const seen = { failures: stream.integer(0, 2000), time: spread(stream, -3, 7) };
      const confidence = stream.pick([0.01, 0.5, 0.9, 0.999]);
      const sides = stream.pick([1, 2] as const);
      const { lower, upper } = mtbfBounds({ ...seen, confidence, sides });
      const risk = (1 - confidence) / sides;
      within([(1 - gammaAtMost(seen.failures + 1, seen.time / lower)) / risk, 1], 1e-6, seen);
      if (upper !== null) within([gammaAtMost(seen.failures, seen.time / upper) / risk, 1], 1e-6, seen);
    }
  });
  test("60 priors from two statements, from vague to all but certain: both statements hold, to 1e-8", () => {
    const stream = randomStream(105, "priors");
    for (let i = 0; i < 60; i += 1) {
      const median = spread(stream, -1, 6);
      const low5 = median / (1 + spread(stream, -1.6, 1));
      const { a, b } = gammaPriorFromMtbf({ median, low5 });
      within([gammaAtMost(a, b / median), 0.5], 1e-8, { median, low5 });
      within([gammaAtMost(a, b / low5), 0.95], 1e-8, { median, low5 });
    }
  });
  test("trend test of 1 to 1500 events: its chance, to 1e-9", () => {
    const stream = randomStream(106, "trend");
    for (const n of [1, 2, 7, 40, 300, 1100, 1500]) {
      const times = Array.from({ length: n }, () => 1000 * (1 - stream.next())).sort((x, y) => x - y);
      const { statistic, p } = powerLawTrend(times, 1000);
      const below = gammaAtMost(n, statistic / 2);
      within([p, 2 * Math.min(below, 1 - below)], 1e-9, { n, statistic });
    }
  });
});

describe("300 lognormal times, spreads 0.01 to 3", () => {
  const stream = randomStream(107, "times");
  const cases = Array.from({ length: 300 }, () => {
    const time = { mu: stream.between(-5, 8), sigma: spread(stream, -2, 0.5) };
    return { time, limit: Math.exp(time.mu + time.sigma * stream.between(-6, 6)) };
  });
  test("chance to exceed a limit, against a series of fifty digits: to 1e-13 and to 1e-11 of itself", () => {
    for (const { time, limit } of cases) {
      const wanted = lognormalAbove(time, limit);
      within([lognormalExceeds(time, limit), wanted], Math.min(1e-13, 1e-11 * wanted), { time, limit });
    }
  });
  test("mean beyond a buffer, against direct integration: to 1e-12 of the mean", () => {
    for (const { time, limit } of cases)
      within([meanBeyond(time, limit), beyondBySimpson(time, limit)], 1e-12 * lognormalMean(time), {
        time,
        limit,
      });
  });
});
