import { expect, test } from "vitest";
import { dayAt, isWeeklyDue, nextWeeklyDay, weeklyWords } from "@/lib/view/weekly";

test.each([
  ["2026-11-30T03:59:59Z", "Europe/Warsaw", false],
  ["2026-11-30T04:00:00Z", "Europe/Warsaw", true],
  ["2026-11-30T22:59:59Z", "Europe/Warsaw", true],
  ["2026-11-30T23:00:00Z", "Europe/Warsaw", false],
  // Summer time: five o'clock is three o'clock of universal time.
  ["2026-06-01T03:00:00Z", "Europe/Warsaw", true],
  // The first and the last place where it is Monday.
  ["2026-11-29T15:00:00Z", "Pacific/Kiritimati", true],
  ["2026-12-01T10:59:00Z", "Pacific/Pago_Pago", true],
])("at %s in %s due: %s", (instant, zone, due) => {
  expect(isWeeklyDue(instant, zone)).toBe(due);
});

test.each([
  ["2026-11-30T03:59:00Z", "2026-11-30"],
  ["2026-11-30T04:00:00Z", "2026-12-07"],
  ["2026-12-06T23:30:00Z", "2026-12-07"],
  ["2026-12-05T12:00:00Z", "2026-12-07"],
])("after %s the next is on %s", (instant, next) => {
  expect(nextWeeklyDay(instant, "Europe/Warsaw")).toBe(next);
});

test("the day is that of the place", () => {
  expect(dayAt("2026-11-30T23:30:00Z", "Europe/Warsaw")).toBe("2026-12-01");
  expect(dayAt("2026-11-30T23:30:00Z", "Europe/London")).toBe("2026-11-30");
});

test("the rule in words names zone and day, or why there is none", () => {
  const rule = { zone: "Europe/Warsaw", standsAt: null, next: "2026-12-07" };
  expect(weeklyWords(rule)).toBe(
    "One is taken every Monday at 05:00 (Europe/Warsaw), the next on 7 Dec 2026.",
  );
  expect(weeklyWords({ ...rule, standsAt: "2026-11-30" })).toContain(
    "stands at 30 Nov 2026, so none is taken",
  );
});
