import { expect, test } from "vitest";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { type PoolSupply, unreplenishedExposure } from "@/lib/spares/exposure";
import { lastBuy } from "@/lib/spares/lastBuy";
import { noSpareChance, runOutChance } from "@/lib/spares/noSpareChance";
import { stockChance } from "@/lib/spares/stockChance";
import { atLeast, demandMean, demandTerms, poissonTerms } from "./decimals";

/** Chance of each number of working pieces by going through every subset of them. */
function subsets(works: readonly number[]): number[] {
  const out = new Array<number>(works.length + 1).fill(0);
  for (let mask = 0; mask < 2 ** works.length; mask += 1) {
    let chance = 1;
    let count = 0;
    for (const [i, p] of works.entries()) {
      const on = Math.floor(mask / 2 ** i) % 2 === 1;
      chance *= on ? p : 1 - p;
      count += on ? 1 : 0;
    }
    out[count] = (out[count] ?? 0) + chance;
  }
  return out;
}

const spread = (stream: RandomStream, from: number, to: number) => 10 ** stream.between(from, to);

test("100 uneven shelves of up to nine doubtful pieces, through every subset: no spare and run out, to 1e-12", () => {
  const stream = randomStream(201, "shelves");
  for (let i = 0; i < 100; i += 1) {
    const works = Array.from({ length: stream.integer(0, 9) }, () => stream.pick([stream.next(), 1, 1e-9]));
    const demand = { a: spread(stream, -1, 2), b: spread(stream, 0, 3), exposure: spread(stream, -3, 3) };
    const fixed = { rate: spread(stream, -4, 1), exposure: stream.next() };
    const byCount = subsets(works);
    const shelf = stockChance(works.map((p) => ({ count: 1, works: p })));
    const wanted = (terms: (k: number) => number) =>
      byCount.reduce((sum, chance, k) => sum + chance * terms(k), 0);
    const uncertain = (k: number) => (k === 0 ? 1 : atLeast(demandTerms(demand, k - 1)));
    const poisson = (k: number) => (k === 0 ? 1 : atLeast(poissonTerms(fixed.rate * fixed.exposure, k - 1)));
    const told = JSON.stringify({ works, demand, fixed });
    const near = (value: number, target: number) =>
      expect(Math.abs(value - target), told).toBeLessThanOrEqual(1e-12);
    near(noSpareChance(demand, shelf), wanted(uncertain));
    near(
      runOutChance(demand, shelf),
      wanted((k) => uncertain(k + 1)),
    );
    near(noSpareChance(fixed, shelf), wanted(poisson));
    near(
      runOutChance(fixed, shelf),
      wanted((k) => poisson(k + 1)),
    );
  }
});

const GRID = 40;

/** Whether a removal at a time is still missing at t, as a share of units. */
function missing(pool: PoolSupply, at: number, t: number): number {
  if (pool.lastOrderAt === null || at <= pool.lastOrderAt) return t - at < pool.leadTime ? 1 : 0;
  const { repair } = pool;
  if (repair === null || (repair.untilAt !== null && at > repair.untilAt)) return 1;
  return t - at < repair.turnaround ? 1 : 1 - repair.yield;
}

/** All edges lie on the grid, so the sum over the middles of its cells is exact. */
function cellByCell(pool: PoolSupply, t: number): number {
  let sum = 0;
  for (let cell = 0; cell < Math.round(t * GRID); cell += 1) {
    const at = (cell + 0.5) / GRID;
    const units = pool.installed
      .filter(({ from, to }) => at > from && (to === null || at < to))
      .reduce((total, span) => total + span.units, 0);
    sum += (units * missing(pool, at, t)) / GRID;
  }
  return sum;
}

test("2000 pools of several spans on a grid of fortieths of a year, cell by cell: exposure to 1e-10", () => {
  const stream = randomStream(202, "exposure");
  const onGrid = (from: number, to: number) => stream.integer(from * GRID, to * GRID) / GRID;
  for (let i = 0; i < 2000; i += 1) {
    const pool: PoolSupply = {
      installed: Array.from({ length: stream.integer(0, 4) }, () => ({
        from: onGrid(-2, 6),
        to: stream.pick([null, onGrid(-2, 8)]),
        units: stream.pick([0, 1, 48, 300, 0.5]),
      })),
      leadTime: onGrid(0, 2),
      lastOrderAt: stream.pick([null, onGrid(-2, 5)]),
      repair: stream.pick([
        null,
        { turnaround: onGrid(0, 2), yield: stream.next(), untilAt: stream.pick([null, onGrid(-2, 8)]) },
      ]),
    };
    const t = onGrid(0, 9);
    const apart = Math.abs(unreplenishedExposure(pool, t) - cellByCell(pool, t));
    expect(apart, JSON.stringify({ pool, t })).toBeLessThanOrEqual(1e-10);
  }
});

test("150 last buys against going up unit by unit in fifty digits", () => {
  const stream = randomStream(203, "last buys");
  for (let i = 0; i < 150; i += 1) {
    const demand = { a: spread(stream, -1, 2.5), b: spread(stream, 0, 3), exposure: spread(stream, -4, 2.7) };
    if (demandMean(demand).gt(300)) continue;
    const costs = { underCost: spread(stream, 2, 6), overCost: spread(stream, 1, 4) };
    const usable = stream.integer(0, 12);
    const { quantity, fractile } = lastBuy({ ...demand, usable, ...costs });
    let stock = 0;
    while (1 - atLeast(demandTerms(demand, stock)) < fractile) stock += 1;
    expect(quantity, JSON.stringify({ demand, costs, usable })).toBe(Math.max(0, stock - usable));
  }
});
