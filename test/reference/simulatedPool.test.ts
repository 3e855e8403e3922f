import { expect, test } from "vitest";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import { noSpareChance } from "@/lib/spares/noSpareChance";
import { simulateShelf } from "@/lib/spares/simulateShelf";
import { stockChance } from "@/lib/spares/stockChance";

/** Removals one by one, the rate and the working pieces uncertain: the closed form must meet the count. */
const rate = { a: 4, b: 80 };
const supply = {
  installed: [{ from: 0, to: null, units: 60 }],
  ...{ leadTime: 0.3, lastOrderAt: 0.4, repair: { turnaround: 0.2, yield: 0.5, untilAt: 1.2 } },
};
const pieces = [
  { count: 2, works: 0.97 },
  { count: 2, works: 0.7 },
];
const RUNS = 20_000;
const TIMES = [0.3, 0.8, 1.2, 1.8, 2.5];

test("the no-spare chance is what 20 000 histories show, within four standard errors", () => {
  const simulated = simulateShelf(
    { supply, rate, pieces, additions: [] },
    { times: TIMES, runs: RUNS, seed: 2026, name: "pool", unmet: "waits" },
  );
  for (const [i, at] of TIMES.entries()) {
    const chance = noSpareChance(
      { ...rate, exposure: unreplenishedExposure(supply, at) },
      stockChance(pieces),
    );
    const error = Math.sqrt((chance * (1 - chance)) / RUNS);
    expect(Math.abs((simulated[i] ?? 0) - chance), `at ${at}`).toBeLessThan(4 * error);
  }
});

test("the same seed gives the same figures, another one others", () => {
  const asked = { times: TIMES, runs: 500, name: "pool", unmet: "waits" as const };
  const pool = { supply, rate, pieces, additions: [] };
  const first = simulateShelf(pool, { ...asked, seed: 1 });
  expect(simulateShelf(pool, { ...asked, seed: 1 })).toEqual(first);
  expect(simulateShelf(pool, { ...asked, seed: 2 })).not.toEqual(first);
});
