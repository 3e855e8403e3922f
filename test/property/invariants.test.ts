import { array, assert, constantFrom, double, integer, option, property, record } from "fast-check";
import { describe, test } from "vitest";
import { type Assumptions, type ClassAssumptions, likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, LineResult, PoolInput, StockInput } from "@/lib/risk/evaluation";
import { expectedStopCost } from "@/lib/risk/expectedStopCost";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import { lastBuy } from "@/lib/spares/lastBuy";
import { noSpareChance } from "@/lib/spares/noSpareChance";
import { stockChance } from "@/lib/spares/stockChance";
import { anyGroup, SITES } from "../support/anyGroup";
import { noDates } from "../support/smallGroup";

const between = (min: number, max: number) => double({ min, max, noNaN: true });
const runs = { numRuns: 60 };
const EPS = 1e-9;

const lossOf = ({ stopLoss }: LineResult) => stopLoss?.mean ?? 0;
/** No line of the better group loses or scores more than the same line of the worse one. */
function noWorse(better: readonly LineResult[], worse: readonly LineResult[]): boolean {
  return better.every((line, i) => {
    const other = worse[i];
    if (!other) return false;
    return line.score <= other.score + 1e-7 && lossOf(line) <= lossOf(other) * (1 + EPS) + EPS;
  });
}

function withClasses(change: (one: ClassAssumptions) => ClassAssumptions, more: Partial<Assumptions> = {}) {
  const classes = Object.entries(likelyAssumptions.classes).map(([name, one]) => [name, change(one)]);
  return { ...likelyAssumptions, ...more, classes: Object.fromEntries(classes) } as Assumptions;
}
const lines = (input: GroupInput, assumptions: Assumptions = likelyAssumptions) =>
  evaluate(input, assumptions).lines;
const withPools = (input: GroupInput, change: (pool: PoolInput) => PoolInput): GroupInput => ({
  ...input,
  pools: input.pools.map(change),
});
const withLots = (input: GroupInput, change: (lot: StockInput) => StockInput): GroupInput =>
  withPools(input, (pool) => ({ ...pool, stock: pool.stock.map(change) }));

describe("worse never counts for less", () => {
  test("longer restoration, with a spare, without one or on the way, never lowers loss or score", () => {
    assert(
      property(anyGroup, between(1, 5), constantFrom("with", "without", "way"), (input, times, which) => {
        const longer = withClasses(
          (one) => ({
            ...one,
            withSpare: {
              ...one.withSpare,
              mu: one.withSpare.mu + (which === "with" ? Math.log(times) : 0),
            },
            ladder: one.ladder.map((s) => ({ ...s, hours: s.hours * (which === "without" ? times : 1) })),
          }),
          { transferHours: likelyAssumptions.transferHours * (which === "way" ? times : 1) },
        );
        return noWorse(lines(input), lines(input, longer));
      }),
      { numRuns: 150 },
    );
  });
  test("a longer delay, a longer time, a dearer hour or a shorter buffer never makes one stop cheaper", () => {
    const stop = record({
      ...{ mu: between(-1, 6), sigma: between(0.1, 1.5), delayHours: between(0, 100) },
      ...{ costPerHour: between(0, 5000), bufferHours: between(0, 80), more: between(0, 50) },
    });
    assert(
      property(stop, ({ mu, sigma, delayHours, costPerHour, bufferHours, more }) => {
        const plain = { mu, delayHours, costPerHour, bufferHours };
        const cost = (change: Partial<typeof plain>) => {
          const at = { ...plain, ...change };
          const restoration = { mu: at.mu, sigma };
          return expectedStopCost(
            { restoration, delayHours: at.delayHours },
            { ...at, unrecoveredShare: 0.8 },
          );
        };
        const least = cost({}) * (1 - EPS) - EPS;
        return (
          cost({ delayHours: delayHours + more }) >= least &&
          cost({ mu: mu + more / 50 }) >= least &&
          cost({ costPerHour: costPerHour + more }) >= least &&
          cost({ bufferHours: Math.max(0, bufferHours - more) }) >= least
        );
      }),
    );
  });
  test("a higher belief of the rate never lowers loss or score", () => {
    assert(
      property(anyGroup, between(1, 4), (input, times) => {
        const oftener = withClasses((one) => ({ ...one, removalRate: one.removalRate * times }));
        return noWorse(lines(input), lines(input, oftener));
      }),
      runs,
    );
  });
  test("a dearer hour never lowers the loss of any line", () => {
    assert(
      property(anyGroup, between(0, 3000), (input, more) => {
        const dear = (by: number) => ({
          ...input,
          lines: input.lines.map((line) => ({ ...line, costPerHour: 100 + by })),
        });
        return noWorse(lines(dear(0)), lines(dear(more)));
      }),
      runs,
    );
  });
});

describe("not knowing is never better than the best that could be known", () => {
  const fresh = "2026-11-01";
  test("state or revision of a piece", () => {
    assert(
      property(anyGroup, constantFrom<StockInput["state"]>("unproven", "removed_untested"), (input, state) =>
        noWorse(
          lines(withLots(input, (lot) => ({ ...lot, state: "usable", lastPoweredOn: fresh }))),
          lines(withLots(input, (lot) => ({ ...lot, state }))),
        ),
      ),
      runs,
    );
  });
  test("count of a lot", () => {
    assert(
      property(anyGroup, integer({ min: 0, max: 8 }), (input, quantity) =>
        noWorse(
          lines(withLots(input, (lot) => ({ ...lot, quantity }))),
          lines(withLots(input, (lot) => ({ ...lot, quantity: null }))),
        ),
      ),
      runs,
    );
  });
  // A part that can be ordered is ordered, however quick its repair: with a quicker one, orderable is not the best.
  test("supply dates, where a repair is no quicker than an order", () => {
    const slow = (pool: PoolInput): PoolInput => {
      const lead = pool.leadYears ?? likelyAssumptions.classes[pool.itemClass].leadYears;
      const { repair } = pool;
      return repair
        ? { ...pool, repair: { ...repair, turnaroundYears: Math.max(lead, repair.turnaroundYears) } }
        : pool;
    };
    assert(
      property(anyGroup, (input) => {
        const dated = (checkedOn: string | null) =>
          lines(withPools(input, (pool) => ({ ...slow(pool), dates: { ...noDates, checkedOn } })));
        return noWorse(dated(noDates.checkedOn), dated(null));
      }),
      runs,
    );
  });
});

describe("sums", () => {
  test("pools make the line, lines make the site and the group: exactly, in the order given", () => {
    assert(
      property(anyGroup, (input) => {
        const result = evaluate(input, likelyAssumptions);
        const siteOf = new Map(input.lines.map(({ id, siteId }) => [id, siteId]));
        const bySite = SITES.map((site) =>
          result.lines.filter(({ lineId }) => siteOf.get(lineId) === site).reduce((s, l) => s + lossOf(l), 0),
        );
        const sites = bySite.reduce((sum, loss) => sum + loss, 0);
        const parts = result.lines.every(({ stopLoss, baseLoss, shortageLoss, pools }) => {
          const base = pools.reduce((sum, pool) => sum + (pool.baseLoss ?? 0), 0);
          const shortage = pools.reduce((sum, pool) => sum + (pool.shortageLoss ?? 0), 0);
          return (
            stopLoss === null ||
            (base === baseLoss && shortage === shortageLoss && base + shortage === stopLoss.mean)
          );
        });
        return parts && Math.abs(sites - result.stopLoss.mean) <= EPS * Math.max(1, sites);
      }),
      runs,
    );
  });
  test("parts of the score make the score", () => {
    assert(
      property(anyGroup, (input) =>
        lines(input).every(
          ({ score, scoreParts: { stage, spares, repair } }) =>
            Math.abs(stage + spares + repair - score) < 1e-9,
        ),
      ),
      runs,
    );
  });
  test("the order in which experience and stock were read changes nothing that matters", () => {
    assert(
      property(anyGroup, (input) => {
        const turned = withPools({ ...input, experience: [...input.experience].reverse() }, (pool) => ({
          ...pool,
          stock: [...pool.stock].reverse(),
        }));
        return noWorse(lines(turned), lines(input)) && noWorse(lines(input), lines(turned));
      }),
      runs,
    );
  });
});

const span = record({ to: between(0.1, 9), units: integer({ min: 0, max: 120 }) });
test("moving retrofits earlier never raises the last buy, nor the chance of an empty shelf at any time", () => {
  const any = record({
    rate: record({ a: between(0.3, 60), b: between(20, 900) }),
    pool: record({
      leadTime: between(0, 1),
      lastOrderAt: option(between(-1, 4)),
      repair: option(
        record({ turnaround: between(0, 0.5), yield: between(0, 1), untilAt: option(between(-1, 9)) }),
      ),
    }),
    spans: array(span, { minLength: 1, maxLength: 5 }),
    earlier: between(0, 3),
    t: between(0, 9),
  });
  assert(
    property(any, ({ rate, pool, spans, earlier, t }) => {
      const demandAfter = (shift: number) => {
        const installed = spans.map(({ to, units }) => ({ from: 0, to: Math.max(0, to - shift), units }));
        return { ...rate, exposure: unreplenishedExposure({ ...pool, installed }, t) };
      };
      const [soon, late] = [demandAfter(earlier), demandAfter(0)];
      const costs = { usable: 2, underCost: 9, overCost: 1 };
      const shelf = stockChance([{ count: 2, works: 0.85 }]);
      return (
        lastBuy({ ...soon, ...costs }).quantity <= lastBuy({ ...late, ...costs }).quantity &&
        noSpareChance(soon, shelf) <= noSpareChance(late, shelf) + EPS
      );
    }),
  );
});
