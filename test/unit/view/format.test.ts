import { expect, test } from "vitest";
import { exactMoney, exchangeRate, money, moneyRange, moneySpan, thousands } from "@/lib/view/format";

const plain = (text: string) => text.replace(/[\u00a0\u202f]/g, " ");

test.each([
  [0, "€ 0"],
  [3.4, "€ 3"],
  [860, "€ 860"],
  [4123, "€ 4 120"],
  [9994, "€ 9 990"],
  [9996, "€ 10.0 k"],
  [41_234, "€ 41.2 k"],
  [412_345, "€ 412 k"],
  [999_400, "€ 999 k"],
  [999_600, "€ 1.00 M"],
  [12_345_678, "€ 12.3 M"],
  [-412_345, "−€ 412 k"],
  [null, "not known"],
])("an estimate of %s EUR reads %s", (value, text) => {
  expect(plain(money(value))).toBe(text);
});

test("an estimate shows the range it may truly have, the unit said once where both bounds share it", () => {
  expect(plain(moneySpan({ mean: 412_000, low: 180_000, high: 790_000 }))).toBe("€ 412 k (180–790 k)");
  expect(plain(moneySpan({ mean: 412_000, low: 9_000, high: 1_240_000 }))).toBe("€ 412 k (9 000–1.2 M)");
  expect(plain(moneySpan({ mean: 412_000, low: 90_000, high: 1_240_000 }))).toBe("€ 412 k (90 k–1.2 M)");
  expect(plain(moneySpan({ mean: 500, low: 0, high: 1_600 }))).toBe("€ 500 (0–1 600)");
  expect(plain(moneyRange({ mean: 412_000, low: 0, high: 790_000 }))).toBe("€ 0–790 k");
  expect(moneySpan(null)).toBe("not known");
});

test("no digit group, unit or sign can be torn off at the end of a line", () => {
  expect(moneySpan({ mean: 4_123, low: 1_000, high: 9_000 })).not.toMatch(/\d \d|€ /);
});

test("a column in thousands never shows something as nothing", () => {
  expect(thousands(0)).toBe("0");
  expect(thousands(1)).toBe("<1");
  expect(thousands(499.9)).toBe("<1");
  expect(thousands(500)).toBe("1");
  expect(plain(thousands(1_234_567))).toBe("1 235");
  expect(thousands(null)).toBe("not known");
});

test("a booked amount keeps both decimals and every digit a binary fraction would lose", () => {
  expect(plain(exactMoney("1234.5"))).toBe("€ 1 234.50");
  expect(plain(exactMoney("12345678901234567.89"))).toBe("€ 12 345 678 901 234 567.89");
  expect(plain(exactMoney("-980", "PLN"))).toBe("−PLN 980.00");
  expect(plain(exactMoney("0.10", "GBP"))).toBe("£ 0.10");
  expect(exactMoney(null)).toBe("not known");
  expect(plain(exchangeRate("4.30", "PLN"))).toBe("4.30 PLN for € 1");
});
