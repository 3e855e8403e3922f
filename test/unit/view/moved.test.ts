import { describe, expect, test } from "vitest";
import type { ChangedInput } from "@/lib/risk/moved/changedInputs";
import { OTHER_SITES } from "@/lib/risk/moved/seenFrom";
import type { MovedLine, MovedSteps } from "@/lib/risk/whatMoved";
import {
  type MovedLook,
  moneyKind,
  movedSentence,
  signedEuros,
  signedMoney,
  snapshotLabel,
} from "@/lib/view/moved";
import { movedWords } from "@/lib/view/movedWords";

const names = {
  parts: { p1: "TM-HR-020" },
  families: { f1: "Oak", f2: "Heron R" },
  sites: { s1: "OST" },
  lines: { l1: "OST-01" },
};
const changed = (more: Partial<ChangedInput>): ChangedInput => ({
  ...{ step: "stock", fact: "stock:usable", lineId: null, poolId: null, siteId: null, of: null },
  ...{ before: 5, after: 3 },
  ...more,
});
const told = (more: Partial<ChangedInput>) => {
  const [input] = movedWords([changed(more)], names);
  return input && `${input.subject}: ${input.what} ${input.before} → ${input.after}`;
};

describe("a changed input in words", () => {
  test.each<[Partial<ChangedInput>, string]>([
    [{ poolId: "p1", siteId: "s1" }, "TM-HR-020 at OST: pieces usable 5 → 3"],
    [
      { poolId: "p1", siteId: OTHER_SITES, fact: "uncounted:on_hold" },
      "TM-HR-020 at other sites: lots not counted, on hold 5 → 3",
    ],
    [
      { step: "corrections", fact: "units", poolId: "unidentified:drive", lineId: "l1", siteId: "s1" },
      "Unidentified drive on OST-01: units installed 5 → 3",
    ],
    [
      { step: "corrections", fact: "costPerHour", lineId: "l1", siteId: "s1", before: null, after: 1500 },
      "OST-01: cost of an hour's stop not known → € 1\u202f500",
    ],
    [
      { step: "corrections", fact: "costSteps", lineId: "l1", before: null, after: "48:10000;72:25000" },
      "OST-01: cost steps none → € 10\u202f000 after 48\u00a0h, € 25\u202f000 after 72\u00a0h",
    ],
    [
      { step: "corrections", fact: "fixedCost", lineId: "l1", before: null, after: 700 },
      "OST-01: fixed cost of a stop none → € 700",
    ],
    [
      {
        ...{ step: "corrections", fact: "machinesNeeded", lineId: "l1", poolId: "p1" },
        ...{ before: null, after: "2 of formers" },
      },
      "TM-HR-020 on OST-01: machines needed all → 2 of formers",
    ],
    [
      { step: "corrections", fact: "line", lineId: "gone", before: 1, after: 0 },
      "a line no longer kept: line there → not there",
    ],
    [{ fact: "familyId", poolId: "p1", before: "f1", after: "f2" }, "TM-HR-020: family Oak → Heron R"],
    [
      { step: "dates", fact: "lastOrderOn", poolId: "p1", before: null, after: "2027-04-30" },
      "TM-HR-020: last order not known → 30 Apr 2027",
    ],
    [{ step: "events", fact: "stops", of: "drive:with" }, "Drive, spare at hand: stops on record 5 → 3"],
    [
      { step: "assumptions", fact: "assumption", of: "classes.drive.leadYears", before: 0.2, after: 0.5 },
      "Lead time when not recorded, drive: assumption 0.2 → 0.5",
    ],
    [
      { step: "clock", fact: "asOf", before: "2026-11-30", after: "2026-12-07" },
      "Everything: as-of day 30 Nov 2026 → 7 Dec 2026",
    ],
  ])("%o", (more, words) => {
    expect(told(more)).toBe(words);
  });

  test("unit-years are told in one row", () => {
    const years = ["s1", OTHER_SITES].map((siteId) =>
      changed({ step: "events", fact: "unitYears", poolId: "p1", siteId, before: 100, after: 100.5 }),
    );
    expect(movedWords(years, names)).toMatchObject([
      { subject: "Unit-years in service, 2 parts and sites", before: "200.00", after: "201.00" },
    ]);
  });
});

const steps = (more: Partial<MovedSteps>): MovedSteps => ({
  ...{ corrections: 0, events: 0, stock: 0, dates: 0, assumptions: 0, clock: 0 },
  ...more,
});
const look = (total: Partial<MovedSteps>, change: number): MovedLook => {
  const line = (code: string, stock: number) => ({ code, steps: steps({ stock }) }) as MovedLine;
  const end = (asOf: string) => ({ id: asOf, asOf, takenAt: null, takenBy: null });
  return {
    ...{
      from: end("2026-11-30"),
      to: end("2026-12-07"),
      isWholeGroup: true,
      isSound: true,
      engine: "e",
      inputs: [],
    },
    lines: [line("OST-01", 10), line("OST-02", 30)],
    total: { before: 0, after: 0, change, steps: steps(total) },
  };
};

test("the sentence names the change, the step and the line that mattered most", () => {
  expect(movedSentence(look({ stock: 12_400, events: -400 }, 12_000))).toBe(
    "The group's stop loss rose by €\u00a012\u202f000 a year from 30 Nov 2026 to 7 Dec 2026; stock mattered most (+\u2060€\u00a012\u202f400), most of it on OST-02.",
  );
  expect(movedSentence(look({ events: -400 }, -400))).toContain("fell by");
  expect(movedSentence(look({ events: -400, stock: 400 }, 0))).toContain("is the same in sum");
  expect(movedSentence({ ...look({}, 0), isWholeGroup: false })).toBe(
    "Your lines' stop loss did not move from 30 Nov 2026 to 7 Dec 2026.",
  );
});

test("less loss is better, and signs are printed", () => {
  expect([-1, 0, 1].map(moneyKind)).toEqual(["better", "same", "worse"]);
  expect([-1234, 0, 5].map(signedEuros)).toEqual(["\u22121\u202f234", "0", "+5"]);
  expect([-1234, 0, 5].map(signedMoney)).toEqual([
    "\u2212\u2060€\u00a01\u202f234",
    "€\u00a00",
    "+\u2060€\u00a05",
  ]);
});

test("a snapshot is named by its day, and when and by whom it was taken", () => {
  const mark = { id: "x", asOf: "2026-11-30", takenAt: "2026-11-30T04:00:00Z", takenBy: null };
  expect(snapshotLabel(mark, "Europe/Warsaw")).toBe(
    "30 Nov 2026 – taken 30 Nov 2026, 05:00 (Europe/Warsaw), weekly",
  );
  expect(snapshotLabel({ ...mark, takenAt: null }, "UTC")).toBe("The data as they are, 30 Nov 2026");
});
