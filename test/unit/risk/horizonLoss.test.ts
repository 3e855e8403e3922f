import { describe, expect, test } from "vitest";
import { type Assumptions, likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput, InstalledInput } from "@/lib/risk/evaluation";
import { line, noDates, pool, smallGroup } from "../../support/smallGroup";

const undiscounted: Assumptions = { ...likelyAssumptions, discountRate: 0 };
/** Parts nobody has read: their no-spare chance stays at one half for all years. */
const steady: GroupInput = {
  ...smallGroup,
  lines: [line("VEL-03", "VEL")],
  pools: [pool("unidentified:drive", { familyId: null, dates: { ...noDates, checkedOn: null } })],
  installed: [{ lineId: "VEL-03", poolId: "unidentified:drive", units: 20 }],
};
function first(input: GroupInput, assumptions: Assumptions) {
  const [one] = evaluate(input, assumptions).lines;
  if (!one?.horizonLoss || !one.stopLoss) throw new Error("no loss");
  return { ...one.horizonLoss, yearly: one.stopLoss.mean };
}
const leaving = (leaves: NonNullable<InstalledInput["leaves"]>): GroupInput => ({
  ...steady,
  installed: steady.installed.map((row) => ({ ...row, leaves })),
});

describe("five years of a steady loss", () => {
  test("undiscounted they are five times the year, each year alike", () => {
    const { years, loss, byYear, yearly } = first(steady, undiscounted);
    expect(years).toBe(5);
    expect(byYear).toHaveLength(5);
    for (const year of byYear) expect(year / yearly).toBeCloseTo(1, 9);
    expect(loss).toBe(byYear.reduce((sum, year) => sum + year, 0));
  });
  test("at 8 % a year every year weighs 1.08 times less than the one before", () => {
    const { loss, byYear, yearly } = first(steady, likelyAssumptions);
    for (const [i, year] of byYear.slice(1).entries()) expect((byYear[i] ?? 0) / year).toBeCloseTo(1.08, 9);
    // Twelve payments a year in the middle of their months: annuity formula, from memory.
    const monthly = 1.08 ** (1 / 12);
    const annuity = ((1 - 1.08 ** -5) / (monthly - 1)) * Math.sqrt(monthly);
    expect(loss).toBeCloseTo((yearly / 12) * annuity, 6);
  });
  test("units that leave after two and a half years are lost no more from then on", () => {
    const { byYear, yearly } = first(leaving([{ on: "2029-05-30", units: 15, kept: true }]), undiscounted);
    const shares = byYear.map((year) => year / yearly);
    expect(shares[1]).toBeCloseTo(1, 9);
    expect(shares[2]).toBeCloseTo(0.25 + 0.75 / 2, 2);
    expect(shares[3]).toBeCloseTo(0.25, 9);
  });
  test("what should have left before today is still there; what leaves today is not", () => {
    const late = first(leaving([{ on: "2026-01-01", units: 20, kept: false }]), undiscounted);
    expect(late.loss).toBe(first(steady, undiscounted).loss);
    expect(first(leaving([{ on: "2026-11-30", units: 20, kept: false }]), undiscounted).loss).toBe(0);
  });
  test("no more leave than are there", () => {
    const { byYear } = first(leaving([{ on: "2027-11-30", units: 90, kept: true }]), undiscounted);
    expect(byYear.slice(1)).toEqual([0, 0, 0, 0]);
  });
});

test("the first year, undiscounted, is the yearly loss: the same months in the same way", () => {
  for (const { stopLoss, horizonLoss } of evaluate(smallGroup, undiscounted).lines)
    expect((horizonLoss?.byYear[0] ?? 0) / (stopLoss?.mean ?? 1)).toBeCloseTo(1, 9);
});
test("a shelf that erodes makes each year dearer than the one before", () => {
  const { byYear } = first(smallGroup, undiscounted);
  expect(byYear).toEqual([...byYear].sort((a, b) => a - b));
  expect(byYear[4]).toBeGreaterThan(1.02 * (byYear[0] ?? 0));
});
test("a negative discount is refused by name", () => {
  expect(() => evaluate(steady, { ...likelyAssumptions, discountRate: -0.1 })).toThrow("discountRate");
});
