import { describe, expect, test } from "vitest";
import {
  type LifecycleDates,
  SUPPLY_STAGES,
  type SupplyStage,
  supplyStage,
} from "@/lib/lifecycle/supplyStage";

const asOf = "2026-11-30";
const unknown: LifecycleDates = {
  noticeOn: null,
  lastOrderOn: null,
  lastShipOn: null,
  repairUntilOn: null,
  orderByOn: null,
  checkedOn: "2026-10-01",
};
const full: LifecycleDates = {
  noticeOn: "2026-10-30",
  lastOrderOn: "2027-04-30",
  lastShipOn: "2027-10-29",
  repairUntilOn: "2031-12-31",
  orderByOn: "2027-02-15",
  checkedOn: "2026-11-01",
};

describe("a part with all dates walks through the stages, each named day still inside", () => {
  test.each<[string, SupplyStage]>([
    ["2026-11-01", "buy-window"],
    ["2027-02-15", "buy-window"],
    ["2027-02-16", "closing"],
    ["2027-04-30", "closing"],
    ["2027-05-01", "orders-shut"],
    ["2027-10-29", "orders-shut"],
    ["2027-10-30", "repair-fed"],
    ["2028-11-01", "repair-fed"],
    ["2028-11-02", "undated"],
  ])("on %s it is %s", (day, stage) => {
    expect(supplyStage(full, day)).toBe(stage);
  });
  test.each<[string, SupplyStage]>([
    ["2031-12-31", "repair-fed"],
    ["2032-01-01", "own-stock"],
  ])("read again in time, on %s it is %s", (day, stage) => {
    expect(supplyStage({ ...full, checkedOn: "2031-06-01" }, day)).toBe(stage);
  });
});

describe("undated", () => {
  test("nothing sourced says nothing, whatever dates are written down", () => {
    expect(supplyStage({ ...full, checkedOn: null }, asOf)).toBe("undated");
  });
  test("a source is good for 24 months to the day", () => {
    expect(supplyStage({ ...unknown, checkedOn: "2024-11-30" }, asOf)).toBe("open");
    expect(supplyStage({ ...unknown, checkedOn: "2024-11-29" }, asOf)).toBe("undated");
  });
  test("a source read later was not known on the day", () => {
    expect(supplyStage({ ...unknown, checkedOn: "2026-12-01" }, asOf)).toBe("undated");
    expect(supplyStage({ ...unknown, checkedOn: asOf }, asOf)).toBe("open");
  });
});

describe("before the last order", () => {
  test("sourced and no notice is open; a notice of tomorrow is not given yet", () => {
    expect(supplyStage(unknown, asOf)).toBe("open");
    expect(supplyStage({ ...unknown, noticeOn: "2026-12-01" }, asOf)).toBe("open");
  });
  test("a notice counts from its day, without a last order date it stays in hand", () => {
    expect(supplyStage({ ...unknown, noticeOn: asOf }, asOf)).toBe("notice");
  });
  test("the window opens twelve months before the last order, to the day", () => {
    const noticed = { ...unknown, noticeOn: "2026-01-01" };
    expect(supplyStage({ ...noticed, lastOrderOn: "2027-11-30" }, asOf)).toBe("buy-window");
    expect(supplyStage({ ...noticed, lastOrderOn: "2027-12-01" }, asOf)).toBe("notice");
  });
  test("a last order date without a notice date counts as announced", () => {
    expect(supplyStage({ ...unknown, lastOrderOn: "2027-04-30" }, asOf)).toBe("buy-window");
  });
  test("a passed order-by day means closing, however far the last order is", () => {
    const dates = { ...unknown, noticeOn: "2026-01-01", orderByOn: "2026-11-29" };
    expect(supplyStage({ ...dates, lastOrderOn: "2027-04-30" }, asOf)).toBe("closing");
    expect(supplyStage({ ...dates, lastOrderOn: "2028-04-30" }, asOf)).toBe("closing");
    expect(supplyStage({ ...dates, lastOrderOn: "2027-04-30", orderByOn: asOf }, asOf)).toBe("buy-window");
  });
  test("on the last order day an order still goes", () => {
    expect(supplyStage({ ...unknown, lastOrderOn: asOf }, asOf)).toBe("buy-window");
  });
});

describe("after the last order", () => {
  const shut = { ...unknown, lastOrderOn: "2026-06-30" };
  test("without a ship date the last order stands for it", () => {
    expect(supplyStage(shut, asOf)).toBe("own-stock");
    expect(supplyStage({ ...shut, repairUntilOn: "2027-09-30" }, asOf)).toBe("repair-fed");
  });
  test("no repair known after the last shipment leaves the own stock", () => {
    expect(supplyStage({ ...shut, lastShipOn: "2026-11-29" }, asOf)).toBe("own-stock");
    expect(supplyStage({ ...shut, lastShipOn: asOf }, asOf)).toBe("orders-shut");
  });
  test("a passed ship date alone shuts orders", () => {
    expect(supplyStage({ ...unknown, lastShipOn: "2026-11-29" }, asOf)).toBe("own-stock");
    expect(supplyStage({ ...unknown, lastShipOn: "2026-12-01" }, asOf)).toBe("open");
  });
});

test("time alone never takes a freshly read part back to an easier stage", () => {
  const rank = (day: string) => SUPPLY_STAGES.indexOf(supplyStage({ ...full, checkedOn: day }, day));
  const days = ["2026-10-29", "2026-10-30", "2027-02-16", "2027-05-01", "2027-10-30", "2032-01-01"];
  const ranks = days.map(rank);
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  expect(new Set(ranks).size).toBe(days.length);
});

test("a day that does not exist is refused", () => {
  expect(() => supplyStage({ ...unknown, lastOrderOn: "2027-02-30" }, asOf)).toThrow("2027-02-30");
  expect(() => supplyStage(unknown, "today")).toThrow("today");
});
