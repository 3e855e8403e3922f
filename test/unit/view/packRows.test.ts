import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { RankedLine } from "@/lib/view/lineRanking";
import { packRows, unpackRows } from "@/lib/view/packRows";
import { packRanking, unpackRanking } from "@/lib/view/rankingRows";

const columns = { numbers: ["loss", "rank"], words: ["code", "name"] } as const;

const number = fc.option(
  fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value + 0),
  { nil: null },
);
const row = fc.record({ loss: number, rank: number, code: fc.string(), name: fc.string() });

describe("packed rows", () => {
  it("come back to the last bit, commas and quotes among them", () => {
    fc.assert(
      fc.property(fc.array(row), (rows) => {
        const sent = JSON.parse(JSON.stringify(packRows(rows, columns)));
        expect(unpackRows(sent, columns)).toEqual(rows);
      }),
    );
  });

  it("are refused when a column lacks a value", () => {
    const packed = packRows([{ loss: 1, rank: 2, code: "a", name: "b" }], columns);
    const short = { ...packed, numbers: { ...packed.numbers, loss: "1,2" } };
    expect(() => unpackRows(short, columns)).toThrow(RangeError);
  });
});

const line: RankedLine = {
  ...{ id: "1", code: "A-01", name: "Carton, folding", siteCode: "A", siteName: 'Works "A"' },
  ...{ rankByLoss: 1, rankByScore: 2, score: 61.25, scoreParts: { stage: 1 / 3, spares: 40, repair: 20.9 } },
  place: {
    ...{ draws: 400, seed: 1, span: { low: 1, mid: 2, high: 5 }, firstFive: 0.93, beforeNext: 0.6 },
    ...{ fragile: true, checks: [] },
  },
  stopLoss: { mean: 1234.5678901234567, low: 0.1, high: 1e7 },
  ...{ baseLoss: 1000.1, shortageLoss: 234.4, stopsPerYear: 2.5, depletionP80: "2027-06-16" },
  ...{ depletionPart: { id: null, label: "Unidentified drive" }, worstStage: "own-stock" },
  cost: {
    ...{ perHour: 1850, fixed: 3, steps: [{ afterHours: 4, cost: 10 }], owner: "Plant controller" },
    ...{ approvedOn: "2026-03-01", validUntil: null, evidence: "documented" },
  },
  duties: [{ kind: "safety", title: "Stop category", dueOn: "2027-01-31" }],
  controllers: [
    { designation: "K1", model: "Slate 3", firmware: 15, memoryPercent: null, axes: 10, step: "swap" },
    { designation: "K2", model: "Slate 3", firmware: null, memoryPercent: 4, axes: 2, step: "none" },
  ],
  assumed: [],
};
const bare: RankedLine = {
  ...line,
  ...{ code: "A-02", rankByLoss: null, place: null, stopLoss: null, baseLoss: null, shortageLoss: null },
  ...{ depletionP80: null, depletionPart: null, cost: { ...line.cost, perHour: null }, controllers: [] },
};

it("the ranking reaches its table with every figure as it was read", () => {
  const ranking = {
    ...{ asOf: "2026-11-30", engine: "e", dataVersion: 7, groupLines: 2 },
    ...{ totals: { group: null, sites: {} }, lines: [line, bare] },
  } as const;
  const { lines, ...rest } = unpackRanking(JSON.parse(JSON.stringify(packRanking(ranking))));
  expect(rest).toEqual({
    asOf: "2026-11-30",
    engine: "e",
    dataVersion: 7,
    groupLines: 2,
    totals: ranking.totals,
  });
  const [first, second] = lines;
  expect(first).toMatchObject({
    ...{ code: line.code, name: line.name, siteName: line.siteName, scoreParts: line.scoreParts },
    ...{ stopLoss: line.stopLoss, baseLoss: line.baseLoss, depletionPart: line.depletionPart },
    ...{ duties: line.duties, place: { span: { low: 1, mid: 2, high: 5 }, firstFive: 0.93, fragile: true } },
    control: { all: 2, below: 1, unread: 1, floor: "a controller to swap", lead: { model: "Slate 3" } },
  });
  expect(first?.cost.perHour).toBe(1850);
  expect(second).toMatchObject({ place: null, stopLoss: null, rankByLoss: null, depletionP80: null });
  expect(second?.control).toMatchObject({ lead: null, all: 0 });
});
