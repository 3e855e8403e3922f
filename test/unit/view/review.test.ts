import { describe, expect, test } from "vitest";
import type { MovedPool, MovedValue } from "@/lib/risk/moved/movedPools";
import { MOVED_STEPS, type MovedStep } from "@/lib/risk/moved/snapshotInput";
import { gotBetter, gotWorse, mainStep, spanOf } from "@/lib/view/review";
import { actionStateWords, byDue, isLate, type ReviewAction } from "@/lib/view/reviewRecord";
import { movedFigures, stepRows } from "@/lib/view/reviewWords";

function value(before: number | null, moves: Partial<Record<MovedStep, number>> = {}): MovedValue {
  const steps = Object.fromEntries(MOVED_STEPS.map((step) => [step, moves[step] ?? 0])) as Record<
    MovedStep,
    number
  >;
  const change = MOVED_STEPS.reduce((sum, step) => sum + steps[step], 0);
  return { before, after: before === null ? null : before + change, steps, change };
}

const pool = (more: Partial<MovedPool>): MovedPool => ({
  ...{ poolId: "p", units: 4, noSpare: value(20), loss: value(9_000), usable: value(30) },
  ...more,
});

describe("what is listed", () => {
  test.each<[string, Partial<MovedPool>, "worse" | "better" | "neither"]>([
    ["nothing moved", {}, "neither"],
    ["a chance gained of 0.1 points", { noSpare: value(20, { clock: 1 }) }, "neither"],
    ["a chance gained of 0.2 points", { noSpare: value(20, { clock: 2 }) }, "worse"],
    ["€ 499 more", { loss: value(9_000, { events: 499 }) }, "neither"],
    ["€ 500 more", { loss: value(9_000, { events: 500 }) }, "worse"],
    ["four tenths of a piece fewer", { usable: value(30, { stock: -4 }) }, "neither"],
    ["half a piece fewer", { usable: value(30, { stock: -5 }) }, "worse"],
    ["half a piece more", { usable: value(30, { stock: 5 }) }, "better"],
    ["worse in one", { loss: value(9_000, { events: 700 }), usable: value(30, { stock: 9 }) }, "worse"],
  ])("%s", (_, more, verdict) => {
    expect(gotWorse(pool(more))).toBe(verdict === "worse");
    expect(gotBetter(pool(more))).toBe(verdict === "better");
  });

  test("with the step that made most of it", () => {
    expect(mainStep(pool({ loss: value(9_000, { events: 900, clock: 200, stock: -100 }) }))).toBe("events");
    expect(mainStep(pool({ noSpare: value(20, { dates: 3, clock: 1 }) }))).toBe("dates");
    expect(mainStep(pool({ usable: value(30, { stock: -9, clock: -1 }) }))).toBe("stock");
  });
});

describe("a part that moved, as shown", () => {
  const moved = pool({
    noSpare: value(21, { events: 4 }),
    loss: value(null),
    usable: value(30, { stock: -5 }),
  });

  test("before, now and the change", () => {
    const { noSpare, loss, usable } = movedFigures(moved);
    expect(noSpare).toEqual({
      before: "2.1\u00a0%",
      after: "2.5\u00a0%",
      kind: "worse",
      change: "+0.4 points",
    });
    expect(loss).toMatchObject({ before: "not known", after: "not known", kind: "same" });
    expect(usable).toEqual({ before: "3.0", after: "2.5", kind: "worse", change: "\u22120.5" });
  });

  test("step by step, the last row being all of them", () => {
    const rows = stepRows(moved);
    expect(rows.map(({ name }) => name)).toEqual([
      ...["Data corrections", "Events", "Stock", "Dates", "Assumptions", "Clock"],
      "Together",
    ]);
    expect(rows[1]).toMatchObject({ noSpare: "+0.4", usable: "0.0" });
    expect(rows[2]).toMatchObject({ noSpare: "0.0", usable: "\u22120.5" });
    expect(rows[6]).toMatchObject({ noSpare: "+0.4", usable: "\u22120.5" });
  });
});

test.each([
  [-1, 0],
  [0, 30],
  [30, 30],
  [31, 60],
  [60, 60],
  [61, 90],
  [90, 90],
])("a day %i days away is within %i days", (days, span) => {
  expect(spanOf(days)).toBe(span);
});

describe("actions", () => {
  const action = (id: string, more: Partial<ReviewAction> = {}): ReviewAction => ({
    ...{ id, text: id, part: null, line: null, owner: { id: "o", name: "Planner" }, raisedOn: "2026-11-17" },
    ...{ dueOn: "2026-12-04", state: "open", settledOn: null, reason: null, version: 1 },
    ...more,
  });
  const late = action("late", { dueOn: "2026-11-20" });
  const later = action("later", { dueOn: "2026-11-29" });
  const open = action("open");
  const done = action("done", { state: "done", settledOn: "2026-11-28", dueOn: "2026-11-01" });
  const dropped = action("dropped", { state: "dropped", settledOn: "2026-11-29", reason: "bought" });

  test("stand by how long they are due, settled ones last", () => {
    const sorted = [done, open, later, dropped, late].sort(byDue).map(({ id }) => id);
    expect(sorted).toEqual(["late", "later", "open", "dropped", "done"]);
  });

  test("are late from the day after they were due, and only while open", () => {
    expect(isLate(later, "2026-11-29")).toBe(false);
    expect(isLate(later, "2026-11-30")).toBe(true);
    expect(isLate(done, "2026-11-30")).toBe(false);
    expect(actionStateWords(late, "2026-11-30")).toBe("▲ late");
    expect(actionStateWords(open, "2026-11-30")).toBe("○ open");
    expect(actionStateWords(dropped, "2026-11-30")).toBe("– dropped");
  });
});
