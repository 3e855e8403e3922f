import { describe, expect, test } from "vitest";
import { isCurrency, placesOf } from "@/lib/kernel/currency";
import { atRate, crossRate, sumAmounts } from "@/lib/kernel/money";
import { earnedValue } from "@/lib/projects/earnedValue";
import { exactMoney } from "@/lib/view/format";

describe("minor units of ISO 4217 (npm currency-codes 2.2.0, list dated 2024-06-25)", () => {
  test.each([
    [0, "JPY KRW CLP ISK VND UGX PYG XAF XOF XPF BIF DJF GNF KMF RWF VUV UYI"],
    [3, "BHD IQD JOD KWD LYD OMR TND"],
    [4, "CLF UYW"],
    [2, "USD EUR GBP HUF CZK MGA MRU IDR SEK PLN MXN"],
  ])("%i places: %s", (places, codes) => {
    for (const code of codes.split(" ")) expect([code, placesOf(code)]).toEqual([code, places]);
  });
  // The platform's formats show other places than ISO 4217 has: measured on Node 20.20.2.
  test.each([
    ["IQD", "1234.567"],
    ["HUF", "1234.56"],
    ["MGA", "1234.56"],
    ["IDR", "1234.56"],
  ])("%s keeps its places when shown", (code, amount) => {
    const own = new Intl.NumberFormat("en-GB", { style: "currency", currency: code });
    expect(own.resolvedOptions().maximumFractionDigits).toBe(0);
    expect(exactMoney(amount, code).replace(/[^\d.]/g, "")).toBe(amount);
  });
  test("a code that is none is told from one that is", () => {
    expect(["SEK", "XXX", "XAU", "sek", ""].map(isCurrency)).toEqual([true, false, false, false, false]);
  });
  test("sums and rates keep the places of the currency and no binary remainder", () => {
    expect(sumAmounts(["0.001", "0.002"], 3)).toBe("0.003");
    expect(atRate("100.00", "11.305", 2)).toBe("1130.50");
    expect(atRate("100.00", "162.4449", 0)).toBe("16244");
    // 4.90 M at 11.30 SEK for one EUR, and back at the same stated rate.
    expect(atRate("4900000.00", crossRate("1", "11.30"), 2)).toBe("433628.32");
  });
});

describe("earned value (formulas of GAO-09-3SP, from memory)", () => {
  test("PRA 1.0 (CRAN): 35 of 100 thousand earned at 36 thousand, printed index 0.9722222", () => {
    const value = earnedValue({
      ...{ budgetAtCompletion: 100_000, planned: 40_000, earned: 35_000, actual: 36_000 },
    });
    expect(value.cpi).toBeCloseTo(0.9722222, 7);
    expect([value.spi, value.tcpi]).toEqual([0.875, 1.015625]);
    expect(value.eac.trend).toBeCloseTo(102_857.14, 2);
  });
  test("three estimates at completion: 460, 415 and 529 (derived)", () => {
    const { eac } = earnedValue({ budgetAtCompletion: 400, planned: 120, earned: 100, actual: 115 });
    expect(eac.trend).toBeCloseTo(460, 9);
    expect(eac.plannedRest).toBe(415);
    expect(eac.costAndSchedule).toBeCloseTo(529, 9);
  });
  test("the worked case: 0.75, 0.79, 5.8 / 6.5 / 7.3 M and 1.70 (computed)", () => {
    const { cpi, spi, eac, tcpi } = earnedValue({
      ...{ budgetAtCompletion: 4.9, planned: 0.7 * 4.9, earned: 0.55 * 4.9, actual: 3.6 },
    });
    expect([cpi, spi, tcpi].map((one) => one?.toFixed(2))).toEqual(["0.75", "0.79", "1.70"]);
    expect(Object.values(eac).map((one) => one?.toFixed(1))).toEqual(["6.5", "5.8", "7.3"]);
  });
});
