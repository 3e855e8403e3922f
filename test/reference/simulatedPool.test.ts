import { expect, test } from "vitest";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import { noSpareChance } from "@/lib/spares/noSpareChance";
import { stockChance } from "@/lib/spares/stockChance";
import { type SimulatedPool, simulatedNoSpare } from "./simulatedPool";

/** Removals one by one, the rate and the working pieces uncertain: the closed form must meet the count. */
const pool: SimulatedPool = {
  ...{ units: 60, a: 4, b: 80, leadTime: 0.3, lastOrderAt: 0.4 },
  repair: { turnaround: 0.2, yield: 0.5, untilAt: 1.2 },
  pieces: [0.97, 0.97, 0.7, 0.7],
};
const RUNS = 20_000;

test.each([0.3, 0.8, 1.2, 1.8, 2.5])("no-spare chance at %d years is what 20 000 histories show", (at) => {
  const supply = {
    installed: [{ from: 0, to: null, units: pool.units }],
    ...{ leadTime: pool.leadTime, lastOrderAt: pool.lastOrderAt, repair: pool.repair },
  };
  const shelf = stockChance(pool.pieces.map((works) => ({ count: 1, works })));
  const chance = noSpareChance({ a: pool.a, b: pool.b, exposure: unreplenishedExposure(supply, at) }, shelf);
  const error = Math.sqrt((chance * (1 - chance)) / RUNS);
  expect(Math.abs(simulatedNoSpare(pool, at, RUNS) - chance)).toBeLessThan(4 * error);
});
