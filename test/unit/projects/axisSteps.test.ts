import { describe, expect, test } from "vitest";
import { markHindrance, unmarkHindrance, validatedByRecord } from "@/lib/projects/axisSteps";
import { defaultMilestones } from "@/lib/projects/defaultMilestones";
import { inOrder } from "@/lib/projects/taskOrder";
import { usualGates } from "@/lib/projects/usualGates";
import { templateTasks, usualTasks } from "@/lib/projects/usualTasks";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import { emptyEntry } from "@/lib/retrofit/judgeCheck";

describe("steps of an axis", () => {
  const done = { surveyed: "2026-03-02", engineered: "2026-05-04" };
  test("are marked one after the other, on days in order", () => {
    expect(markHindrance(done, "wired", "2026-05-04")).toBeNull();
    expect(markHindrance(done, "powered", "2026-06-01")).toBe("is not wired yet");
    expect(markHindrance(done, "wired", "2026-05-03")).toBe("was engineered only on 2026-05-04");
    expect(markHindrance({ engineered: "2026-05-04" }, "surveyed", "2026-05-05")).toBe(
      "was engineered before that day, on 2026-05-04",
    );
  });
  test("are taken back from the last on", () => {
    expect(unmarkHindrance(done, "engineered")).toBeNull();
    expect(unmarkHindrance(done, "surveyed")).toBe("is engineered already");
  });
});

describe("validated by its record", () => {
  const two = axisChecks.filter(({ twoNames }) => twoNames).map(({ id }) => id);
  const entry = (id: string) => ({
    ...{
      ...emptyEntry,
      asFound: 10,
      limit: 12,
      asLeft: Array.from({ length: 10 }, () => 9),
      confirmed: true,
    },
    ...{ by: "Technician A", witness: "Engineer B", on: id === "safety" ? "2026-11-28" : "2026-11-27" },
  });
  const all = Object.fromEntries(two.map((id) => [id, entry(id)]));
  test("when every check of two names is passed, on the last of their days", () => {
    expect(validatedByRecord(all)).toEqual({ on: "2026-11-28", by: "Technician A and Engineer B" });
  });
  test("not while one is missing or carries one name", () => {
    for (const id of two) {
      const { [id]: _, ...others } = all;
      expect(validatedByRecord(others)).toBeNull();
      expect(validatedByRecord({ ...all, [id]: { ...entry(id), witness: "" } })).toBeNull();
    }
    expect(validatedByRecord({})).toBeNull();
  });
});

describe("what a project starts with", () => {
  const tasks = usualTasks(templateTasks());
  test("tasks in whole days without the costing that is over, each serving a milestone that there is", () => {
    expect(tasks.every(({ days }) => Number.isInteger(days) && days >= 1)).toBe(true);
    expect(tasks.map(({ code }) => code)).not.toContain("P6");
    expect(tasks.find(({ code }) => code === "B1")?.after).toEqual(["P3", "P4", "P5"]);
    expect(tasks.filter(({ inWindow }) => inWindow).map(({ code }) => code)).toEqual([
      "W1",
      "W2",
      "W3",
      "W4",
      "W5",
    ]);
    expect(tasks.every(({ milestone }) => milestone === null || milestone <= defaultMilestones.length)).toBe(
      true,
    );
    expect(
      inOrder(tasks.map(({ code, after }) => ({ id: code, after: after.map((id) => ({ id })) }))).ok,
    ).toBe(true);
  });
  test("gates that guard tasks there are, and weights that are the whole budget", () => {
    expect(usualGates.every(({ guards }) => tasks.some(({ code }) => code === guards))).toBe(true);
    expect(defaultMilestones.reduce((sum, { weight }) => sum + weight, 0)).toBe(100);
  });
});
