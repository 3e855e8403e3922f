import { describe, expect, test } from "vitest";
import { judgeController } from "@/lib/retrofit/compatibility";
import type { ControllerFacts, RuleOf } from "@/lib/retrofit/compatibility/facts";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import { readRuleTerms } from "@/lib/schema/compatibilityRule";

type Terms = RuleOf<"axis_ceiling">["terms"];
const OLD: Terms = { model: "Slate 5", olderThan: "C", belowLevel: null, axes: 12 };

const controller = (given: Partial<ControllerFacts>): ControllerFacts => ({
  ...{ designation: "K1", model: "Slate 5", hardware: "B2", level: parseFirmwareLevel("22") },
  ...{ axisLimit: null, axesInAll: 8, memoryPercent: 60, evidence: "measured", readOn: null, leads: true },
  ...{ groups: [], cards: [], racks: [], rings: [], ...given },
});
const judge = (given: Partial<ControllerFacts>, terms: Terms = OLD) =>
  judgeController(
    [{ code: "R8", version: 1, kind: "axis_ceiling", terms, evidence: "documented" }],
    controller(given),
  ).verdicts[0];

// What the rule says is common practice, no source; the sums are done by hand.
describe("a controller drives at most so many axes", () => {
  test("fewer are clear, as many are a caution, more are blocked, each with its sum", () => {
    expect(judge({ axesInAll: 11 })).toMatchObject({
      state: "clear",
      unblocks: null,
      blocker: "Axis ceiling",
    });
    expect(judge({ axesInAll: 11 })?.arithmetic).toBe(
      "A Slate 5 of hardware older than C drives at most 12 axes; it has 11: 12 − 11 = 1 free.",
    );
    expect(judge({ axesInAll: 12 })).toMatchObject({ state: "caution" });
    expect(judge({ axesInAll: 15 })).toMatchObject({
      state: "blocked",
      arithmetic:
        "A Slate 5 of hardware older than C drives at most 12 axes; it has 15: 15 − 12 = 3 too many.",
      unblocks:
        "Replace the controller, move 3 axes to a second one, or fit a Slate 5 of hardware C or later.",
    });
  });

  test("says nothing of another model, of hardware as new as it asks, or at a level that lifts it", () => {
    expect(judge({ model: "Slate 7", axesInAll: 99 })).toBeUndefined();
    expect(judge({ hardware: "C1", axesInAll: 99 })).toBeUndefined();
    const byLevel: Terms = { ...OLD, olderThan: null, belowLevel: "24" };
    expect(judge({ level: parseFirmwareLevel("24.011"), axesInAll: 99 }, byLevel)).toBeUndefined();
    expect(judge({ axesInAll: 99 }, byLevel)).toMatchObject({
      state: "blocked",
      unblocks: expect.stringContaining("or raise it to 24"),
    });
  });

  test("hardware nobody read is not known, never that it fits, and says what to read", () => {
    for (const hardware of [null, "?"])
      expect(judge({ hardware, axesInAll: 1 })).toMatchObject({
        state: "unknown",
        unblocks: "Read the hardware letter off the controller, or record how many axes it can drive.",
      });
    const byLevel: Terms = { ...OLD, olderThan: null, belowLevel: "24" };
    expect(judge({ level: parseFirmwareLevel(null) }, byLevel)).toMatchObject({
      state: "unknown",
      unblocks: expect.stringContaining("Read the level"),
    });
  });

  test("a machine without an axis on record leaves the count, and so the verdict, not known", () => {
    expect(judge({ axesInAll: null })).toMatchObject({
      state: "unknown",
      unblocks: "Survey the axes of its machines.",
    });
  });

  test("the limit recorded of the controller binds when it is lower, and where the ceiling is not known to hold", () => {
    expect(judge({ axisLimit: 6 })).toMatchObject({ state: "blocked" });
    expect(judge({ axisLimit: 6 })?.arithmetic).toContain("It is recorded to drive at most 6 axes; it has 8");
    expect(judge({ axisLimit: 16, axesInAll: 14 })).toMatchObject({ state: "blocked" });
    expect(judge({ hardware: null, axisLimit: 16, axesInAll: 14 })).toMatchObject({ state: "clear" });
    expect(judge({ hardware: null, axisLimit: 16, axesInAll: null })).toMatchObject({ state: "unknown" });
  });

  test("names the records it rests on with their grade", () => {
    expect(judge({ axisLimit: 16 })?.facts).toEqual([
      { text: "K1: 8 axes", evidence: "measured" },
      { text: "hardware B2, level 22", evidence: "measured" },
      { text: "limit recorded of this controller: 16 axes", evidence: "measured" },
    ]);
  });
});

test("a ceiling asks for a whole number of axes; hardware and level may be any", () => {
  expect(readRuleTerms("axis_ceiling", { ...OLD, olderThan: null })).toMatchObject({ ok: true });
  for (const axes of [0, 1.5, 1001, "12"])
    expect(readRuleTerms("axis_ceiling", { ...OLD, axes }), String(axes)).toMatchObject({
      ok: false,
      error: { axes: expect.any(String) },
    });
  expect(readRuleTerms("axis_ceiling", { ...OLD, olderThan: "third" })).toMatchObject({ ok: false });
});
