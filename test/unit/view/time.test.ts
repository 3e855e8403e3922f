import { expect, test } from "vitest";
import { day, dayRange, distance, hours, leadTime, moment, month, months, quarter } from "@/lib/view/time";

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, " ");

test("a day reads the same in every zone and cannot be mistaken for another", () => {
  expect(day("2026-04-03")).toBe("3 Apr 2026");
  expect(day("2026-01-01")).toBe("1 Jan 2026");
  expect(month("2026-12-31")).toBe("Dec 2026");
  expect(quarter("2026-04-01")).toBe("Q2 2026");
  expect(day(null)).toBe("not known");
  expect(() => day("2026-02-30")).toThrow(RangeError);
});

test("a range says the month once where both days share it", () => {
  expect(dayRange("2026-04-03", "2026-04-14")).toBe("3–14 Apr 2026");
  expect(dayRange("2026-12-28", "2027-01-03")).toBe("28 Dec 2026 – 3 Jan 2027");
  expect(dayRange("2026-04-03", "2026-04-03")).toBe("3 Apr 2026");
});

test.each([
  ["2026-11-30", "the same day"],
  ["2026-12-01", "in 1 day"],
  ["2026-12-13", "in 13 days"],
  ["2026-12-14", "in 2 weeks"],
  ["2027-01-29", "in 8 weeks"],
  ["2027-01-30", "in 2 months"],
  ["2027-04-29", "in 4 months"],
  ["2027-04-30", "in 5 months"],
  ["2028-11-29", "in 23 months"],
  ["2028-11-30", "in 2 years"],
  ["2026-11-09", "3 weeks ago"],
  ["2025-11-30", "12 months ago"],
])("%s seen from 30 Nov 2026 is %s", (date, text) => {
  expect(distance(date, "2026-11-30")).toBe(text);
});

test("durations keep two digits and their unit", () => {
  expect(plain(hours(3.46))).toBe("3.5 h");
  expect(plain(hours(1234.4))).toBe("1 234 h");
  expect(plain(hours(0.25))).toBe("0.25 h");
  expect(months(1)).toBe("1 month");
  expect(months(2.5)).toBe("2.5 months");
  expect(leadTime(9 / 52.18)).toBe("9 weeks");
  expect(leadTime(3)).toBe("3.0 years");
  expect([hours(null), months(null), leadTime(null)]).toEqual(["not known", "not known", "not known"]);
});

test("an instant is told on the clock of the place, over midnight and summer time too", () => {
  expect(moment("2026-04-03T12:05:00Z", "Europe/Berlin")).toBe("3 Apr 2026, 14:05");
  expect(moment("2026-12-31T23:30:00Z", "Europe/Berlin")).toBe("1 Jan 2027, 00:30");
  expect(moment("2026-03-29T01:00:00Z", "Europe/Berlin")).toBe("29 Mar 2026, 03:00");
  expect(moment("2026-04-03T03:05:00Z", "America/Mexico_City")).toBe("2 Apr 2026, 21:05");
  expect(moment(null, "Europe/Berlin")).toBe("not known");
});
