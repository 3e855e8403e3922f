import { describe, expect, test } from "vitest";
import { addDays, addMonths, daysBetween, isIsoDate, isoDate, yearsBetween } from "@/lib/kernel/isoDate";

describe("a date is an existing day", () => {
  test.each(["2026-11-30", "2024-02-29", "2000-02-29", "0001-01-01", "9999-12-31"])("%s is one", (text) => {
    expect(isIsoDate(text)).toBe(true);
  });
  test.each([
    "2026-02-29",
    "1900-02-29",
    "2026-04-31",
    "2026-13-01",
    "2026-00-10",
    "2026-1-1",
    "30.11.2026",
    "2026-11-30T00:00:00Z",
    " 2026-11-30",
    "0000-01-01",
    "",
  ])("%s is none", (text) => {
    expect(isIsoDate(text)).toBe(false);
    expect(() => isoDate(text)).toThrow(RangeError);
  });
});

test("days are added across months, leap days and years", () => {
  expect(addDays("2026-11-30", 1)).toBe("2026-12-01");
  expect(addDays("2024-02-28", 1)).toBe("2024-02-29");
  expect(addDays("2026-01-01", -1)).toBe("2025-12-31");
  expect(() => addDays("2026-01-01", 0.5)).toThrow("days");
  expect(() => addDays("9999-12-31", 1)).toThrow("year");
});

test("a month later keeps the day or takes the month's last", () => {
  expect(addMonths("2026-01-31", 1)).toBe("2026-02-28");
  expect(addMonths("2024-01-31", 1)).toBe("2024-02-29");
  expect(addMonths("2026-11-30", 3)).toBe("2027-02-28");
  expect(addMonths("2026-01-15", -1)).toBe("2025-12-15");
  expect(addMonths("2026-03-31", -13)).toBe("2025-02-28");
  expect(addMonths("2026-12-01", 12)).toBe("2027-12-01");
});

test("days between two dates are signed; a year has 365.25", () => {
  expect(daysBetween("2026-11-30", "2027-04-30")).toBe(151);
  expect(daysBetween("2027-04-30", "2026-11-30")).toBe(-151);
  expect(daysBetween("2026-03-28", "2026-03-30")).toBe(2);
  expect(yearsBetween("2020-01-01", "2024-01-01")).toBe(4);
});
