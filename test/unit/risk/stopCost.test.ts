import { describe, expect, test } from "vitest";
import { lognormalMean } from "@/lib/reliability/lognormal";
import { expectedStopCost } from "@/lib/risk/expectedStopCost";
import { ladderHours, openSteps } from "@/lib/risk/sourceLadder";

const restoration = { mu: Math.log(3.5), sigma: 0.8 };
const terms = { costPerHour: 1000, bufferHours: 0, unrecoveredShare: 1 };

describe("cost of a stop", () => {
  test("without a buffer every hour costs, less what overtime recovers", () => {
    const mean = lognormalMean(restoration);
    expect(expectedStopCost({ restoration, delayHours: 0 }, terms)).toBeCloseTo(1000 * mean, 8);
    expect(expectedStopCost({ restoration, delayHours: 0 }, { ...terms, unrecoveredShare: 0.4 })).toBeCloseTo(
      400 * mean,
      8,
    );
  });
  test("a delay within the buffer eats the buffer, beyond it costs in full", () => {
    const buffered = { ...terms, bufferHours: 4 };
    const cost = (delayHours: number) => expectedStopCost({ restoration, delayHours }, buffered);
    expect(cost(4)).toBeCloseTo(1000 * lognormalMean(restoration), 8);
    expect(cost(34)).toBeCloseTo(1000 * (lognormalMean(restoration) + 30), 8);
    expect(cost(1)).toBeGreaterThan(cost(0));
  });
  test("fixed cost and a step reached half the time add up", () => {
    const stepped = { ...terms, fixed: 200, steps: [{ afterHours: 3.5, cost: 10_000 }] };
    const plain = expectedStopCost({ restoration, delayHours: 0 }, terms);
    expect(expectedStopCost({ restoration, delayHours: 0 }, stepped) - plain).toBeCloseTo(5200, 6);
  });
  test("values out of range are refused by name", () => {
    expect(() => expectedStopCost({ restoration, delayHours: -1 }, terms)).toThrow("delayHours");
    expect(() => expectedStopCost({ restoration, delayHours: 0 }, { ...terms, unrecoveredShare: 2 })).toThrow(
      "unrecoveredShare",
    );
  });
});

describe("source ladder", () => {
  const steps = [
    { source: "cupboard", availability: 0.2, hours: 2 },
    { source: "order", availability: 1, hours: 240, needs: "orders" as const },
    { source: "repair", availability: 0.5, hours: 100, needs: "repair" as const },
    { source: "conversion", availability: 1, hours: 600 },
  ];
  test("each source is reached by what the ones before left (derived)", () => {
    expect(ladderHours(openSteps(steps, { orders: false, repair: true }))).toBeCloseTo(
      0.4 + 0.8 * (50 + 300),
      10,
    );
    expect(ladderHours(openSteps(steps, { orders: true, repair: true }))).toBeCloseTo(
      0.4 + 0.8 * (50 + 120),
      10,
    );
    expect(ladderHours(openSteps(steps, { orders: false, repair: false }))).toBeCloseTo(0.4 + 0.8 * 600, 10);
  });
  test("nothing slower than a certain source is waited for", () => {
    const open = openSteps(steps, { orders: true, repair: true });
    expect(open.map(({ source }) => source)).toEqual(["cupboard", "repair", "order"]);
  });
  test("must end with something certain", () => {
    expect(() => ladderHours(steps.slice(0, 1))).toThrow("availability");
    expect(() => ladderHours([])).toThrow("availability");
  });
});
