import { describe, expect, it } from "vitest";
import type { LineOptionTerms } from "@/lib/portfolio/costedWay";
import { lineOptions } from "@/lib/portfolio/lineOptions";
import { parseFirmwareLevel } from "@/lib/retrofit/firmwareLevel";
import { buildScope } from "@/lib/retrofit/scope/buildScope";
import { likelyScopeNorms } from "@/lib/retrofit/scope/scopeNorms";
import { axis, controller, line, newDrive, oldDrive } from "@/test/support/scopeFacts";

const successors = [{ partId: oldDrive.id, successorId: newDrive.id, condition: null }];
const axes = [1, 2, 3, 4].flatMap((machine) =>
  [1, 2, 3].map((at) =>
    axis(`A${machine}${at}`, { machine: `M${machine}`, ring: machine < 3 ? "R1" : null }),
  ),
);
const facts = line(axes, { successors });
const terms = (given: Partial<LineOptionTerms> = {}): LineOptionTerms => ({
  ...{
    facts,
    norms: likelyScopeNorms,
    site: "NOR",
    crewRegion: "North",
    windowHours: 1000,
    weekendHours: null,
  },
  ...{ pools: new Set([oldDrive.id, newDrive.id]), signOff: null },
  ...given,
});
const full = buildScope(facts, { target: "Heron E", norms: likelyScopeNorms });
if (!full.ok) throw new Error("the line of this test must have a scope");
const { planned } = full.value.work;
const share = likelyScopeNorms.plain.windowShare;

describe("the ways a plan may choose for a line", () => {
  it("are the whole line in one window where its hours just fit, with the cost of its scope", () => {
    const { options, last, none } = lineOptions(terms({ windowHours: planned / share + 1e-9 }));
    expect([options.map(({ id }) => id), last, none]).toEqual([["NOR-01:full"], ["NOR-01:full"], null]);
    const [low, typical, high] = full.value.money.cost;
    expect(options[0]?.cost).toMatchObject({ low, typical, high });
    expect(options[0]?.removes).toEqual([{ poolId: oldDrive.id, units: 12, fate: "kept", works: null }]);
    expect([options[0]?.adds, options[0]?.residualShare]).toEqual([[{ poolId: newDrive.id, units: 12 }], 0]);
    const phases = options[0]?.cost.phases ?? [];
    expect(phases.reduce((sum, phase) => sum + phase.share, 0)).toBeCloseTo(1, 12);
  });

  it("are parts that oblige to each other where it just does not, and no ring is split", () => {
    const { options } = lineOptions(terms({ windowHours: (planned / share) * 0.999 }));
    expect(options.map(({ id, stage, after, commitsTo }) => [id, stage, after, commitsTo])).toEqual([
      ["NOR-01:part-1-of-2", 1, [], ["NOR-01:part-2-of-2"]],
      ["NOR-01:part-2-of-2", 2, ["NOR-01:part-1-of-2"], []],
    ]);
    expect(options.map(({ removes }) => removes[0]?.units)).toEqual([6, 6]);
    expect(options.every(({ windowHours }) => windowHours <= planned)).toBe(true);
  });

  it("are machine by machine over weekends, which need no window, where each machine fits into one", () => {
    const { options } = lineOptions(terms({ windowHours: null, weekendHours: 40 }));
    expect(options.map(({ id, windowHours, crew }) => [id, windowHours, crew?.weeks])).toEqual([
      ["NOR-01:weekends", 0, 4],
    ]);
  });

  it("begin with the controllers where these have to be swapped", () => {
    const old = controller({ model: "Slate 3", level: parseFirmwareLevel("16") });
    const { options } = lineOptions(terms({ facts: { ...facts, controllers: [old] } }));
    expect(options.map(({ id, stage, after }) => [id, stage, after])).toEqual([
      ["NOR-01:controller", 1, []],
      ["NOR-01:full", 2, ["NOR-01:controller"]],
    ]);
    const narrow = lineOptions(
      terms({ facts: { ...facts, controllers: [old] }, windowHours: 10, weekendHours: 40 }),
    ).options;
    expect(narrow.map(({ id, windowHours, crew }) => [id, windowHours, crew?.weeks])).toEqual([
      ["NOR-01:controller", 0, 4],
      ["NOR-01:weekends", 0, 4],
    ]);
    expect(options[1]?.cost.typical).toBeLessThan(full.value.money.cost[1] + 1);
  });

  it("are none, with the reason, where nothing fits or nothing is to be converted", () => {
    expect(lineOptions(terms({ windowHours: 10 })).none).toMatch(/neither a part/);
    const open = line([axis("A1", { drive: newDrive })], { successors });
    expect(lineOptions(terms({ facts: open }))).toEqual({
      ...{ options: [], last: [], none: "every drive is in open supply" },
    });
  });

  it("wait for the group's signature above the limit and not at it", () => {
    const cost = full.value.money.cost[1];
    const weeks = (above: number) =>
      lineOptions(terms({ signOff: { above, weeks: 4 } })).options[0]?.projectWeeks ?? 0;
    expect(weeks(cost - 1) - weeks(cost)).toBeCloseTo(4, 9);
  });
});
