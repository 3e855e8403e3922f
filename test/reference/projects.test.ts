import { describe, expect, test } from "vitest";
import { earnedValue } from "@/lib/projects/earnedValue";
import { type Milestone, progress } from "@/lib/projects/progress";

describe("earned value", () => {
  test.each([
    // Two figures each, from public worked examples of the standard formulas.
    [{ planned: 120_000, earned: 100_000, actual: 115_000 }, 0.87, 0.833],
    [{ planned: 80, earned: 80, actual: 100 }, 0.8, 1],
    [{ planned: 60, earned: 45, actual: 45 }, 1, 0.75],
  ])("%j", (figures, cpi, spi) => {
    const value = earnedValue({ budgetAtCompletion: 200_000, ...figures });
    expect(Math.abs((value.cpi ?? 0) - cpi)).toBeLessThanOrEqual(0.0005);
    expect(Math.abs((value.spi ?? 0) - spi)).toBeLessThanOrEqual(0.0005);
  });
  test("the other figures of the PRA example (derived)", () => {
    const v = earnedValue({ budgetAtCompletion: 100_000, planned: 40_000, earned: 35_000, actual: 36_000 });
    expect(v).toMatchObject({ sv: -5000, cv: -1000 });
    expect(v.etc).toBeCloseTo(66_857.14, 2);
    expect(v.vac).toBeCloseTo(-2857.14, 2);
  });
  test("to-complete index 1.0526 on the budget; on the trend's estimate it is the index so far (derived)", () => {
    const v = earnedValue({ budgetAtCompletion: 400, planned: 120, earned: 100, actual: 115 });
    expect(v.tcpi).toBeCloseTo(1.052632, 6);
    expect(300 / ((v.eac.trend ?? 0) - 115)).toBeCloseTo(v.cpi ?? 0, 12);
    expect(v.cpi).toBeCloseTo(0.869565, 6);
  });
  test("at the edges (derived): done, money gone, and both", () => {
    const at = (earned: number, actual: number) =>
      earnedValue({ budgetAtCompletion: 100, planned: 50, earned, actual });
    expect(at(100, 80)).toMatchObject({ tcpi: 0 });
    expect(at(100, 80).etc).toBeCloseTo(0, 12);
    expect(at(100, 100).tcpi).toBeNull();
    expect(at(60, 100).tcpi).toBeNull();
    expect(at(60, 120).tcpi).toBe(-2);
    expect(at(60, 0)).toMatchObject({ cpi: null, etc: null, vac: null });
    expect(at(60, 0).eac).toEqual({ trend: null, plannedRest: 40, costAndSchedule: null });
  });
});

const step = (id: string, weight: number, days: { due: string; done?: string }): Milestone => ({
  id,
  weight,
  dueOn: days.due,
  doneOn: days.done ?? null,
});

describe("progress", () => {
  test("all or nothing: tasks of 10 done, 20 begun and 30 to come earn 10 of 60 (derived)", () => {
    const milestones = [
      step("done", 10, { due: "2026-02-01", done: "2026-02-01" }),
      step("begun", 20, { due: "2026-03-01" }),
      step("to come", 30, { due: "2026-04-01" }),
    ];
    expect(progress({ startsOn: null, endsOn: null, milestones }, "2026-02-10").earned).toBeCloseTo(
      10 / 60,
      12,
    );
  });
  test("earned schedule: 380 earned of a plan of 0, 100, 250, 450, 700, 1000 is 2.65 periods (derived)", () => {
    // Periods of 100 days from 2026-01-01; a piece of period 4 was done early, so that 380 is earned.
    const done = "2026-03-01";
    const milestones = [
      step("1", 100, { due: "2026-04-11", done }),
      step("2", 150, { due: "2026-07-20", done }),
      step("3", 200, { due: "2026-10-28" }),
      step("4a", 130, { due: "2027-02-05", done }),
      step("4b", 120, { due: "2027-02-05" }),
      step("5", 300, { due: "2027-05-16" }),
    ];
    const plan = { startsOn: "2026-01-01", endsOn: "2027-05-16", milestones };
    // At the end of period 4: 500 days * 400 / 265 = 754.7, so day 755.
    expect(progress(plan, "2027-02-05").forecastEndOn).toBe("2028-01-26");
  });
});
