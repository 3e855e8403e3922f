import { describe, expect, it } from "vitest";
import type { SparesPool } from "@/lib/view/sparesLook";
import {
  depletionDayText,
  gotWorse,
  moveKind,
  orderByWorse,
  pointsText,
  poolMove,
} from "@/lib/view/sparesMoves";
import { familyShares, heldShares } from "@/lib/view/sparesShares";

const pool = (changes: Partial<SparesPool> = {}): SparesPool => ({
  asOf: "2026-11-30",
  ...{
    partId: "p1",
    maker: "Tarnholt Motion",
    number: "TM-HR-010",
    description: "Drive",
    itemClass: "drive",
  },
  ...{ family: { id: "f1", name: "Heron R" }, stage: "buy-window", installed: 140, book: 34, usable: 20 },
  ...{ removalRate: 0.04, removalsPerYear: 5.6, noSpare: { mean: 0.1, low: 0.05, high: 0.2 } },
  ...{ depletionP50: "2028-01-01", depletionP80: "2028-06-01", newRemovals: 0 },
  ...{ repairsOut: 0, repairsOverdue: 0, sites: [] },
  before: { stage: "buy-window", noSpare: 0.1, depletionP50: "2028-01-01", depletionP80: "2028-06-11" },
  ...changes,
});

const before = { stage: "open", noSpare: 0.1, depletionP50: null, depletionP80: null } as const;

describe("what moved in a pool", () => {
  it("is the change of its chance and of its P80 day, with what is on record", () => {
    const moved = poolMove(
      pool({ noSpare: { mean: 0.14, low: 0, high: 1 }, newRemovals: 1, repairsOverdue: 2 }),
    );
    expect(moved.noSpare).toBeCloseTo(0.04, 12);
    expect(moved.depletionDays).toBe(-10);
    expect(moved.reasons).toEqual(["1 removal this week", "2 repairs overdue"]);
    expect(poolMove(pool({ before })).reasons).toEqual(["Supply stage changed"]);
  });

  it("has no days where a day is open, or the shelf is empty already", () => {
    expect(poolMove(pool({ before })).depletionDays).toBeNull();
    const empty = pool({ depletionP80: "2026-11-30" });
    expect(poolMove(empty).depletionDays).toBeNull();
    expect(depletionDayText(empty.depletionP80, empty)).toBe("empty now");
    expect(depletionDayText(null, empty)).toBe("beyond 5 years");
  });

  it("is new without a week before, and then neither better nor worse", () => {
    const fresh = pool({ before: null });
    expect(poolMove(fresh)).toMatchObject({ noSpare: null, reasons: ["New in the records"] });
    expect(gotWorse(fresh)).toBe(false);
  });

  it("is said in points with its sign", () => {
    expect([pointsText(0.032), pointsText(-0.004)]).toEqual(["+3.2 points", "\u22120.4 points"]);
    expect([0.01, -0.01, 0.0001].map(moveKind)).toEqual(["worse", "better", "same"]);
  });
});

describe("the order of the weekly look", () => {
  it("puts the largest gain first, rounding aside, then the highest chance", () => {
    const at = (number: string, was: number, mean: number) =>
      pool({ number, noSpare: { mean, low: 0, high: 1 }, before: { ...before, noSpare: was } });
    const pools = [at("A", 0.1, 0.1), at("B", 0.5, 0.5001), at("C", 0.1, 0.2), at("D", 0.9, 0.5)];
    expect(orderByWorse(pools).map(({ number }) => number)).toEqual(["C", "B", "A", "D"]);
    expect(pools.filter(gotWorse).map(({ number }) => number)).toEqual(["C"]);
  });
});

describe("the held share", () => {
  const site = (siteCode: string, units: number, book: number) => ({ siteCode, units, book, usable: book });

  it("is share of spares over share of removals", () => {
    const [kar, ost] = heldShares([
      { installed: 560, book: 66, removalRate: 0.041, sites: [site("OST", 100, 41), site("KAR", 90, 3)] },
    ]);
    expect(ost).toMatchObject({ siteCode: "OST", hoards: true });
    expect(ost?.index).toBeCloseTo(41 / 66 / (100 / 560), 12);
    expect(ost?.excess).toBeCloseTo(41 - (66 * 100) / 560, 12);
    expect(kar).toMatchObject({ siteCode: "KAR", hoards: false });
  });

  it("weighs the units of a family by the removal rate of their part", () => {
    const shares = heldShares([
      { installed: 10, book: 4, removalRate: 0.3, sites: [site("A", 10, 2)] },
      { installed: 10, book: 4, removalRate: 0.1, sites: [site("B", 10, 6)] },
    ]);
    expect(shares.map((share) => share.ofDemand?.toFixed(6))).toEqual(["0.750000", "0.250000"]);
    expect(shares.map((share) => share.ofUnits)).toEqual([0.5, 0.5]);
  });

  it("marks spares where nothing is installed, and is unknown without spares or demand", () => {
    const pools = [{ installed: 5, book: 2, removalRate: 0.1, sites: [site("A", 0, 2), site("B", 5, 0)] }];
    expect(heldShares(pools)).toMatchObject([
      { index: null, hoards: true },
      { index: 0, hoards: false },
    ]);
    const none = [{ installed: 5, book: 0, removalRate: 0.1, sites: [site("B", 5, 0)] }];
    expect(heldShares(none)).toMatchObject([{ ofSpares: null, index: null, hoards: false }]);
  });

  it("leads with the family and site that hold most beyond their share", () => {
    const rows = familyShares([
      pool({ sites: [site("VEL", 70, 4), site("OST", 70, 30)] }),
      pool({
        ...{ partId: "p2", family: { id: "f2", name: "Oak" }, installed: 10, book: 2 },
        sites: [site("VEL", 1, 2), site("OST", 9, 0)],
      }),
      pool({ partId: "p3", family: null, sites: [site("VEL", 1, 99)] }),
    ]);
    expect(rows.slice(0, 2).map((row) => [row.family, row.siteCode])).toEqual([
      ["Heron R", "OST"],
      ["Oak", "VEL"],
    ]);
    expect(rows).toHaveLength(4);
  });
});
