import { describe, expect, it } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, GroupResult, PoolInput } from "@/lib/risk/evaluation";
import { lineArithmetic } from "@/lib/view/lineArithmetic";
import type { ArithmeticStep } from "@/lib/view/lineArithmeticStep";
import type { Driver } from "@/lib/view/lineDossier";

const undated = {
  noticeOn: null,
  lastOrderOn: null,
  lastShipOn: null,
  repairUntilOn: null,
  orderByOn: null,
  checkedOn: null,
};

const drive: PoolInput = {
  id: "drive",
  itemClass: "drive",
  familyId: "ring",
  dates: { ...undated, lastOrderOn: "2021-06-30", lastShipOn: "2022-06-30", checkedOn: "2026-10-01" },
  leadYears: 0.2,
  repair: null,
  stock: [
    { siteId: "here", state: "usable", quantity: 3, lastPoweredOn: "2022-01-01" },
    { siteId: "there", state: "usable", quantity: 1, lastPoweredOn: null },
    { siteId: "here", state: "on_hold", quantity: 2, lastPoweredOn: null },
  ],
};

const unread: PoolInput = {
  ...drive,
  id: "unidentified:motor",
  itemClass: "motor",
  familyId: null,
  dates: undated,
  stock: [],
};

const input: GroupInput = {
  asOf: "2026-11-30",
  lines: [
    {
      id: "line",
      code: "L1",
      siteId: "here",
      costPerHour: 2345.67,
      costEvidence: "documented",
      bufferHours: 0.75,
      unrecoveredShare: 0.8,
    },
    {
      id: "other",
      code: "L2",
      siteId: "there",
      costPerHour: 900,
      costEvidence: "assumed",
      bufferHours: null,
      unrecoveredShare: 1,
    },
  ],
  pools: [drive, unread],
  installed: [
    { lineId: "line", poolId: "drive", units: 48 },
    { lineId: "line", poolId: "unidentified:motor", units: 4 },
    { lineId: "other", poolId: "drive", units: 30 },
  ],
  experience: [
    { poolId: "drive", siteId: "here", removals: 13, failures: 9, unitYears: 231.5 },
    { poolId: "drive", siteId: "there", removals: 4, failures: 3, unitYears: 149.25 },
  ],
  restorations: [],
};

function driverOf(result: GroupResult, poolId: string): Driver {
  const own = result.lines[0]?.pools.find((pool) => pool.poolId === poolId);
  const pool = result.pools.find((one) => one.poolId === poolId);
  if (!own || !pool) throw new Error(`no pool ${poolId}`);
  const itemClass = poolId === "drive" ? "drive" : "motor";
  const seen = input.experience.find((one) => one.poolId === poolId && one.siteId === "here");
  const none = { book: 0, usable: 0 };
  return {
    ...own,
    label: poolId,
    itemClass,
    part: null,
    pool: poolId === "drive" ? { ...pool, here: pool.usableBySite.here ?? none, elsewhere: none } : null,
    atSite: seen ?? { failures: 0, removals: 0, unitYears: 0 },
  };
}

const result = evaluate(input, likelyAssumptions);
const line = result.lines[0];
if (!line) throw new Error("no line");
const terms = {
  costPerHour: 2345.67,
  bufferHours: 0.75,
  unrecoveredShare: 0.8,
  lineLoss: line.stopLoss?.mean ?? null,
  lineScore: line.score,
  assumptions: likelyAssumptions,
};

/** Works a printed calculation out as a reader with a pocket calculator would. */
function workOut({ calculation }: ArithmeticStep): number {
  const text = calculation
    .map((part) => (typeof part === "string" ? part : `(${part.value})`))
    .join(" ")
    .replaceAll("×", "*")
    .replaceAll("÷", "/")
    .replaceAll("−", "-");
  return Number(new Function(`return ${text}`)());
}

describe("the arithmetic of a part on a line", () => {
  it.each(["drive", "unidentified:motor"])("multiplies out to what it shows, for %s", (poolId) => {
    const steps = lineArithmetic(driverOf(result, poolId), terms).filter(
      (step) => step.calculation.length > 0,
    );
    expect(steps.length).toBeGreaterThan(6);
    for (const step of steps) expect(workOut(step) / step.result.value, step.title).toBeCloseTo(1, 12);
  });

  it("hands each result on to the steps that use it", () => {
    const known = new Map<string, number>();
    for (const step of lineArithmetic(driverOf(result, "drive"), terms)) {
      const used = step.calculation.filter((part) => typeof part !== "string");
      for (const { name, unit, value } of used)
        expect(value, `${name} in ${step.title}`).toBeCloseTo(known.get(`${name} ${unit}`) ?? value, 12);
      known.set(`${step.result.name} ${step.result.unit}`, step.result.value);
    }
    expect([...known.keys()]).toContain("site failure rate per unit-year");
  });

  it("ends in the losses that make up the line", () => {
    const sums = ["drive", "unidentified:motor"].map(
      (poolId) =>
        lineArithmetic(driverOf(result, poolId), terms).find((step) => step.result.name === "stop loss")
          ?.result.value ?? Number.NaN,
    );
    expect(sums.reduce((a, b) => a + b, 0)).toBeCloseTo(line.stopLoss?.mean ?? Number.NaN, 6);
  });

  it("says nothing of money without a cost per hour", () => {
    const driver = {
      ...driverOf(result, "drive"),
      ...{ costWithSpare: null, costWithoutSpare: null, baseLoss: null, shortageLoss: null },
    };
    const steps = lineArithmetic(driver, { ...terms, costPerHour: null, lineLoss: null });
    expect(steps.filter((step) => step.result.unit.includes("EUR"))).toEqual([]);
    expect(steps.some((step) => step.result.name === "score points")).toBe(true);
  });
});
