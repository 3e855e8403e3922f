import { expect, it } from "vitest";
import {
  benefitCheckOn,
  benefitState,
  comparedStretches,
  compareRates,
  livedStretch,
} from "@/lib/projects/benefit";
import { expectedExposure } from "@/lib/projects/riskExposure";

const event = (downtimeHours: number | null, driveLeft = false) => ({ downtimeHours, driveLeft });
const cost = { costPerHour: 1000, bufferHours: 1, unrecoveredShare: 0.5, fixed: 100 };

it("sets the check twelve calendar months later, on the last day of a month that is shorter", () => {
  expect(benefitCheckOn("2027-02-26")).toBe("2028-02-26");
  expect(benefitCheckOn("2028-02-29")).toBe("2029-02-28");
});

it("compares the year before the work with the time since closing, and leaves the work out", () => {
  const dates = { beganOn: "2026-07-13", closedOn: "2027-03-01" };
  expect(comparedStretches(dates, "2027-06-01")).toEqual({
    before: { from: "2025-07-13", until: "2026-07-13" },
    after: { from: "2027-03-01", until: "2027-06-01" },
    whole: false,
  });
  expect(comparedStretches(dates, "2029-01-01")).toMatchObject({
    after: { from: "2027-03-01", until: "2028-03-01" },
    whole: true,
  });
});

it("sums hours and money of the events that say how long they were, and counts the others", () => {
  const lived = livedStretch({ events: [event(3, true), event(null), event(0.5)], unitYears: 40 }, cost);
  // 100 + 1000 · 0.5 · 2 for three hours, 100 for half an hour within the buffer.
  expect(lived).toMatchObject({
    events: 3,
    downtimeHours: 3.5,
    withoutHours: 1,
    stopMoney: 1200,
    removals: 1,
  });
  expect(livedStretch({ events: [event(3)], unitYears: 40 }, null).stopMoney).toBeNull();
});

it("gives the rate of the stretch alone, with its span, and none without drive-years", () => {
  const { removalRate } = livedStretch({ events: [event(1, true), event(1, true)], unitYears: 50 }, null);
  // Gamma(2.5, 50) is chi-square with 5 degrees over 100: 5 % 1.1455, 95 % 11.0705 (printed tables).
  expect(removalRate?.mean).toBeCloseTo(0.05, 12);
  expect(removalRate?.low).toBeCloseTo(0.011455, 6);
  expect(removalRate?.high).toBeCloseTo(0.110705, 6);
  expect(livedStretch({ events: [], unitYears: 0 }, null).removalRate).toBeNull();
});

it("tells rates apart only where their spans do not touch", () => {
  const many = livedStretch(
    { events: Array.from({ length: 30 }, () => event(1, true)), unitYears: 40 },
    null,
  );
  const few = livedStretch({ events: [event(1, true)], unitYears: 40 }, null);
  const none = livedStretch({ events: [], unitYears: 0 }, null);
  expect([compareRates(many, few), compareRates(few, many)]).toEqual(["lower", "higher"]);
  expect([compareRates(few, few), compareRates(few, none)]).toEqual(["not-told-apart", "unknown"]);
});

it("is too early before its day, due from it on, and checked once somebody did", () => {
  const closing = { checkOn: "2028-03-01", checkedOn: null };
  expect(benefitState(null, "2028-03-01")).toBe("not-closed");
  expect(benefitState(closing, "2028-02-29")).toBe("too-early");
  expect(benefitState(closing, "2028-03-01")).toBe("due");
  expect(benefitState({ ...closing, checkedOn: "2028-03-04" }, "2028-03-05")).toBe("checked");
});

it("adds what risks are expected to cost end by end, and leaves out what nobody estimated", () => {
  const risks = [
    { chance: { low: 0.25, high: 0.5 }, effect: { low: 400, high: 1000 } },
    { chance: { low: 0, high: 1 }, effect: { low: 10, high: 20 } },
    { chance: null, effect: { low: 1e6, high: 1e6 } },
    { chance: { low: 0.5, high: 0.5 }, effect: null },
  ];
  expect(expectedExposure(risks)).toEqual({ low: 100, high: 520, notEstimated: 2 });
  expect(() => expectedExposure([{ chance: { low: 0, high: 1.1 }, effect: { low: 0, high: 1 } }])).toThrow(
    /chance must be in \[0, 1\], got 1.1/,
  );
});
