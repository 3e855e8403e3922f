import { describe, expect, test } from "vitest";
import { type Activity, criticalPath, type NetworkTerms } from "@/lib/projects/criticalPath";
import { MONDAY_TO_FRIDAY, weekday, workDays } from "@/lib/projects/workCalendar";

const terms: NetworkTerms = {
  startsOn: "2026-11-02",
  asOf: null,
  calendar: MONDAY_TO_FRIDAY,
  windows: [],
};
const task = (id: string, days: number, given: Partial<Activity> = {}): Activity => ({
  ...{ id, days, after: [], notBefore: null, inWindow: false, startedOn: null, finishedOn: null },
  ...given,
});
const behind = (...ids: string[]) => ({ after: ids.map((id) => ({ id, lag: 0 })) });

function network(tasks: readonly Activity[], given: Partial<NetworkTerms> = {}) {
  const found = criticalPath(tasks, { ...terms, ...given });
  if (!found.ok) throw new Error(found.error.kind);
  return found.value;
}

// Monday 2 November 2026; worked out by hand on a calendar sheet.
const tasks = [
  task("survey", 3),
  task("design", 5, behind("survey")),
  task("order", 1, { after: [{ id: "survey", lag: 2 }] }),
  task("build", 4, behind("design", "order")),
];

describe("days of tasks", () => {
  test("run over working days, behind what they wait for", () => {
    expect(network(tasks).tasks.map(({ id, start, finish }) => [id, start, finish])).toEqual([
      ["survey", "2026-11-02", "2026-11-04"],
      ["design", "2026-11-05", "2026-11-11"],
      ["order", "2026-11-09", "2026-11-09"],
      ["build", "2026-11-12", "2026-11-17"],
    ]);
    expect(network(tasks).finish).toBe("2026-11-17");
  });
  test("leave holidays out", () => {
    const calendar = { weekdays: [1, 2, 3, 4, 5, 6], holidays: ["2026-11-03"] };
    expect(network([task("a", 5)], { calendar }).finish).toBe("2026-11-07");
  });
  test("float: the order can wait two days, everything else moves the end", () => {
    expect(network(tasks).tasks.map(({ totalFloat }) => totalFloat)).toEqual([0, 0, 2, 0]);
    expect(
      network(tasks)
        .tasks.filter(({ critical }) => !critical)
        .map(({ id }) => id),
    ).toEqual(["order"]);
  });
  test("a task that slips moves its followers and the end", () => {
    const slipped = tasks.map((one) => (one.id === "survey" ? { ...one, notBefore: "2026-11-09" } : one));
    expect(network(slipped).finish).toBe("2026-11-24");
  });
  test("what really happened stands, also against a link", () => {
    const real = tasks.map((one) =>
      one.id === "survey"
        ? { ...one, startedOn: "2026-10-29", finishedOn: "2026-11-06" }
        : one.id === "order"
          ? { ...one, startedOn: "2026-11-03" }
          : one,
    );
    const found = network(real, { asOf: "2026-11-12" });
    expect(found.tasks.map(({ start, finish, totalFloat }) => [start, finish, totalFloat])).toEqual([
      ["2026-10-29", "2026-11-06", null],
      ["2026-11-12", "2026-11-18", 0],
      ["2026-11-03", "2026-11-12", 4],
      ["2026-11-19", "2026-11-24", 0],
    ]);
  });
});

describe("a task that needs a shutdown", () => {
  const windows = [
    { startsOn: "2026-11-09", endsOn: "2026-11-13" },
    { startsOn: "2026-12-21", endsOn: "2027-01-03" },
  ];
  const swap = (days: number, given: Partial<Activity> = {}) =>
    network([task("swap", days, { inWindow: true, ...given })], { windows }).tasks[0];

  test("is told that it lies in none, and where it would fit", () => {
    expect(swap(3)).toMatchObject({ outsideWindow: true, windowStart: "2026-11-09" });
    expect(swap(6)).toMatchObject({ outsideWindow: true, windowStart: "2026-12-21" });
    expect(swap(3, { notBefore: "2026-11-12" })).toMatchObject({
      outsideWindow: true,
      windowStart: "2026-12-21",
    });
    expect(swap(11)).toMatchObject({ outsideWindow: true, windowStart: null });
  });
  test("is quiet inside one, and once it is done", () => {
    expect(swap(5, { notBefore: "2026-11-09" })).toMatchObject({ outsideWindow: false, windowStart: null });
    expect(swap(3, { startedOn: "2026-11-02", finishedOn: "2026-11-04" })?.outsideWindow).toBe(false);
  });
});

describe("what cannot be placed", () => {
  test("tasks in a circle are named, and not those that only wait for it", () => {
    const circle = [
      task("d", 1, behind("c")),
      task("a", 1, behind("c")),
      task("b", 1, behind("a")),
      task("c", 1, behind("b")),
    ];
    expect(criticalPath(circle, terms)).toEqual({
      ok: false,
      error: { kind: "circle", ids: ["a", "b", "c"] },
    });
  });
  test("a link to nothing is refused with its name", () => {
    expect(criticalPath([task("a", 1, behind("x"))], terms)).toMatchObject({
      error: { kind: "missing", ids: ["x"] },
    });
  });
  test("half days and negative lags are a mistake of the caller", () => {
    expect(() => criticalPath([task("a", 0.5)], terms)).toThrow("days of a");
    expect(() => criticalPath([task("a", 0)], terms)).toThrow("days of a");
    const lag = [task("a", 1), task("b", 1, { after: [{ id: "a", lag: -1 }] })];
    expect(() => criticalPath(lag, terms)).toThrow("lag of b");
  });
  test("a calendar that never works is refused", () => {
    expect(() => workDays({ weekdays: [], holidays: [] }, "2026-11-02")).toThrow("one weekday");
  });
});

test("days of the week are those of ISO 8601", () => {
  // 30 November 2026 is a Monday; the week year 2020 ends on a Sunday (ISO 8601 example, from memory).
  expect([weekday("2026-11-30"), weekday("2021-01-03"), weekday("1999-12-31")]).toEqual([1, 7, 5]);
});
