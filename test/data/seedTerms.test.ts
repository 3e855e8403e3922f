import { expect, test } from "vitest";
import { codeOfLine, codeOfSite, company, D0 } from "@/test/data/seedLookup";

const line = (code: string) => company.Line.find((one) => one.code === code);

test("the safety parts of THO-01 reach their mission time in September 2027, and one legal date stands elsewhere", () => {
  const dates = company.Obligation.map(({ lineId, siteId, kind, dueOn }) => [
    ...[codeOfLine.get(lineId ?? ""), codeOfSite.get(siteId), kind, dueOn],
  ]);
  expect(dates).toEqual([
    ["THO-01", "THO", "safety", "2027-09-30"],
    ["OST-06", "OST", "legal", "2027-05-31"],
  ]);
  for (const { recordedOn, doneOn, source, owner } of company.Obligation) {
    expect([recordedOn <= D0, doneOn]).toEqual([true, null]);
    expect([source, owner]).not.toContain(null);
  }
});

test("three lines cost more in long stops, in the money of their site, each found in another way", () => {
  const terms = company.Line.filter(({ costSteps }) => costSteps !== "[]").map((one) => [
    ...[one.code, one.costFixed, JSON.parse(one.costSteps), one.costMethod],
  ]);
  expect(terms).toEqual([
    [
      ...["VEL-04", 450],
      [
        { afterHours: 24, cost: 8000 },
        { afterHours: 72, cost: 40_000 },
      ],
      "margin",
    ],
    ["OST-03", null, [{ afterHours: 36, cost: 51_600 }], "estimate"],
    // 1.1 dollars to the euro: 600 and 90 000 EUR.
    ["PIN-01", 660, [{ afterHours: 48, cost: 99_000 }], "contract"],
  ]);
});

test("one approval of a cost has run out, and the others hold", () => {
  const ended = company.Line.filter(({ costValidUntil }) => costValidUntil !== null && costValidUntil < D0);
  expect(ended.map(({ code, costOwner }) => [code, costOwner])).toEqual([["OST-03", "Plant controller OST"]]);
  expect(line("VEL-03")?.costValidUntil).toBe("2027-03-31");
});
