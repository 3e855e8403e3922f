import { describe, expect, test } from "vitest";
import { stepBack, stepsOpen } from "@/lib/schema/transferSteps";
import { borderBetween } from "@/lib/view/customs";
import { type BoardPool, byUnevenness, highestIndex, siteWorths, usableShares } from "@/lib/view/poolBoard";
import { moveValue, readTransferTerms, together } from "@/lib/view/poolMoves";
import { readBudget } from "@/lib/view/spend";

const site = (country: string, currency: string) => ({ country, currency });

test.each([
  [site("PL", "PLN"), site("SE", "SEK"), false],
  [site("PL", "PLN"), site("MX", "MXN"), true],
  [site("DE", "EUR"), site("GB", "GBP"), true],
  [site("US", "USD"), site("MX", "MXN"), true],
  [site("DE", "EUR"), site("DE", "EUR"), false],
])("customs from %o to %o: %s", (from, to, customs) => {
  const border = borderBetween(from, to);
  expect(border.customs).toBe(customs);
  expect(border.heed.length === 0).toBe(from.country === to.country && from.currency === to.currency);
});

test.each([
  ["200000", 200_000],
  ["200k", 200_000],
  ["1.5 M", 1_500_000],
  ["1 250,50", 1250.5],
  ["0", 0],
  ["-5", null],
  ["much", null],
  ["", null],
  ["1,2,3", null],
])("the budget %s is read as %s", (typed, value) => {
  expect(readBudget(typed)).toBe(value);
});

test("typed bounds of a move hold, and what cannot be used is named and replaced", () => {
  expect(readTransferTerms({ target: "2", least: "0" })).toEqual({
    terms: { target: 0.02, least: 0 },
    unreadable: [],
  });
  expect(readTransferTerms({})).toEqual({ terms: { target: 0.05, least: 500 }, unreadable: [] });
  expect(readTransferTerms({ target: "99", least: "x" })).toEqual({
    ...{ terms: { target: 0.05, least: 500 }, unreadable: ["target", "least"] },
  });
});

describe("shares of the usable pieces", () => {
  const pool = (number: string, north: number, south: number): BoardPool => ({
    ...{ partId: number, number, maker: "Tarnholt Motion", itemClass: "drive", family: null, stage: "open" },
    ...{ installed: 20, book: 12, usable: north + south, removalRate: 0.04, price: null, priceEuro: 100 },
    sites: [
      { siteCode: "NOR", units: 15, book: 8, usable: north },
      { siteCode: "SUD", units: 5, book: 4, usable: south },
    ],
  });
  test("are of what works, not of what is on the books", () => {
    const [north, south] = usableShares([pool("a", 2, 6)]);
    expect(north).toMatchObject({ ofSpares: 0.25, hoards: false });
    expect(north?.ofDemand).toBeCloseTo(0.75, 12);
    expect(south?.index).toBeCloseTo(3, 12);
    expect(south?.hoards).toBe(true);
  });
  test("put the pool with most pieces beyond a share first, and those nobody needs before an even one", () => {
    const idle: BoardPool = {
      ...pool("idle", 1, 0),
      installed: 0,
      sites: [{ siteCode: "NOR", units: 0, book: 1, usable: 1 }],
    };
    expect(highestIndex(idle)).toBe(Number.POSITIVE_INFINITY);
    const rows = byUnevenness([pool("even", 6, 2), pool("uneven", 2, 6), idle]);
    expect(rows.map(({ number }) => number)).toEqual(["uneven", "idle", "even"]);
  });
  test("are worth their price, and pieces without one stand apart", () => {
    const worths = siteWorths([pool("a", 2, 6), { ...pool("b", 2, 6), priceEuro: null }]);
    expect(worths[0]).toEqual({
      siteCode: "NOR",
      book: 16,
      usable: 4,
      bookEuro: 800,
      usableEuro: 200,
      unpriced: 8,
    });
  });
});

test("single moves of a lot to a site are put together, first before and last after", () => {
  const move = (saves: number, before: number, after: number) => ({
    ...{ lotId: "l", fromId: "A", toId: "B", saves, from: { before: 0, after: 0.01 } },
    to: { before, after },
  });
  expect(together([move(90, 1, 0.2), move(10, 0.2, 0.05)])).toMatchObject([
    { pieces: 2, saves: 100, to: { before: 1, after: 0.05 } },
  ]);
  expect(moveValue({ pieces: 3 }, { amount: "0.10", currency: "EUR", pricedOn: null })?.amount).toBe("0.30");
  expect(moveValue({ pieces: 3 }, null)).toBeNull();
});

test("steps are the giver's, the taker's or either's, and each but the first has a way back", () => {
  expect(stepsOpen("proposed", { giver: true, taker: false })).toEqual(["agree", "refuse", "withdraw"]);
  expect(stepsOpen("proposed", { giver: false, taker: true })).toEqual(["withdraw"]);
  expect(stepsOpen("sent", { giver: false, taker: true })).toEqual(["receive"]);
  expect(stepsOpen("sent", { giver: true, taker: false })).toEqual(["send-back"]);
  expect(stepsOpen("received", { giver: false, taker: false })).toEqual([]);
  expect(stepBack("proposed")).toBeNull();
  for (const state of ["agreed", "refused", "sent", "received", "withdrawn"] as const)
    expect(stepBack(state)).not.toBeNull();
});
