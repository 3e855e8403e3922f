import { describe, expect, test } from "vitest";
import { type OverrunInput, overrun } from "@/lib/projects/overrun";

/** A made-up project of 1,000 with 80 of contingency; planned and earned alike. */
const at = (earned: number, paid: number, given: Partial<OverrunInput> = {}) =>
  overrun({ budget: 1000, contingencyLeft: 80, planned: earned, earned, paid, ...given });

describe("an overrun", () => {
  test("is seen at 30 %: work that cost 380 instead of 276 needs more than contingency has", () => {
    // W = 920, EV = 276: the rest as planned ends at 380 + 644 = 1,024, the trend at 380 / 0.3 = 1,267.
    const seen = at(0.3, 380);
    expect(seen.state).toBe("budget");
    expect(seen.low).toBeCloseTo(1024, 9);
    expect(seen.high).toBeCloseTo(380 / 0.3, 9);
  });
  test("is seen at 30 % while contingency can still pay for it", () => {
    // 345 paid: 345 + 644 = 989, above 920 and below 1,000.
    expect(at(0.3, 345)).toMatchObject({ state: "contingency", low: 989, work: 920 });
  });
  test("is seen at 30 % where the same money at 90 % would have been seen too late", () => {
    const steps = [0.1, 0.2, 0.3, 0.6, 0.9].map((earned) => at(earned, earned * 920 * 1.25).state);
    expect(steps).toEqual(["early", "contingency", "contingency", "budget", "budget"]);
  });
  test("is none while the work costs what was planned, whatever contingency is left", () => {
    for (const contingencyLeft of [0, 80, 300]) {
      const work = 1000 - contingencyLeft;
      expect(at(0.3, 0.3 * work, { contingencyLeft }).state).toBe("kept");
    }
  });
  test("is not told from two percent of the work, nor before 15 % are earned, as the norms say", () => {
    expect(at(0.3, 276 + 18).state).toBe("kept");
    expect(at(0.3, 276 + 19).state).toBe("contingency");
    expect(at(0.14, 500).state).toBe("early");
    expect(overrun({ budget: 1000, contingencyLeft: 80, planned: 0, earned: 0, paid: 0 }).state).toBe(
      "early",
    );
  });
  test("with contingency used up is told against the whole budget: 4.90 M, 55 % earned, 3.60 M paid", () => {
    const seen = overrun({ budget: 4.9e6, contingencyLeft: 0, planned: 0.7, earned: 0.55, paid: 3.6e6 });
    expect(seen.state).toBe("budget");
    expect(seen.low).toBeCloseTo(5_805_000, 0);
  });
  test("refuses shares and amounts that cannot be", () => {
    expect(() => at(0.2, 1, { earned: 1.2 })).toThrow("earned");
    expect(() => at(0.2, 1, { contingencyLeft: 1001 })).toThrow("budget less contingencyLeft");
  });
});
