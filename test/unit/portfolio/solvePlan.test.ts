import { describe, expect, it } from "vitest";
import { rootAbove } from "@/lib/portfolio/breakEven";
import type { PlanProblem } from "@/lib/portfolio/planProblem";
import type { SolveProgress } from "@/lib/portfolio/planResult";
import { fewerEdges, lowerHull, stepBounds } from "@/lib/portfolio/shortage";
import { solvePlan } from "@/lib/portfolio/solvePlan";
import { fullOf, noClock, planLine, planOf, smallPlan } from "@/test/support/smallPlan";

const solve = async (problem: Partial<PlanProblem> = {}, companions = false) => {
  const found = await solvePlan(planOf(problem), { timeLimitSeconds: 60, companions, gap: 0 }, noClock);
  if (found.kind !== "plan") throw new Error(`a plan exists, got ${found.kind}`);
  return found;
};
const refusal = async (problem: Partial<PlanProblem>) => {
  const found = await solvePlan(planOf(problem), { timeLimitSeconds: 60, companions: false }, noClock);
  if (found.kind !== "infeasible") throw new Error(`no plan exists, got ${found.kind}`);
  return found.conflict;
};
const duty = (lineId: string, by: string) =>
  smallPlan.lines.map((line) =>
    line.lineId === lineId ? { ...line, mustDo: { by, optionIds: [], reason: "mission time" } } : line,
  );

describe("a plan over two years", () => {
  it("is the same to the last bit when it is sought again", async () => {
    expect(await solve({}, true)).toEqual(await solve({}, true));
  }, 120_000);

  it("says its worth, the model's bound and gap, and what exchange added", async () => {
    const { plan } = await solve();
    expect(plan.ended).toBe("settled");
    expect(plan.worth.worth).toBeCloseTo(plan.worth.lossWithout - plan.worth.lossWith, 6);
    expect(plan.model.gap).toBeLessThan(1e-4);
    expect(plan.model.bound).toBeGreaterThanOrEqual(plan.model.objective);
    expect(plan.exchangeGain).toBeGreaterThanOrEqual(0);
    expect(plan.choices.length).toBeGreaterThan(0);
    expect(plan.limits.every(({ used, most }) => used <= most + 1e-6)).toBe(true);
  });

  it("tells every step with the best plan so far, which never gets worse", async () => {
    const heard: SolveProgress[] = [];
    const report = (progress: SolveProgress) => heard.push(progress);
    await solvePlan(planOf({}), { timeLimitSeconds: 60, companions: true, gap: 0 }, { ...noClock, report });
    expect([...new Set(heard.map(({ step }) => step))]).toEqual([
      "reading",
      "model",
      "exchange",
      "companions",
    ]);
    for (const [i, { done, worth }] of heard.entries()) {
      expect(done).toBeGreaterThanOrEqual(heard[i - 1]?.done ?? 0);
      expect(worth ?? 0).toBeGreaterThanOrEqual(heard[i - 1]?.worth ?? 0);
    }
    expect(heard.find(({ step }) => step === "exchange")).toMatchObject({ worth: expect.any(Number) });
    expect(heard.at(-1)?.bound).toBeGreaterThan(0);
  });

  it("stopped by a person, or at the end of its time, gives the best plan it met", async () => {
    const ends = [
      { watch: { ...noClock, stopped: () => true }, ended: "cancelled" },
      { watch: { ...noClock, seconds: () => 61 }, ended: "time-limit" },
    ];
    const whole = await solve();
    for (const { watch, ended } of ends) {
      const found = await solvePlan(planOf({}), { timeLimitSeconds: 60, companions: false }, watch);
      if (found.kind !== "plan") throw new Error(`a plan must be kept, got ${found.kind}`);
      expect(found.plan.ended).toBe(ended);
      expect(found.plan.choices.length).toBeGreaterThan(0);
      expect(found.plan.worth.worth).toBeLessThanOrEqual(whole.plan.worth.worth + 1e-6);
      expect(found.plan.limits.every(({ used, most }) => used <= most + 1e-6)).toBe(true);
    }
  });

  it("changes when removed parts are no longer used again", async () => {
    const kept = await solve();
    const scrapped = await solve({
      lines: smallPlan.lines.map((line) => ({
        ...line,
        options: line.options.map((one) => ({
          ...one,
          removes: one.removes.map((units) => ({ ...units, fate: "scrapped" as const })),
        })),
      })),
    });
    expect(scrapped.plan.choices).not.toEqual(kept.plan.choices);
    expect(scrapped.plan.worth.worth).toBeLessThan(kept.plan.worth.worth);
  });

  it("tells by when to order and to start, and what waiting for the next shutdown loses", async () => {
    const lines = [planLine("A", "VEL", [fullOf("A", { oak: 24 }, { orderWeeks: 16, projectWeeks: 30 })])];
    const { plan } = await solve({ lines });
    expect(plan.dates).toMatchObject([
      { startsOn: "2027-08-02", orderBy: "2027-04-12", startBy: "2027-01-04", next: { slotId: "VEL 2028" } },
    ]);
    expect(plan.dates[0]?.next?.worthLost).toBeGreaterThan(0);
  });

  it("leaves out a line without a cost per hour, and a line without an option", async () => {
    const input = planOf().input;
    const lines = input.lines.map((one) => (one.id === "C" ? { ...one, costPerHour: null } : one));
    const group = planOf(
      { lines: [...smallPlan.lines.slice(1), planLine("A", "VEL", [])] },
      { ...input, lines },
    );
    const found = await solvePlan(group, { timeLimitSeconds: 60, companions: false }, noClock);
    expect(found).toMatchObject({ kind: "plan", plan: { withoutWorth: ["C"], withoutOptions: ["A"] } });
  });
});

describe("limits that clash", () => {
  it("are named with the least that would do: money for a duty", async () => {
    const budgets = [
      { year: 2027, siteId: null, amount: 70_000 },
      { year: 2028, siteId: null, amount: 500_000 },
    ];
    const conflict = await refusal({ lines: duty("A", "2027-12-31"), budgets });
    expect(conflict.clash).toEqual([
      { kind: "budget", year: 2027, siteId: null },
      { kind: "must-do", lineId: "A", by: "2027-12-31" },
    ]);
    expect(conflict.relax).toMatchObject([{ limit: { kind: "budget", year: 2027 }, most: 70_000 }]);
    expect(conflict.relax?.[0]?.by).toBeCloseTo(30_000, 0);
  });

  it("are a pin and a ban of the same line, of which a person gives up one", async () => {
    const any = { lineId: "A", optionId: null, slotId: null };
    const conflict = await refusal({ pins: [any], bans: [any] });
    expect(conflict.clash.map(({ kind }) => kind)).toEqual(["pin", "ban"]);
    expect(conflict.relax?.map(({ limit }) => limit.kind)).toHaveLength(1);
  });

  it("never ask for a later safety date: without any slot before it nothing would do", async () => {
    const conflict = await refusal({ lines: duty("A", "2027-03-01") });
    expect(conflict.clash).toEqual([{ kind: "must-do", lineId: "A", by: "2027-03-01" }]);
    expect(conflict.relax).toBeNull();
  });

  it("name a shutdown that is too short, by its hours", async () => {
    const long = fullOf("A", { oak: 24 }, { windowHours: 170 });
    const [, ...rest] = duty("A", "2027-12-31");
    const mustDo = { by: "2027-12-31", optionIds: [], reason: "mission time" };
    const conflict = await refusal({ lines: [{ ...planLine("A", "VEL", [long]), mustDo }, ...rest] });
    expect(conflict.clash).toContainEqual({ kind: "window", lineId: "A", windowId: "VEL 2027" });
    expect(conflict.relax).toMatchObject([{ limit: { kind: "window" }, unit: "hours" }]);
    expect(conflict.relax?.[0]?.by).toBeCloseTo(10, 3);
  });
});

describe("what stands beside a plan", () => {
  it("is a baseline that is never worth more, a curve that never falls, and worth of more money", async () => {
    const { plan, companions } = await solve(
      { budgets: smallPlan.budgets.map((one) => ({ ...one, amount: 110_000 })) },
      true,
    );
    expect(companions?.rankAndCut?.worth.worth).toBeLessThanOrEqual(plan.worth.worth + 1e-6);
    const curve = companions?.curve ?? [];
    expect(curve).toHaveLength(6);
    for (const [i, { worth }] of curve.entries())
      expect(worth).toBeGreaterThanOrEqual((curve[i - 1]?.worth ?? 0) - 1e-6);
    expect(curve[0]?.worth).toBeLessThan(plan.worth.worth);
    expect(companions?.moreMoney.map(({ year }) => year)).toEqual([2027, 2028]);
    for (const { worth } of companions?.moreMoney ?? []) expect(worth).toBeGreaterThanOrEqual(0);
  });

  it("says what a pin costs", async () => {
    const pin = { lineId: "B", optionId: "B/full", slotId: "VEL 2027" };
    const free = await solve();
    const { plan, companions } = await solve({ pins: [pin] }, true);
    expect(companions?.decisions).toMatchObject([{ kind: "pin", decision: pin }]);
    const cost = free.plan.worth.worth - plan.worth.worth;
    expect(cost).toBeGreaterThan(0);
    expect(companions?.decisions[0]?.worthLost).toBeCloseTo(cost, 3);
  });

  it("finds the cost per hour at which a line just pays, by evaluating it there", async () => {
    const { companions } = await solve({}, true);
    const [one] = companions?.breakEven ?? [];
    expect(one?.atLeast).not.toBeNull();
    expect(companions?.breakEven.every(({ marginalWorth }) => marginalWorth > 0)).toBe(true);
    expect(rootAbove((cost) => 3 * cost - 600, 10)).toBeCloseTo(200, 3);
    expect(rootAbove((cost) => cost + 1, 10)).toBe(0);
    expect(rootAbove(() => -1, 10)).toBeNull();
  });

  it("shows what falls just below the line and what it would need", async () => {
    const { companions } = await solve({ budgets: [{ year: 2027, siteId: null, amount: 105_000 }] }, true);
    const [first] = companions?.below ?? [];
    expect(first?.addedWorth).toBeGreaterThan(0);
    expect(first?.needs.map(({ limit }) => limit.kind)).toContain("budget");
  });
});

describe("the envelope of a falling chance", () => {
  it("lies on or below every point, and loses no edge that lifts it", () => {
    const points: [number, number][] = [
      [0, 1],
      [1, 0.98],
      [2, 0.7],
      [3, 0.4],
      [4, 0.2],
      [8, 0.01],
    ];
    const edges = lowerHull(points);
    const top = (list: typeof edges, x: number) => Math.max(...list.map(({ at, slope }) => at + slope * x));
    for (const [x, y] of points) expect(top(edges, x)).toBeLessThanOrEqual(y + 1e-12);
    expect(top(edges, 0)).toBeCloseTo(1, 12);
    const fewer = fewerEdges(edges, [0, 1, 2, 3, 4, 8], 0.05);
    expect(fewer.length).toBeLessThan(edges.length);
    for (const [x] of points) expect(top(edges, x) - Math.max(0, top(fewer, x))).toBeLessThan(0.11);
    expect(stepBounds(48)).toEqual([0, 3, 6, 9, 12, 15, 18, 21, 24, 27, 30, 33, 36, 42, 48]);
    expect(stepBounds(7)).toEqual([0, 3, 6, 7]);
  });
});
