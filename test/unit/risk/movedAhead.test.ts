import { describe, expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput } from "@/lib/risk/evaluation";
import { changedInputs } from "@/lib/risk/moved/changedInputs";
import type { SnapshotInput } from "@/lib/risk/moved/snapshotInput";
import { whatMoved } from "@/lib/risk/whatMoved";
import { smallGroup } from "../../support/smallGroup";

const start: SnapshotInput = { input: smallGroup, assumptions: likelyAssumptions };
const later = (change: Partial<GroupInput>): SnapshotInput => ({
  ...start,
  input: { ...smallGroup, ...change },
});

describe("what is still to come", () => {
  const leaves = [{ on: "2027-03-31", units: 40, kept: true }];
  const plan = later({
    installed: smallGroup.installed.map((row) =>
      row.lineId === "VEL-03" && row.poolId === "oak" ? { ...row, leaves } : row,
    ),
  });
  const arrivals = [{ on: "2026-12-20", pieces: 4, works: 0.9 }];
  const out = later({
    pools: smallGroup.pools.map((one) => (one.id === "oak" ? { ...one, arrivals } : one)),
  });
  test.each([
    ["a planned removal moves with the dates", "dates", plan],
    ["a unit out for repair with the stock", "stock", out],
  ] as const)("%s", (_, step, after) => {
    const { total } = whatMoved(start, after);
    expect(total.change).toBeLessThan(0);
    expect(total.steps[step]).toBe(total.change);
    expect(whatMoved(after, start).total.steps[step]).toBe(-total.change);
  });
  test("is told by pool and line", () => {
    expect(
      changedInputs(start, plan).map(({ fact, lineId, before, after }) => [fact, lineId, before, after]),
    ).toEqual([
      ["leaving", "VEL-03", 0, 40],
      ["leavingKept", "VEL-03", 0, 40],
      ["leavesOn", "VEL-03", null, "2027-03-31"],
    ]);
    expect(
      changedInputs(start, out).map(({ fact, poolId, before, after }) => [fact, poolId, before, after]),
    ).toEqual([
      ["outForRepair", "oak", 0, 4],
      ["backOn", "oak", null, "2026-12-20"],
    ]);
  });
  test("an input frozen before any of it was read gives what it gave", () => {
    const bare = { ...smallGroup, pools: smallGroup.pools.map((one) => ({ ...one, arrivals: [] })) };
    expect(evaluate(bare, likelyAssumptions)).toEqual(evaluate(smallGroup, likelyAssumptions));
  });
});
