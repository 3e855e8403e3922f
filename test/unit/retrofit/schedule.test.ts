import { expect, test } from "vitest";
import { daysBetweenStarts, schedule, type Task } from "@/lib/retrofit/scope/schedule";

const task = (id: string, days: number, after: readonly string[] = []): Task => ({
  ...{ id, name: id, phase: "build", after },
  days: [days / 2, days, days * 2],
});

const diamond = [task("D", 1, ["B", "C"]), task("B", 5, ["A"]), task("A", 2), task("C", 3, ["A"])];

test("the longest way, worked out by hand, with the slack beside it", () => {
  const planned = schedule(diamond);
  if (!planned.ok) throw new Error("refused");
  const { total, criticalPath, tasks } = planned.value;
  expect(total).toEqual([4, 8, 16]);
  expect(criticalPath).toEqual(["A", "B", "D"]);
  expect(tasks.map(({ id, start, end, slack, critical }) => ({ id, start, end, slack, critical }))).toEqual([
    { id: "A", start: 0, end: 2, slack: 0, critical: true },
    { id: "B", start: 2, end: 7, slack: 0, critical: true },
    { id: "C", start: 2, end: 5, slack: 2, critical: false },
    { id: "D", start: 7, end: 8, slack: 0, critical: true },
  ]);
});

test("tasks that wait for each other or for one that is not there are refused by name", () => {
  expect(schedule([task("A", 1), task("B", 1, ["A", "C"]), task("C", 1, ["B"])])).toEqual({
    ok: false,
    error: { ids: ["B", "C"] },
  });
  expect(schedule([task("A", 1, ["Z"])])).toEqual({ ok: false, error: { ids: ["A"] } });
});

test("days from the start of one task to the start of another go the longest way", () => {
  expect(daysBetweenStarts(diamond, "A", "D")).toBe(7);
  expect(daysBetweenStarts(diamond, "C", "B")).toBeNull();
});
