import { describe, expect, it } from "vitest";
import { detectDialect } from "@/lib/intake/dialect";
import { defineField, type FieldKind } from "@/lib/intake/field";
import { Catalogue } from "@/lib/intake/intents/catalogue";
import { stockIntents } from "@/lib/intake/intents/stockIntents";
import { readCell } from "@/lib/intake/readCell";
import { readDate } from "@/lib/intake/readDate";
import type { RawCell } from "@/lib/intake/reading";
import { readPartNumber } from "@/lib/intake/readPartNumber";
import { keyParts, suggestParts } from "@/lib/intake/suggestParts";
import { COMMA, rowsOf } from "@/test/support/readRows";

const readOf = (reading: { state: string; value?: unknown }) =>
  reading.state === "value" ? reading.value : null;
const cellOf = (cell: RawCell, kind: FieldKind, unit?: string) =>
  readCell(cell, defineField({ key: "x", label: "X", kind, ...(unit ? { unit } : {}), example: "" }), COMMA)
    .reading;

describe("the problems of real files, one by one", () => {
  it("1, a number spelled four ways is one key but for the letter O, which is only suggested", () => {
    const spelled = ["TM-HR-020-B1", "TMHR020B1", "tm hr 020 b1", "TM–HR–020–B1"].map(readPartNumber);
    expect(spelled.map((one) => (one.state === "value" ? one.value.key : one))).toEqual(
      Array(4).fill("TMHR020"),
    );
    const letter = readPartNumber("TM–HR–O20–B1");
    const catalogue = new Catalogue([
      { maker: "Tarnholt", number: "TM-HR-020", itemClass: "drive", aliases: [] },
    ]);
    expect(letter.state === "value" && catalogue.find(letter.value, null).kind).toBe("doubt");
    // A letter O before digits is a digit, never a revision.
    expect(readPartNumber("TM-HR-O20")).toMatchObject({ value: { base: "TM-HR-O20", revision: null } });
  });

  it.each([
    ["TM-HR-020-B1", "B1"],
    ["TM-HR-020/C", "C"],
    ["TM-HR-020 ser. C", "C"],
    ["TM-HR-020 Bauzustand C1", "C1"],
    ["TM-HR-020 rewizja C", "C"],
    ["TM-HR-020 utgåva C", "C"],
    ["TM-HR-020 indice C", "C"],
    ["TM-HR-020 revisión C", "C"],
  ])("2, the revision of %s is %s, the base is the same and the raw text stays", (raw, revision) => {
    expect(readPartNumber(raw)).toMatchObject({ value: { base: "TM-HR-020", revision, raw } });
  });

  it("3, an order number, a nameplate and a storeroom's number are one part; the last holds at its site alone", () => {
    const catalogue = new Catalogue([
      {
        ...{ maker: "Tarnholt", number: "TM-HR-020", itemClass: "drive", aliases: ["HR20"] },
        siteAliases: [{ siteCode: "VEL", alias: "100045871" }],
      },
    ]);
    expect(catalogue.findStoreroom("VEL", "100 045 871")?.number).toBe("TM-HR-020");
    expect(catalogue.findStoreroom("KAR", "100045871")).toBeNull();
    const row = (site: string) =>
      rowsOf("stock", [
        ["Site", "Bin", "Storeroom number", "Quantity"],
        [site, "A-1", "100045871", "2"],
      ])[0]?.values ?? {};
    expect(stockIntents(row("VEL"), { catalogue, rowNumber: 2 }).problems).toEqual([]);
    expect(stockIntents(row("KAR"), { catalogue, rowNumber: 2 }).problems).toHaveLength(1);
  });

  it("4, scientific notation is refused, digits that may have lost their zeros are taken and said so", () => {
    for (const kind of ["partNumber", "code", "decimal"] as const)
      expect(cellOf("4.5871E+08", kind).state).toBe("refused");
    expect(readPartNumber(123)).toMatchObject({
      inferred: true,
      caution: { problem: expect.stringContaining("zeros") },
    });
    const parts = keyParts([{ id: "a", maker: "", number: "00123", text: "", aliases: [] }]);
    const asked = { written: "123", maker: "", siteCode: "", detail: "" };
    expect(suggestParts(asked, parts)[0]).toMatchObject({ why: expect.stringContaining("leading zeros") });
  });

  it.each([["1.234,50"], ["1 234,50"], ["1'234,50"], ["1234,5"]])(
    "5, %s is 1234.5 by a decimal comma",
    (text) => {
      expect(readOf(cellOf(text, "decimal"))).toBe(1234.5);
    },
  );

  it("5, a column nothing tells about is a question", () => {
    expect(detectDialect([{ header: "Price", kind: "decimal", cells: ["2.400"] }]).ask).toEqual([
      "decimalMark",
    ]);
  });

  it.each([
    ["03/04/2026", "2026-04-03", "day"],
    ["3.4.26", "2026-04-03", "day"],
    ["45750", "2025-04-03", "day"],
    ["KW14/26", "2026-03-30", "week"],
    ["KW 14 / 2026", "2026-03-30", "week"],
    ["settimana 14 2026", "2026-03-30", "week"],
    ["week 14 2026", "2026-03-30", "week"],
    ["04/2026", "2026-04-01", "month"],
    ["juin 2026", "2026-06-01", "month"],
    ["Q2 2026", "2026-04-01", "quarter"],
    ["2. Quartal 2026", "2026-04-01", "quarter"],
    ["2e trimestre 2026", "2026-04-01", "quarter"],
  ])("6, the date %s is %s, known to the %s", (text, on, precision) => {
    expect(readDate(text, "dayFirst")).toMatchObject({ value: { on, precision } });
  });

  it("6, tbd is no date and no error, and a word that only begins like a month is none", () => {
    expect(cellOf("tbd", "date")).toEqual({ state: "missing", caution: null });
    expect(readDate("Deckel 2026", "dayFirst").state).toBe("refused");
  });

  it.each([
    // 550 ft·lbf/s, by the definitions of foot, pound and standard gravity.
    ["1 HP", "kW", 0.745_699_872],
    ["0,75 kW", "kW", 0.75],
    ["2 CV", "kW", 1.470_997_5],
    ["90 min", "h", 1.5],
    ["2 Tage", "h", 48],
    ["1:30", "h", 1.5],
    ["1 h 30 min", "h", 1.5],
    ["10 Arms", "A", 10],
    // 4.4482216152605 N over 0.0254 m.
    ["10 lb-in", "Nm", 1.129_848_29],
    ["2 lb·ft", "Nm", 2.711_635_9],
  ])("7, %s in a column of %s is %d, and the cell is quoted where it was converted", (text, unit, wanted) => {
    const reading = cellOf(text, "decimal", unit);
    expect(readOf(reading)).toBeCloseTo(wanted, 8);
    if (reading.state === "value" && reading.caution) expect(reading.caution.problem).toContain(`“${text}”`);
  });

  it("7, a unit in the column's name holds for its bare numbers", () => {
    const [row] = rowsOf("events", [
      ["Site", "Work order", "Date", "Downtime [min]"],
      ["VEL", "1", "03.04.2026 10:00", "90"],
    ]);
    expect(row).toMatchObject({ values: { downtimeHours: 1.5 }, inferred: ["downtimeHours"] });
    expect(row?.problems[0]?.problem).toContain("“90 min”");
  });

  it("8, an amount needs its currency: its own sign fills it, another one speaks against it, a dollar sign says nothing", () => {
    const row = (price: string, currency: string | null) =>
      rowsOf("lifecycle", [
        ["Maker", "Part number", "Price", "Currency", "Price date", "Source", "Checked on"],
        ["Corvane", "CV-LA-010", price, currency, null, "list", "2026-11-02"],
      ])[0];
    expect(row("2400 PLN", null)?.values).toMatchObject({ price: 2400, currency: "PLN" });
    expect(row("2400 PLN", "EUR")).toMatchObject({ state: "error" });
    expect(row("$2400", null)).toMatchObject({ state: "error" });
    expect(row("2400", "EUR")?.problems).toMatchObject([{ field: "pricedOn", severity: "warning" }]);
  });
});
