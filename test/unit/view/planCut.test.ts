import { describe, expect, it } from "vitest";
import { type Candidate, type PlanChoice, planCut } from "@/lib/view/planCut";
import { planHref, readPlanQuery, withCost, withPin } from "@/lib/view/planQuery";

const line = (code: string, rank: number | null, cost: number | null): Candidate => ({
  ...{ id: `id-${code}`, code, name: code, siteCode: code.slice(0, 3), project: null },
  ...{ rankByLoss: rank, rankByScore: 5 - (rank ?? 4), score: 50 },
  stopLoss: rank === null ? null : { mean: 1000 / rank, low: 1, high: 9000 },
  scope: { machines: 1, drives: 1, undatedDrives: 0, motors: 0, controllers: 0, hmis: 0, drivePrice: null },
  estimate: cost === null ? null : { mean: cost, typical: cost, low: cost / 2, high: cost * 2 },
});

const lines = [line("AAA-1", 1, 100), line("BBB-1", 2, 80), line("CCC-1", 3, 20), line("DDD-1", null, null)];
const choice: PlanChoice = {
  ...{ budget: 130, by: "loss", fill: false, pinnedIn: [], pinnedOut: [] },
  costs: {},
};
const funded = (changes: Partial<PlanChoice>) =>
  planCut(lines, { ...choice, ...changes })
    .rows.filter((row) => row.funded)
    .map((row) => row.line.code);

describe("the cut of a ranking", () => {
  it("stops at the first line that does not fit, or goes on past it", () => {
    expect(funded({})).toEqual(["AAA-1"]);
    expect(funded({ fill: true })).toEqual(["AAA-1", "CCC-1"]);
    expect(planCut(lines, choice).rows.find((row) => row.firstBelow)?.line.code).toBe("BBB-1");
  });

  it("shows the budget that reaches each line: with exactly that much it is funded, with less not", () => {
    for (const { line: one, cumulative } of planCut(lines, { ...choice, pinnedIn: ["CCC-1"] }).rows) {
      if (cumulative === null) continue;
      expect(funded({ pinnedIn: ["CCC-1"], budget: cumulative })).toContain(one.code);
      expect(funded({ pinnedIn: ["CCC-1"], budget: cumulative - 0.01 })).not.toContain(one.code);
    }
  });

  it("says what each pin changes against the cut without it", () => {
    const cut = planCut(lines, { ...choice, pinnedOut: ["AAA-1"] });
    expect(cut.effects).toEqual([
      {
        ...{ code: "AAA-1", pin: "out", spent: 0, comesIn: ["BBB-1", "CCC-1"], fallsOut: ["AAA-1"] },
        loss: 1000 / 2 + 1000 / 3 - 1000,
      },
    ]);
  });

  it("says how much would be enough for pins above the budget, and that an unpriced line cannot be pinned", () => {
    const dear = planCut(lines, { ...choice, pinnedIn: ["AAA-1", "BBB-1"] });
    expect(dear.outcome).toEqual({
      ok: false,
      error: { reason: "pins-exceed-budget", enough: 180, short: 50 },
    });
    expect(dear.rows.some((row) => row.funded)).toBe(false);
    expect(planCut(lines, { ...choice, pinnedIn: ["DDD-1"] }).outcome).toEqual({
      ok: false,
      error: { reason: "pin-not-priced", ids: ["id-DDD-1"] },
    });
  });

  it("takes a typed cost over the estimate, and an unknown loss as unknown", () => {
    const cut = planCut(lines, { ...choice, pinnedIn: ["DDD-1"], costs: { "DDD-1": 30 } });
    expect(cut.rows.find((row) => row.line.code === "DDD-1")).toMatchObject({ cost: 30, typed: true });
    expect([cut.fundedLoss, cut.unknownLoss]).toEqual([1000, 1]);
    expect(planCut([], choice).fundedLoss).toBeNull();
  });

  it("draws nothing before a budget is typed", () => {
    const cut = planCut(lines, { ...choice, budget: null });
    expect(cut.outcome).toBeNull();
    expect(cut.rows.every((row) => !row.funded)).toBe(true);
  });

  it("orders by score when asked", () => {
    const codes = planCut(lines, { ...choice, by: "score" }).rows.map((row) => row.line.code);
    expect(codes).toEqual(["DDD-1", "CCC-1", "BBB-1", "AAA-1"]);
  });
});

describe("the address of a cut", () => {
  const read = (href: string) =>
    readPlanQuery(Object.fromEntries(new URL(href, "http://127.0.0.1").searchParams), 2027);

  it("holds the whole cut: read again it is the same", () => {
    const query = withCost(
      withPin({ ...choice, year: 2028, budget: 1900000.5 }, "AAA-1", "in"),
      "BBB-1",
      250,
    );
    expect(read(planHref(query, "2026-11-30"))).toEqual(query);
    expect(read(planHref(withCost(withPin(query, "AAA-1", "none"), "BBB-1", null), "2026-11-30"))).toEqual({
      ...choice,
      ...{ year: 2028, budget: 1900000.5 },
    });
  });

  it("takes amounts as people type them and leaves out what it cannot mean", () => {
    const budget = (text: string) => readPlanQuery({ budget: text }, 2027).budget;
    expect(["1900000", "1 900 000", "1,900,000", "250000.50"].map(budget)).toEqual([
      1900000, 1900000, 1900000, 250000.5,
    ]);
    expect(["", "-5", "1,5", "many", "1e9", "Infinity"].map(budget)).toEqual([
      null,
      null,
      null,
      null,
      null,
      null,
    ]);
    const odd = readPlanQuery(
      { year: "77", by: "colour", in: "<b>,AAA-1,AAA-1", cost: "AAA-1:0,BBB-1:x" },
      2027,
    );
    expect(odd).toMatchObject({ year: 2027, by: "loss", pinnedIn: ["AAA-1"], costs: {} });
  });
});
