import { describe, expect, test } from "vitest";
import { earnedSchedule } from "@/lib/projects/earnedSchedule";
import { earnedValue } from "@/lib/projects/earnedValue";
import { type EarningRule, earnedShare } from "@/lib/projects/earningRules";
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

describe("earned schedule", () => {
  // Lipke's formula from memory, the figures derived from it: ES = 2 + (380 - 250) / 200.
  const points = [0, 100, 250, 450, 700, 1000].map((value, at) => ({ at, value }));
  test("380 of a plan of 0, 100, 250, 450, 700, 1000 is 2.65 periods (derived)", () => {
    expect(earnedSchedule(points, 380)).toBeCloseTo(2.65, 12);
  });
  test("at a point it is that point; nothing is 0; all and more is the whole plan (derived)", () => {
    expect([0, 250, 1000, 1200].map((earned) => earnedSchedule(points, earned))).toEqual([0, 2, 5, 5]);
  });
  test("where the plan stands still, the later end of it counts: all of it was earned (derived)", () => {
    const still = [0, 100, 100, 200].map((value, at) => ({ at, value }));
    expect(earnedSchedule(still, 100)).toBe(2);
    expect(earnedSchedule([...still, { at: 4, value: 200 }], 200)).toBe(3);
  });
  test("a plan that falls is refused", () => {
    expect(() =>
      earnedSchedule(
        [
          { at: 0, value: 5 },
          { at: 1, value: 4 },
        ],
        1,
      ),
    ).toThrow("planned value");
  });
});

describe("earning rules (GAO-09-3SP, from memory; figures derived)", () => {
  const tasks = [
    { value: 10, begun: true, finished: true },
    { value: 20, begun: true, finished: false },
    { value: 30, begun: false, finished: false },
  ];
  const earned = (rule: (task: (typeof tasks)[number]) => EarningRule) =>
    tasks.reduce((sum, task) => sum + task.value * earnedShare(rule(task)), 0);
  test("tasks of 10 done, 20 begun, 30 to come: 0/100 earns 10, 50/50 earns 20", () => {
    expect(earned(({ finished }) => ({ kind: "whole", finished }))).toBe(10);
    expect(earned(({ begun, finished }) => ({ kind: "half", begun, finished }))).toBe(20);
  });
  test("level of effort with 45 of 60 planned earns 45, so its schedule variance is 0", () => {
    expect(60 * earnedShare({ kind: "effort", planned: 45 / 60 })).toBeCloseTo(45, 12);
  });
  test("weighted milestones and axes earn what is done of them", () => {
    const milestones = [
      { weight: 3, done: true },
      { weight: 1, done: false },
    ];
    expect(earnedShare({ kind: "milestones", milestones })).toBe(0.75);
    expect(earnedShare({ kind: "axes", done: 22, total: 42 })).toBeCloseTo(22 / 42, 12);
    expect(earnedShare({ kind: "axes", done: 0, total: 0 })).toBe(0);
    expect(() => earnedShare({ kind: "axes", done: 3, total: 2 })).toThrow("3 axes are done of 2");
  });
});
