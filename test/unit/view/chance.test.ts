import fc from "fast-check";
import { expect, test } from "vitest";
import { chance, chanceWords, percent, perYear, signedPercent } from "@/lib/view/chance";

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, " ");

test("only certainty reads 0 % or 100 %", () => {
  expect(plain(percent(0))).toBe("0 %");
  expect(plain(percent(1))).toBe("100 %");
  expect(plain(percent(0.0001))).toBe("<1 %");
  expect(plain(percent(0.9999))).toBe(">99 %");
  fc.assert(
    fc.property(fc.double({ min: 1e-12, max: 1 - 1e-12, noNaN: true }), (share) => {
      expect(["0 %", "100 %"]).not.toContain(plain(percent(share)));
    }),
    { seed: 20261130 },
  );
});

test("a chance is also told as a count of like things", () => {
  expect(plain(chance(0.14, "lines"))).toBe("14 % (in 20 such lines about 3)");
  expect(chanceWords(0.02, "drives")).toBe("in 200 such drives about 4");
  expect(chanceWords(0.001, "drives")).toBe("in fewer than 1 of 200 such drives");
  expect(chanceWords(0.99, "lines")).toBe("in nearly all of 20 such lines");
  expect(chanceWords(0, "lines")).toBe("in no such lines");
  expect(chance(null, "lines")).toBe("not known");
});

test("the count told is never further than half a thing from the chance", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.0025, max: 0.97, noNaN: true }), (share) => {
      const [, base, hit] = /in (\d+) such lines about (\d+)/.exec(chanceWords(share, "lines")) ?? [];
      expect(Math.abs(Number(hit) - share * Number(base))).toBeLessThanOrEqual(0.5 + 1e-9);
    }),
    { seed: 20261130 },
  );
});

test("a share outside its range is a mistake, not a figure", () => {
  expect(() => percent(1.01)).toThrow(RangeError);
  expect(() => chanceWords(Number.NaN, "lines")).toThrow(RangeError);
});

test("a rate reads in years once it is rarer than every second year", () => {
  expect(perYear(3.24)).toBe("3.2 a year");
  expect(perYear(0.2)).toBe("one in 5.0 years");
  expect(perYear(0)).toBe("0 a year");
  expect(perYear(null)).toBe("not known");
});

test("a change carries its sign", () => {
  expect(plain(signedPercent(0.124))).toBe("+12 %");
  expect(plain(signedPercent(-0.04))).toBe("−4 %");
});
