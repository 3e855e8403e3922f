import { describe, expect, test } from "vitest";
import { type ProjectFile, projectFigures } from "@/lib/view/project";
import { cashByQuarter, cashTotals } from "@/lib/view/projectCash";
import { curveChart, projectCurve } from "@/lib/view/projectCurve";
import type { ListedProject } from "@/lib/view/projectList";
import { inEuros, type RateTable } from "@/lib/view/projectRates";
import { projectSteps } from "@/lib/view/projectSteps";
import { projectWarnings } from "@/lib/view/projectWarnings";

const ASOF = "2026-03-31";
const step = (sequence: number, dueOn: string, doneOn: string | null) => ({
  ...{ id: String(sequence), sequence, name: `Step ${sequence}`, weight: 25, dueOn, doneOn, axisStep: null },
  axes: null,
});

/** 1,000 over five months; half planned and a quarter earned by the day, 400 paid. */
const project: ProjectFile = {
  ...{
    id: "p",
    code: "P-1",
    name: "Retrofit",
    status: "in_work",
    siteId: "s",
    siteCode: "S",
    siteName: "Site",
  },
  ...{ lineCode: "L", lineName: "Line", planId: null, currency: "SEK", budget: "1000.00", budgetRate: null },
  ...{ items: [], changes: [], toOrder: [], forecast: null, startsOn: "2026-01-01", endsOn: "2026-05-31" },
  ...{ cause: null, version: 1 },
  milestones: [
    step(1, "2026-02-15", "2026-02-20"),
    step(2, "2026-03-15", null),
    step(3, "2026-04-15", null),
    step(4, "2026-05-31", null),
  ],
  costs: [
    {
      ...{ id: "c", kind: "actual", amount: "400.00", spentOn: "2026-03-10", text: "Work", reference: "L-1" },
      ...{ orderReference: null, costClass: null, own: null },
    },
  ],
};

describe("the curve of a project", () => {
  const figures = projectFigures(project, ASOF);
  const points = projectCurve(project, figures, ASOF);
  const at = (month: string) => points.find((one) => one.month === month);

  test("has planned, earned and paid at the end of each month, and nothing of what lies ahead", () => {
    expect(at("2026-02")).toEqual({ month: "2026-02", planned: 250, earned: 250, paid: 0, forecast: null });
    expect(at("2026-03")).toMatchObject({ planned: 500, earned: 250, paid: 400 });
    expect(at("2026-05")).toMatchObject({ planned: 1000, earned: null, paid: null });
  });
  test("goes from what is paid to the three estimates at the end foreseen", () => {
    // EV 250, PV 500, AC 400: 1,150 with the rest as planned, 1,600 at the trend, 400 + 750 ÷ (0.625 × 0.5) = 2,800.
    expect(figures.eacSpan).toEqual({ low: 1150, high: 2800 });
    expect(at("2026-03")?.forecast).toEqual([400, 400]);
    // Earned on day 45 of 150, 89 days gone: day 297, 2026-10-25.
    expect(figures.forecastEndOn).toBe("2026-10-25");
    const last = points.at(-1);
    expect(last?.month).toBe("2026-10");
    expect(last?.forecast?.map(Math.round)).toEqual([1150, 2800]);
  });
  test("is a chart in thousands with the as-of day marked, and none without a start", () => {
    const chart = curveChart(points, "SEK", ASOF);
    expect(chart).toMatchObject({ unit: "thousand SEK", marks: [{ at: "Mar 2026", label: "as-of day" }] });
    expect(chart?.points.find(({ label }) => label === "Mar 2026")?.values).toEqual({
      ...{ planned: 0.5, earned: 0.25, paid: 0.4 },
    });
    const undated = { ...project, startsOn: null };
    expect(projectCurve(undated, projectFigures(undated, ASOF), ASOF)).toEqual([]);
  });
});

describe("the arithmetic of a project", () => {
  test("says of an index that divides by nothing that it is not defined, and shows the time index", () => {
    const value = (label: string, asOf: string) =>
      projectSteps(project, projectFigures(project, asOf), asOf).find((one) => one.label === label)?.value;
    expect(value("Cost index (CPI)", "2026-02-28")).toBe("not defined");
    expect(value("Earned for each unit paid or ordered", "2026-02-28")).toBe("not defined");
    // Earned 25 % on day 45 of the plan, 89 days gone.
    expect(value("Time index", ASOF)).toBe("0.51");
  });
  test("warns of an overrun at a quarter earned", () => {
    const warnings = projectWarnings(project, projectFigures(project, ASOF));
    expect(warnings[0]).toMatch(
      /^Overrun: with 25.% earned, even the lowest forecast of the work, SEK.1.150, passes/,
    );
  });
});

describe("money in other currencies and over projects", () => {
  const table: RateTable = {
    mayState: false,
    budget: [{ currency: "SEK", perEuro: "11.30", on: "2026-01-01", source: "Treasury" }],
    months: ["2026-04-01", "2026-03-01"].map((on, i) => ({
      ...{ currency: "SEK", perEuro: i === 0 ? "12" : "11.42", on, source: "Treasury" },
    })),
  };
  test("is shown at the budget rate beside the newest month rate of the day, each with date and source", () => {
    const [budget, month] = inEuros("4900000.00", { table, currency: "SEK", asOf: ASOF });
    // 4.9 M ÷ 11.30 and ÷ 11.42; the rate of April lies ahead.
    expect(budget).toMatchObject({ label: "at the budget rate", source: "Treasury" });
    expect([budget?.amount, month?.amount].map((text) => text?.replace(/[^\d.]/g, ""))).toEqual([
      ...["433628.32", "429071.80"],
    ]);
    expect(month?.rate).toContain("11.42 SEK for one euro");
    expect(inEuros("1.00", { table, currency: "EUR", asOf: ASOF })).toEqual([]);
  });

  const listed = (given: Partial<ListedProject>): ListedProject => ({
    ...{ id: "p", code: "P-1", name: "", status: "in_work", siteCode: "S", lineCode: "L", currency: "SEK" },
    ...{ perEuro: 10, cause: null, startsOn: null, endsOn: "2026-08-28", forecast: null, open: "0.00" },
    ...{ overdue: 0, gate: null, gateOpen: null, gateOn: null, budget: "1000.00", paid: "400.00" },
    ...{
      contingencyLeft: null,
      weight: 1,
      planned: 0,
      earned: 0,
      plannedShare: 0,
      earnedShare: 0,
      cpi: null,
    },
    ...{ spi: null, trend: null, eacSpan: null, overrun: null, ...given },
  });
  test("is spread over the days to each planned end, and stops for what is parked", () => {
    const paid = [{ from: "2026-01-01", currency: "SEK", amount: 400 }];
    // 60 euros are left over the 150 days from 1 April to 28 August: 91 in the second quarter, 59 in the third.
    const quarters = cashByQuarter([listed({}), listed({ status: "parked" })], paid, ASOF);
    expect(quarters.map(({ label }) => label)).toEqual(["2026 Q1", "2026 Q2", "2026 Q3"]);
    expect(quarters[0]).toMatchObject({ paid: 40, expected: 0 });
    expect(quarters[1]?.expected).toBeCloseTo((60 * 91) / 150, 9);
    expect(quarters[2]?.expected).toBeCloseTo((60 * 59) / 150, 9);
  });
  test("leaves projects without a rate out of the sums and names them", () => {
    const totals = cashTotals([listed({ forecast: "1200.00" }), listed({ code: "P-2", perEuro: null })]);
    expect(totals).toMatchObject({ projects: 1, budget: 100, end: 120, unrated: ["P-2"] });
  });
});
