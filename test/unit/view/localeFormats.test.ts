import { afterEach, describe, expect, test } from "vitest";
import { type Locale, READER } from "@/lib/kernel/locale";
import { exactMoney, money, moneyRange, moneySpan } from "@/lib/view/format";
import { exactNumber, plainNumber, significant } from "@/lib/view/number";
import { localMoney } from "@/lib/view/projectMoney";
import { day, dayRange, hours, moment, month } from "@/lib/view/time";

const world = globalThis as { [READER]?: () => Locale };
const readBy = (reader: Locale) => {
  world[READER] = () => reader;
};
const plainly = (text: string) => text.replace(/[\u202f\u00a0]/g, " ");

afterEach(() => {
  delete world[READER];
});

describe("numbers, money and days as their reader writes them", () => {
  test("German: a comma before the decimals, the currency behind", () => {
    readBy({ language: "de", numbers: "space-comma" });
    expect(plainly(plainNumber(-1234567.891, 2))).toBe("−1 234 567,89");
    expect(significant(0.0412, 2)).toBe("0,041");
    expect(plainly(exactNumber(29127.3741))).toBe("29 127,3741");
    expect(plainly(money(412_345))).toBe("412 Tsd. €");
    expect(plainly(money(-1_240_000))).toBe("−1,24 Mio. €");
    const span = { mean: 412_345, low: 180_000, high: 1_790_000 };
    expect(plainly(moneyRange(span))).toBe("180 Tsd.–1,8 Mio. €");
    expect(plainly(moneySpan(span))).toBe("412 Tsd. € (180 Tsd.–1,8 Mio.)");
    expect(plainly(exactMoney("-1234.5"))).toBe("−1 234,50 €");
    expect(plainly(exactMoney("980", "JPY"))).toBe("980 JPY");
    expect(plainly(localMoney(6_550_000, "SEK"))).toBe("6,55 Mio. SEK");
    expect(plainly(hours(3.5))).toBe("3,5 h");
  });

  test("German: days with a point, months by their German names", () => {
    readBy({ language: "de", numbers: "space-comma" });
    expect(day("2026-03-03")).toBe("3. März 2026");
    expect(month("2026-12-01")).toBe("Dez. 2026");
    expect(dayRange("2026-04-03", "2026-04-14")).toBe("3.–14. Apr. 2026");
    expect(moment("2026-01-03T23:30:00Z", "Europe/Berlin")).toBe("4. Jan. 2026, 00:30");
  });

  test("the marks of numbers are chosen apart from the language", () => {
    readBy({ language: "en", numbers: "point-comma" });
    expect(plainNumber(1234.5, 1)).toBe("1.234,5");
    expect(plainly(money(412_345))).toBe("€ 412 k");
    expect(day("2026-03-03")).toBe("3 Mar 2026");
  });

  test("plain where nobody's wish is known", () => {
    expect(plainly(plainNumber(1234.5, 1))).toBe("1 234.5");
    expect(plainly(exactMoney("1234.5"))).toBe("€ 1 234.50");
  });
});
