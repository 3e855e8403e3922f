import { describe, expect, it } from "vitest";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import { judgeAxis } from "@/lib/retrofit/judgeAxis";
import { type CheckEntry, emptyEntry, judgeCheck } from "@/lib/retrofit/judgeCheck";

const signed = { by: "Engineer A", on: "2027-07-10" };

function judge(id: string, entry: Partial<CheckEntry>) {
  const check = axisChecks.find((one) => one.id === id);
  if (!check) throw new Error(`no check ${id}`);
  return judgeCheck(check, { ...emptyEntry, ...signed, ...entry });
}

describe("a check of an axis", () => {
  it.each([
    // 2500 lines read fourfold are 10 000 counts (arithmetic).
    ["counts", { asFound: 10_000, asLeft: [10_000] }, "passed"],
    ["counts", { asFound: 10_000, asLeft: [-10_000] }, "failed"],
    ["lost-cycles", { asLeft: [0] }, "passed"],
    ["lost-cycles", { asLeft: [1] }, "failed"],
    // 0.05 % of 1000 is 0.5.
    ["scaling", { asFound: 1000, asLeft: [1000.5] }, "passed"],
    ["scaling", { asFound: 1000, asLeft: [999.49] }, "failed"],
    ["travel", { asFound: 100, limit: 0.1, asLeft: [100.1] }, "passed"],
    ["travel", { asFound: 100, limit: 0.1, asLeft: [100.11] }, "failed"],
    ["following", { asFound: 0.2, asLeft: [0.22] }, "passed"],
    ["travel", { asFound: 100, limit: 0.02, asLeft: [100.04] }, "failed"],
    ["following", { asFound: 0.2, asLeft: [0.221] }, "failed"],
    ["following", { asFound: 0.2, asLeft: [-0.9] }, "failed"],
    ["following", { asFound: -0.2, asLeft: [0.21] }, "passed"],
    ["torque", { limit: 80, asLeft: [80] }, "passed"],
    ["torque", { limit: 80, asLeft: [80.1] }, "failed"],
    ["torque", { limit: 80, asLeft: [-120] }, "failed"],
    ["rate", { asFound: 300, asLeft: [294] }, "passed"],
    ["rate", { asFound: 300, asLeft: [293.9] }, "failed"],
    ["backup", { confirmed: true }, "passed"],
    ["backup", { confirmed: false }, "failed"],
  ] as const)("%s with %j is %s", (id, entry, state) => {
    expect(judge(id, entry).state).toBe(state);
  });

  it("takes ten homes: their spread and their mean off the mark", () => {
    const homes = [0.01, 0.02, 0.01, 0.02, 0.01, 0.02, 0.01, 0.02, 0.01, 0.02];
    const entry = { asFound: 0.01, limit: 0.02 };
    expect(judge("homing", { ...entry, asLeft: homes }).state).toBe("passed");
    expect(judge("homing", { ...entry, asLeft: homes.slice(1) })).toEqual({
      state: "missing",
      reason: "Missing: 1 of 10 readings.",
    });
    expect(judge("homing", { ...entry, asLeft: [...homes.slice(1), 0.031] }).state).toBe("failed");
    expect(judge("homing", { ...entry, asLeft: homes.map((home) => home + 0.05) }).state).toBe("failed");
    expect(judge("homing", { limit: 0.02, asLeft: homes.map((home) => home + 0.05) }).state).toBe("passed");
  });

  it("prints a difference without the tail of binary fractions", () => {
    const homes = Array.from({ length: 10 }, (_, i) => (i % 2 === 0 ? 21.65 : 21.67));
    expect(judge("homing", { asFound: 21.65, limit: 0.02, asLeft: homes }).reason).toBe(
      "Spread 0.02 over 10, allowed 0.02; mean off the mark by 0.01, allowed 0.02",
    );
    expect(judge("travel", { asFound: 500.04, limit: 0.25, asLeft: [500.02] }).reason).toBe(
      "Off 500.04 by 0.02, allowed 0.25",
    );
  });

  it("fails the first stop that is too long, and a spread too wide, before all readings are taken", () => {
    const names = { by: "A", witness: "B" };
    expect(judge("stopping", { asFound: 95, limit: 100, asLeft: [96], ...names }).reason).toBe(
      "Worst 96, allowed 95",
    );
    expect(judge("stopping", { asFound: 95, limit: 100, asLeft: [94], ...names }).reason).toBe(
      "Missing: 9 of 10 readings.",
    );
    expect(judge("homing", { limit: 0.02, asLeft: [0, 0.03] }).reason).toBe(
      "Spread 0.03 over 2, allowed 0.02",
    );
  });

  it("holds the longest stop against the old one and against the distance of the guards", () => {
    const stops = Array.from({ length: 10 }, () => 90);
    const names = { by: "A", witness: "B" };
    expect(judge("stopping", { asFound: 95, limit: 100, asLeft: stops, ...names }).state).toBe("passed");
    expect(judge("stopping", { asFound: 85, limit: 100, asLeft: stops, ...names }).state).toBe("failed");
    expect(judge("stopping", { asFound: 95, limit: 80, asLeft: stops, ...names }).state).toBe("failed");
    expect(judge("stopping", { asFound: 95, asLeft: stops, ...names }).reason).toBe("Missing: the limit.");
    expect(judge("stopping", { limit: 95, asLeft: stops, ...names }).state).toBe("missing");
  });

  it.each([
    [{ witness: "" }, "Missing: a second name, as this check is about safety."],
    [{ witness: " engineer  a" }, "Missing: a second name that is not the first."],
    [{ by: "", witness: "B" }, "Missing: who did it."],
    [{ witness: "B", on: null }, "Missing: the day."],
  ])("about safety with %j is missing a name", (names, reason) => {
    expect(judge("safety", { confirmed: true, ...names })).toEqual({ state: "missing", reason });
  });

  it("is passed by two people", () => {
    expect(judge("safety", { confirmed: true, witness: "Engineer B" }).state).toBe("passed");
  });

  it("says a failing value before a missing name", () => {
    expect(judge("safety", { confirmed: false, by: "" }).state).toBe("failed");
  });

  it("need not apply, when somebody says why", () => {
    const entry = { notApplicable: "horizontal axis", witness: "Engineer B" };
    expect(judge("holding", entry)).toEqual({
      state: "not-applicable",
      reason: "Does not apply: horizontal axis",
    });
    expect(judge("holding", { ...entry, witness: "" }).state).toBe("missing");
  });

  it("without any value names what is missing", () => {
    for (const check of axisChecks) {
      const verdict = judgeCheck(check, emptyEntry);
      expect(verdict.state).toBe("missing");
      expect(verdict.reason).toMatch(/^Missing: .+\.$/);
    }
  });
});

describe("an axis", () => {
  const pass = (id: string): CheckEntry => {
    const measured = { asFound: 100, limit: 100, asLeft: Array.from({ length: 10 }, () => 100) };
    const entry = { ...emptyEntry, ...signed, ...measured, confirmed: true, witness: "Engineer B" };
    return id === "lost-cycles" ? { ...entry, asLeft: [0] } : entry;
  };
  const all = Object.fromEntries(axisChecks.map(({ id }) => [id, pass(id)]));

  it("with every check passed has nothing in its way", () => {
    expect(judgeAxis(all)).toMatchObject({ done: axisChecks.length, hindrances: [] });
  });

  it.each(axisChecks.map(({ id, title }) => [id, title]))("without %s is not done", (id, title) => {
    const { [id]: _gone, ...rest } = all;
    const { hindrances, done } = judgeAxis(rest);
    expect(done).toBe(axisChecks.length - 1);
    expect(hindrances).toHaveLength(1);
    expect(hindrances[0]).toContain(title);
  });

  it("leaves out a check that does not exist", () => {
    expect(judgeAxis({ ...all, invented: emptyEntry }).hindrances).toEqual([]);
  });
});
