import { describe, expect, test } from "vitest";
import { judgeController, judgeLine } from "@/lib/retrofit/compatibility";
import { compareJudged } from "@/lib/retrofit/compatibility/compareJudged";
import type { AxisGroup, ControllerFacts, Rule } from "@/lib/retrofit/compatibility/facts";
import { worstState } from "@/lib/retrofit/compatibility/verdict";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";

const said = { version: 1, evidence: "documented" } as const;
const floor = (level: string): Rule => ({
  ...{ code: "R1", kind: "controller_floor", ...said },
  terms: {
    families: ["Heron E", "Elm"],
    controllers: [
      { model: "Slate 5", level },
      { model: "Slate 7", level: null },
    ],
  },
});
const ceiling: Rule = { code: "R2", kind: "ceiling", ...said, terms: { model: "Slate 3", level: "18" } };
const memory: Rule = {
  ...{ code: "R3", kind: "memory_growth", ...said },
  terms: { model: "Slate 5", level: "24", factor: 1.15, cautionPercent: 85, blockedPercent: 95 },
};
const card: Rule = {
  ...{ code: "R4", kind: "card_lost", ...said },
  terms: { level: "24", card: "Link R", letter: "C", racks: "Pebble" },
};
const motor: Rule = {
  ...{ code: "R5", kind: "motor_match", ...said },
  terms: { motor: "Wren", drive: "Heron E", fit: "adapter", upToKw: 3 },
};
const revision: Rule = {
  ...{ code: "R6", kind: "hardware_revision", ...said },
  terms: { family: "Heron R", revision: "C3", controllers: [{ model: "Slate 5", level: "21" }] },
};
const ring: Rule = { code: "R7", kind: "ring_whole", ...said, terms: {} };
const rules = [floor("24"), ceiling, memory, card, motor, revision, ring];

const group = (given: Partial<AxisGroup>): AxisGroup => ({
  ...{ axes: 6, drive: "Heron R", targets: ["Heron E"], motor: "Finch", powerKw: 1.5 },
  ...{ feedback: "digital", evidence: "documented", ...given },
});
const controller = (level: string | null, given: Partial<ControllerFacts> = {}): ControllerFacts => ({
  ...{ designation: "K1", model: "Slate 5", level: parseFirmwareLevel(level), memoryPercent: 60 },
  ...{
    evidence: "measured",
    readOn: "2026-06-01",
    leads: false,
    groups: [group({})],
  },
  ...{ cards: [], racks: [], rings: [], hardware: null, axisLimit: null, axesInAll: 6, ...given },
});
const verdict = (code: string, facts: ControllerFacts, against: readonly Rule[] = rules) =>
  judgeController(against, facts).verdicts.find((one) => one.code === code);

describe("the firmware floor (common practice, no source)", () => {
  test.each([
    ["23", "blocked", "23 is below 24, which Heron E or Elm needs."],
    ["24", "clear", "24 meets 24, from which it runs Heron E or Elm."],
    ["24.011", "clear", "24.011 meets 24, from which it runs Heron E or Elm."],
    [
      "latest",
      "unknown",
      "Level not known (“latest”) cannot be held against 24, which Heron E or Elm needs.",
    ],
    [">=20", "unknown", "Level >=20 cannot be held against 24, which Heron E or Elm needs."],
    [">=24", "clear", ">=24 meets 24, from which it runs Heron E or Elm."],
    [null, "unknown", "Level not read cannot be held against 24, which Heron E or Elm needs."],
  ])("%s: %s", (level, state, arithmetic) => {
    expect(verdict("R1", controller(level))).toMatchObject({ state, arithmetic, version: 1 });
  });

  test("names the record it rests on, with its grade", () => {
    expect(verdict("R1", controller("23"))?.facts).toEqual([
      { text: "K1, Slate 5: level 23", evidence: "measured" },
    ]);
  });

  test("a model the rule does not name is blocked, one that takes any level is clear once it is read", () => {
    expect(verdict("R1", controller("16", { model: "Slate 3" }))).toMatchObject({ state: "blocked" });
    expect(verdict("R1", controller("30", { model: "Slate 7" }))).toMatchObject({ state: "clear" });
    expect(verdict("R1", controller(null, { model: "Slate 7" }))).toMatchObject({ state: "unknown" });
    expect(verdict("R1", controller("30", { model: "not recorded" }))).toMatchObject({ state: "unknown" });
  });

  test("only the rules of families that may replace its drives count; without any, all do", () => {
    const other: Rule = {
      ...floor("30"),
      code: "R9",
      terms: { families: ["Ash"], controllers: [{ model: "Slate 5", level: "30" }] },
    } as Rule;
    expect(judgeController([...rules, other], controller("24")).step).toBe("none");
    expect(judgeController([...rules, other], controller("24", { groups: [] })).step).toBe("raise");
  });

  test("without a rule nothing is clear", () => {
    expect(judgeController([], controller("30"))).toMatchObject({ step: "no-rule", state: "unknown" });
  });
});

describe("a ceiling", () => {
  test("below what is asked means another controller, whatever has been read", () => {
    for (const level of ["16", "18", null])
      expect(judgeController(rules, controller(level, { model: "Slate 3" }))).toMatchObject({ step: "swap" });
  });

  test("is no hindrance where the model is accepted below it", () => {
    const low = {
      ...floor("24"),
      terms: { families: ["Heron E"], controllers: [{ model: "Slate 3", level: "17" }] },
    } as Rule;
    expect(verdict("R2", controller("16", { model: "Slate 3" }), [low, ceiling])).toMatchObject({
      state: "clear",
    });
    expect(judgeController([low, ceiling], controller("16", { model: "Slate 3" })).step).toBe("raise");
  });
});

describe("memory after the raise (limits: common practice, no source)", () => {
  test.each([
    [73.9, "clear", "Raised to 24: 74 % × 1.15 = 85.0 %, below 85 %."],
    [74, "caution", "Raised to 24: 74 % × 1.15 = 85.1 %"],
    [82.6, "caution", "= 95.0 %"],
    [82.7, "blocked", "= 95.1 %"],
    [88, "blocked", "Raised to 24: 88 % × 1.15 = 101 %, above 95 %."],
  ])("%s %% used: %s", (memoryPercent, state, sum) => {
    const found = verdict("R3", controller("22", { memoryPercent }));
    expect(found?.state).toBe(state);
    expect(found?.arithmetic).toContain(sum);
  });

  test("exactly at the limit is a caution still", () => {
    const terms = { ...memory.terms, factor: 1.25 } as Extract<Rule, { kind: "memory_growth" }>["terms"];
    const quarter = { ...memory, terms } as Rule;
    expect(verdict("R3", controller("22", { memoryPercent: 76 }), [floor("24"), quarter])).toMatchObject({
      state: "caution",
      arithmetic: "Raised to 24: 76 % × 1.25 = 95 %, from 85 % on.",
    });
  });

  test("is judged as it is where no raise over the level is needed, and blocks nothing then", () => {
    expect(verdict("R3", controller("24", { memoryPercent: 99 }))).toMatchObject({ state: "caution" });
    expect(
      verdict("R3", controller("22", { memoryPercent: 88 }), [floor("23"), memory])?.arithmetic,
    ).toContain("No raise over 24 is needed");
  });

  test("is unknown without the figure or the level, never clear", () => {
    expect(verdict("R3", controller("22", { memoryPercent: null }))?.state).toBe("unknown");
    expect(verdict("R3", controller(null, { memoryPercent: 20 }))?.state).toBe("unknown");
  });
});

describe("a card that a level no longer runs", () => {
  const old = { cards: [{ family: "Link R", revision: "B1", evidence: "documented" as const }] };
  const racks = [{ family: "Pebble", pieces: 2 }];
  test.each([
    ["22", { ...old, racks }, "blocked", "I/O stranded"],
    ["22", old, "caution", "Card lost"],
    ["24", { ...old, racks }, "caution", "I/O stranded"],
    [null, { ...old, racks }, "unknown", "I/O stranded"],
    ["22", { racks, cards: [{ ...old.cards[0], revision: "C1" }] }, "clear", "I/O stranded"],
    ["22", { racks, cards: [{ ...old.cards[0], revision: null }] }, "unknown", "I/O stranded"],
  ])("level %s with %j: %s", (level, given, ...[state, blocker]) => {
    expect(verdict("R4", controller(level, given as Partial<ControllerFacts>))).toMatchObject({
      state,
      blocker,
    });
  });

  test("says nothing where there is no such card", () => {
    expect(verdict("R4", controller("22"))).toBeUndefined();
  });
});

describe("motors", () => {
  test("up to the power run with an adapter, above they are sized, and an unknown power is unknown", () => {
    const wren = (powerKw: number | null) => group({ motor: "Wren", powerKw, axes: 2 });
    const at = (...groups: AxisGroup[]) => verdict("R5", controller("24", { groups }));
    expect(at(wren(3))).toMatchObject({ state: "caution", arithmetic: "2 with an adapter up to 3 kW." });
    expect(at(wren(3), wren(3.1))).toMatchObject({ state: "blocked" });
    expect(at(wren(3), wren(null))).toMatchObject({ state: "unknown" });
    expect(at(group({}))).toBeUndefined();
    expect(at(group({ motor: "Wren", targets: ["Elm"] }))).toBeUndefined();
  });

  test("feedback that a drive does not read, or nobody recorded", () => {
    const rule: Rule = {
      ...{ code: "R8", kind: "feedback_match", ...said },
      terms: { feedback: "resolver", drive: "Heron E", fit: "sizing" },
    };
    const at = (feedback: string | null) =>
      verdict("R8", controller("24", { groups: [group({ feedback })] }), [rule]);
    expect(at("resolver")).toMatchObject({ state: "blocked", blocker: "Feedback unmatched" });
    expect(at(null)).toMatchObject({ state: "unknown" });
    expect(at("digital")).toBeUndefined();
  });
});

describe("a drive of newer hardware in an old place", () => {
  test("the edge: level 21 against 20 (common practice, no source)", () => {
    expect(verdict("R6", controller("21"))).toMatchObject({ state: "clear" });
    expect(verdict("R6", controller("20"))).toMatchObject({ state: "blocked" });
    expect(verdict("R6", controller("18", { model: "Slate 3" }))).toMatchObject({ state: "blocked" });
    expect(verdict("R6", controller(null))).toMatchObject({ state: "unknown" });
  });

  test("does not stand in the way of a retrofit", () => {
    expect(judgeController([floor("20"), revision], controller("20"))).toMatchObject({ state: "clear" });
  });
});

test("a ring over two controllers is a caution, one on its own is not", () => {
  const rings = (elsewhere: number) => [{ name: "R1", axes: 6, elsewhere }];
  expect(verdict("R7", controller("24", { rings: rings(0) }))).toMatchObject({ state: "clear" });
  expect(verdict("R7", controller("24", { rings: rings(4) }))).toMatchObject({
    state: "caution",
    arithmetic: "Axes that convert together, by ring: R1 10, of them 4 on another controller.",
  });
});

describe("a line", () => {
  test("stands where its recorded lead stands, else the one that drives most axes", () => {
    const lead = controller("23", { designation: "K2", leads: true });
    const large = controller("24", { designation: "K1", groups: [group({ axes: 20 })] });
    expect(judgeLine(rules, [large, lead])).toMatchObject({ standing: "below", lead: { facts: lead } });
    expect(judgeLine(rules, [{ ...lead, leads: false }, large]).standing).toBe("ready");
    expect(judgeLine(rules, [])).toMatchObject({ standing: null, lead: null });
  });

  test("is converted when its lead runs new drives and has no old one", () => {
    const fresh = group({ drive: "Heron E", targets: [] });
    expect(judgeLine(rules, [controller("30", { groups: [fresh] })]).standing).toBe("converted");
    expect(judgeLine(rules, [controller("30", { groups: [fresh, group({})] })]).standing).toBe("ready");
  });

  test("an unknown state is worse than a caution and better than a block only", () => {
    expect(worstState(["clear", "unknown", "caution"])).toBe("unknown");
    expect(worstState(["unknown", "blocked"])).toBe("blocked");
    expect(worstState([])).toBe("clear");
  });

  test("compared under two sets of rules tells what moved", () => {
    const facts = [controller("23"), controller("24", { designation: "K2", leads: true })];
    const change = compareJudged(judgeLine(rules, facts), judgeLine([floor("25"), ...rules.slice(1)], facts));
    expect(change).toEqual({
      standing: { before: "ready", after: "below" },
      controllers: [{ designation: "K2", changes: [{ code: "R1", before: "clear", after: "blocked" }] }],
    });
    expect(compareJudged(judgeLine(rules, facts), judgeLine(rules, facts))).toBeNull();
  });
});
