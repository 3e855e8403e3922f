import { expect, test } from "vitest";
import { count, exactNumber, plainNumber, quantity, significant } from "@/lib/view/number";

const plain = (text: string) => text.replace(/\u202f/g, " ");

test("digits stand in threes before the point and together after it", () => {
  expect(plain(plainNumber(1234567.8912, 4))).toBe("1 234 567.8912");
  expect(plain(plainNumber(999))).toBe("999");
  expect(plain(plainNumber(1000))).toBe("1 000");
});

test("a value that rounds to nothing carries no minus sign", () => {
  expect(plainNumber(-0.4)).toBe("0");
  expect(plainNumber(-0.6)).toBe("−1");
});

test("what is not a finite number is never shown", () => {
  expect(() => plainNumber(Number.NaN)).toThrow(RangeError);
  expect(() => plainNumber(Number.POSITIVE_INFINITY)).toThrow(RangeError);
});

test.each([
  [0.041234, 2, "0.041"],
  [0.0000012, 2, "0.0000012"],
  [41.26, 3, "41.3"],
  [99.96, 3, "100"],
  [9.996, 3, "10.0"],
  [41234, 2, "41 000"],
  [0, 3, "0"],
])("%s to %s significant digits reads %s", (value, digits, text) => {
  expect(plain(significant(value, digits))).toBe(text);
});

test("an expected count keeps one decimal, a counted one none, an unknown one is said", () => {
  expect(quantity(12)).toBe("12");
  expect(quantity(3.44)).toBe("3.4");
  expect(count(1, "drive")).toBe("1 drive");
  expect(count(0, "drive")).toBe("0 drives");
  expect(count(1.5, "supply", "supplies")).toBe("1.5 supplies");
  expect(count(null, "drive")).toBe("drives not known");
});

test.each([
  [157.08, "157.08"],
  [1_048_576, "1 048 576"],
  [0.1 + 0.2, "0.3"],
  [2 ** 20 * 3.5, "3 670 016"],
  [100 / 3, "33.3333333333"],
  [0.0000004, "0.0000004"],
  [-12.5, "−12.5"],
  [0, "0"],
])("%s is shown with all its digits: %s", (value, text) => {
  expect(plain(exactNumber(value))).toBe(text);
});
