import { expect, test } from "vitest";
import { compareAmounts, subtractAmounts, sumAmounts, toEur } from "@/lib/kernel/money";

test("ten times a tenth is one", () => {
  expect(sumAmounts(Array.from({ length: 10 }, () => "0.10"))).toBe("1.00");
  expect(sumAmounts([])).toBe("0.00");
});
test("the sum is rounded once, at the end, halves away from zero", () => {
  expect(sumAmounts(["0.004", "0.004"])).toBe("0.01");
  expect(sumAmounts(["2.345"])).toBe("2.35");
  expect(sumAmounts(["-2.345"])).toBe("-2.35");
});
test("amounts are taken off, converted and compared as decimals", () => {
  expect(subtractAmounts("100.00", "100.01")).toBe("-0.01");
  expect(toEur("4900000.00", "11.30")).toBe("433628.32");
  expect(compareAmounts("10.00", "9.00")).toBe(1);
  expect(compareAmounts("1.0", "1.00")).toBe(0);
});
test.each(["1,5", "1e3", "", "NaN", "EUR 5"])("%s is no amount", (text) => {
  expect(() => sumAmounts([text])).toThrow(RangeError);
});
test("a rate of zero converts nothing", () => {
  expect(() => toEur("1.00", "0")).toThrow("ratePerEur");
});
