import { describe, expect, it } from "vitest";
import { brokenBy, limitRows, usesOf } from "@/lib/portfolio/planLimits";
import type { PlanOption, PlanProblem } from "@/lib/portfolio/planProblem";
import { candidatesOf, choiceOf, chosenOf } from "@/lib/portfolio/planSlots";
import { fullOf, option, planLine, shutdown, smallPlan } from "@/test/support/smallPlan";

type Placed = readonly [optionId: string, slotId: string];

const look = (more: Partial<PlanProblem>, placed: readonly Placed[]) => {
  const problem = { ...smallPlan, ...more };
  const candidates = candidatesOf(problem);
  const limits = limitRows(problem, candidates);
  const choices = placed.map(([optionId, slotId]) => ({ lineId: optionId.slice(0, 1), optionId, slotId }));
  const chosen = chosenOf(candidates, choices);
  return { broken: brokenBy(limits, chosen), uses: usesOf(limits, chosen), candidates, limits };
};
const oneLine = (options: readonly PlanOption[], more: Partial<PlanProblem> = {}) => ({
  lines: [planLine("A", "VEL", options)],
  ...more,
});
const work = (more: Partial<PlanOption>) => fullOf("A", { oak: 24 }, more);

describe("slots", () => {
  it("put work that stops a line into shutdowns of its site or its own, other work into quarters", () => {
    const own = { ...shutdown("VEL 2027 B", ["2027-05-01", "2027-05-09"]), lineId: "B" };
    const blind = { ...shutdown("VEL 2027 ?", ["2027-06-01", "2027-06-09"]), usableHours: null };
    const late = shutdown("VEL 2031", ["2031-05-01", "2031-05-09"]);
    const { candidates } = look({ windows: [...smallPlan.windows, own, blind, late] }, []);
    const of = (id: string) =>
      candidates.filter(({ option: one }) => one.id === id).map(({ slot }) => slot.id);
    expect(of("A/full")).toEqual(["VEL 2027", "VEL 2028"]);
    expect(of("B/full")).toEqual(["VEL 2027", "VEL 2028", "VEL 2027 B"]);
    expect(of("B/spares")).toEqual(smallPlan.quarters.map(({ id }) => id));
    expect(candidates.map(choiceOf).every(({ lineId }, i) => candidates[i]?.line.lineId === lineId)).toBe(
      true,
    );
  });

  it("refuse a choice that is none of the candidates", () => {
    expect(() => look({}, [["A/full", "TAD 2027"]])).toThrow(RangeError);
  });
});

describe("limits", () => {
  it("take the reserve off a year's money, and count a site's share of it by itself", () => {
    const budgets = [
      { year: 2027, siteId: null, amount: 210_000 },
      { year: 2027, siteId: "VEL", amount: 110_000 },
      { year: 2028, siteId: null, amount: 0 },
    ];
    const both: Placed[] = [
      ["A/full", "VEL 2027"],
      ["C/full", "TAD 2027"],
    ];
    expect(look({ budgets }, both).broken).toEqual([]);
    const { broken } = look({ budgets, reserveShare: 0.1 }, both);
    expect(broken.map(({ limit, by }) => [limit, Math.round(by)])).toEqual([
      [{ kind: "budget", year: 2027, siteId: null }, 11_000],
      [{ kind: "budget", year: 2027, siteId: "VEL" }, 1_000],
    ]);
  });

  it("count a year without group money as a year without money, once any year has some", () => {
    const spent: Placed[] = [["A/full", "VEL 2028"]];
    const some = look({ budgets: [{ year: 2027, siteId: null, amount: 1e6 }] }, spent);
    expect(some.broken.map(({ limit }) => limit)).toEqual([{ kind: "budget", year: 2028, siteId: null }]);
    expect(look({ budgets: [] }, spent).broken).toEqual([]);
  });

  it("lay money and engineers into the quarters before the work, none before the first", () => {
    const phases = [
      { quartersBefore: 3, share: 0.4 },
      { quartersBefore: 0, share: 0.6 },
    ];
    const cost = { low: 1, typical: 100_000, high: 2, phases };
    const engineerWeeks = [{ region: "north", weeks: 10, phases }];
    const engineers = smallPlan.quarters.map(({ id }) => ({ region: "north", quarterId: id, weeks: 5 }));
    const problem = oneLine([work({ cost, engineerWeeks })], { engineers });
    const used = (placed: Placed) =>
      look(problem, [placed]).uses.flatMap(({ limit, used: amount }) => {
        if (limit.kind === "budget") return [[limit.year, amount]];
        return limit.kind === "engineers" && amount > 0 ? [[limit.quarterId, amount]] : [];
      });
    expect(used(["A/full", "VEL 2028"])).toEqual([
      [2027, 40_000],
      [2028, 60_000],
      ["2027-Q4", 4],
      ["2028-Q3", 6],
    ]);
    expect(used(["A/full", "VEL 2027"])).toEqual([
      [2027, 100_000],
      [2028, 0],
      ["2027-Q1", 4],
      ["2027-Q3", 6],
    ]);
  });

  it("let as many crews work at once as there are, and no more weeks than they have", () => {
    const crew = { region: "EU", crews: 1, weeks: 2 };
    const lines = [
      planLine("A", "VEL", [work({ crew })]),
      planLine("B", "VEL", [fullOf("B", { oak: 10 }, { crew })]),
    ];
    const both: Placed[] = [
      ["A/full", "VEL 2027"],
      ["B/full", "VEL 2027"],
    ];
    const budgets = [
      { year: 2027, siteId: null, amount: 1e6 },
      { year: 2028, siteId: null, amount: 1e6 },
    ];
    const crews = [{ region: "EU", startsOn: "2027-01-01", endsOn: "2028-12-31", crews: 1 }];
    const clash = look({ lines, budgets, crews }, both).broken;
    expect(clash).toMatchObject([
      { limit: { kind: "crews", region: "EU", on: "2027-08-02" }, used: 2, most: 1 },
    ]);
    expect(
      look({ lines, budgets, crews }, [
        ["A/full", "VEL 2027"],
        ["B/full", "VEL 2028"],
      ]).broken,
    ).toEqual([]);
    const few = [{ region: "EU", startsOn: "2027-08-02", endsOn: "2027-08-08", crews: 2 }];
    const short = look({ lines, budgets, crews: few }, [
      ["A/full", "VEL 2027"],
      ["B/full", "VEL 2027"],
    ]).broken;
    expect(short).toMatchObject([{ limit: { kind: "crew-weeks", quarterId: "2027-Q3" }, used: 4, most: 2 }]);
  });

  it("keep a fifth of a shutdown free, and both steps of a line within it", () => {
    const hours = (windowHours: number) =>
      look(oneLine([work({ windowHours })]), [["A/full", "VEL 2027"]]).broken;
    expect(hours(160)).toEqual([]);
    expect(hours(161)).toMatchObject([
      { limit: { kind: "window", lineId: "A", windowId: "VEL 2027" }, by: 1 },
    ]);
  });

  it("leave time for parts and project before the work; an unknown lead time asks nothing", () => {
    const early = (more: Partial<PlanOption>, slot: string) =>
      look(oneLine([work(more)]), [["A/full", slot]]).broken;
    // 245 days from 30 Nov 2026 to 2 Aug 2027 are 35 weeks.
    expect(early({ orderWeeks: 35 }, "VEL 2027")).toEqual([]);
    expect(early({ orderWeeks: null, projectWeeks: 36 }, "VEL 2027")).toMatchObject([
      { limit: { kind: "lead-time", lineId: "A" }, by: 1 },
    ]);
    expect(early({ orderWeeks: 36 }, "VEL 2028")).toEqual([]);
  });

  it("ask for one option of a stage, what must be before and what must follow", () => {
    const first = option("A/controller", { kind: "controller", windowHours: 40, commitsTo: ["A/drives"] });
    const drives = work({ id: "A/drives", stage: 2, after: ["A/controller"] });
    const steps = oneLine([first, drives, work({})]);
    const kinds = (placed: readonly Placed[]) => look(steps, placed).broken.map(({ limit }) => limit.kind);
    expect(
      kinds([
        ["A/controller", "VEL 2027"],
        ["A/drives", "VEL 2028"],
      ]),
    ).toEqual([]);
    expect(
      kinds([
        ["A/controller", "VEL 2028"],
        ["A/drives", "VEL 2027"],
      ]),
    ).toEqual(["after", "commits-to"].reverse());
    expect(kinds([["A/drives", "VEL 2028"]])).toEqual(["after"]);
    expect(kinds([["A/controller", "VEL 2027"]])).toEqual(["commits-to"]);
    expect(
      kinds([
        ["A/controller", "VEL 2027"],
        ["A/full", "VEL 2028"],
      ]),
    ).toEqual(["one-per-stage", "commits-to"]);
  });

  it("hold duties, pins and bans", () => {
    const [a, b, c] = smallPlan.lines;
    if (!a || !b || !c) throw new Error("three lines");
    const lines = [{ ...a, mustDo: { by: "2027-12-31", optionIds: [], reason: "mission time" } }, b, c];
    const pins = [{ lineId: "C", optionId: "C/full", slotId: "TAD 2027" }];
    const bans = [{ lineId: "B", optionId: null, slotId: null }];
    const kinds = (placed: readonly Placed[]) =>
      look({ lines, pins, bans, budgets: [] }, placed).broken.map(({ limit }) => limit.kind);
    expect(kinds([])).toEqual(["must-do", "pin"]);
    expect(
      kinds([
        ["A/full", "VEL 2028"],
        ["C/full", "TAD 2027"],
      ]),
    ).toEqual(["must-do"]);
    expect(
      kinds([
        ["A/full", "VEL 2027"],
        ["B/spares", "2027-Q1"],
        ["C/full", "TAD 2028"],
      ]),
    ).toEqual(["pin", "ban"]);
    expect(
      kinds([
        ["A/full", "VEL 2027"],
        ["C/full", "TAD 2027"],
      ]),
    ).toEqual([]);
  });
});
