import { describe, expect, test } from "vitest";
import { type PoolSupply, unreplenishedExposure } from "@/lib/spares/exposure";

const ten: PoolSupply = {
  installed: [{ from: 0, to: null, units: 10 }],
  leadTime: 0.25,
  lastOrderAt: null,
  repair: null,
};

test("orderable for ever, only what is on its way is missing", () => {
  expect(unreplenishedExposure(ten, 0)).toBe(0);
  expect(unreplenishedExposure(ten, 0.1)).toBeCloseTo(1, 12);
  expect(unreplenishedExposure(ten, 5)).toBeCloseTo(2.5, 12);
});
test("not orderable and not repaired, everything is missing", () => {
  expect(unreplenishedExposure({ ...ten, lastOrderAt: -2 }, 3)).toBeCloseTo(30, 12);
  expect(unreplenishedExposure({ ...ten, lastOrderAt: 0 }, 3)).toBeCloseTo(30, 12);
});
test("an order on the last day still arrives, later removals do not", () => {
  const shut = { ...ten, lastOrderAt: 1 };
  expect(unreplenishedExposure(shut, 1)).toBeCloseTo(2.5, 12);
  expect(unreplenishedExposure(shut, 1.1)).toBeCloseTo(10 * 0.15 + 10 * 0.1, 12);
  expect(unreplenishedExposure(shut, 2)).toBeCloseTo(10, 12);
});

describe("repair after the last order", () => {
  const repaired = { ...ten, lastOrderAt: 0, repair: { turnaround: 0.2, yield: 0.6, untilAt: 2 } };
  test("loses what is not returned and waits for what is", () => {
    expect(unreplenishedExposure(repaired, 1)).toBeCloseTo(10 * (0.8 * 0.4 + 0.2), 12);
  });
  test("ends on its day, and what was taken in before still comes back", () => {
    expect(unreplenishedExposure(repaired, 3)).toBeCloseTo(10 * (2 * 0.4 + 1), 12);
    expect(unreplenishedExposure(repaired, 2.1)).toBeCloseTo(10 * (1.9 * 0.4 + 0.1 + 0.1), 12);
  });
  test("without an end goes on; ended before the last order, never starts", () => {
    const endless = { ...repaired, repair: { ...repaired.repair, untilAt: null } };
    expect(unreplenishedExposure(endless, 10)).toBeCloseTo(10 * (9.8 * 0.4 + 0.2), 12);
    const over = { ...repaired, repair: { ...repaired.repair, untilAt: -1 } };
    expect(unreplenishedExposure(over, 1)).toBeCloseTo(10, 12);
  });
  test("a perfect repair loses only the time it takes", () => {
    const perfect = { ...repaired, repair: { turnaround: 0.2, yield: 1, untilAt: null } };
    expect(unreplenishedExposure(perfect, 5)).toBeCloseTo(2, 12);
  });
});

test("96 axes that leave in thirds after 1, 2 and 3 years are 192 unit-years, not 288", () => {
  const installed = [1, 2, 3].map((to) => ({ from: 0, to, units: 32 }));
  expect(unreplenishedExposure({ ...ten, installed, lastOrderAt: 0 }, 3)).toBeCloseTo(192, 12);
  expect(unreplenishedExposure({ ...ten, installed, lastOrderAt: 0 }, 9)).toBeCloseTo(192, 12);
});

test.each<[string, PoolSupply, number]>([
  ["t", ten, -1],
  ["leadTime", { ...ten, leadTime: -0.1 }, 1],
  ["units", { ...ten, installed: [{ from: 0, to: null, units: -1 }] }, 1],
  ["yield", { ...ten, repair: { turnaround: 0.1, yield: 1.2, untilAt: null } }, 1],
  ["turnaround", { ...ten, repair: { turnaround: Number.NaN, yield: 0.5, untilAt: null } }, 1],
])("a bad %s is refused by name", (name, pool, t) => {
  expect(() => unreplenishedExposure(pool, t)).toThrow(name);
});
