import { describe, expect, test } from "vitest";
import { isoWeek, isoWeekText } from "@/lib/kernel/isoWeek";

/** Examples of days around New Year: ISO 8601-1:2019 week dates, as tabled in the public article on them. */
const EXAMPLES = [
  ["2005-01-01", "2004-W53", 6],
  ["2005-01-02", "2004-W53", 7],
  ["2005-12-31", "2005-W52", 6],
  ["2006-01-01", "2005-W52", 7],
  ["2006-01-02", "2006-W01", 1],
  ["2007-01-01", "2007-W01", 1],
  ["2007-12-30", "2007-W52", 7],
  ["2007-12-31", "2008-W01", 1],
  ["2008-12-28", "2008-W52", 7],
  ["2008-12-29", "2009-W01", 1],
  ["2009-12-31", "2009-W53", 4],
  ["2010-01-01", "2009-W53", 5],
  ["2010-01-03", "2009-W53", 7],
] as const;

/** Years of 53 weeks from 1970 to 2048: those that begin, or leap years that end, on a Thursday (ISO 8601). */
const LONG_YEARS = [1970, 1976, 1981, 1987, 1992, 1998, 2004, 2009, 2015, 2020, 2026, 2032, 2037, 2043, 2048];

describe("the week of a day", () => {
  test.each(EXAMPLES)("%s lies in %s", (date, text, weekday) => {
    expect(isoWeekText(date)).toBe(text);
    expect(isoWeek(date).weekday).toBe(weekday);
  });

  test("has 53 weeks in exactly the years that are known to", () => {
    const years = Array.from({ length: 2048 - 1970 + 1 }, (_, after) => 1970 + after);
    expect(years.filter((year) => isoWeek(`${year}-12-28`).week === 53)).toEqual(LONG_YEARS);
  });

  test("refuses a day that does not exist", () => {
    expect(() => isoWeek("2026-02-30")).toThrow(RangeError);
  });
});
