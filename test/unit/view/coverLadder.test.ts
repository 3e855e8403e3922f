import { describe, expect, test } from "vitest";
import { addMonths, daysBetween } from "@/lib/kernel/isoDate";
import {
  type CoverFacts,
  cheapBlockersFirst,
  coverLadder,
  coverRungs,
  exitGap,
} from "@/lib/view/coverLadder";
import { coverDayText, exitGapText } from "@/lib/view/coverWords";

const asOf = "2026-11-30";
const facts: CoverFacts = {
  ...{ partId: "p", number: "FB-GL-01", maker: "Fernsby", itemClass: "converter", family: "Glim" },
  ...{ stage: "own-stock", installed: 10, book: 3, usable: 2.9, removalsPerYear: 1 },
  noSpare: { mean: 0.2, low: 0.1, high: 0.4 },
  noSpareByMonth: Array.from({ length: 61 }, (_, month) => {
    const mean = Math.min(1, month / 20);
    return { mean, low: Math.min(1, month / 40), high: Math.min(1, mean * 2) };
  }),
  ...{ depletionP50: "2027-09-30", depletionP80: "2028-03-31", leaving: [], coming: [] },
  ...{
    shortageLoss: 850,
    price: { amount: "85.00", currency: "EUR", pricedOn: "2026-06-01" },
    priceEuro: 85,
  },
};

describe("the exit gap", () => {
  test("is said to be none while nothing leaves, and open while something stays", () => {
    expect(exitGapText(exitGap(facts))).toBe("no planned removal");
    const some = exitGap({ ...facts, leaving: [{ on: "2027-06-30", units: 4 }] });
    expect(exitGapText(some)).toBe("6 units without a planned removal");
  });
  test("is negative when the shelf is likely empty before the last unit leaves", () => {
    const all = (on: string) => exitGap({ ...facts, leaving: [{ on, units: 10 }] });
    expect(exitGapText(all("2028-09-30"))).toBe("−6.0 to 30 Sep 2028");
    expect(exitGapText(all("2027-09-30"))).toBe("6.0 to 30 Sep 2027");
  });
  test("has no months when the shelf outlasts them", () => {
    const gap = exitGap({ ...facts, depletionP80: null, leaving: [{ on: "2027-06-30", units: 10 }] });
    expect(exitGapText(gap)).toBe("outlast the last removal, 30 Jun 2027");
  });
});

describe("the days", () => {
  test("span the rate: early at its 95 % point, late at its 5 % point, P95 last", () => {
    const { days } = coverLadder(facts, asOf);
    // 0.8 is passed after 8, 16 and 32 months.
    const off = (date: string | null, months: number) =>
      Math.abs(daysBetween(addMonths(asOf, months), date ?? asOf));
    expect(off(days.p80Early, 8)).toBeLessThan(4);
    expect(off(days.p80Late, 32)).toBeLessThan(4);
    expect(off(days.p95, 19)).toBeLessThan(4);
    expect(coverDayText(null, { months: 60, asOf })).toBe("not within 60 months");
    expect(coverDayText(asOf, { months: 60, asOf })).toBe("empty now");
  });
});

describe("the rungs", () => {
  test("count pieces from their day on, times the chance that they work", () => {
    const coming = [{ from: "retrofit", on: "2027-08-15", pieces: 8, works: 0.65 }] as const;
    const rungs = coverRungs({ ...facts, coming }, asOf);
    const come = Object.fromEntries(rungs.map((rung) => [rung.months, rung.come]));
    expect([come[0], come[6], come[9], come[12]]).toEqual([0, 0, 5.2, 5.2]);
  });
});

test("cheap blockers stand first; without a price or a loss nothing is weighed, and unknown is not last for being cheap", () => {
  const of = (number: string, shortageLoss: number | null, priceEuro: number | null) =>
    coverLadder({ ...facts, number, shortageLoss, priceEuro }, asOf);
  const order = cheapBlockersFirst([
    of("dear", 8000, 4700),
    of("unpriced small", 10, null),
    of("cheap", 850, 85),
    of("unpriced big", 9000, null),
    of("no cost", null, 85),
  ]);
  expect(order.map(({ number }) => number)).toEqual([
    "cheap",
    "dear",
    "unpriced big",
    "unpriced small",
    "no cost",
  ]);
});
