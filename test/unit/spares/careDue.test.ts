import { expect, it, test } from "vitest";
import { careDue } from "@/lib/spares/careDue";

const asOf = "2026-11-30";

it.each([
  ["2025-11-30", "overdue", "2026-11-30"],
  ["2025-12-01", "soon", "2026-12-01"],
  ["2026-01-29", "soon", "2027-01-29"],
  ["2026-01-30", "later", "2027-01-30"],
  [null, "unknown", null],
  ["2026-12-01", "unknown", null],
])("care last given on %s every 12 months is %s, due on %s", (lastOn, state, dueOn) => {
  expect(careDue(lastOn, 12, asOf)).toEqual({ dueOn, state });
});

test("an interval is a whole number of months above zero", () => {
  for (const months of [0, -1, 1.5]) expect(() => careDue(null, months, asOf)).toThrow(RangeError);
});
