import { describe, expect, test } from "vitest";
import { chanceAtLeast, type PoolOnMachines, stopShares } from "@/lib/risk/stopShares";

const byPool = (pools: readonly PoolOnMachines[]) => stopShares(pools).byPool;
const HOURS = 8760;
/** One pool on one machine each; `down` is the share of the time it keeps its machine down. */
const on = (machineId: string, needed: number, down: number): PoolOnMachines => ({
  units: 1,
  machines: [{ standby: { machineId, group: "G", needed }, units: 1 }],
  failureRate: 1,
  hoursDown: down * HOURS,
});

test("none at least is certain, more than there are is impossible", () => {
  expect(chanceAtLeast([0.1, 0.2], 0)).toBe(1);
  expect(chanceAtLeast([0.1, 0.2], 3)).toBe(0);
});

describe("share of the failures that stop the line", () => {
  test("one of two needed: a failure stops it while the other is down", () => {
    expect(byPool([on("a", 1, 0.02), on("b", 1, 0.05)])).toEqual([
      expect.closeTo(0.05, 12),
      expect.closeTo(0.02, 12),
    ]);
  });
  test("two of three needed: one of the other two is down", () => {
    const [share] = byPool([on("a", 2, 0.5), on("b", 2, 0.02), on("c", 2, 0.05)]);
    expect(share).toBeCloseTo(1 - 0.98 * 0.95, 12);
  });
  test("as many needed as there are, or more, is a series: exactly one", () => {
    expect(byPool([on("a", 2, 0.02), on("b", 2, 0.05)])).toEqual([1, 1]);
    expect(byPool([on("a", 3, 0.02), on("b", 3, 0.05)])).toEqual([1, 1]);
  });
  test("units of several pools bring one machine down, and units elsewhere on the line count in full", () => {
    const machine = { machineId: "a", group: "G", needed: 1 };
    const other = { ...machine, machineId: "b" };
    const shares = byPool([
      {
        ...{ units: 10, failureRate: 0.01, hoursDown: 0.1 * HOURS },
        machines: [
          { standby: machine, units: 4 },
          { standby: other, units: 3 },
        ],
      },
      { units: 2, failureRate: 0.05, hoursDown: 0.2 * HOURS, machines: [{ standby: other, units: 2 }] },
    ]);
    const [a, b] = [4 * 0.01 * 0.1, 3 * 0.01 * 0.1 + 2 * 0.05 * 0.2];
    expect(shares[0]).toBeCloseTo((3 * 1 + 4 * b + 3 * a) / 10, 12);
    expect(shares[1]).toBeCloseTo(a, 12);
  });
  test("a machine cannot be down for more than all the time", () => {
    expect(byPool([on("a", 1, 0.1), on("b", 1, 7)])[0]).toBe(1);
  });
  test("where machines of a group name different needs, the largest counts", () => {
    expect(byPool([on("a", 2, 0.1), on("b", 1, 0.1)])).toEqual([1, 1]);
  });
  test("a need below one and a broken chance are refused by name", () => {
    expect(() => byPool([on("a", 0, 0.1)])).toThrow("needed");
    expect(() => byPool([on("a", 1.5, 0.1)])).toThrow("needed");
    expect(() => chanceAtLeast([1.2], 1)).toThrow("chance");
  });
  test("tells of each machine how long it is down and what its failures stop, but of none in series", () => {
    expect(stopShares([on("a", 1, 0.02), on("b", 1, 0.05)]).machines).toEqual([
      { machineId: "a", group: "G", needed: 1, of: 2, down: 0.02, stopShare: expect.closeTo(0.05, 12) },
      { machineId: "b", group: "G", needed: 1, of: 2, down: 0.05, stopShare: expect.closeTo(0.02, 12) },
    ]);
    expect(stopShares([on("a", 2, 0.02), on("b", 2, 0.05)]).machines).toEqual([]);
  });
});
