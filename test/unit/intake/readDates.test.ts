import { describe, expect, it } from "vitest";
import { readDate, readDateTime } from "@/lib/intake/readDate";
import type { Reading } from "@/lib/intake/reading";

function outcomeOf<T>(reading: Reading<T>): T | "missing" | "refused" {
  return reading.state === "value" ? reading.value : reading.state;
}

describe("dates", () => {
  it.each([
    ["03/04/2026", "dayFirst", "2026-04-03", "day"],
    ["03/04/2026", "monthFirst", "2026-03-04", "day"],
    ["2026-04-03", "monthFirst", "2026-04-03", "day"],
    ["2026-04-03T00:00", "dayFirst", "2026-04-03", "day"],
    ["3.4.26", "monthFirst", "2026-04-03", "day"],
    ["45750", "dayFirst", "2025-04-03", "day"],
    ["KW14/26", "dayFirst", "2026-03-30", "week"],
    ["2026-W53", "dayFirst", "2026-12-28", "week"],
    ["04/2026", "dayFirst", "2026-04-01", "month"],
    ["2026-04", "dayFirst", "2026-04-01", "month"],
    ["Q2 2026", "dayFirst", "2026-04-01", "quarter"],
    ["2026", "dayFirst", "2026-01-01", "year"],
    ["3 Apr 2026", "dayFirst", "2026-04-03", "day"],
    ["3. März 2026", "dayFirst", "2026-03-03", "day"],
    ["3 paź 2026", "dayFirst", "2026-10-03", "day"],
    ["3 de abril de 2026", "dayFirst", "2026-04-03", "day"],
    ["April 3, 2026", "dayFirst", "2026-04-03", "day"],
    ["03-APR-99", "dayFirst", "1999-04-03", "day"],
  ] as const)("reads %s (%s) as %s, precise to the %s", (...[text, order, on, precision]) => {
    expect(outcomeOf(readDate(text, order))).toEqual({ on, precision });
  });

  it("says what was read into a partial date or a day number", () => {
    expect(readDate("Q2 2026", "dayFirst")).toMatchObject({
      inferred: true,
      caution: { problem: expect.stringContaining("quarter") },
    });
    expect(readDate(45750, "dayFirst")).toMatchObject({
      inferred: true,
      caution: { problem: expect.stringContaining("2025-04-03") },
    });
  });

  it.each(["31.02.2026", "2026-W54", "2025-W53", "13/13/2026", "1/2/3", "soon", "0206-01-01", "3 Foo 2026"])(
    "refuses %s",
    (text) => {
      expect(readDate(text, "dayFirst").state).toBe("refused");
    },
  );

  it("refuses month 13 and points at the order", () => {
    expect(readDate("04/13/2026", "dayFirst")).toMatchObject({ remedy: expect.stringContaining("order") });
  });
});

describe("times", () => {
  it.each([
    ["2026-08-11 14:20", "2026-08-11T14:20"],
    ["2026-08-11T14:20:31", "2026-08-11T14:20"],
    ["11.08.2026 7.05", "2026-08-11T07:05"],
    ["11/08/2026 12:10 AM", "2026-08-11T00:10"],
    ["11/08/2026 2:20 pm", "2026-08-11T14:20"],
    ["31.12.2026 24:00", "2027-01-01T00:00"],
    ["45750.5", "2025-04-03T12:00"],
  ])("reads %s as %s", (text, at) => {
    expect(outcomeOf(readDateTime(text, "dayFirst"))).toEqual({ at, precision: "minute" });
  });

  it("takes a bare day as midnight and says so", () => {
    expect(readDateTime("11.08.2026", "dayFirst")).toMatchObject({
      value: { at: "2026-08-11T00:00", precision: "day" },
      inferred: true,
    });
  });

  it.each(["2026-08-11T14:20Z", "2026-08-11T14:20+02:00", "2026-08-11 25:00", "2026-08-11 13:20 pm"])(
    "refuses %s",
    (text) => {
      expect(readDateTime(text, "dayFirst").state).toBe("refused");
    },
  );
});
