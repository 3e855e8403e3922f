import { describe, expect, it } from "vitest";
import { type BuyChoice, FIRST_CHOICE, readBuyChoice } from "@/lib/schema/buyDecision";
import { decisionSheet } from "@/lib/view/buyDecision";
import { buyDocument, priceOfSlip } from "@/lib/view/buyDocument";
import { BUY_COLUMNS, buyRows } from "@/lib/view/buyTable";
import type { BuyBasis } from "@/lib/view/lastBuyBasis";
import { lineUnitsOf, readPlanYears, writePlanYears } from "@/lib/view/planYears";

const supply = { leadTime: 0.2, lastOrderAt: 0, repair: { turnaround: 0.1, yield: 0.6, untilAt: null } };
const lines = (codes: readonly string[]) => codes.map((lineCode) => ({ lineCode, units: 10, leaving: [] }));

/** Two parts at two sites, 10 units a line, 100 unit-years of experience at 0.05 a year. */
const basis: BuyBasis = {
  ...{ asOf: "2026-11-30", everySite: true, lastOrderOn: "2027-04-30", orderByOn: "2027-02-26" },
  basis: { engine: "e", dataVersion: 7, assumptionSet: { kind: "likely", version: 1 } },
  family: { id: "f", maker: "Tarnholt Motion", name: "Heron R", itemClass: "drive" },
  parts: [
    { id: "p", number: "TM-HR-010", price: 1000, pricedOn: null },
    { id: "q", number: "TM-HR-020", price: null, pricedOn: null },
  ],
  sites: { n: "NOR", s: "SUD" },
  needs: [
    { ...{ partId: "p", siteId: "n", usable: 0, more: 50_000, supply }, lines: lines(["NOR-01", "NOR-02"]) },
    { ...{ partId: "p", siteId: "s", usable: 0, more: 50_000, supply }, lines: lines(["SUD-01"]) },
    { ...{ partId: "q", siteId: "s", usable: 1, more: 50_000, supply }, lines: lines(["SUD-01"]) },
  ],
  familyRate: { a: 10, b: 200 },
  partRates: { p: { a: 5, b: 100 }, q: { a: 5, b: 100 } },
};

const sheet = (own: Partial<BuyChoice> = {}) => buyDocument(basis, { ...FIRST_CHOICE, ...own }, []);

describe("the sheet under what is supposed", () => {
  it("counts units without a day over the horizon, and to the first of July of a supposed year", () => {
    expect(sheet().cases[0]?.unitYears).toBe(40 * 5);
    expect(sheet().plannedShare).toBe(0);
    const planned = sheet({ planYears: { "SUD-01": 2028 } });
    // 579 days from 30 November 2026 to 1 July 2028.
    expect(planned.cases[0]?.unitYears).toBeCloseTo(20 * 5 + (20 * 579) / 365.25, 9);
    expect(planned.plannedShare).toBe(0.5);
  });

  it("leaves a unit whose supposed year has passed out, and lets a project's day go before", () => {
    expect(sheet({ planYears: { "NOR-01": 2026 } }).cases[0]?.unitYears).toBe(30 * 5);
    const [first, ...rest] = basis.needs;
    const line = { lineCode: "NOR-01", units: 10, leaving: [{ on: "2027-11-30", units: 10 }] };
    const needs = first ? [{ ...first, lines: [line, ...first.lines.slice(1)] }, ...rest] : [];
    const document = buyDocument({ ...basis, needs }, { ...FIRST_CHOICE, planYears: { "NOR-01": 2030 } }, []);
    expect(document.cases[0]?.unitYears).toBeCloseTo(30 * 5 + (10 * 365) / 365.25, 9);
  });

  it("takes one level for all when one is set, and says which parts are bought to a level in any case", () => {
    expect(sheet({ level: 0.9 }).cases[0]?.groups.map(({ fractile }) => fractile)).toEqual([
      expect.closeTo(0.9, 12),
      expect.closeTo(0.9, 12),
    ]);
    expect(sheet().unpriced).toEqual(["TM-HR-020"]);
    expect(sheet().cases[0]?.groups.map(({ byLevel }) => byLevel)).toEqual([false, true]);
  });

  it("changes one assumption at a time around what is chosen", () => {
    const labels = sheet({ sharing: "site", slipYears: 1 }).cases.map(({ label }) => label);
    expect(labels).toEqual([
      "Each site for itself, every retrofit a year late",
      "Each part for itself, shared by all sites, every retrofit a year late",
      "All parts of the family are one, every retrofit a year late",
      "Each site for itself, every retrofit 2 years late",
      "Each site for itself, repair stops, every retrofit a year late",
    ]);
    expect(sheet({ slipYears: 2 }).cases[0]?.unitYears).toBe(40 * 7);
    expect(sheet({ repaired: false }).cases[0]?.quantity).toBeGreaterThan(sheet().cases[0]?.quantity ?? 0);
  });

  it("gives every step of every case to a file, and no cost where none is known", () => {
    const rows = buyRows(sheet());
    expect(rows).toHaveLength(2 + 1 + 3 + 2 + 2);
    for (const row of rows) expect(row).toHaveLength(BUY_COLUMNS.length);
    const cost = BUY_COLUMNS.findIndex(({ title }) => title === "One too few, EUR");
    expect(rows.slice(0, 2).map((row) => row[cost])).toEqual([50_000, null]);
  });

  it("prices a slip, and a decision at the parts' own prices only where all are known", () => {
    expect(priceOfSlip(sheet())?.units).toBeGreaterThan(0);
    expect(priceOfSlip(sheet())?.price).toBeNull();
    const said = {
      orderBy: null,
      names: "n",
      reason: "r",
      keptBy: "k",
      keptOn: "2026-11-30",
      supersedes: null,
    };
    const pieces = (partId: string, siteId: string) => [{ partId, siteId, quantity: 3 }];
    expect(decisionSheet(sheet(), pieces("p", "n"), said)).toMatchObject({ quantity: 3, money: 3000 });
    expect(decisionSheet(sheet(), pieces("q", "s"), said)?.money).toBeNull();
    expect(decisionSheet(sheet(), pieces("q", "n"), said)).toBeNull();
    expect(decisionSheet(sheet(), [...pieces("p", "n"), ...pieces("p", "n")], said)).toBeNull();
  });
});

describe("what an address and a list of years say", () => {
  it("is read, and what cannot be read is the first choice", () => {
    const choice: BuyChoice = { ...FIRST_CHOICE, slipYears: 2, planYears: { "NOR-01": 2028 } };
    expect(readBuyChoice(JSON.stringify(choice))).toEqual(choice);
    expect(readBuyChoice("{")).toEqual(FIRST_CHOICE);
    expect(readBuyChoice(null)).toEqual(FIRST_CHOICE);
  });

  it("takes a line and a year a row, whatever stands between, and names the row it cannot use", () => {
    const known = lineUnitsOf(basis);
    expect(known).toEqual([
      { code: "NOR-01", units: 10 },
      { code: "NOR-02", units: 10 },
      { code: "SUD-01", units: 20 },
    ]);
    const { years, problem } = readPlanYears("nor-01 2028\n\nSUD-01;2030\n", known);
    expect([years, problem]).toEqual([{ "NOR-01": 2028, "SUD-01": 2030 }, null]);
    expect(readPlanYears(writePlanYears(years), known).years).toEqual(years);
    expect(readPlanYears("NOR-01 2028\nVEL-09 2028", known).problem).toMatch(/^Row 2: no line VEL-09/);
    expect(readPlanYears("NOR-01 1928", known).problem).toMatch(/1928 is not a year/);
    expect(readPlanYears("NOR-01", known).problem).toMatch(/not a line and a year/);
  });
});
