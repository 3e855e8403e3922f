import { describe, expect, it } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, GroupResult, PoolInput } from "@/lib/risk/evaluation";
import { lineArithmetic } from "@/lib/view/lineArithmetic";
import type { ArithmeticStep } from "@/lib/view/lineArithmeticStep";
import { lineDepth } from "@/lib/view/lineDepth";
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

const unknownLot = { siteId: "here", state: "usable", quantity: null, lastPoweredOn: null } as const;

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
  const none = { book: 0, usable: 0 };
  return {
    ...own,
    label: poolId,
    itemClass,
    part: null,
    pool: poolId === "drive" ? { ...pool, here: pool.usableBySite.here ?? none, elsewhere: none } : null,
  };
}

const result = evaluate(input, likelyAssumptions);
const line = result.lines[0];
if (!line) throw new Error("no line");
const terms = {
  costPerHour: 2345.67,
  bufferHours: 0.75,
  unrecoveredShare: 0.8,
  fixedCost: null,
  costSteps: [],
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

describe("a line with cost steps whose machines stand in for each other", () => {
  const beyond = {
    fixedCost: 850.5,
    costSteps: [
      { afterHours: 24, cost: 12_000 },
      { afterHours: 72, cost: 90_000 },
    ],
  };
  const machines = ["M1", "M2", "M3"];
  const deep: GroupInput = {
    ...input,
    lines: input.lines.map((one) => (one.id === "line" ? { ...one, ...beyond } : one)),
    installed: input.installed.flatMap((row) =>
      row.lineId !== "line" || row.poolId !== "drive"
        ? [row]
        : machines.map((machineId) => ({
            ...{ ...row, units: row.units / machines.length },
            standby: { machineId, group: "formers", needed: 2 },
          })),
    ),
    pools: input.pools.map((one) =>
      one.id === "drive" ? { ...one, stock: [...one.stock, unknownLot] } : one,
    ),
  };
  const result = evaluate(deep, likelyAssumptions);
  const [own] = result.lines;
  if (!own) throw new Error("no line");
  const deepTerms = {
    ...terms,
    ...beyond,
    lineLoss: own.stopLoss?.mean ?? null,
    lineScore: own.score,
  };
  const drive = driverOf(result, "drive");
  const steps = lineArithmetic(drive, deepTerms);
  const stepOf = (title: string) => {
    const step = steps.find((one) => one.title === title);
    if (!step) throw new Error(`no step ${title}`);
    return step;
  };

  it("multiplies out to what it shows", () => {
    for (const step of steps.filter(({ calculation }) => calculation.length > 0))
      expect(workOut(step) / step.result.value, step.title).toBeCloseTo(1, 12);
  });
  it("names the fixed cost, each step with its chance, and the share that stops the line", () => {
    const named = stepOf("Cost of a stop without a spare").calculation.flatMap((part) =>
      typeof part === "string" ? [] : [part.name],
    );
    expect(named).toEqual([
      ...["EUR fixed", "mean hours beyond the buffer", "EUR an hour", "share overtime cannot recover"],
      ...["EUR step at 24 h", "chance to pass it", "EUR step at 72 h", "chance to pass it"],
    ]);
    expect(drive.stopShare).toBeLessThan(0.5);
    expect(stepOf("Failures that stop the line").result.value).toBeCloseTo(
      drive.failuresPerYear * drive.stopShare,
      12,
    );
  });
  it("opens what comes from not knowing, part by part and for the line", () => {
    expect(stepOf("Of it, what comes from not knowing").result.value).toBe(drive.unknownLoss);
    const drivers = [drive, driverOf(result, "unidentified:motor")];
    const depth = lineDepth({ result: own, drivers, assumptions: likelyAssumptions });
    expect(depth.map((step) => step.result.value)).toEqual([
      ...(own.standIns ?? []).map(({ stopShare }) => stopShare),
      own.unknownLoss,
      own.horizonLoss?.loss,
    ]);
    expect(depth.map((step) => step.title).slice(0, 3)).toEqual(
      machines.map((machine) => `Failures on ${machine} that stop the line`),
    );
    for (const step of depth) expect(workOut(step) / step.result.value, step.title).toBeCloseTo(1, 12);
  });
  it("says so when nothing is unknown, and nothing at all without money", () => {
    const { standIns: _, ...plain } = own;
    const known = { ...plain, unknownLoss: 0 };
    const [step] = lineDepth({ result: known, drivers: [], assumptions: likelyAssumptions });
    expect(step?.note).toContain("Nothing unknown");
    const none = { ...plain, unknownLoss: null, horizonLoss: null };
    expect(lineDepth({ result: none, drivers: [], assumptions: likelyAssumptions })).toEqual([]);
  });
});
