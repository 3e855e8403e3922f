import { describe, expect, test } from "vitest";
import { randomStream } from "@/lib/kernel/random";
import { allocate } from "@/lib/spares/allocate";
import { demandChanceAtMost, expectedBackorders, expectedShort, poissonAtMost } from "@/lib/spares/demand";
import { type PoolSupply, unreplenishedExposure } from "@/lib/spares/exposure";
import { lastBuy } from "@/lib/spares/lastBuy";
import { noSpareChance, runOutChance } from "@/lib/spares/noSpareChance";
import { stockChance } from "@/lib/spares/stockChance";

const near = (value: number, printed: number, tolerance: number) =>
  expect(Math.abs(value - printed), `${value} against ${printed}`).toBeLessThanOrEqual(tolerance);
const runOut = (mean: number, spares: number) => 1 - poissonAtMost(mean, spares);

test.each([
  [18, 15, 0.5176095282584724, 3.517609528258472],
  [220, 200, 0.536005857158494, 20.536005857158482],
  [5, 7, 2.292600125697305, 0.292600125697305],
  [50, 47, 1.514546939496945, 4.514546939496945],
] as const)("Poisson loss at %d spares and mean %d (stockpyl, test of its loss functions)", (...row) => {
  const [spares, mean, short, left] = row;
  near(expectedBackorders(mean, spares), short, 1e-9);
  near(spares - mean + expectedBackorders(mean, spares), left, 1e-9);
});

describe("expected backorders (table in the style of Sherbrooke, chapter 2, from memory)", () => {
  test.each([
    [1, [1.0, 0.368, 0.104, 0.023, 0.004]],
    [4, [4.0, 3.018, 2.11, 1.348, 0.782, 0.41, 0.195, 0.085, 0.034, 0.012]],
  ])("mean %d", (mean, printed) => {
    for (const [spares, value] of printed.entries()) near(expectedBackorders(mean, spares), value, 0.00055);
  });
});

test("marginal allocation of two items (derived): six B, then A, B, A, B", () => {
  const items = [
    { id: "A", mean: 1, unitCost: 5 },
    { id: "B", mean: 4, unitCost: 1 },
  ];
  const bought = allocate(items, 18);
  expect(bought.map(({ id }) => id).join("")).toBe("BBBBBBABAB");
  near(bought.find(({ spent }) => spent === 11)?.total ?? Number.NaN, 0.5633, 5e-5);
  near(bought.at(-1)?.total ?? Number.NaN, 0.1373, 5e-5);
});

test("fill rate is the chance below the stock, not up to it: mean 4, stock 4 (derived)", () => {
  near(poissonAtMost(4, 3), 0.4334701204, 5e-11);
  near(poissonAtMost(4, 4), 0.6288369352, 5e-11);
});

test("mean 3 and 3 spares: the 42 % an article of rmqsi.org prints is demand below the stock, not within it", () => {
  near(poissonAtMost(3, 2), 0.42319, 5e-6);
  near(poissonAtMost(3, 3), 0.64723, 5e-6);
  // Ours: an empty shelf when a unit fails is the first turned round, a shelf run out the second.
  const shelf = stockChance([{ count: 3, works: 1 }]);
  near(1 - noSpareChance({ rate: 3, exposure: 1 }, shelf), 0.42319, 5e-6);
  near(1 - runOutChance({ rate: 3, exposure: 1 }, shelf), 0.64723, 5e-6);
});

describe("cumulative Poisson (textbook tables, three places)", () => {
  test.each<[number, readonly number[]]>([
    [0.5, [0.607, 0.91, 0.986, 0.998]],
    [1, [0.368, 0.736, 0.92, 0.981, 0.996, 0.999]],
    [2, [0.135, 0.406, 0.677, 0.857, 0.947, 0.983, 0.995, 0.999]],
    [5, [0.007, 0.04, 0.125, 0.265, 0.44, 0.616, 0.762, 0.867, 0.932, 0.968, 0.986, 0.995, 0.998, 0.999]],
  ])("mean %d", (mean, printed) => {
    for (const [k, value] of printed.entries()) near(poissonAtMost(mean, k), value, 0.0005);
  });
  test("mean 10", () => {
    near(poissonAtMost(10, 10), 0.583, 0.0005);
    near(poissonAtMost(10, 15), 0.951, 0.0005);
  });
});

test.each<[number, readonly number[]]>([
  [0.1, [0, 0, 1, 1]],
  [0.5, [1, 1, 2, 3]],
  [1, [2, 2, 3, 4]],
  [2, [3, 4, 5, 6]],
  [3, [4, 5, 6, 8]],
  [5, [7, 8, 9, 11]],
  [10, [13, 14, 15, 18]],
  [20, [24, 26, 28, 31]],
])("smallest stock for 80, 90, 95 and 99 % at mean %d (derived)", (mean, stocks) => {
  for (const [i, confidence] of [0.8, 0.9, 0.95, 0.99].entries()) {
    // A rate known this well is a Poisson to the digits that matter.
    const buy = lastBuy({
      ...{ a: mean * 1e9, b: 1e9, exposure: 1, usable: 0 },
      ...{ underCost: confidence, overCost: 1 - confidence },
    });
    expect(buy.quantity).toBe(stocks[i]);
  }
});

test("10 units at 50 per million hours over 2000 h (derived): 0.368, 0.920, three spares for 95 %", () => {
  near(poissonAtMost(10 * 50e-6 * 2000, 0), 0.367879, 5e-7);
  near(poissonAtMost(1, 2), 0.919699, 5e-7);
  near(poissonAtMost(1, 3), 0.981012, 5e-7);
});

test("life-of-type demand with two failures seen in 800 h, 2000 h to go (derived): over-confident if plugged in", () => {
  const demand = { a: 2, b: 800, exposure: 2000 };
  near(demandChanceAtMost(demand, 5), 0.639515, 5e-7);
  near(demandChanceAtMost(demand, 10), 0.897696, 5e-7);
  near(demandChanceAtMost(demand, 11), 0.921886, 5e-7);
  near(poissonAtMost(5, 9), 0.968, 0.0005);
});

describe("Poisson newsvendor (stockpyl tests; Snyder and Shen, 4.7 and 4.8a)", () => {
  test.each([
    { mean: 6, underCost: 4, overCost: 1, best: 8 },
    { mean: 18, underCost: 270, overCost: 200, best: 19 },
  ])("mean $mean", ({ mean, best, ...costs }) => {
    expect(lastBuy({ a: mean * 1e9, b: 1e9, exposure: 1, usable: 0, ...costs }).quantity).toBe(best);
  });
  test.each([
    [{ mean: 6, short: 4, over: 1 }, 8, 3.570106945770946],
    [{ mean: 6, short: 4, over: 1 }, 5, 6.590296024616344],
    [{ mean: 18, short: 270, over: 200 }, 19, 786.0884409351115],
    [{ mean: 18, short: 270, over: 200 }, 13, 1445.751062891969],
  ])("cost of %j at a stock of %d", ({ mean, short, over }, stock, cost) => {
    const lacking = expectedBackorders(mean, stock);
    near(short * lacking + over * (stock - mean + lacking), cost, 1e-9 * cost);
  });
});

describe("18 units for 2.5 years at Gamma(4.1, 100), worked out beside the method", () => {
  const demand = { a: 4.1, b: 100, exposure: 45 };
  test.each([
    [0, 0.78, 0.84, 1.85],
    [1, 0.51, 0.55, 1.06],
    [2, 0.29, 0.28, 0.56],
    [3, 0.15, 0.12, 0.27],
    [4, 0.07, 0.04, 0.13],
    [5, 0.032, 0.012, 0.06],
    [6, 0.014, 0.003, 0.02],
  ] as const)("%d spares", (...row) => {
    const [spares, uncertain, plugged, short] = row;
    const places = uncertain < 0.1 ? 0.0006 : 0.006;
    near(1 - demandChanceAtMost(demand, spares), uncertain, places);
    near(runOut(1.845, spares), plugged, places);
    near(expectedShort(demand, spares), short, 0.006);
  });
});

test("15 on the books run out with 8 %, the 4 that are usable with 98 % (mean 10.8)", () => {
  near(runOut(10.8, 15), 0.08, 0.005);
  near(runOut(10.8, 4), 0.98, 0.006);
});
test("three sites with a spare each against three shared, or two", () => {
  near(runOut(0.6, 1), 0.122, 0.0005);
  near(1 - (1 - runOut(0.6, 1)) ** 3, 0.32, 0.005);
  near(runOut(1.8, 3), 0.11, 0.005);
  near(runOut(1.8, 2), 0.27, 0.005);
});
test("repair turn-around of 10, 25 and 45 days and one spare or two (96 drives at 0.0413)", () => {
  const printed = [
    [10, 0.1, 0.006],
    [25, 0.24, 0.031],
    [45, 0.39, 0.087],
  ] as const;
  for (const [days, one, two] of printed) {
    const mean = 96 * 0.0413 * (days / 365.25);
    near(runOut(mean, 0), one, 0.005);
    near(runOut(mean, 1), two, 0.0006);
  }
});
test("the buy for 192 unit-years: 15 units, 8 with repair, 5 on a cheap line, 11 after a year's slip", () => {
  const buy = (exposure: number, underCost: number) =>
    lastBuy({ a: 63, b: 1527.1, exposure, usable: 0, underCost, overCost: 2676 });
  near(buy(192, 223_800).fractile, 0.988, 0.0005);
  expect(buy(192, 223_800).quantity).toBe(15);
  expect(buy(192 * 0.4, 223_800).quantity).toBe(8);
  expect(buy(192 * 0.4, 12_900).quantity).toBe(5);
  expect(buy(288 * 0.4, 223_800).quantity).toBe(11);
});

describe("40 units, rate 0.05, 2 spares, orders to 0.5, repair to 1.5", () => {
  const pool: PoolSupply = {
    installed: [{ from: 0, to: null, units: 40 }],
    ...{ leadTime: 0.25, lastOrderAt: 0.5 },
    repair: { turnaround: 0.15, yield: 0.6, untilAt: 1.5 },
  };
  const noSpare = (t: number) => runOut(0.05 * unreplenishedExposure(pool, t), 1);
  const printed = [
    [0.3, 0.09],
    [1, 0.115],
    [1.5, 0.257],
    [2, 0.537],
    [3, 0.893],
  ] as const;
  test.each(printed)("no-spare chance at %d years as worked out beside the method", (t, chance) => {
    near(noSpare(t), chance, 0.0005);
  });

  type Stream = ReturnType<typeof randomStream>;

  /** Whether what was removed at s is still not replaced at t: its order under way, in repair, or lost. */
  function isMissing(s: number, t: number, stream: Stream): boolean {
    if (s <= 0.5) return t - s < 0.25;
    if (s <= 1.5) return t - s < 0.15 || stream.next() >= 0.6;
    return true;
  }

  /** Removals one by one at exponential gaps. */
  function missingAt(t: number, stream: Stream): number {
    const gap = () => -Math.log(1 - stream.next()) / (40 * 0.05);
    let missing = 0;
    for (let s = gap(); s <= t; s += gap()) if (isMissing(s, t, stream)) missing += 1;
    return missing;
  }

  test.each(printed)("agrees with 20 000 simulated histories at %d years", (t) => {
    const stream = randomStream(2026, `history to ${t}`);
    const runs = 20_000;
    let empty = 0;
    for (let run = 0; run < runs; run += 1) if (missingAt(t, stream) >= 2) empty += 1;
    const chance = noSpare(t);
    near(empty / runs, chance, 4 * Math.sqrt((chance * (1 - chance)) / runs));
  });
});
