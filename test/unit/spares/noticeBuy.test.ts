import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BuyCase, type NeededPart, noticeBuy } from "@/lib/spares/noticeBuy";

const rate = { a: 63, b: 1527.1 };
const rates = { family: rate, parts: new Map() };
const asked: BuyCase = { sharing: "part", repaired: true, slipYears: 0, horizonYears: 10 };

/** 96 axes that leave in thirds after 1, 2 and 3 years; nothing can be ordered any more. */
const line = (given: Partial<NeededPart> = {}): NeededPart => ({
  ...{ partId: "p", siteId: "s", usable: 0, underCost: 223_800, overCost: 2676 },
  supply: {
    installed: [1, 2, 3].map((to) => ({ from: 0, to, units: 32 })),
    ...{ leadTime: 0.2, lastOrderAt: 0 },
    repair: { turnaround: 0.1, yield: 0.6, untilAt: null },
  },
  ...given,
});

describe("the buy at a notice", () => {
  it("of 192 unit-years is 15 without repair, 8 with it, 5 on a cheap line, 11 after a year's slip (own worked case)", () => {
    const buy = (part: NeededPart, given: Partial<BuyCase> = {}) =>
      noticeBuy([part], rates, { ...asked, ...given }).groups[0];
    expect(buy(line(), { repaired: false })).toMatchObject({ quantity: 15 });
    expect(buy(line(), { repaired: false })?.exposure).toBeCloseTo(192, 9);
    expect(buy(line())).toMatchObject({ quantity: 8 });
    expect(buy(line())?.exposure).toBeCloseTo(192 * 0.4, 9);
    expect(buy(line({ underCost: 12_900 }))).toMatchObject({ quantity: 5 });
    expect(buy(line(), { slipYears: 1 })).toMatchObject({ quantity: 11 });
  });

  it("keeps low, likely and high in their order, and the level at or above the fractile", () => {
    const [group] = noticeBuy([line()], rates, asked).groups;
    expect(group?.low).toBeLessThan(group?.high ?? 0);
    expect(group?.level).toBeGreaterThanOrEqual(group?.fractile ?? 1);
  });

  it("looks at units without a retrofit date over the horizon", () => {
    const installed = [{ from: 0, to: null, units: 10 }];
    const part = line({ supply: { ...line().supply, installed } });
    expect(noticeBuy([part], rates, { ...asked, repaired: false, horizonYears: 4 }).groups[0]?.exposure).toBe(
      40,
    );
  });

  it("counts only what orders before the last day do not make good", () => {
    const supply = { ...line().supply, lastOrderAt: 1, repair: null };
    const [group] = noticeBuy([line({ supply })], rates, asked).groups;
    expect(group?.exposure).toBeCloseTo(32 * 1 + 32 * 2, 9);
  });

  it("shares what is shared: one group, one a part, one a part and site", () => {
    const parts = [line(), line({ siteId: "t" }), line({ partId: "q", usable: 2.9 })];
    const groups = (sharing: BuyCase["sharing"]) => noticeBuy(parts, rates, { ...asked, sharing }).groups;
    expect(groups("family")).toMatchObject([{ partIds: ["p", "q"], siteIds: ["s", "t"], usable: 2 }]);
    expect(groups("part").map(({ siteIds }) => siteIds)).toEqual([["s", "t"], ["s"]]);
    expect(groups("site")).toHaveLength(3);
  });

  it("takes a part's own rate where there is one, the family's in one pool", () => {
    const own = { a: 5, b: 50 };
    const known = { family: rate, parts: new Map([["p", own]]) };
    expect(noticeBuy([line()], known, asked).groups[0]?.rate).toBe(own);
    expect(noticeBuy([line({ partId: "q" })], known, asked).groups[0]?.rate).toBe(rate);
    expect(noticeBuy([line()], known, { ...asked, sharing: "family" }).groups[0]?.rate).toBe(rate);
  });

  it("weighs costs by units", () => {
    const small = [{ from: 0, to: 1, units: 32 }];
    const parts = [
      line(),
      line({ partId: "q", supply: { ...line().supply, installed: small }, underCost: 23_800 }),
    ];
    const [group] = noticeBuy(parts, rates, { ...asked, sharing: "family" }).groups;
    expect(group?.underCost).toBeCloseTo((96 * 223_800 + 32 * 23_800) / 128, 6);
  });

  it("is nothing for nobody", () => {
    expect(noticeBuy([], rates, asked)).toEqual({ groups: [], quantity: 0, low: 0, high: 0 });
  });

  it.each([
    [{ slipYears: -1 }, "slipYears"],
    [{ horizonYears: 0 }, "horizonYears"],
  ])("refuses %j", (given, name) => {
    expect(() => noticeBuy([line()], rates, { ...asked, ...given })).toThrow(name);
  });
});

describe("for any parts", () => {
  const parts = fc.array(
    fc.record({
      partId: fc.constantFrom("p", "q"),
      siteId: fc.constantFrom("s", "t"),
      units: fc.integer({ min: 1, max: 60 }),
      to: fc.double({ min: 0.2, max: 6, noNaN: true }),
      usable: fc.double({ min: 0, max: 9, noNaN: true }),
    }),
    { minLength: 1, maxLength: 5 },
  );
  const made = (
    list: readonly { partId: string; siteId: string; units: number; to: number; usable: number }[],
  ) =>
    list.map(({ units, to, ...rest }) =>
      line({ ...rest, supply: { ...line().supply, installed: [{ from: 0, to, units }] } }),
    );
  const total = (list: readonly NeededPart[], given: Partial<BuyCase> = {}) =>
    noticeBuy(list, rates, { ...asked, ...given }).quantity;

  it("a slip, or no repair, never needs fewer, and one more usable piece never needs more", () => {
    fc.assert(
      fc.property(parts, fc.constantFrom("family", "part", "site" as const), (list, sharing) => {
        const base = made(list);
        const share = { sharing } as Partial<BuyCase>;
        const now = total(base, share);
        expect(total(base, { ...share, slipYears: 0.5 })).toBeGreaterThanOrEqual(now);
        expect(total(base, { ...share, repaired: false })).toBeGreaterThanOrEqual(now);
        const more = base.map((part, i) => (i === 0 ? { ...part, usable: part.usable + 1 } : part));
        expect(total(more, share)).toBeLessThanOrEqual(now);
      }),
      { numRuns: 200, seed: 20261125 },
    );
  });
});
