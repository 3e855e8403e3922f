import { describe, expect, test } from "vitest";
import { noSpareAhead } from "@/lib/spares/shelfAhead";
import { type SimulatedPool, simulateShelf, type Unmet } from "@/lib/spares/simulateShelf";
import { stockChance } from "@/lib/spares/stockChance";

const RUNS = 20_000;
const TIMES = [0.2, 0.5, 0.9, 1.3, 1.6, 2.1, 2.6, 3.2, 4];

/** Ordered at first, then repaired, then neither; units leave, some come back to the shelf, some from repair. */
const mixed: SimulatedPool = {
  rate: { a: 4, b: 80 },
  supply: {
    installed: [
      { from: 0, to: 1.5, units: 20 },
      { from: 0, to: 2.5, units: 15 },
      { from: 0, to: null, units: 25 },
    ],
    ...{ leadTime: 0.3, lastOrderAt: 0.4 },
    repair: { turnaround: 0.2, yield: 0.5, untilAt: 2 },
  },
  pieces: [
    { count: 2, works: 0.97 },
    { count: 1, works: 0.7 },
  ],
  additions: [
    { at: 0.25, count: 1, works: 0.6 },
    { at: 1.5, count: 8, works: 0.65 },
    { at: 2.5, count: 3, works: 0.65 },
  ],
};
/** Neither ordered nor repaired, all released at once onto an empty shelf. */
const retired: SimulatedPool = {
  rate: { a: 3, b: 70 },
  supply: {
    installed: [
      { from: 0, to: 1, units: 46 },
      { from: 0, to: null, units: 74 },
    ],
    ...{ leadTime: 0, lastOrderAt: -1, repair: null },
  },
  pieces: [{ count: 2, works: 0.85 }],
  additions: [{ at: 1, count: 10, works: 0.65 }],
};

function model({ supply, rate, pieces, additions }: SimulatedPool) {
  const later = additions.map(({ at, ...alike }) => ({ at, pieces: stockChance([alike]) }));
  const at = noSpareAhead({ supply, stock: stockChance(pieces), additions: later }, rate);
  return TIMES.map(at);
}

/** Standard error of a share of the runs. */
const error = (chance: number) => Math.sqrt((chance * (1 - chance)) / RUNS);

describe.each([
  ["ordered, then repaired, then neither, with leaving units and pieces to come", mixed],
  ["neither ordered nor repaired, pieces released onto an empty shelf", retired],
])("%s", (_, pool) => {
  const chances = model(pool);
  const simulated = (unmet: Unmet) =>
    simulateShelf(pool, { times: TIMES, runs: RUNS, seed: 2026, name: unmet, unmet });

  test("the no-spare chance is what 20 000 histories show, within four standard errors", () => {
    for (const [i, share] of simulated("waits for what is due back").entries())
      expect(Math.abs(share - (chances[i] ?? 0)), `at ${TIMES[i]}`).toBeLessThan(4 * error(chances[i] ?? 0));
  });
  test("it is never below the share when what finds nothing does not even wait for its own repair", () => {
    for (const [i, share] of simulated("got elsewhere").entries())
      expect(share - (chances[i] ?? 0), `at ${TIMES[i]}`).toBeLessThan(4 * error(chances[i] ?? 0));
  });
  test("were removals to wait for released pieces, more failures would find the shelf empty after the release", () => {
    const waiting = simulated("waits");
    for (const [i, chance] of chances.entries())
      expect(chance - (waiting[i] ?? 0), `at ${TIMES[i]}`).toBeLessThan(4 * error(chance));
    const afterRelease = TIMES.findIndex((at) => at > (pool.additions.at(-1)?.at ?? 0));
    expect(waiting[afterRelease] ?? 0).toBeGreaterThan((chances[afterRelease] ?? 0) + 0.02);
  });
});
