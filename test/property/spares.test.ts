import { assert, constantFrom, double, integer, property, record, tuple } from "fast-check";
import { describe, test } from "vitest";
import { demandChanceAtMost, expectedShort, poissonAtMost } from "@/lib/spares/demand";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import { lastBuy } from "@/lib/spares/lastBuy";
import { noSpareChance, runOutChance } from "@/lib/spares/noSpareChance";
import { stockChance } from "@/lib/spares/stockChance";

const between = (min: number, max: number) => double({ min, max, noNaN: true });
const rate = { a: between(0.05, 80), b: between(5, 2000) };
const demand = record({ ...rate, exposure: between(0, 500) });
const spares = integer({ min: 0, max: 40 });
const pieces = tuple(integer({ min: 0, max: 12 }), between(0.05, 1)).map(([count, works]) => [
  { count, works },
]);
const EPS = 1e-9;

describe("chances of the shelf", () => {
  test("stay in [0, 1]; running out is never likelier than finding it empty", () => {
    assert(
      property(demand, pieces, (d, p) => {
        const shelf = stockChance(p);
        const empty = noSpareChance(d, shelf);
        const out = runOutChance(d, shelf);
        return out >= 0 && out <= empty + EPS && empty <= 1;
      }),
    );
  });
  test("one more piece, however doubtful, never raises the no-spare chance", () => {
    assert(
      property(demand, pieces, between(0.01, 1), (d, p, works) => {
        const more = stockChance([...p, { count: 1, works }]);
        return noSpareChance(d, more) <= noSpareChance(d, stockChance(p)) + EPS;
      }),
    );
  });
  test("more exposure never lowers it", () => {
    assert(
      property(demand, pieces, between(0, 100), (d, p, more) => {
        const shelf = stockChance(p);
        return noSpareChance(d, shelf) <= noSpareChance({ ...d, exposure: d.exposure + more }, shelf) + EPS;
      }),
    );
  });
  test("a higher rate never lowers it", () => {
    assert(
      property(demand, pieces, between(0, 20), (d, p, more) => {
        const shelf = stockChance(p);
        return noSpareChance(d, shelf) <= noSpareChance({ ...d, a: d.a + more }, shelf) + EPS;
      }),
    );
  });
});

test("shared spares run out no oftener than one of the separate shelves", () => {
  assert(
    property(tuple(between(0, 5), spares), tuple(between(0, 5), spares), ([m1, s1], [m2, s2]) => {
      const apart = 1 - poissonAtMost(m1, s1) * poissonAtMost(m2, s2);
      return 1 - poissonAtMost(m1 + m2, s1 + s2) <= apart + EPS;
    }),
  );
});

describe("short units", () => {
  test("fall with each spare by the chance that it is needed", () => {
    assert(
      property(demand, spares, (d, s) => {
        const fall = expectedShort(d, s) - expectedShort(d, s + 1);
        return Math.abs(fall - (1 - demandChanceAtMost(d, s))) < 1e-7 * Math.max(1, (d.a * d.exposure) / d.b);
      }),
    );
  });
  test("with no spare are the whole demand", () => {
    assert(
      property(demand, (d) => {
        const mean = (d.a * d.exposure) / d.b;
        return Math.abs(expectedShort(d, 0) - mean) <= 1e-9 * Math.max(1, mean);
      }),
    );
  });
});

const supply = record({
  units: integer({ min: 0, max: 200 }),
  leavesAt: between(0, 8),
  leadTime: between(0, 1),
  lastOrderAt: between(-2, 4),
  turnaround: between(0, 1),
  returned: between(0, 1),
  untilAt: between(-2, 8),
});
interface Supply {
  readonly units: number;
  readonly leavesAt: number;
  readonly leadTime: number;
  readonly lastOrderAt: number;
  readonly turnaround: number;
  readonly returned: number;
  readonly untilAt: number;
}
const poolOf = (s: Supply) => ({
  installed: [{ from: 0, to: s.leavesAt, units: s.units }],
  leadTime: s.leadTime,
  lastOrderAt: s.lastOrderAt,
  repair: { turnaround: s.turnaround, yield: s.returned, untilAt: s.untilAt },
});

const weight = (s: Supply, at: number, t: number): number => {
  if (at <= s.lastOrderAt) return t - at < s.leadTime ? 1 : 0;
  if (at <= s.untilAt) return t - at < s.turnaround ? 1 : 1 - s.returned;
  return 1;
};

/** Midpoint sum of units times weight over n steps. */
function summed(s: Supply, t: number, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i += 1) {
    const at = ((i + 0.5) / n) * t;
    sum += at < s.leavesAt ? weight(s, at, t) * s.units * (t / n) : 0;
  }
  return sum;
}

describe("un-replenished exposure", () => {
  const time = between(0, 10);
  test("lies between nothing and all unit-years in service", () => {
    assert(
      property(supply, time, (s, t) => {
        const g = unreplenishedExposure(poolOf(s), t);
        return g >= 0 && g <= s.units * Math.min(t, s.leavesAt) * (1 + EPS) + EPS;
      }),
    );
  });
  test("is the sum of its weight over fine steps of time", () => {
    assert(
      property(supply, time, (s, t) => {
        const n = 4000;
        const sum = summed(s, t, n);
        // Each of at most six edges can be off by one step.
        return Math.abs(sum - unreplenishedExposure(poolOf(s), t)) <= 6 * s.units * (t / n) + EPS;
      }),
      { numRuns: 200 },
    );
  });
  test("repair, a longer repair and an earlier retrofit never raise it", () => {
    assert(
      property(supply, time, between(0, 3), (s, t, shift) => {
        const g = unreplenishedExposure(poolOf(s), t);
        const none = unreplenishedExposure({ ...poolOf(s), repair: null }, t);
        const longer = unreplenishedExposure(poolOf({ ...s, untilAt: s.untilAt + shift }), t);
        const earlier = unreplenishedExposure(poolOf({ ...s, leavesAt: Math.max(0, s.leavesAt - shift) }), t);
        return g <= none + EPS && longer <= g + EPS && earlier <= g + EPS;
      }),
    );
  });
});

test("an earlier retrofit, or a spare more, never raises the last buy", () => {
  assert(
    property(demand, spares, constantFrom(0.5, 0.8, 0.95, 0.99), (d, usable, fractile) => {
      const buy = (exposure: number, held: number) =>
        lastBuy({ ...d, exposure, usable: held, underCost: fractile, overCost: 1 - fractile }).quantity;
      const now = buy(d.exposure, usable);
      return buy(d.exposure * 0.7, usable) <= now && buy(d.exposure, usable + 1) <= now;
    }),
  );
});
