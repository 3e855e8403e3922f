import { assert, constantFrom, integer, option, property, record, subarray } from "fast-check";
import { expect, test } from "vitest";
import { type JudgedController, judgeController } from "@/lib/retrofit/compatibility";
import type { ControllerFacts, Rule } from "@/lib/retrofit/compatibility/facts";
import { worstState } from "@/lib/retrofit/compatibility/verdict";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import { compatibilityRuleRows } from "@/seed/scenarios/showcase/compatibilityRules";

const all = compatibilityRuleRows().map(
  ({ terms, ...row }) => ({ ...row, terms: JSON.parse(terms) }) as unknown as Rule,
);
const rules = subarray(all, { minLength: 1 });
const controller = record({
  model: constantFrom("Slate 3", "Slate 5", "Slate 7"),
  level: integer({ min: 12, max: 31 }),
  memoryPercent: option(integer({ min: 20, max: 100 })),
  drive: constantFrom("Heron R", "Oak", "Heron E"),
  revision: constantFrom("A2", "C1", null),
  hardware: constantFrom("A2", "C1", null),
  axesInAll: option(integer({ min: 1, max: 40 })),
  racks: integer({ min: 0, max: 2 }),
});

function facts(
  given: Parameters<Parameters<typeof controller.map>[0]>[0],
  raw: string | null,
): ControllerFacts {
  const { model, memoryPercent, drive, revision, racks, hardware, axesInAll } = given;
  const targets = drive === "Heron E" ? [] : ["Heron E"];
  return {
    ...{ designation: "K1", model, level: parseFirmwareLevel(raw), memoryPercent },
    ...{ evidence: "measured", readOn: null, leads: true, rings: [] },
    ...{ hardware, axisLimit: null, axesInAll },
    groups: [
      {
        ...{ axes: 4, drive, targets, motor: "Wren", powerKw: 1.5, feedback: "resolver" },
        evidence: "documented",
      },
    ],
    cards: [{ family: "Link R", revision, evidence: "documented" }],
    racks: [{ family: "Pebble", pieces: racks }],
  };
}

/** Rules whose answer rests on the level that was read. */
const RESTS_ON_LEVEL = new Set(["controller_floor", "memory_growth", "hardware_revision"]);
const RUNS = { numRuns: 2000 };

test("a level nobody has read clears nothing that rests on it", () => {
  let judged = 0;
  assert(
    property(rules, controller, constantFrom(null, "latest", "20/21"), (inForce, given, raw) => {
      const { verdicts, step } = judgeController(inForce, facts(given, raw));
      const resting = verdicts.filter(({ kind }) => RESTS_ON_LEVEL.has(kind));
      judged += resting.length;
      return step !== "none" && resting.every(({ state }) => state === "unknown" || state === "blocked");
    }),
    RUNS,
  );
  expect(judged).toBeGreaterThan(1000);
});

test("an unread controller never stands better than the best that could be read on it", () => {
  const rank = ({ state }: JudgedController) => ["clear", "caution", "unknown", "blocked"].indexOf(state);
  assert(
    property(rules, controller, (inForce, given) => {
      const unread = rank(judgeController(inForce, facts(given, null)));
      const best = Math.min(
        ...Array.from({ length: 40 }, (_, level) =>
          rank(judgeController(inForce, facts(given, String(level)))),
        ),
      );
      return unread >= best;
    }),
    { numRuns: 300 },
  );
});

test("one more rule never makes a controller's state better", () => {
  assert(
    property(controller, subarray(all), constantFrom(...all), (given, inForce, more) => {
      const own = facts(given, String(given.level));
      const floors = inForce.filter(({ kind }) => kind === "controller_floor");
      if (floors.length === 0) return true;
      const before = judgeController(inForce, own).state;
      const after = judgeController([...inForce.filter(({ code }) => code !== more.code), more], own).state;
      return worstState([before, after]) === after;
    }),
    RUNS,
  );
});
