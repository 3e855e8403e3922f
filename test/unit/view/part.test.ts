import { describe, expect, it } from "vitest";
import type { LifecycleDates } from "@/lib/lifecycle/supplyStage";
import { coverChart } from "@/lib/view/partCover";
import type { PartLot, PartPool } from "@/lib/view/partDossier";
import { depletionWord, installedWord, type ListedPart, usableWord } from "@/lib/view/partList";
import { countedText, rateSteps, rateText } from "@/lib/view/partRates";
import { deductionText, lotCautions, needsPowerUpCare, whoHasOne } from "@/lib/view/partShelf";
import { isPriceStale, leadText, overdueText, stageReason } from "@/lib/view/partSupply";

const asOf = "2026-11-30";

const lot = (changes: Partial<PartLot>): PartLot => ({
  ...{ id: "1", siteCode: "VEL", siteName: "Velmark", bin: "R1", revision: "B2", reservedFor: null },
  ...{ note: null, evidence: "documented", mayChange: false, works: 0.97, usable: 0.97 },
  ...{ state: "usable", quantity: 1, lastPoweredOn: "2026-06-01", countedOn: null },
  ...changes,
});

describe("who has one", () => {
  it("starts with what can be fitted now, likeliest to work first, and leaves empty bins out", () => {
    const lots = [
      lot({ bin: "hold", state: "on_hold" }),
      lot({ bin: "old", works: 0.7 }),
      lot({ bin: "new", works: 0.97 }),
      lot({ bin: "uncounted", quantity: null }),
      lot({ bin: "none", quantity: 0 }),
      lot({ bin: "scrap", state: "beyond_repair" }),
    ];
    expect(whoHasOne(lots).map(({ bin }) => bin)).toEqual(["new", "old", "uncounted", "hold", "scrap"]);
  });

  it("asks for care where a drive lay unpowered for more than a year, or nobody knows", () => {
    expect(needsPowerUpCare(lot({ lastPoweredOn: "2025-11-30" }), "drive", asOf)).toBe(false);
    expect(needsPowerUpCare(lot({ lastPoweredOn: "2025-11-29" }), "drive", asOf)).toBe(true);
    expect(needsPowerUpCare(lot({ lastPoweredOn: null }), "drive", asOf)).toBe(true);
    expect(needsPowerUpCare(lot({ lastPoweredOn: null }), "motor", asOf)).toBe(false);
  });

  it("says what to heed, for whom it is reserved and what somebody noted", () => {
    expect(lotCautions(lot({}), "drive", asOf)).toEqual([]);
    expect(
      lotCautions(
        lot({ state: "reserved", reservedFor: "Wrap 3", lastPoweredOn: null, note: "Box open." }),
        "drive",
        asOf,
      ),
    ).toEqual([
      "Reserved: ask before you take it.",
      "Reserved for Wrap 3.",
      "Last power-up not known: care at power-up.",
      "Box open.",
    ]);
  });

  it("never shows a small deduction as none", () => {
    expect(deductionText({ reason: "storage", pieces: 0.03 })).toBe("0.03 chance lost in storage");
    expect(deductionText({ reason: "wrong_revision", pieces: 8 })).toBe("8 wrong revision");
    expect(deductionText({ reason: "not_counted", pieces: 0 })).toBe("a lot not counted");
  });
});

describe("the supply of a part in words", () => {
  const dates = (changes: Partial<LifecycleDates>): LifecycleDates => ({
    ...{ noticeOn: null, lastOrderOn: null, lastShipOn: null, repairUntilOn: null, orderByOn: null },
    checkedOn: "2026-11-01",
    ...changes,
  });

  it.each([
    ["undated", { checkedOn: null }, "No source is recorded"],
    ["undated", { checkedOn: "2024-01-01" }, "last read on 1 Jan 2024, more than 24 months ago"],
    ["open", {}, "read on 1 Nov 2026 tells of no discontinuance"],
    ["notice", { noticeOn: "2026-10-30" }, "no last order day is told"],
    [
      "buy-window",
      { lastOrderOn: "2027-04-30", orderByOn: "2027-02-26" },
      "in 5 months; the own order-by day is 26 Feb 2027",
    ],
    ["closing", { lastOrderOn: "2027-04-30", orderByOn: "2026-11-01" }, "takes orders until 30 Apr 2027"],
    ["orders-shut", { lastOrderOn: "2026-01-31", lastShipOn: "2027-01-31" }, "ships until 31 Jan 2027"],
    ["repair-fed", { lastShipOn: "2022-06-30", repairUntilOn: "2027-09-30" }, "accepted until 30 Sep 2027"],
    ["own-stock", { repairUntilOn: "2025-12-31" }, "Repair ended on 31 Dec 2025."],
    ["own-stock", { lastShipOn: "2016-12-31" }, "no repair is known"],
  ] as const)("tells why it is %s", (stage, changes, words) => {
    expect(stageReason(stage, dates(changes), asOf)).toContain(words);
  });

  it("ages prices and lead times, and counts days overdue", () => {
    expect([isPriceStale("2024-11-29", asOf), isPriceStale("2024-11-30", asOf)]).toEqual([true, false]);
    expect(isPriceStale(null, asOf)).toBe(true);
    expect([leadText(9, 16), leadText(9, null), leadText(null, null)]).toEqual([
      "9 weeks (80 % within 16 weeks)",
      "9 weeks",
      null,
    ]);
    expect([overdueText("2026-09-23", asOf), overdueText(asOf, asOf), overdueText(null, asOf)]).toEqual([
      "68 days overdue",
      null,
      null,
    ]);
  });
});

describe("the rate, opened", () => {
  const rate = {
    ...{ mean: 47 / 1220, low: 0.03, high: 0.048, events: 43, unitYears: 1120 },
    ...{ a: 47, b: 1220, priorMean: 0.04, priorUnitYears: 100 },
  };

  it("follows from what is shown", () => {
    const shown = Object.fromEntries(rateSteps(rate, "Removals").map((step) => [step.label, step.value]));
    const number = (label: string) => Number(shown[label]?.replaceAll("\u202f", ""));
    const events = number("Rate borrowed from the family") * number("Its weight") + 43;
    expect(number("Events, borrowed and counted")).toBeCloseTo(events, 6);
    expect(number("Unit-years, borrowed and counted")).toBe(
      number("Its weight") + number("Time in service, five years"),
    );
    expect(number("Rate")).toBeCloseTo(events / number("Unit-years, borrowed and counted"), 4);
  });

  it("is said with its range and its count", () => {
    expect(rateText(rate)).toBe("0.039 (0.030 to 0.048) per unit-year");
    expect(countedText(rate)).toBe("43 in 1\u202f120 unit-years");
  });
});

describe("the cover curve", () => {
  const pool = (depletionP50: string | null, depletionP80: string | null) =>
    ({
      noSpareByMonth: [0, 0.5, 0.9].map((mean) => ({ mean, low: mean / 2, high: Math.min(1, mean * 1.1) })),
      ...{ depletionP50, depletionP80 },
    }) as unknown as PartPool;

  it("runs month by month in percent, and marks its days at the month that reaches them", () => {
    const chart = coverChart(pool("2026-12-10", "2027-01-02"), asOf);
    expect(chart.points.map((point) => [point.label, point.values.mean])).toEqual([
      ["Nov 2026", 0],
      ["Dec 2026", 50],
      ["Jan 2027", 90],
    ]);
    expect(chart.points[2]?.band?.[0]).toBeCloseTo(45, 9);
    expect(chart.points[2]?.band?.[1]).toBeCloseTo(99, 9);
    expect(chart.marks).toEqual([
      { at: "Dec 2026", label: "P50" },
      { at: "Jan 2027", label: "P80" },
    ]);
  });

  it("writes two marks of one month as one, and none where it never gets there", () => {
    expect(coverChart(pool("2026-12-10", "2026-12-20"), asOf).marks).toEqual([
      { at: "Dec 2026", label: "P50, P80" },
    ]);
    expect(coverChart(pool(null, null), asOf).marks).toEqual([]);
  });
});

describe("the choices of the parts list", () => {
  const part = (changes: Partial<ListedPart>): ListedPart => ({
    ...{ id: "1", maker: "Corvane", number: "CV-BI-010", description: "Drive", itemClass: "drive" },
    ...{ family: null, stage: "open", lastOrderOn: null, installedHere: 1, installed: 1, book: 3 },
    ...{ usable: 2.9, noSpare: { mean: 0, low: 0, high: 0 }, depletionP80: null },
    ...changes,
  });

  it("keep unknown apart from none", () => {
    expect(usableWord(part({ book: null }))).toBe("Not counted");
    expect(usableWord(part({ book: null, noSpare: null }))).toBe("No shelf");
    expect([0.9, 1, 4.9, 5].map((usable) => usableWord(part({ usable })))).toEqual([
      "Fewer than 1",
      "1 to under 5",
      "1 to under 5",
      "5 and more",
    ]);
  });

  it("say where it is installed and how soon it is gone", () => {
    expect(installedWord(part({}))).toBe("Installed");
    expect(installedWord(part({ installedHere: 0 }))).toBe("Only at other sites");
    expect(installedWord(part({ installedHere: 0, installed: 0 }))).toBe("Not installed");
    expect(
      ["2027-11-30", "2027-12-01", "2030-01-01", null].map((depletionP80) =>
        depletionWord(part({ depletionP80 }), asOf),
      ),
    ).toEqual(["Within 1 year", "Within 2 years", "Within 5 years", "Beyond 5 years"]);
  });
});
