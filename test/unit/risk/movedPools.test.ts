import { describe, expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import type { GroupInput } from "@/lib/risk/evaluation";
import { evaluateWay } from "@/lib/risk/moved/evaluateWay";
import { movedPools } from "@/lib/risk/moved/movedPools";
import { MOVED_STEPS } from "@/lib/risk/moved/snapshotInput";
import { whatMoved } from "@/lib/risk/whatMoved";
import { lot, smallGroup } from "@/test/support/smallGroup";

const of = (input: GroupInput) => ({ input, assumptions: likelyAssumptions });
const poolWith = (id: string, stock: GroupInput["pools"][number]["stock"]) =>
  smallGroup.pools.map((pool) => (pool.id === id ? { ...pool, stock } : pool));
const velmark = { id: "VEL", lineIds: new Set(["VEL-03", "VEL-04"]) };

/** A piece fewer at VEL, and two more failures there. */
const later: GroupInput = {
  ...smallGroup,
  pools: poolWith("oak", [lot("VEL", 1), lot("OST", 1)]),
  experience: smallGroup.experience.map((seen) =>
    seen.poolId === "oak" && seen.siteId === "VEL"
      ? { ...seen, removals: seen.removals + 2, failures: seen.failures + 2 }
      : seen,
  ),
};
const moved = movedPools(evaluateWay(of(smallGroup), of(later)), velmark);
const oak = moved.find(({ poolId }) => poolId === "oak");

describe("what moved the pools of a site", () => {
  test("names the steps that moved a part, and no other", () => {
    expect(oak?.units).toBe(48);
    expect(oak?.usable.change).toBeLessThan(0);
    expect(oak?.usable.steps.events).toBe(0);
    expect(oak?.usable.steps.stock).toBe(oak?.usable.change);
    expect(oak?.noSpare.steps.events).toBeGreaterThan(0);
    expect(oak?.noSpare.steps.stock).toBeGreaterThan(0);
    for (const step of ["corrections", "dates", "assumptions", "clock"] as const)
      expect(oak?.loss.steps[step]).toBe(0);
  });

  test("adds up: steps to the change, and change to the ends, in whole units", () => {
    for (const pool of moved)
      for (const value of [pool.noSpare, pool.loss, pool.usable]) {
        const sum = MOVED_STEPS.reduce((total, step) => total + value.steps[step], 0);
        expect(sum).toBe(value.change);
        expect((value.after ?? 0) - (value.before ?? 0)).toBe(value.change);
        expect(Number.isInteger(value.change)).toBe(true);
      }
  });

  test("splits the change of the site's lines, which is worked out another way", () => {
    const lines = whatMoved(of(smallGroup), of(later)).lines.filter(({ siteId }) => siteId === "VEL");
    const byLine = lines.reduce((sum, { change }) => sum + change, 0);
    const byPool = moved.reduce((sum, { loss }) => sum + loss.change, 0);
    expect(byLine).toBeGreaterThan(100);
    // Each pool and each line is rounded for itself.
    expect(Math.abs(byPool - byLine)).toBeLessThanOrEqual(moved.length + lines.length);
  });

  test("leaves out what is installed elsewhere only", () => {
    expect(moved.map(({ poolId }) => poolId).sort()).toEqual(["heron", "oak"]);
    const tad = movedPools(evaluateWay(of(smallGroup), of(later)), {
      id: "TAD",
      lineIds: new Set(["TAD-01"]),
    });
    expect(tad.map(({ poolId }) => poolId).sort()).toEqual(["oak", "unidentified:drive"]);
    expect(tad.find(({ poolId }) => poolId === "oak")?.usable.change).toBe(0);
  });

  test("says a loss without a cost per hour is not known, not zero", () => {
    const free = { ...smallGroup, lines: smallGroup.lines.map((line) => ({ ...line, costPerHour: null })) };
    const [pool] = movedPools(evaluateWay(of(free), of(free)), velmark);
    expect(pool?.loss).toMatchObject({ before: null, after: null, change: 0 });
  });
});
