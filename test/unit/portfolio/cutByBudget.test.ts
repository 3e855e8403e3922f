import { describe, expect, test } from "vitest";
import { cutByBudget, type Pin, type RankedLine } from "@/lib/portfolio/cutByBudget";

const line = (id: string, cost: number | null, pin: Pin = "none"): RankedLine => ({ id, cost, pin });
const lines = [line("A", 500), line("B", 300), line("C", 250), line("D", 40)];

function cut(list: readonly RankedLine[], budget: number, fill = false) {
  const result = cutByBudget(list, { budget, fill });
  if (!result.ok) throw new Error(result.error.reason);
  return result.value;
}

describe("down the ranking", () => {
  test("stops at the first line the money does not reach", () => {
    expect(cut(lines, 550)).toEqual({
      funded: ["A"],
      spent: 500,
      remaining: 50,
      fundingLine: "B",
      below: ["B", "C", "D"],
      unpriced: [],
    });
  });
  test("filling passes over it and takes what still fits; the funding line stays", () => {
    expect(cut(lines, 550, true)).toMatchObject({
      funded: ["A", "D"],
      spent: 540,
      remaining: 10,
      fundingLine: "B",
      below: ["B", "C"],
    });
  });
  test("money to the cent is enough; none funds none; plenty funds all", () => {
    expect(cut(lines, 800).funded).toEqual(["A", "B"]);
    expect(cut(lines, 0).funded).toEqual([]);
    expect(cut(lines, 2000)).toMatchObject({ fundingLine: null, below: [], remaining: 910 });
  });
});

describe("pins", () => {
  const pinned = (id: string, pin: Pin) => lines.map((l) => (l.id === id ? { ...l, pin } : l));
  test("a line pinned in is paid first and shown in its place", () => {
    expect(cut(pinned("C", "in"), 800)).toMatchObject({ funded: ["A", "C"], fundingLine: "B", spent: 750 });
    expect(cut(pinned("C", "in"), 300)).toMatchObject({ funded: ["C"], fundingLine: "A" });
  });
  test("a line pinned out is neither funded nor below", () => {
    expect(cut(pinned("A", "out"), 550)).toMatchObject({
      funded: ["B", "C"],
      fundingLine: "D",
      below: ["D"],
    });
  });
  test("pins that cost more than there is are refused with what would be enough", () => {
    expect(cutByBudget(pinned("A", "in"), { budget: 450, fill: true })).toEqual({
      ok: false,
      error: { reason: "pins-exceed-budget", enough: 500, short: 50 },
    });
  });
});

describe("a line without an estimate", () => {
  test("is not free: it is left out and named", () => {
    expect(cut([line("X", null), ...lines], 550)).toMatchObject({ funded: ["A"], unpriced: ["X"] });
  });
  test("cannot be pinned in", () => {
    expect(cutByBudget([line("X", null, "in")], { budget: 1, fill: false })).toEqual({
      ok: false,
      error: { reason: "pin-not-priced", ids: ["X"] },
    });
  });
});

test("a broken budget, cost or a repeated id is refused by name", () => {
  expect(() => cutByBudget(lines, { budget: -1, fill: false })).toThrow("budget");
  expect(() => cutByBudget([line("A", 0)], { budget: 1, fill: false })).toThrow("cost");
  expect(() => cutByBudget([line("A", 1), line("A", 2)], { budget: 1, fill: false })).toThrow("lines");
});
