import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { expectedStopCost } from "@/lib/risk/expectedStopCost";
import { stopCost } from "@/lib/risk/stopCost";
import { stopCostTable } from "@/lib/view/stopCostTable";

const terms = {
  costPerHour: 1000,
  bufferHours: 2,
  unrecoveredShare: 0.5,
  fixed: 300,
  steps: [
    { afterHours: 24, cost: 5000 },
    { afterHours: 48, cost: 90_000 },
  ],
};

describe("the cost of a stop of a known length", () => {
  it("is the fixed cost alone while the buffer lasts", () => {
    expect(stopCost(2, terms)).toEqual({ fixed: 300, hourly: 0, steps: 0, total: 300 });
  });

  it("grows by what overtime does not recover, and takes a step only beyond its hour (by hand)", () => {
    // 300 + 1000 × 0.5 × (24 − 2) = 11 300; at 24 h the step is not passed yet.
    expect(stopCost(24, terms)).toEqual({ fixed: 300, hourly: 11_000, steps: 0, total: 11_300 });
    expect(stopCost(24.5, terms)).toMatchObject({ hourly: 11_250, steps: 5000, total: 16_550 });
    // 300 + 1000 × 0.5 × 70 + 5 000 + 90 000 = 130 300
    expect(stopCost(72, terms).total).toBe(130_300);
  });

  it("needs no fixed cost and no steps", () => {
    const { fixed: _, steps: __, ...plain } = terms;
    expect(stopCost(4, plain)).toEqual({ fixed: 0, hourly: 1000, steps: 0, total: 1000 });
  });

  it("never falls when a stop lasts longer, and its parts add up", () => {
    const hours = fc.double({ min: 0, max: 500, noNaN: true });
    fc.assert(
      fc.property(hours, hours, (a, b) => {
        const [short, long] = [stopCost(Math.min(a, b), terms), stopCost(Math.max(a, b), terms)];
        return long.total >= short.total && short.fixed + short.hourly + short.steps === short.total;
      }),
    );
  });

  it("is what the mean cost tends to when stops all last alike", () => {
    // A lognormal of nearly no spread around 30 h, away from both steps.
    const restoration = { mu: Math.log(30), sigma: 1e-6 };
    const mean = expectedStopCost({ restoration, delayHours: 0 }, terms);
    expect(mean).toBeCloseTo(stopCost(30, terms).total, 1);
  });

  it.each([
    [-1, {}, "hours must be finite and >= 0"],
    [1, { costPerHour: Number.NaN }, "costPerHour"],
    [1, { unrecoveredShare: 1.2 }, "unrecoveredShare must be in [0, 1]"],
    [1, { fixed: -5 }, "fixed must be finite and >= 0"],
    [99, { steps: [{ afterHours: 1, cost: -1 }] }, "cost of a step"],
  ])("refuses %s h with %o", (hours, wrong, words) => {
    expect(() => stopCost(hours, { ...terms, ...wrong })).toThrow(words);
  });
});

describe("what a stop costs on a line", () => {
  const cost = {
    ...{ perHour: 1000, fixed: null, steps: [{ afterHours: 24, cost: 5000 }] },
    ...{ owner: null, approvedOn: null, validUntil: null, evidence: "assumed" as const },
  };
  const stored = {
    ...{ costPerHour: "1000", costFixed: null, costSteps: [], costMethod: null, costOwner: null },
    ...{ costApprovedOn: null, costValidUntil: null, costEvidence: "assumed" as const },
    ...{ bufferHours: "4", shiftsPerWeek: null },
  };

  it("is told for five lengths, the buffer free and the step in the long ones only", () => {
    const rows = stopCostTable({ cost, stored, unrecoveredShare: 1 });
    expect(rows?.map(({ hours, total }) => [hours, total])).toEqual([
      [1, 0],
      [4, 0],
      [8, 4000],
      [24, 20_000],
      [72, 73_000],
    ]);
  });

  it("is not known without a cost per hour, and takes an unknown buffer as none", () => {
    expect(stopCostTable({ cost: { ...cost, perHour: null }, stored, unrecoveredShare: 1 })).toBeNull();
    const rows = stopCostTable({ cost, stored: { ...stored, bufferHours: null }, unrecoveredShare: 1 });
    expect(rows?.[0]?.total).toBe(1000);
  });
});
