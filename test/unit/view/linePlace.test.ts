import { describe, expect, test } from "vitest";
import { drawnWords, fragileLines, rankCertainty } from "@/lib/view/lineCertainty";
import {
  checkRange,
  checkReason,
  checkWords,
  oddsSentence,
  type PlaceCheck,
  placeRange,
} from "@/lib/view/linePlace";
import type { RankedLine } from "@/lib/view/lineRanking";

const check = (more: Partial<PlaceCheck>): PlaceCheck => ({
  ...{ kind: "cost", placeAtLow: 14, placeAtHigh: 1, places: 10 },
  ...{ label: null, siteCodes: [], elsewhere: false },
  ...more,
});

/** Lines at places 1, 2, … with the odds of each against the next; null has no money. */
function ranking(odds: readonly (number | null)[]): RankedLine[] {
  return odds.map((beforeNext, i): RankedLine => {
    const last = i === odds.length - 1;
    const span = { low: 1, mid: i + 1, high: odds.length };
    return {
      ...{ id: `id ${i}`, code: `L-${i + 1}`, name: "Line", siteCode: "A", siteName: "Alfa" },
      ...{ rankByLoss: i + 1, rankByScore: 1, score: 1, stopsPerYear: 1, worstStage: "open" },
      scoreParts: { stage: 1, spares: 0, repair: 0 },
      ...{ stopLoss: { mean: 1, low: 1, high: 1 }, baseLoss: 1, shortageLoss: 0 },
      ...{ depletionP80: null, depletionPart: null, controllers: [], assumed: [] },
      cost: {
        perHour: 1,
        fixed: null,
        steps: [],
        owner: null,
        approvedOn: null,
        validUntil: null,
        evidence: "assumed",
      },
      duties: [],
      place: {
        ...{ draws: 400, seed: 20_261_130, span, firstFive: 1, checks: [check({})] },
        ...{ beforeNext: last ? null : beforeNext, fragile: i === 1 },
      },
    };
  });
}

describe("which ranks are solid", () => {
  test("names the firm cuts of the group and the places between them", () => {
    expect(rankCertainty(ranking([0.5, 0.9, 0.6, 0.8, 0]), true)).toBe(
      "Firm: the cut after places 2 and 4, where at least 16 of 20 draws keep the two neighbours in this order. Each close to a tie with the next: places 1–2 and 3–4.",
    );
  });
  test("does not call odds just below the mark firm", () => {
    expect(rankCertainty(ranking([0.79, 0.5, 0]), true)).toBe(
      "No neighbour is firmly before the next. Each close to a tie with the next: places 1–3.",
    );
  });
  test("speaks of a one-site reader's own lines only", () => {
    expect(rankCertainty(ranking([0.9, 0.6, 0]), false)).toBe(
      "Firmly before the next line of the group (16 of 20 draws or more): L-1. Close to a tie with the next: L-2.",
    );
  });
  test("says nothing without money", () => {
    const bare = ranking([0.5]).map((line) => ({ ...line, place: null, rankByLoss: null }));
    expect([rankCertainty(bare, true), drawnWords(bare), fragileLines(bare)]).toEqual([null, null, []]);
  });
  test("says how it was drawn, and which lines are fragile", () => {
    expect(drawnWords(ranking([0.5, 0]))).toBe("400 draws, seed 20261130");
    expect(fragileLines(ranking([0.5, 0.5, 0])).map(({ code }) => code)).toEqual(["L-2"]);
  });
});

describe("words about a place", () => {
  test("ranges", () => {
    expect([placeRange({ low: 1, high: 4 }), placeRange({ low: 3, high: 3 })]).toEqual(["1–4", "3"]);
  });
  test("the next thing to do, another site unnamed", () => {
    expect(checkWords("TAD-01", check({}))).toBe("Finance confirms the cost per hour of TAD-01");
    expect(checkWords("TAD-01", check({ kind: "part", label: "drive" }))).toBe(
      "Identify the unread items on TAD-01 (class drive)",
    );
    expect(
      checkWords("TAD-01", check({ kind: "stock", label: "TM-OK-040", siteCodes: ["TAD"], elsewhere: true })),
    ).toBe("Count TM-OK-040 at TAD, another site");
    expect(checkRange(check({}))).toBe("1–14");
    expect(checkReason(check({}))).toContain("place 14 at one end of what it may be, place 1 at the other");
  });
  test("odds as a count of like groups", () => {
    expect(oddsSentence("PIN-03", "VEL-03", 0.65)).toBe(
      "In 20 such groups about 13 put PIN-03 before VEL-03.",
    );
    expect(oddsSentence("A", "B", 0.99)).toBe("In nearly all of 20 such groups A comes before B.");
    expect([oddsSentence("A", "B", 0), oddsSentence("A", "B", 1)]).toEqual([
      "No draw puts A before B.",
      "Every draw puts A before B.",
    ]);
  });
});
