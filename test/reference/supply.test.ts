import { describe, expect, test } from "vitest";
import { addDays, addMonths } from "@/lib/kernel/isoDate";
import { type LifecycleDates, supplyStage } from "@/lib/lifecycle/supplyStage";
import { lastBuy } from "@/lib/spares/lastBuy";

describe("notice + 6 months to the last order, + 12 to the last shipment (JESD48 practice, a maker's policy)", () => {
  const noticeOn = "2026-03-31";
  const dates: LifecycleDates = {
    noticeOn,
    lastOrderOn: addMonths(noticeOn, 6),
    lastShipOn: addMonths(noticeOn, 12),
    ...{ repairUntilOn: null, orderByOn: null, checkedOn: noticeOn },
  };
  test("falls on the last day of a shorter month", () => {
    expect(dates).toMatchObject({ lastOrderOn: "2026-09-30", lastShipOn: "2027-03-31" });
  });
  test.each([
    ["2026-03-31", "buy-window"],
    ["2026-09-30", "buy-window"],
    ["2026-10-01", "orders-shut"],
    ["2027-03-31", "orders-shut"],
    ["2027-04-01", "own-stock"],
  ])("on %s it is %s", (day, stage) => {
    expect(supplyStage(dates, day)).toBe(stage);
  });
  test("the notice is not known the day before it is read", () => {
    expect(supplyStage(dates, addDays(noticeOn, -1))).toBe("undated");
  });
});

test("unknown availability is never available (teaching of SD-22, from memory)", () => {
  const nothing: LifecycleDates = {
    ...{ noticeOn: null, lastOrderOn: null, lastShipOn: null },
    ...{ repairUntilOn: null, orderByOn: null, checkedOn: null },
  };
  expect(supplyStage(nothing, "2026-11-30")).toBe("undated");
});

test("a part whose demand ends or is covered by stock needs no buy: obsolete is an input, not a conclusion", () => {
  const costs = { underCost: 200_000, overCost: 2000 };
  expect(lastBuy({ a: 4, b: 100, exposure: 0, usable: 0, ...costs }).quantity).toBe(0);
  expect(lastBuy({ a: 4, b: 100, exposure: 45, usable: 12, ...costs }).quantity).toBe(0);
  expect(lastBuy({ a: 4, b: 100, exposure: 45, usable: 0, ...costs }).quantity).toBeGreaterThan(0);
});
