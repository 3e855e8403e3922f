import { parse } from "csv-parse/sync";
import readWorkbook from "read-excel-file/node";
import { beforeAll, describe, expect, test } from "vitest";
import { workbook } from "@/lib/reports/workbook";
import { csv } from "@/lib/view/csv";
import { buyColumns, buyRows, buyTotals, shownBuy } from "@/lib/view/reviewBuys";
import type { ReviewBuy } from "@/lib/view/reviewRecord";

const DANGEROUS = ["=1+1", "+1", "-1", "@SUM(A1)", "\tx", "\rx"];

const buy = (more: Partial<ReviewBuy>): ReviewBuy => ({
  ...{ id: "b", partId: "p", number: "QF-LU-08", description: "Fan unit", quantity: 3, reason: "worn" },
  ...{ orderByOn: "2027-01-15", stage: "buy-window", version: 1 },
  price: { amount: "1234.50", currency: "EUR", pricedOn: "2026-05-02" },
  ...more,
});
const known = buy({});
const unknown = buy({ id: "u", orderByOn: null, stage: null, price: null, quantity: 1 });
const columns = buyColumns(true);
const rows = buyRows(columns, [known, unknown, ...DANGEROUS.map((reason) => buy({ reason }))], "VEL");
const heads = columns.map(({ title }) => title);
const at = (title: string) => heads.indexOf(title);

let read: readonly (readonly unknown[])[] = [];
beforeAll(async () => {
  const [sheet] = await readWorkbook(Buffer.from(await workbook(columns, rows)));
  read = sheet?.data ?? [];
});

describe("the purchase list as a workbook", () => {
  const cell = (row: number, title: string) => read[row]?.[at(title)];

  test("has the heads, and a row for each", () => {
    expect(read).toHaveLength(rows.length + 1);
    expect(read[0]).toEqual(heads);
  });

  test("holds the numbers of the screen as numbers, and its days as days", () => {
    const shown = shownBuy(known);
    expect(cell(1, "Quantity")).toBe(3);
    expect(shown.quantity).toBe("3");
    expect(cell(1, "Price of a piece")).toBe(1234.5);
    expect(shown.price).toBe("€\u00a01\u202f234.50");
    expect(cell(1, "Order by")).toEqual(new Date("2027-01-15T00:00:00.000Z"));
    expect(cell(1, "Price date")).toEqual(new Date("2026-05-02T00:00:00.000Z"));
    expect(cell(1, "Currency")).toBe("EUR");
    expect(cell(1, "Supply stage")).toBe("C Buy window");
  });

  test("leaves empty what is not known", () => {
    for (const title of ["Order by", "Supply stage", "Price of a piece", "Currency", "Price date"])
      expect(cell(2, title)).toBeNull();
  });

  test.each(DANGEROUS.map((text, place) => [JSON.stringify(text), place] as const))(
    "makes %s harmless",
    (_, place) => {
      expect(String(cell(place + 3, "Reason"))).toMatch(/^'/);
    },
  );
});

describe("the purchase list as text", () => {
  const text = parse(csv([heads, ...rows]), { bom: true }) as string[][];

  test("has the same cells as the workbook", () => {
    expect(text[0]).toEqual(heads);
    expect(text[1]?.[at("Price of a piece")]).toBe("1234.5");
    expect(text[1]?.[at("Quantity")]).toBe("3");
    expect(text[1]?.[at("Order by")]).toBe("2027-01-15");
    expect(text[2]?.[at("Price of a piece")]).toBe("");
  });

  test("runs nothing", () => {
    for (const [place] of DANGEROUS.entries()) expect(text[place + 3]?.[at("Reason")]).toMatch(/^'/);
  });
});

test("sums are by currency, and what has no price is said", () => {
  const zloty = buy({ quantity: 2, price: { amount: "0.10", currency: "PLN", pricedOn: null } });
  expect(buyTotals([known, zloty, unknown])).toBe(
    "3 parts, together €\u00a03\u202f703.50 and PLN\u00a00.20 at the prices shown; 1 part has no price on record.",
  );
});
