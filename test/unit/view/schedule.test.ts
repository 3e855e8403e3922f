import { describe, expect, test } from "vitest";
import {
  chartDays,
  linkWords,
  readLinks,
  type ScheduleTask,
  scheduleClashes,
  scheduleView,
  shiftDay,
} from "@/lib/view/schedule";

const task = (code: string, given: Partial<ScheduleTask> = {}): ScheduleTask => ({
  ...{ id: `id-${code}`, code, name: "Work", who: "", crews: null, engineers: null, days: 3, after: [] },
  ...{ notBefore: null, inWindow: false, startedOn: null, finishedOn: null, milestoneId: null, version: 1 },
  ...{ plannedStart: null, plannedFinish: null, baselineStart: null, baselineFinish: null },
  ...given,
});
const asOf = "2026-11-30";
const tasks = [
  task("B1"),
  task("W1", { inWindow: true, after: [{ id: "id-B1", lag: 2 }], milestoneId: "m" }),
];
const file = {
  ...{ projectId: "p", code: "X-R1", name: "", siteId: "s", siteName: "", lineCode: "", endsOn: null },
  ...{ startsOn: asOf, tasks, gates: [], replans: [], windows: [] },
  milestones: [{ id: "m", name: "Cut over", dueOn: "2026-12-04", doneOn: null }],
};

function viewOf(draft: Parameters<typeof scheduleView>[1] = {}, day = asOf) {
  const view = scheduleView(file, draft, day);
  if (!view.ok) throw new Error("refused");
  return view.value;
}

describe("links as written", () => {
  test("are read and written again", () => {
    expect(readLinks("b1 + 2 d; W1", tasks)).toEqual({
      ok: true,
      value: [
        { id: "id-B1", lag: 2 },
        { id: "id-W1", lag: 0 },
      ],
    });
    expect(
      linkWords(
        task("A1", {
          after: [
            { id: "id-B1", lag: 2 },
            { id: "id-W1", lag: 0 },
          ],
        }),
        tasks,
      ),
    ).toBe("B1 + 2 d, W1");
    expect(readLinks(" ", tasks)).toEqual({ ok: true, value: [] });
  });
  test.each(["Z9", "B1 - 2", "B1 + x"])("%s is refused with what was typed", (text) => {
    expect(readLinks(text, tasks)).toMatchObject({ ok: false, error: expect.stringContaining(text) });
  });
});

describe("a schedule on the screen", () => {
  test("shows at once what a change does to followers and the end", () => {
    expect(viewOf().finish).toBe("2026-12-09");
    const moved = viewOf({ "id-B1": { days: 4, notBefore: "2026-12-01" } });
    expect(moved.rows.map(({ now, isDraft }) => [now.start, now.finish, isDraft])).toEqual([
      ["2026-12-01", "2026-12-04", true],
      ["2026-12-09", "2026-12-11", false],
    ]);
  });
  test("says which work lies in no shutdown and which milestone its tasks pass", () => {
    expect(scheduleClashes(file, viewOf())).toEqual([
      "W1 Work lies on 7–9 Dec 2026, in no shutdown on record. None ahead is long enough for its 3 working days: record one, or split the task.",
      "Milestone Cut over is due 4 Dec 2026; its tasks end 9 Dec 2026.",
    ]);
  });
  test("an earlier day does not know what began later", () => {
    const begun = { ...file, tasks: [task("B1", { startedOn: "2026-12-02" })] };
    const view = scheduleView(begun, {}, asOf);
    expect(view.ok && view.value.rows[0]?.task.startedOn).toBeNull();
  });
});

test("working days are stepped over weekends, both ways", () => {
  expect([shiftDay("2026-12-04", 1), shiftDay("2026-12-07", -1), shiftDay("2026-12-02", 5)]).toEqual([
    "2026-12-07",
    "2026-12-04",
    "2026-12-09",
  ]);
});

test("the chart holds whole months, from the first bar to the last", () => {
  expect(chartDays(viewOf(), asOf)).toEqual({
    from: "2026-11-01",
    days: 61,
    months: ["2026-11-01", "2026-12-01"],
  });
});
