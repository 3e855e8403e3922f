import { describe, expect, test } from "vitest";
import { detectDialect, type SampleColumn } from "@/lib/intake/dialect";
import { openQuestions, settleDialect } from "@/lib/intake/settleDialect";

const dates = (header: string, ...cells: string[]): SampleColumn => ({ header, kind: "date", cells });
const numbers = (header: string, ...cells: string[]): SampleColumn => ({ header, kind: "decimal", cells });

describe("a date order no value tells", () => {
  const finding = detectDialect([dates("Notice", "03/04/2026", "05/06/2026")]);

  test("is a question until a person answers it", () => {
    expect(openQuestions(finding, finding.proposal)).toEqual(["dateOrder"]);
    expect(openQuestions(finding, settleDialect(finding, {}))).toEqual(["dateOrder"]);
  });

  test.each(["dayFirst", "monthFirst"] as const)(
    "is closed by the answer %s, whichever it is",
    (dateOrder) => {
      const dialect = settleDialect(finding, { dateOrder });
      expect(openQuestions(finding, dialect)).toEqual([]);
      expect(dialect.columns).toEqual({ Notice: { dateOrder } });
    },
  );

  test("opens again for a column mapped after the answer", () => {
    const dialect = settleDialect(finding, { dateOrder: "dayFirst" });
    const wider = detectDialect([dates("Notice", "03/04/2026"), dates("Last order", "07/08/2026")]);
    expect(openQuestions(wider, dialect)).toEqual(["dateOrder"]);
  });

  test("of a column that has the name of an object's own member is a question too", () => {
    const odd = detectDialect([dates("constructor", "03/04/2026")]);
    expect(openQuestions(odd, settleDialect(odd, {}))).toEqual(["dateOrder"]);
  });
});

test("a column that tells for itself keeps its own custom beside an answer for the others", () => {
  const finding = detectDialect([
    numbers("Price", "1,5", "2,25"),
    numbers("Hours", "1.5"),
    numbers("Units", "1,234", "2.345"),
  ]);
  expect(finding.ask).toEqual(["decimalMark"]);
  const dialect = settleDialect(finding, { decimalMark: "comma" });
  expect(dialect.columns.Hours?.decimalMark ?? dialect.decimalMark).toBe("point");
  expect(dialect.columns.Units).toEqual({ decimalMark: "comma" });
  expect(openQuestions(finding, dialect)).toEqual([]);
});

test("nothing is asked where the values tell", () => {
  const finding = detectDialect([dates("Notice", "23/04/2026", "05/06/2026")]);
  expect(openQuestions(finding, settleDialect(finding, {}))).toEqual([]);
});
