import { describe, expect, test } from "vitest";
import { yearsBetween } from "@/lib/kernel/isoDate";
import type { LifecycleDates } from "@/lib/lifecycle/supplyStage";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import { supplyOutlook } from "@/lib/risk/supplyOutlook";
import { noSpareChance } from "@/lib/spares/noSpareChance";
import { stockChance } from "@/lib/spares/stockChance";
import { noDates, oldDates, pool, smallGroup } from "../../support/smallGroup";

const asOf = "2026-11-30";
const repair = { turnaroundYears: 0.1, yield: 0.6 };

describe("how a pool is replenished", () => {
  const outlook = (
    part: Parameters<typeof pool>[1],
    stage: "open" | "undated" | "own-stock" | "repair-fed",
  ) => supplyOutlook({ pool: pool("a", part), stage, units: 10, leaving: [], asOf }, likelyAssumptions);
  test("an open part is ordered for ever at its lead time", () => {
    expect(outlook({}, "open")).toEqual([
      {
        chance: 1,
        supply: {
          installed: [{ from: 0, to: null, units: 10 }],
          leadTime: 0.2,
          lastOrderAt: null,
          repair: null,
        },
      },
    ]);
  });
  test("a lead time not known takes the class", () => {
    expect(outlook({ leadYears: null }, "open")[0]?.supply.leadTime).toBe(
      likelyAssumptions.classes.drive.leadYears,
    );
  });
  test("a last order in the past stays in the past", () => {
    expect(outlook({ dates: oldDates }, "own-stock")[0]?.supply.lastOrderAt).toBeCloseTo(
      yearsBetween(asOf, "2021-06-30"),
      12,
    );
  });
  test("repair ends on its day, with the last shipment when that is all that is known, or never", () => {
    const until = (dates: LifecycleDates) =>
      outlook({ dates, repair }, "repair-fed")[0]?.supply.repair?.untilAt;
    expect(until(oldDates)).toBeCloseTo(yearsBetween(asOf, "2025-12-31"), 12);
    expect(until({ ...oldDates, repairUntilOn: null })).toBeCloseTo(yearsBetween(asOf, "2022-06-30"), 12);
    expect(until(noDates)).toBeNull();
  });
  test("an undated part is orderable or not, by the stated chance; a passed last order settles it", () => {
    const cases = outlook({ dates: { ...noDates, checkedOn: null } }, "undated");
    expect(cases.map(({ chance }) => chance)).toEqual([0.5, 0.5]);
    expect(cases[0]?.supply.lastOrderAt).toBeNull();
    expect(cases[1]?.supply.lastOrderAt).toBeLessThan(0);
    expect(outlook({ dates: { ...oldDates, checkedOn: "2020-01-01" } }, "undated")).toHaveLength(1);
  });
});

test("the mean over the horizon is that of the trapezoids under the monthly chances", () => {
  const [oak] = evaluate(smallGroup, likelyAssumptions).pools;
  const months = oak?.noSpareByMonth.slice(0, 13).map(({ mean }) => mean) ?? [];
  const inner = months.slice(1, -1).reduce((sum, x) => sum + x, 0);
  expect(oak?.noSpare.mean).toBeCloseTo((inner + ((months[0] ?? 0) + (months[12] ?? 0)) / 2) / 12, 12);
  expect(oak?.noSpare.mean).toBeGreaterThan((months[0] ?? 0) + 0.1);
});

test("the span of the no-spare chance takes the rate at its 5 % and 95 % points", () => {
  const [oak] = evaluate(smallGroup, likelyAssumptions).pools;
  if (!oak) throw new Error("no pool");
  const shelf = stockChance([{ count: 3, works: 0.97 }]);
  const month = oak.noSpareByMonth[6];
  const exposure = 90 * 0.5;
  expect(month?.mean).toBeCloseTo(noSpareChance({ a: oak.removal.a, b: oak.removal.b, exposure }, shelf), 10);
  expect(month?.low).toBeCloseTo(noSpareChance({ rate: oak.removal.low, exposure }, shelf), 10);
  expect(month?.high).toBeCloseTo(noSpareChance({ rate: oak.removal.high, exposure }, shelf), 10);
});
