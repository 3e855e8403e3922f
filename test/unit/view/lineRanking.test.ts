import { describe, expect, it } from "vitest";
import { kendallTauB } from "@/lib/risk/rankAgreement";
import { drawnTotalOf } from "@/lib/view/drawnTotals";
import { lineAgreement } from "@/lib/view/lineAgreement";
import { concentrationSentence, lineConcentration } from "@/lib/view/lineConcentration";
import { costDoubt, type LineCost, type RankedLine, type Ranking } from "@/lib/view/lineRanking";
import { rankedBy, sumLines } from "@/lib/view/lineTotals";

const cost: LineCost = {
  perHour: 1000,
  fixed: null,
  steps: [],
  owner: "Plant controller",
  approvedOn: "2026-03-01",
  validUntil: "2027-03-01",
  evidence: "documented",
};

interface Given extends Partial<Omit<RankedLine, "stopLoss">> {
  readonly loss: number | null;
}

function lineWith({ loss, ...given }: Given): RankedLine {
  return {
    id: "id",
    code: "A-01",
    name: "Carton",
    siteCode: "A",
    siteName: "Alfa",
    rankByLoss: null,
    rankByScore: 1,
    place: null,
    score: 10,
    scoreParts: { stage: 3, spares: 4, repair: 3 },
    stopLoss: loss === null ? null : { mean: loss, low: loss / 2, high: loss * 2 },
    baseLoss: loss === null ? null : loss / 4,
    shortageLoss: loss === null ? null : (loss * 3) / 4,
    stopsPerYear: 2,
    depletionP80: null,
    depletionPart: null,
    worstStage: "open",
    cost,
    duties: [],
    controllers: [],
    assumed: [],
    ...given,
  };
}

const lines = [
  lineWith({ code: "A-01", loss: 100, score: 40, rankByLoss: 2, rankByScore: 1 }),
  lineWith({ code: "A-02", loss: null, score: 30, rankByScore: 2, worstStage: "own-stock" }),
  lineWith({
    code: "B-01",
    loss: 600,
    score: 20,
    rankByLoss: 1,
    rankByScore: 3,
    siteCode: "B",
    siteName: "Beta",
  }),
  lineWith({
    code: "B-02",
    loss: 50,
    score: 10,
    rankByLoss: 3,
    rankByScore: 4,
    siteCode: "B",
    siteName: "Beta",
  }),
];

describe("the leading rank", () => {
  it("is money unless the address asks for the score", () => {
    expect(["score", "loss", "luck", null, undefined].map(rankedBy)).toEqual([
      "score",
      "loss",
      "loss",
      "loss",
      "loss",
    ]);
  });
});

describe("the total row", () => {
  it("adds up exactly the lines shown, and money over those with a cost", () => {
    expect(sumLines(lines)).toEqual({
      lines: 4,
      costed: 3,
      stopLoss: 750,
      lowest: 375,
      highest: 1500,
      isDrawn: false,
      baseLoss: 187.5,
      shortageLoss: 562.5,
      stopsPerYear: 8,
    });
  });

  it("leaves money unknown when no line has a cost", () => {
    expect(sumLines([lineWith({ loss: null })])).toMatchObject({
      stopLoss: null,
      lowest: null,
      baseLoss: null,
    });
  });
});

describe("the drawn span of the total row", () => {
  const span = (low: number, high: number) => ({ low, mid: low, high, mean: low, error: 1 });
  const totals = { group: span(400, 1200), sites: { A: span(60, 180), B: span(350, 1100) } };
  const ranking = (over: Partial<Ranking>): Ranking => ({
    ...{ asOf: "2026-11-30", engine: "e", dataVersion: 1, groupLines: 4 },
    ...{ totals, lines, ...over },
  });
  const at = (site: string) => lines.filter(({ siteCode }) => siteCode === site);
  it("is the group's for all lines, a site's for all of a site's, and none for any other choice", () => {
    expect(drawnTotalOf(lines, ranking({}))).toBe(totals.group);
    expect(drawnTotalOf(at("B"), ranking({}))).toBe(totals.sites.B);
    expect(drawnTotalOf(lines.slice(0, 3), ranking({}))).toBeNull();
    expect(drawnTotalOf(at("B").slice(0, 1), ranking({}))).toBeNull();
    expect(drawnTotalOf([], ranking({}))).toBeNull();
  });
  it("does not need the lines without a cost per hour", () => {
    expect(drawnTotalOf(at("A").slice(0, 1), ranking({}))).toBe(totals.sites.A);
  });
  it("is not the group's for somebody who sees some sites only", () => {
    const some = ranking({ groupLines: 9, totals: { ...totals, group: null } });
    expect(drawnTotalOf(lines, some)).toBeNull();
    expect(drawnTotalOf(at("B"), some)).toBe(totals.sites.B);
  });
  it("stands in for the added ends", () => {
    expect(sumLines(lines, totals.group)).toMatchObject({ lowest: 400, highest: 1200, isDrawn: true });
  });
});

describe("the agreement of money and score", () => {
  it("is Kendall's tau-b over the lines that have both", () => {
    expect(lineAgreement(lines)).toMatchObject({ tau: kendallTauB([100, 600, 50], [40, 20, 10]), lines: 3 });
  });

  it("counts the pairs that stand alike: two of three here", () => {
    expect(lineAgreement(lines).sentence).toContain("about 67 stand in the same order");
  });

  it("is not claimed for one line", () => {
    expect(lineAgreement(lines.slice(0, 1)).tau).toBeNull();
  });
});

describe("the concentration of the loss", () => {
  it("finds the fewest lines that carry 70 %", () => {
    expect(lineConcentration(lines)).toEqual({ lines: 1, of: 3, share: 0.8, total: 750 });
    const even = [1, 1, 1, 1].map((loss) => lineWith({ loss }));
    expect(lineConcentration(even)).toEqual({ lines: 3, of: 4, share: 0.75, total: 4 });
  });

  it("is a sentence about whose loss it is", () => {
    const found = lineConcentration(lines);
    expect(found && concentrationSentence(found, { whose: "the group's", money: (eur) => `${eur} €` })).toBe(
      "One line carries 80 % of the group's 750 € first-year loss. The other 2 share the rest.",
    );
  });

  it("says nothing when no loss is known", () => {
    expect(lineConcentration([lineWith({ loss: null })])).toBeNull();
  });
});

describe("a cost per hour", () => {
  it("holds only while somebody answers for it and has approved it", () => {
    const doubt = (given: Partial<LineCost>) => costDoubt({ ...cost, ...given }, "2026-11-30");
    expect(doubt({})).toBeNull();
    expect(doubt({ approvedOn: null })).toBe("Not approved");
    expect(doubt({ approvedOn: "2026-12-01" })).toBe("Not approved");
    expect(doubt({ validUntil: "2026-11-29" })).toBe("Approval has run out");
    expect(doubt({ owner: null, approvedOn: null })).toBe("Nobody answers for the figure");
    expect(doubt({ perHour: null })).toBe("No cost per hour recorded");
    expect(doubt({ evidence: "assumed" })).toBe("Assumed");
  });
});
