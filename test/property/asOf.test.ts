import { array, assert, integer, option, property, record } from "fast-check";
import { describe, test } from "vitest";
import { addDays } from "@/lib/kernel/isoDate";
import { supplyStage } from "@/lib/lifecycle/supplyStage";
import { progress } from "@/lib/projects/progress";
import { noDates } from "../support/smallGroup";

describe("an earlier day ignores later facts", () => {
  const asOf = "2026-11-30";
  const later = integer({ min: 1, max: 3000 }).map((days) => addDays(asOf, days));
  const past = integer({ min: 1, max: 700 }).map((days) => addDays(asOf, -days));
  test("a notice given later leaves a part open, and one read later leaves it undated, whatever it says", () => {
    assert(
      property(
        record({ noticeOn: later, lastOrderOn: later, lastShipOn: option(later) }),
        past,
        (days, checkedOn) => {
          const told = { ...noDates, ...days };
          const open = supplyStage({ ...told, checkedOn }, asOf);
          const unread = supplyStage({ ...told, checkedOn: days.noticeOn }, asOf);
          return open === "open" && unread === "undated";
        },
      ),
    );
  });
  test("a milestone done later counts as not done, in what is earned, overdue and foretold", () => {
    const milestone = record({
      weight: integer({ min: 0, max: 50 }),
      dueOn: option(past),
      doneOn: option(past),
    });
    assert(
      property(array(milestone, { minLength: 1, maxLength: 6 }), later, (list, day) => {
        const open = list.map((m, i) => ({ ...m, id: `m${i}` }));
        const laterDone = open.map((m) => (m.doneOn === null ? { ...m, doneOn: day } : m));
        const plan = { startsOn: "2025-01-01", endsOn: "2027-06-30" };
        const seen = progress({ ...plan, milestones: laterDone }, asOf);
        return JSON.stringify(seen) === JSON.stringify(progress({ ...plan, milestones: open }, asOf));
      }),
    );
  });
});
