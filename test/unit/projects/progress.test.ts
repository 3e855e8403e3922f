import { describe, expect, test } from "vitest";
import { type Milestone, progress, type Schedule } from "@/lib/projects/progress";

const step = (id: string, weight: number, days: { due?: string; done?: string }): Milestone => ({
  id,
  weight,
  dueOn: days.due ?? null,
  doneOn: days.done ?? null,
});
const schedule: Schedule = {
  startsOn: "2026-01-01",
  endsOn: "2026-12-27",
  milestones: [
    step("survey", 10, { due: "2026-02-20", done: "2026-03-01" }),
    step("build", 40, { due: "2026-06-30", done: "2026-08-15" }),
    step("cutover", 30, { due: "2026-09-30" }),
    step("proving", 20, { due: "2026-12-27" }),
  ],
};

describe("planned and earned", () => {
  test("a milestone counts whole on its day and not before", () => {
    expect(progress(schedule, "2026-06-29")).toMatchObject({ planned: 0.1, earned: 0.1 });
    expect(progress(schedule, "2026-06-30")).toMatchObject({ planned: 0.5, earned: 0.1 });
    expect(progress(schedule, "2026-08-15")).toMatchObject({ planned: 0.5, earned: 0.5 });
  });
  test("what is done later is not done on an earlier day", () => {
    expect(progress(schedule, "2026-02-28").earned).toBe(0);
  });
  test("overdue from the day after it was due until it is done", () => {
    expect(progress(schedule, "2026-02-20").overdue).toEqual([]);
    expect(progress(schedule, "2026-02-21").overdue).toEqual(["survey"]);
    expect(progress(schedule, "2026-10-01").overdue).toEqual(["cutover"]);
  });
  test("without milestones, or without weight, there is no progress to state", () => {
    expect(progress({ ...schedule, milestones: [] }, "2026-06-30")).toMatchObject({
      planned: null,
      earned: null,
    });
  });
  test("a milestone without a due day is reported as unscheduled, not as planned", () => {
    const milestones = [step("a", 1, { due: "2026-02-01" }), step("b", 3, {})];
    expect(progress({ ...schedule, milestones }, "2026-12-31")).toMatchObject({
      planned: 0.25,
      unscheduled: 0.75,
    });
  });
});

describe("a milestone earned by axes", () => {
  const axes = {
    total: 4,
    done: [
      { on: "2026-05-01", axes: 1 },
      { on: "2026-06-01", axes: 2 },
    ],
  };
  const byAxes = [
    step("a", 60, { due: "2026-05-20", done: "2026-05-01" }),
    { ...step("b", 40, { due: "2026-06-30" }), axes },
  ];
  const at = (asOf: string, milestones: readonly Milestone[] = byAxes) =>
    progress({ ...schedule, milestones }, asOf);

  test("earns weight × axes that have done its step by the day", () => {
    expect([at("2026-05-31").earned, at("2026-06-01").earned]).toEqual([0.7, 0.9]);
  });
  test("is planned whole on its due day, and overdue until the last axis has done it", () => {
    expect([at("2026-06-29").planned, at("2026-06-30").planned]).toEqual([0.6, 1]);
    expect(at("2026-07-01").overdue).toEqual(["b"]);
    const all = { ...axes, done: [...axes.done, { on: "2026-08-02", axes: 1 }] };
    const done = byAxes.map((one) => (one.id === "b" ? { ...one, axes: all } : one));
    expect(at("2026-08-02", done)).toMatchObject({ earned: 1, overdue: [], forecastEndOn: "2026-08-02" });
    expect(at("2026-08-01", done).overdue).toEqual(["b"]);
  });
  test("without axes it earns nothing", () => {
    const none = byAxes.map((one) => (one.id === "b" ? { ...one, axes: { total: 0, done: [] } } : one));
    expect(at("2026-12-31", none).earned).toBe(0.6);
  });
});

describe("forecast", () => {
  test("on plan ends as planned; half the pace takes twice as long", () => {
    const milestones = [
      step("a", 1, { due: "2026-04-11", done: "2026-04-11" }),
      step("b", 1, { due: "2026-07-20" }),
    ];
    const plan = { startsOn: "2026-01-01", endsOn: "2026-07-20", milestones };
    expect(progress(plan, "2026-04-11").forecastEndOn).toBe("2026-07-20");
    expect(progress(plan, "2026-07-20").forecastEndOn).toBe("2027-02-05");
  });
  test("with nothing earned, no schedule or before the start it is not known", () => {
    expect(progress(schedule, "2026-02-25").forecastEndOn).toBeNull();
    expect(progress({ ...schedule, startsOn: null }, "2026-09-01").forecastEndOn).toBeNull();
    expect(progress(schedule, "2026-01-01").forecastEndOn).toBeNull();
  });
  test("done is done on the day of the last milestone", () => {
    const milestones = schedule.milestones.map((m) => ({ ...m, doneOn: m.doneOn ?? "2026-11-05" }));
    expect(progress({ ...schedule, milestones }, "2026-11-30").forecastEndOn).toBe("2026-11-05");
  });
  test("milestones due on one day are reached together, straight from the one before (derived)", () => {
    const milestones = [
      step("a", 130, { due: "2026-12-27", done: "2026-06-01" }),
      step("b", 70, { due: "2026-12-27" }),
    ];
    const plan = { startsOn: "2026-01-01", endsOn: "2026-12-27", milestones };
    // 130 of 200 earned: day 234 of the plan's 360; 180 days gone; 360 * 180 / 234 = 276.9 days.
    expect(progress(plan, "2026-06-30").forecastEndOn).toBe("2026-10-05");
  });
  test("work that is not done never ends before the day it is looked at", () => {
    const milestones = [
      step("a", 9, { due: "2027-03-01", done: "2026-01-20" }),
      step("b", 1, { due: "2027-03-02" }),
    ];
    expect(progress({ ...schedule, milestones }, "2026-11-30").forecastEndOn).toBe("2026-11-30");
  });
});

test("a negative weight is refused by name", () => {
  expect(() => progress({ ...schedule, milestones: [step("a", -1, {})] }, "2026-01-01")).toThrow("weight");
});
