import { describe, expect, test } from "vitest";
import { lineScore, type ScoredPool } from "@/lib/risk/score";

const weights = { stage: 0.3, spares: 0.4, repair: 0.3, tolerableHours: 10, horizonYears: 1 };
const drive: ScoredPool = { id: "drive", failureRate: 2, stage: "own-stock", noSpare: 0.5, hoursDown: 40 };
const supply: ScoredPool = { id: "supply", failureRate: 0.4, stage: "open", noSpare: 0.01, hoursDown: 2 };

test("one pool, added up by hand", () => {
  const q = 1 - Math.exp(-2);
  const u = 0.3 * 1 + 0.4 * 0.5 + 0.3 * (1 - Math.exp(-4));
  expect(lineScore([drive], weights).score).toBeCloseTo(100 * q * u, 10);
});
test("two pools multiply what is left, and their shares are of the logarithms", () => {
  const left = [drive, supply].map((pool) => 1 - lineScore([pool], weights).score / 100);
  const [a, b] = left as [number, number];
  const { score, shares } = lineScore([drive, supply], weights);
  expect(score).toBeCloseTo(100 * (1 - a * b), 10);
  expect(shares[0]?.share).toBeCloseTo(Math.log(a) / (Math.log(a) + Math.log(b)), 10);
});
test("no pools or no failures score zero, with shares of zero", () => {
  expect(lineScore([], weights)).toEqual({ score: 0, shares: [] });
  const still = lineScore([{ ...drive, failureRate: 0 }], weights);
  expect(still.score).toBe(0);
  expect(still.shares[0]?.share).toBe(0);
});
test("the worst that can be stays at 100 and in finite shares", () => {
  const worst = { ...drive, failureRate: 1e9, noSpare: 1, hoursDown: 1e9 };
  const { score, shares } = lineScore([worst, worst], weights);
  expect(score).toBeLessThanOrEqual(100);
  expect(score).toBeCloseTo(100, 9);
  expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
});
describe("a corner of the weights shows that part alone", () => {
  const q = 1 - Math.exp(-2);
  test.each([
    ["stage", { stage: 1, spares: 0, repair: 0 }, 1],
    ["spares", { stage: 0, spares: 1, repair: 0 }, 0.5],
    ["repair", { stage: 0, spares: 0, repair: 1 }, 1 - Math.exp(-4)],
  ])("%s", (_, corner, part) => {
    expect(lineScore([drive], { ...weights, ...corner }).score).toBeCloseTo(100 * q * part, 10);
  });
});
test.each<[string, () => unknown]>([
  ["stage + spares + repair", () => lineScore([], { ...weights, stage: 0.4 })],
  ["spares", () => lineScore([], { ...weights, spares: -0.1 })],
  ["tolerableHours", () => lineScore([], { ...weights, tolerableHours: 0 })],
  ["horizonYears", () => lineScore([], { ...weights, horizonYears: 0 })],
  ["failureRate", () => lineScore([{ ...drive, failureRate: -1 }], weights)],
  ["noSpare", () => lineScore([{ ...drive, noSpare: 1.1 }], weights)],
  ["hoursDown", () => lineScore([{ ...drive, hoursDown: Number.NaN }], weights)],
])("a bad %s is refused by name", (name, run) => {
  expect(run).toThrow(RangeError);
  expect(run).toThrow(name);
});
