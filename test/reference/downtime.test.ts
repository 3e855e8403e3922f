import { describe, expect, test } from "vitest";
import { downtimeSplit } from "@/lib/reliability/downtime";
import { lognormalWithMean } from "@/lib/reliability/lognormal";
import { consumptionRate, rateInterval } from "@/lib/reliability/rate";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import type { GroupInput } from "@/lib/risk/evaluation";
import { lineLoss } from "@/lib/risk/lineLoss";
import type { PoolOnLine } from "@/lib/risk/lineStops";
import { lineScore } from "@/lib/risk/score";
import { unreplenishedExposure } from "@/lib/spares/exposure";
import { line, smallGroup } from "../support/smallGroup";

describe("stops split into waiting and work (terms of IEC 60050-192, from memory)", () => {
  test("2 h of repair after 46 h of waiting: repair 2, restoration 48, never one figure", () => {
    expect(downtimeSplit([{ downtimeHours: 48, logisticHours: 46 }])).toEqual({
      restoration: { hours: 48, stops: 1 },
      waiting: { hours: 46, stops: 1 },
      repair: { hours: 2, stops: 1 },
    });
  });
  test("restoration is total time over stops; waiting not recorded is not waiting of zero", () => {
    const split = downtimeSplit([
      { downtimeHours: 10, logisticHours: 4 },
      { downtimeHours: 20, logisticHours: null },
      { downtimeHours: null, logisticHours: 3 },
      { downtimeHours: 6, logisticHours: 0 },
    ]);
    expect(split.restoration).toEqual({ hours: 12, stops: 3 });
    expect(split.waiting).toEqual({ hours: 2, stops: 2 });
    expect(split.repair).toEqual({ hours: 6, stops: 2 });
  });
  test("no stop tells nothing", () => {
    expect(downtimeSplit([]).restoration).toEqual({ hours: null, stops: 0 });
  });
  test.each([
    ["downtimeHours", { downtimeHours: 3, logisticHours: 4 }],
    ["downtimeHours", { downtimeHours: Number.NaN, logisticHours: null }],
    ["logisticHours", { downtimeHours: null, logisticHours: -1 }],
  ])("bad %s are refused by name", (name, stop) => {
    expect(() => downtimeSplit([stop])).toThrow(name);
  });
});

test("mean restoration of a line is weighted by failures: 14.29, not 18.33 (MIL-HDBK-472 formula, public copy)", () => {
  const first = evaluate(smallGroup as GroupInput, likelyAssumptions).pools[0];
  if (!first) throw new Error("the small group has pools");
  const never = { mean: 0, low: 0, high: 0 };
  const items = [
    [100, 15],
    [50, 30],
    [200, 10],
  ] as const;
  const pools = items.map(([rate, hours], i): PoolOnLine => {
    const time = lognormalWithMean(hours, 0.7);
    return {
      result: { ...first, poolId: `p${i}`, noSpare: never, usableBySite: {}, usable: 0 },
      units: 1,
      atSite: { removals: 0, failures: 0, unitYears: 0 },
      failure: { mean: rate, low: rate, high: rate },
      times: { withSpare: time, withoutSpare: time, hoursWithSpare: hours, hoursWithoutSpare: hours },
    };
  });
  const result = lineLoss(line("L", "VEL", { costPerHour: 1, bufferHours: 0 }), {
    pools,
    assumptions: likelyAssumptions,
  });
  expect((result.baseLoss ?? 0) / result.stopsPerYear).toBeCloseTo(14.2857, 4);
});

test("units in series: 0.95, 0.98 and 0.99 leave 0.92169 (derived), read off the score at its stage corner", () => {
  const pools = [0.95, 0.98, 0.99].map((stays, i) => ({
    ...{ id: `u${i}`, failureRate: -Math.log(stays), stage: "own-stock" as const, noSpare: 0, hoursDown: 0 },
  }));
  const corner = { stage: 1, spares: 0, repair: 0, tolerableHours: 1, horizonYears: 1 };
  expect(1 - lineScore(pools, corner).score / 100).toBeCloseTo(0.92169, 12);
});

describe("consumption is removals that do not come back (derived)", () => {
  const removal = { a: 63, b: 1527.1 };
  test("rate and range shrink alike", () => {
    const { mean, low, high } = consumptionRate(removal, 0.6);
    const all = rateInterval(removal, 0.9);
    expect(mean).toBeCloseTo((0.4 * 63) / 1527.1, 12);
    expect(low / all.low).toBeCloseTo(0.4, 12);
    expect(high / all.high).toBeCloseTo(0.4, 12);
  });
  test("is what erodes the shelf once repair is all there is", () => {
    const pool = {
      installed: [{ from: 0, to: null, units: 40 }],
      ...{ leadTime: 0.2, lastOrderAt: 0 },
      repair: { turnaround: 0.1, yield: 0.6, untilAt: null },
    };
    const yearly = unreplenishedExposure(pool, 5) - unreplenishedExposure(pool, 4);
    expect((yearly * removal.a) / removal.b).toBeCloseTo(40 * consumptionRate(removal, 0.6).mean, 12);
  });
  test("nothing is used up when everything comes back; a share above one is refused by name", () => {
    expect(consumptionRate(removal, 1)).toEqual({ mean: 0, low: 0, high: 0 });
    expect(() => consumptionRate(removal, 1.1)).toThrow("returned");
  });
});
