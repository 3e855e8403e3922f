import { describe, expect, test } from "vitest";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { drawGroup } from "@/lib/risk/draws/drawRanks";
import { drawTotals } from "@/lib/risk/draws/drawTotals";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput } from "@/lib/risk/evaluation";
import { line, smallGroup } from "../../support/smallGroup";

const options = { draws: 4000, seed: 5 };
const drawn = (input: GroupInput = smallGroup) => drawGroup(input, likelyAssumptions, options);

describe("drawn totals", () => {
  test("by hand: draw by draw, then the points", () => {
    const losses = new Map([
      ["A", Float64Array.of(1, 2, 3)],
      ["B", Float64Array.of(30, 20, 10)],
      ["C", Float64Array.of(5, 5, 5)],
    ]);
    const at = (id: string, siteId: string) => ({ id, siteId });
    const { group, sites } = drawTotals([at("A", "N"), at("B", "N"), at("C", "S"), at("D", "T")], losses);
    expect(sites.N).toMatchObject({ low: 13, mid: 22, high: 31, mean: 22 });
    expect(sites.S).toMatchObject({ low: 5, mid: 5, high: 5, mean: 5, error: 0 });
    expect(sites).not.toHaveProperty("T");
    expect(group).toMatchObject({ low: 18, mid: 27, high: 36, mean: 27 });
  });
  test("the mean of the sum is the sum of the means, of the group and of each site", () => {
    const { places, totals } = drawn();
    const mean = (ids: readonly string[]) =>
      places.filter(({ lineId }) => ids.includes(lineId)).reduce((sum, one) => sum + one.stopLoss.mean, 0);
    expect(totals.group?.mean).toBeCloseTo(mean(["VEL-03", "TAD-01", "VEL-04"]), 4);
    expect(totals.sites.VEL?.mean).toBeCloseTo(mean(["VEL-03", "VEL-04"]), 4);
    expect(totals.sites.TAD?.mean).toBeCloseTo(mean(["TAD-01"]), 4);
  });
  test("the mean is the evaluation's, within four standard errors", () => {
    const exact = evaluate(smallGroup, likelyAssumptions).stopLoss.mean;
    const { group } = drawn().totals;
    if (!group) throw new Error("no total");
    expect(Math.abs(group.mean - exact)).toBeLessThan(4 * group.error);
    expect(group.error).toBeLessThan(0.02 * exact);
  });
  test("the span is narrower than with every line at one end at once, and one line's own is that line's", () => {
    const { places, totals } = drawn();
    const ends = (end: "low" | "high") => places.reduce((sum, { stopLoss }) => sum + stopLoss[end], 0);
    expect(totals.group?.low).toBeGreaterThan(ends("low"));
    expect(totals.group?.high).toBeLessThan(ends("high"));
    expect(totals.sites.TAD).toEqual(places.find(({ lineId }) => lineId === "TAD-01")?.stopLoss);
  });
  test("lines that are one and the same thing twice over do not even out", () => {
    const twice: GroupInput = {
      ...smallGroup,
      lines: ["A", "B"].map((id) => line(id, "VEL", { costEvidence: "measured" })),
      installed: ["A", "B"].map((lineId) => ({ lineId, poolId: "oak", units: 30 })),
    };
    const { places, totals } = drawn(twice);
    const [one] = places;
    if (!one || !totals.group) throw new Error("no draws");
    const relative = ({ low, high, mean }: { low: number; high: number; mean: number }) =>
      (high - low) / mean;
    expect(relative(totals.group) / relative(one.stopLoss)).toBeGreaterThan(0.9);
  });
  test("without any cost per hour there is no total", () => {
    const lines = smallGroup.lines.map((one) => ({ ...one, costPerHour: null }));
    expect(drawn({ ...smallGroup, lines }).totals).toEqual({ group: null, sites: {} });
  });
});
