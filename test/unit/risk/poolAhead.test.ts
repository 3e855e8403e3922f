import { describe, expect, test } from "vitest";
import { yearsBetween } from "@/lib/kernel/isoDate";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type {
  ArrivalInput,
  GroupInput,
  InstalledInput,
  LeavingInput,
  PoolInput,
} from "@/lib/risk/evaluation";
import { leavingByPool } from "@/lib/risk/leavingByPool";
import { supplyOutlook } from "@/lib/risk/supplyOutlook";
import { withLeaves } from "@/lib/risk/withLeaves";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import { noSpareChance } from "@/lib/spares/noSpareChance";
import { stockChance } from "@/lib/spares/stockChance";
import { oldDates, pool, smallGroup } from "../../support/smallGroup";

const { asOf } = smallGroup;
const leave = (on: string, units: number, kept = true): LeavingInput => ({ on, units, kept });
const arrival = (on: string, pieces: number, works: number | null = 0.6): ArrivalInput => ({
  on,
  pieces,
  works,
});

/** The small group with its old drive, of which 48 are at VEL-03 and 42 at TAD-01, changed. */
function oakWith(leaves: readonly LeavingInput[], change: Partial<PoolInput> = {}) {
  const input: GroupInput = {
    ...smallGroup,
    pools: smallGroup.pools.map((one) => (one.id === "oak" ? { ...one, ...change } : one)),
    installed: smallGroup.installed.map((row) =>
      row.poolId === "oak" && row.lineId === "VEL-03" ? { ...row, leaves } : row,
    ),
  };
  const [oak] = evaluate(input, likelyAssumptions).pools;
  if (!oak) throw new Error("no pool");
  return oak;
}

describe("the base declines as units leave", () => {
  test("96 axes that leave in thirds after one, two and three years have 192 unit-years ahead, not 288", () => {
    const leaving = ["2027-11-30", "2028-11-30", "2029-11-30"].map((on) => leave(on, 32, false));
    const outlook = { pool: pool("oak", { dates: oldDates }), stage: "own-stock", asOf } as const;
    const [only] = supplyOutlook({ ...outlook, units: 96, leaving }, likelyAssumptions);
    if (!only) throw new Error("no case");
    expect(unreplenishedExposure(only.supply, 4)).toBeCloseTo(192, 0);
    const [staying] = supplyOutlook({ ...outlook, units: 96, leaving: [] }, likelyAssumptions);
    expect(staying && unreplenishedExposure(staying.supply, 3)).toBe(288);
  });
  test("scrapped units only stop asking: the chance is the closed form over what is left", () => {
    const oak = oakWith([leave("2027-05-31", 48, false)]);
    const exposure = 90 * yearsBetween(asOf, "2027-05-31") + 42 * (1 - yearsBetween(asOf, "2027-05-31"));
    const shelf = stockChance([{ count: 3, works: 0.97 }]);
    const { a, b } = oak.removal;
    expect(oak.noSpareByMonth[12]?.mean).toBeCloseTo(noSpareChance({ a, b, exposure }, shelf), 10);
    expect([oak.installed, oak.leaving, oak.released]).toEqual([90, 48, 0]);
  });
  test("a line gives up no more than it has, and nothing on a day that has passed", () => {
    const installed: InstalledInput[] = [
      { lineId: "VEL-03", poolId: "oak", units: 10, leaves: [leave("2027-03-01", 8)] },
      {
        ...{ lineId: "VEL-03", poolId: "oak", units: 5 },
        leaves: [leave("2027-01-01", 9), leave("2026-11-29", 4)],
      },
      { lineId: "TAD-01", poolId: "oak", units: 2, leaves: [leave("2027-02-01", 3, false)] },
    ];
    expect(leavingByPool({ ...smallGroup, installed }).get("oak")).toEqual([
      leave("2027-01-01", 9),
      leave("2027-02-01", 2, false),
      leave("2027-03-01", 6),
    ]);
    const half = [{ lineId: "VEL-03", poolId: "oak", units: 10, leaves: [leave("2027-03-01", 1.5)] }];
    expect(() => leavingByPool({ ...smallGroup, installed: half })).toThrow(
      "units of leaves must be a whole number >= 0, got 1.5",
    );
  });
  test("leaves go with the first row of their line and part; those of nothing installed are dropped", () => {
    const rows = [
      { lineId: "A", poolId: "oak", units: 3, leaves: [leave("2027-01-01", 9)] },
      { lineId: "A", poolId: "oak", units: 4 },
    ];
    const place = { lineId: "A", poolId: "oak", ...leave("2027-06-01", 2) };
    expect(withLeaves(rows, [place, { ...place, lineId: "B" }])).toEqual([
      { lineId: "A", poolId: "oak", units: 3, leaves: [leave("2027-06-01", 2)] },
      { lineId: "A", poolId: "oak", units: 4 },
    ]);
  });
});

describe("pieces still to come", () => {
  test("kept units are expected on the shelf by their test, and the depletion day follows", () => {
    const scrapped = oakWith([leave("2027-02-28", 20, false)]);
    const kept = oakWith([leave("2027-02-28", 20)]);
    expect(kept.released).toBeCloseTo(20 * likelyAssumptions.releaseWorks, 12);
    expect(kept.usable).toBe(scrapped.usable);
    expect(kept.noSpareByMonth[2]?.mean).toBeCloseTo(scrapped.noSpareByMonth[2]?.mean ?? Number.NaN, 6);
    expect(kept.noSpareByMonth[4]?.mean).toBeLessThan((scrapped.noSpareByMonth[4]?.mean ?? 0) / 10);
    // Beyond the five years computed.
    expect([scrapped.depletionP80 === null, kept.depletionP80]).toEqual([false, null]);
    expect(kept.assumed).toContain(
      "20 units to be kept at retrofits: each taken to pass its test with chance 0.65.",
    );
  });
  test("beyond the horizon of the score they count for the depletion day and not for the year", () => {
    const far = oakWith([leave("2028-06-30", 20)]);
    expect([far.leaving, far.released]).toEqual([0, 0]);
    expect(far.noSpareByMonth[24]?.mean).toBeLessThan(oakWith([]).noSpareByMonth[24]?.mean ?? 0);
  });
  test("a unit due back counts from its day, an overdue one a turn-around from now", () => {
    const due = oakWith([], { arrivals: [arrival("2027-01-15", 2)] });
    expect(due.arrivals).toBeCloseTo(1.2, 12);
    const repair = { turnaroundYears: 0.2, yield: 0.6 };
    const overdue = oakWith([], { repair, arrivals: [arrival("2026-11-30", 2)] });
    const redated = oakWith([], { repair, arrivals: [arrival("2027-02-11", 2)] });
    expect(overdue.noSpareByMonth[2]?.mean).toBe(oakWith([], { repair }).noSpareByMonth[2]?.mean);
    expect(overdue.noSpareByMonth[3]?.mean).toBeCloseTo(redated.noSpareByMonth[3]?.mean ?? Number.NaN, 3);
    expect(overdue.assumed).toContain("2 units due back from repair and not back: taken to come in 73 days.");
  });
  test("without a repair yield of its part the assumption stands, and is told", () => {
    const oak = oakWith([], { arrivals: [arrival("2027-01-15", 3, null)] });
    expect(oak.arrivals).toBeCloseTo(3 * likelyAssumptions.repairWorks, 12);
    expect(oak.assumed).toContain(
      "Repair yield not recorded: 3 units out taken to come back working with chance 0.6.",
    );
  });
});
