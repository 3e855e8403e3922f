import { array, assert, double, integer, property, record } from "fast-check";
import { describe, test } from "vitest";
import { addDays, daysBetween } from "@/lib/kernel/isoDate";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, InstalledInput, LeavingInput, PoolInput } from "@/lib/risk/evaluation";
import { leavingByPool } from "@/lib/risk/leavingByPool";
import { supplyOutlook } from "@/lib/risk/supplyOutlook";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import { lastBuy } from "@/lib/spares/lastBuy";
import { noSpareChance } from "@/lib/spares/noSpareChance";
import { noSpareAhead } from "@/lib/spares/shelfAhead";
import { stockChance } from "@/lib/spares/stockChance";
import { anyAhead } from "../support/anyAhead";
import { lot } from "../support/smallGroup";

const runs = { numRuns: 60 };
/** Twice what the points of an uncertain rate may miss. */
const EPS = 2e-6;
const between = (min: number, max: number) => double({ min, max, noNaN: true });

const pools = (input: GroupInput) => evaluate(input, likelyAssumptions).pools;
/** In no month does the better group find a shelf empty oftener, nor at the ends of the rates. */
function neverEmptier(better: GroupInput, worse: GroupInput): boolean {
  const other = pools(worse);
  return pools(better).every((pool, i) =>
    pool.noSpareByMonth.every((span, month) => {
      const was = other[i]?.noSpareByMonth[month];
      return was && span.mean <= was.mean + EPS && span.low <= was.low + EPS && span.high <= was.high + EPS;
    }),
  );
}
const withPools = (input: GroupInput, change: (pool: PoolInput) => PoolInput) => ({
  ...input,
  pools: input.pools.map(change),
});
const withLeaves = (
  input: GroupInput,
  change: (leave: LeavingInput, row: InstalledInput) => LeavingInput,
) => ({
  ...input,
  installed: input.installed.map((row) => ({
    ...row,
    leaves: (row.leaves ?? []).map((leave) => change(leave, row)),
  })),
});

describe("with units that leave and pieces to come", () => {
  test("chances stay in [0, 1] and within their span", () => {
    assert(
      property(anyAhead, (input) =>
        pools(input).every(({ noSpareByMonth }) =>
          noSpareByMonth.every(
            ({ mean, low, high }) => low >= 0 && low <= mean && mean <= high && high <= 1 + 1e-12,
          ),
        ),
      ),
      runs,
    );
  });
  test("one more usable spare never empties a shelf oftener", () => {
    assert(
      property(anyAhead, (input) =>
        neverEmptier(
          withPools(input, (pool) => ({ ...pool, stock: [...pool.stock, lot("N", 1)] })),
          input,
        ),
      ),
      runs,
    );
  });
  test("one more unit out for repair never does", () => {
    assert(
      property(anyAhead, between(0, 1), integer({ min: -40, max: 900 }), (input, works, inDays) => {
        const arrival = { on: addDays(input.asOf, inDays), pieces: 1, works };
        return neverEmptier(
          withPools(input, (pool) => ({ ...pool, arrivals: [...(pool.arrivals ?? []), arrival] })),
          input,
        );
      }),
      runs,
    );
  });
  test("a unit that leaves and is kept instead of scrapped never does", () => {
    assert(
      property(anyAhead, (input) =>
        neverEmptier(
          withLeaves(input, (leave) => ({ ...leave, kept: true })),
          withLeaves(input, (leave) => ({ ...leave, kept: false })),
        ),
      ),
      runs,
    );
  });
  test("a unit that is scrapped earlier never does, nor raises the last buy", () => {
    assert(
      property(anyAhead, integer({ min: 1, max: 400 }), (input, earlier) => {
        const scrapped = withLeaves(input, (leave) => ({ ...leave, kept: false }));
        const soon = withLeaves(scrapped, (leave) => {
          const on = addDays(leave.on, -Math.min(earlier, daysBetween(input.asOf, leave.on)));
          return { ...leave, on };
        });
        return neverEmptier(soon, scrapped) && buysNoMore(soon, scrapped);
      }),
      runs,
    );
  });
});

/** Last buys for the demand of five years, pool by pool, on the exposure of the worse case of supply. */
function buysNoMore(soon: GroupInput, late: GroupInput): boolean {
  const quantities = (input: GroupInput) => {
    const leaving = leavingByPool(input);
    return input.pools.map((pool) => {
      const units = input.installed
        .filter(({ poolId }) => poolId === pool.id)
        .reduce((sum, row) => sum + row.units, 0);
      const base = { pool, units, leaving: leaving.get(pool.id) ?? [], asOf: input.asOf };
      const cases = supplyOutlook({ ...base, stage: "own-stock" }, likelyAssumptions);
      const exposure = Math.max(...cases.map(({ supply }) => unreplenishedExposure(supply, 5)));
      return lastBuy({ a: 4, b: 100, exposure, usable: 1, underCost: 9, overCost: 1 }).quantity;
    });
  };
  const other = quantities(late);
  return quantities(soon).every((quantity, i) => quantity <= (other[i] ?? 0));
}

const shelf = record({
  rate: record({ a: between(0.3, 60), b: between(20, 900) }),
  supply: record({
    leadTime: between(0, 1),
    lastOrderAt: between(-1, 4),
    repair: record({ turnaround: between(0, 0.5), yield: between(0, 1), untilAt: between(-1, 9) }),
  }),
  spans: array(record({ to: between(0.1, 9), units: integer({ min: 0, max: 40 }) }), {
    minLength: 1,
    maxLength: 3,
  }),
  held: integer({ min: 0, max: 6 }),
  additions: array(record({ at: between(0, 4), count: integer({ min: 0, max: 5 }), works: between(0, 1) }), {
    maxLength: 3,
  }),
  t: between(0, 6),
}).map(({ rate, supply, spans, held, additions, t }) => ({
  ...{ rate, t, stock: stockChance([{ count: held, works: 0.85 }]) },
  supply: { ...supply, installed: spans.map((span) => ({ from: 0, ...span })) },
  additions: [...additions].sort((a, b) => a.at - b.at),
}));

describe("the shelf between additions", () => {
  test("additions of nothing give the closed form, ordered, in repair or neither", () => {
    assert(
      property(shelf, ({ rate, t, stock, supply, additions }) => {
        const nothing = additions.map(({ at }) => ({ at, pieces: [1] }));
        const closed = noSpareChance({ ...rate, exposure: unreplenishedExposure(supply, t) }, stock);
        return Math.abs(noSpareAhead({ supply, stock, additions: nothing }, rate)(t) - closed) <= EPS;
      }),
      { numRuns: 200 },
    );
  });
  test("additions on the day itself are spares held", () => {
    assert(
      property(shelf, integer({ min: 0, max: 4 }), ({ rate, t, stock, supply }, count) => {
        const additions = [{ at: 0, pieces: stockChance([{ count, works: 0.6 }]) }];
        const held = stockChance([
          { count: stock.length - 1, works: 0.85 },
          { count, works: 0.6 },
        ]);
        const closed = noSpareChance({ ...rate, exposure: unreplenishedExposure(supply, t) }, held);
        return Math.abs(noSpareAhead({ supply, stock, additions }, rate)(t) - closed) <= EPS;
      }),
      { numRuns: 200 },
    );
  });
  test("it is never emptier than if earlier demand had first call on what comes", () => {
    assert(
      property(shelf, ({ rate, t, stock, supply, additions }) => {
        const come = additions.filter(({ at }) => at <= t);
        const all = stockChance([{ count: stock.length - 1, works: 0.85 }, ...come]);
        const closed = noSpareChance({ ...rate, exposure: unreplenishedExposure(supply, t) }, all);
        const later = additions.map(({ at, count, works }) => ({
          at,
          pieces: stockChance([{ count, works }]),
        }));
        return noSpareAhead({ supply, stock, additions: later }, rate)(t) <= closed + EPS;
      }),
      { numRuns: 200 },
    );
  });
});
