import { expect, it } from "vitest";
import { figure } from "@/lib/view/lineArithmeticStep";
import { writeSteps } from "@/lib/view/lineSteps";

it("writes a step with its numbers named where they stand, counts in full and the rest to four digits", () => {
  const step = {
    title: "Failures on this line",
    result: figure("failures", 1.43536, "a year"),
    calculation: [
      figure("units", 46),
      "×",
      figure("rate", 0.0312034, "per unit-year"),
      "+",
      figure("none", 0.04),
    ],
    note: null,
  };
  expect(writeSteps([step])).toEqual([
    {
      label: "Failures on this line",
      formula: "46 units × 0.0312 rate + 0.04 none",
      value: "1.435",
      unit: "a year",
      note: null,
    },
  ]);
});

it("keeps large amounts and zero as they are", () => {
  const step = { title: "t", result: figure("sum", 123456.7), calculation: [figure("no", 0)], note: null };
  expect(writeSteps([step]).map(({ value, formula }) => [value, formula])).toEqual([
    ["123\u202f500", "0 no"],
  ]);
});
