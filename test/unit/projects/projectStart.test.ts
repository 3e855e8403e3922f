import { describe, expect, test } from "vitest";
import { splitAmount, sumAmounts } from "@/lib/kernel/money";
import { classOfRow, scopeBudget } from "@/lib/projects/scopeBudget";
import { quarterDays, slotDates } from "@/lib/projects/slotDates";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import { buildScope } from "@/lib/retrofit/scope/buildScope";
import { likelyScopeNorms as norms } from "@/lib/retrofit/scope/scopeNorms";
import { axis, controller, line, newDrive, oldDrive, part } from "@/test/support/scopeFacts";

/** Axes with and without a price on record, a controller to be swapped: every kind of row. */
const axes = [axis("A1"), axis("A2"), axis("A3", { drive: part("TM-HR-099") }), axis("A4", { motor: null })];
const built = buildScope(
  line(axes, {
    parts: [oldDrive, newDrive],
    controllers: [controller({ designation: "K1", model: "Slate 3", level: parseFirmwareLevel("10") })],
  }),
  { target: "Heron E", norms },
);
if (!built.ok) throw new Error("no scope");
const { money } = built.value;
const hourlyRate = norms.spans.hourlyRate[1];

describe("a budget split as a scope costs it", () => {
  test("finds a class for every row a scope can have", () => {
    expect(money.rows.length).toBeGreaterThan(12);
    for (const row of money.rows) expect(() => classOfRow(row)).not.toThrow();
    expect(classOfRow({ label: "Motors, a place in the budget until they are sized" })).toBe("drives");
    expect(classOfRow({ label: "Converting programs of swapped controllers" })).toBe("engineering");
    expect(() => classOfRow({ label: "Scaffolding" })).toThrow("Scaffolding");
  });
  test("adds up to the whole in the places of the currency, contingency in its share", () => {
    for (const [budget, places] of [
      ["4900000.01", 2],
      ["162500001", 0],
      ["1234.567", 3],
    ] as const) {
      const items = scopeBudget(budget, { money, hourlyRate, places });
      expect(
        sumAmounts(
          items.map(({ amount }) => amount),
          places,
        ),
      ).toBe(budget);
      const kept = Number(items.find(({ costClass }) => costClass === "contingency")?.amount);
      const [, share] = norms.spans.contingency;
      expect(kept / Number(budget)).toBeCloseTo(share / (1 + share), 6);
    }
  });
  test("by weights gives the last the remainder, and refuses a weight that is none", () => {
    expect(splitAmount("100.00", [1, 1, 1], 2)).toEqual(["33.33", "33.33", "33.34"]);
    expect(splitAmount("100.00", [], 2)).toEqual([]);
    expect(() => splitAmount("1.00", [1, 0], 2)).toThrow("weight must be > 0");
  });
});

describe("the time a plan placed a project in", () => {
  const today = "2026-11-30";
  test("ends with the last slot and starts as much earlier as the work before needs", () => {
    const slots = [
      { startsOn: "2028-07-05", endsOn: "2028-07-30" },
      { startsOn: "2027-08-02", endsOn: "2027-08-20" },
    ];
    // 100 working days are 140 days: from 2 August 2027 back to 15 March.
    expect(slotDates(slots, { workingDaysBefore: 100, today })).toEqual({
      ...{ startsOn: "2027-03-15", endsOn: "2028-07-30" },
    });
  });
  test("starts no earlier than the day it is started, and nowhere without a slot", () => {
    const slots = [{ startsOn: "2026-12-23", endsOn: "2027-01-02" }];
    expect(slotDates(slots, { workingDaysBefore: 100, today })?.startsOn).toBe(today);
    expect(slotDates([], { workingDaysBefore: 5, today })).toBeNull();
  });
  test("is a quarter by its id, and nothing by another word", () => {
    expect(quarterDays("2027-Q4")).toEqual({ startsOn: "2027-10-01", endsOn: "2027-12-31" });
    expect([quarterDays("2027-Q5"), quarterDays("weekend")]).toEqual([null, null]);
  });
});
