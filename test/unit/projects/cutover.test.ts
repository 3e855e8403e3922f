import { describe, expect, it } from "vitest";
import {
  type CutoverTimes,
  expectCutover,
  fallBackPoint,
  hoursAfter,
  type PlannedStep,
} from "@/lib/projects/cutover";
import { USUAL_CUTOVER } from "@/lib/projects/usualCutover";

const START = "2027-01-02T05:00:00.000Z";
const at = (hours: number) => hoursAfter(START, hours);

const times = (given: Partial<CutoverTimes> = {}): CutoverTimes => ({
  ...{ startsAt: START, productionAt: at(60), restoreHours: 20, marginHours: 6 },
  ...{ restoreTestedOn: "2026-12-01", ...given },
});

const step = (
  id: string,
  [afterHours, hours]: readonly [number, number],
  given: Partial<PlannedStep> = {},
): PlannedStep => ({
  ...{ id, afterHours, hours, startedAt: null, endedAt: null, ...given },
});

describe("the fall-back point", () => {
  it("is production start less the hours to put back and the margin", () => {
    expect(fallBackPoint(times())).toEqual({ kind: "tested", at: at(34) });
  });

  it("is none while hours are missing, and none that counts while nobody tried it", () => {
    expect(fallBackPoint(times({ restoreHours: null }))).toEqual({ kind: "unknown", at: null });
    expect(fallBackPoint(times({ marginHours: null }))).toEqual({ kind: "unknown", at: null });
    expect(fallBackPoint(times({ restoreTestedOn: null }))).toEqual({ kind: "untested", at: at(34) });
  });

  it("counts elapsed hours over the night the clocks change", () => {
    // Berlin, 28 March 2027: 06:00 summer time is 04:00 UTC; 26 hours earlier is 03:00 winter time.
    const point = fallBackPoint(times({ productionAt: "2027-03-28T04:00:00Z" }));
    expect(point.at).toBe("2027-03-27T02:00:00.000Z");
  });

  it("refuses what is no hour", () => {
    expect(() => fallBackPoint(times({ restoreHours: -1 }))).toThrow(RangeError);
    expect(() => fallBackPoint(times({ productionAt: "soon" }))).toThrow(/RFC 3339, got soon/);
  });
});

describe("what is to be expected of a cutover", () => {
  const plan = [step("a", [0, 4]), step("b", [4, 8]), step("c", [4, 2]), step("d", [12, 6])];
  const of = (steps: readonly PlannedStep[], now: string | null = null) => expectCutover(times(), steps, now);

  it("is the plan while nothing is written down", () => {
    const { steps, endsAt, spareHours } = of(plan);
    expect(steps.map(({ id, start, end }) => [id, start, end])).toEqual([
      ["a", at(0), at(4)],
      ["c", at(4), at(6)],
      ["b", at(4), at(12)],
      ["d", at(12), at(18)],
    ]);
    expect([endsAt, spareHours]).toEqual([at(18), 42]);
    expect(steps.every(({ lateHours }) => lateHours === 0)).toBe(true);
  });

  it("moves what waits for a late step, and only that", () => {
    const done = step("a", [0, 4], { startedAt: at(0), endedAt: at(4) });
    const late = step("c", [4, 2], { startedAt: at(4), endedAt: at(9) });
    const { steps } = of([done, plan[1] as PlannedStep, late, plan[3] as PlannedStep]);
    expect(steps.map(({ id, lateHours }) => [id, lateHours])).toEqual([
      ["a", 0],
      ["c", 3],
      ["b", 0],
      ["d", 0],
    ]);
    const sharp = of([step("a", [0, 4], { startedAt: at(0), endedAt: at(6) }), step("b", [4, 8])]);
    expect(sharp.steps.at(-1)).toMatchObject({ start: at(6), end: at(14), lateHours: 2 });
    const later = of([done, plan[1] as PlannedStep, { ...late, endedAt: at(15) }, plan[3] as PlannedStep]);
    expect(later.steps.at(-1)).toMatchObject({ id: "d", start: at(15), lateHours: 3 });
  });

  it("does not let a running step end before now, nor one to come begin before now or before its hour", () => {
    const running = step("a", [0, 4], { startedAt: at(1) });
    const { steps } = of([running, step("b", [4, 8])], at(10));
    expect(steps).toMatchObject([
      { state: "running", end: at(10), lateHours: 6 },
      { state: "to-come", start: at(10), end: at(18) },
    ]);
    const early = step("a", [0, 4], { startedAt: at(0), endedAt: at(1) });
    expect(of([early, step("b", [4, 8])], at(1)).steps[1]).toMatchObject({ start: at(4), lateHours: 0 });
  });

  it("says by how much production is late", () => {
    expect(of([step("a", [0, 64])]).spareHours).toBe(-4);
    expect(of([]).endsAt).toBe(START);
  });
});

it("the usual steps are in order, take time, and name who does them", () => {
  const starts = USUAL_CUTOVER.map(({ afterHours }) => afterHours);
  expect(starts).toEqual([...starts].sort((a, b) => a - b));
  expect(USUAL_CUTOVER.every(({ hours, who, needs }) => hours > 0 && who !== "" && needs !== "")).toBe(true);
  const cautions = new Set(USUAL_CUTOVER.map(({ caution }) => caution));
  for (const needed of ["lockout", "stored", "vertical", "first_motion", "validation"] as const)
    expect(cautions).toContain(needed);
});
