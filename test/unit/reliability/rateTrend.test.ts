import { describe, expect, it } from "vitest";
import { rateTrend } from "@/lib/reliability/rateTrend";
import { serviceTime } from "@/lib/reliability/serviceTime";
import { laplaceTrend, powerLaw } from "@/lib/reliability/trend";

describe("the clock of a pool", () => {
  const stretches = [
    { fromDay: 0, untilDay: 1000, units: 2 },
    { fromDay: 500, untilDay: 1000, units: 3 },
  ];

  it("runs as fast as there are units, and stands when there are none", () => {
    expect(serviceTime(stretches, 500) * 365.25).toBeCloseTo(1000, 9);
    expect(serviceTime(stretches, 600.5) * 365.25).toBeCloseTo(2 * 600.5 + 3 * 100.5, 9);
    expect(serviceTime(stretches, 2000)).toBe(serviceTime(stretches, 1000));
    expect(serviceTime([], 10)).toBe(0);
  });

  it.each([
    ["day", () => serviceTime(stretches, -1)],
    ["units", () => serviceTime([{ fromDay: 0, untilDay: 1, units: 0.5 }], 1)],
    ["untilDay", () => serviceTime([{ fromDay: 2, untilDay: 1, units: 1 }], 1)],
  ])("refuses a bad %s by name", (name, run) => {
    expect(run).toThrow(name);
  });
});

describe("whether a rate moves", () => {
  it("is not said of three events", () => {
    expect(rateTrend([1, 2, 9], 10)).toEqual({ events: 3, unitYears: 10, verdict: "too-few", tests: null });
    expect(rateTrend([10, 10, 10, 10], 10).verdict).toBe("too-few");
  });

  it("is faster when events crowd at the end, slower at the start, and no sign when even", () => {
    const late = [60, 70, 80, 85, 90, 94, 97, 99];
    expect(rateTrend(late, 100).verdict).toBe("faster");
    expect(rateTrend(late.map((time) => 100 - time).reverse(), 100).verdict).toBe("slower");
    expect(rateTrend([10, 30, 50, 70, 90], 100).verdict).toBe("no-sign");
    // Three at the very start weigh more on the power law than on the mean of the times.
    const hint = rateTrend([0.01, 0.02, 0.05, 30, 50, 70, 90, 95], 100);
    expect(hint.verdict).toBe("hint-slower");
    expect(hint.tests?.laplace.p).toBeGreaterThan(0.05);
    expect(hint.tests?.power.p).toBeLessThan(0.05);
  });

  it("is not taken for a change when only the units grew", () => {
    // One unit for 1000 days, then nine more: an event each 500 unit-days.
    const stretches = [
      { fromDay: 0, untilDay: 2000, units: 1 },
      { fromDay: 1000, untilDay: 2000, units: 9 },
    ];
    const days = Array.from({ length: 22 }, (_, i) => (i < 2 ? 250 + 500 * i : 1000 + 50 * (i - 2) + 25));
    const end = serviceTime(stretches, 2000);
    const times = days.map((day) => serviceTime(stretches, day));
    expect(rateTrend(times, end).verdict).toBe("no-sign");
    expect(laplaceTrend(days, 2000).p).toBeLessThan(0.01);
  });

  it("carries the figures of both tests", () => {
    const times = [10, 30, 50, 70, 90, 95];
    const { tests } = rateTrend(times, 100);
    expect(tests?.laplace).toEqual(laplaceTrend(times, 100));
    expect(tests?.power.beta).toBe(powerLaw(times, 100).beta);
  });
});
