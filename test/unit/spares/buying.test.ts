import { describe, expect, test } from "vitest";
import { allocate } from "@/lib/spares/allocate";
import { demandChanceAtMost, expectedBackorders, expectedShort, poissonAtMost } from "@/lib/spares/demand";
import { lastBuy } from "@/lib/spares/lastBuy";

const input = { a: 4.1, b: 100, exposure: 45, usable: 0, underCost: 9, overCost: 1 };

describe("last buy", () => {
  test("reaches the fractile with the fewest units", () => {
    const { quantity, fractile, level } = lastBuy(input);
    expect(fractile).toBeCloseTo(0.9, 12);
    expect(level).toBeGreaterThanOrEqual(fractile);
    expect(demandChanceAtMost(input, quantity - 1)).toBeLessThan(fractile);
  });
  test("spares held are taken off unit by unit, down to none", () => {
    const { quantity } = lastBuy(input);
    expect(lastBuy({ ...input, usable: 1 }).quantity).toBe(quantity - 1);
    expect(lastBuy({ ...input, usable: 50 }).quantity).toBe(0);
    expect(lastBuy({ ...input, usable: 50 }).level).toBeGreaterThan(0.999);
  });
  test("no exposure needs nothing", () => {
    expect(lastBuy({ ...input, exposure: 0 })).toMatchObject({ quantity: 0, level: 1 });
  });
  test("costs and counts out of range are refused by name", () => {
    expect(() => lastBuy({ ...input, overCost: 0 })).toThrow("overCost");
    expect(() => lastBuy({ ...input, usable: 0.5 })).toThrow("usable");
    expect(() => lastBuy({ ...input, exposure: Number.POSITIVE_INFINITY })).toThrow("exposure");
  });
});

describe("allocation", () => {
  test("an item too dear for what is left is passed over", () => {
    const items = [
      { id: "dear", mean: 3, unitCost: 10 },
      { id: "cheap", mean: 0.2, unitCost: 4 },
    ];
    expect(allocate(items, 15).map(({ id }) => id)).toEqual(["dear", "cheap"]);
  });
  test("stops when nothing helps, however much is left", () => {
    expect(allocate([{ id: "none", mean: 0, unitCost: 1 }], 100)).toEqual([]);
    expect(allocate([{ id: "few", mean: 0.1, unitCost: 1 }], 1000).length).toBeLessThan(40);
  });
  test("no budget buys nothing; a free unit is refused", () => {
    expect(allocate([{ id: "x", mean: 1, unitCost: 1 }], 0)).toEqual([]);
    expect(() => allocate([{ id: "x", mean: 1, unitCost: 0 }], 1)).toThrow("unitCost");
  });
});

test("short units of a settled rate are those of its Poisson", () => {
  const settled = { a: 1e9, b: 1e9, exposure: 4 };
  for (const spares of [0, 3, 8])
    expect(expectedShort(settled, spares)).toBeCloseTo(expectedBackorders(4, spares), 6);
});
test("below zero nothing can be asked for", () => {
  expect(demandChanceAtMost(input, -1)).toBe(0);
  expect(poissonAtMost(2, -1)).toBe(0);
  expect(poissonAtMost(0, 0)).toBe(1);
});
test.each<[string, () => unknown]>([
  ["k", () => poissonAtMost(1, 0.5)],
  ["mean", () => poissonAtMost(-1, 1)],
  ["spares", () => expectedBackorders(1, -1)],
  ["exposure", () => demandChanceAtMost({ a: 1, b: 1, exposure: -1 }, 0)],
])("a bad %s is refused by name", (name, run) => {
  expect(run).toThrow(RangeError);
  expect(run).toThrow(name);
});
