import { describe, expect, it } from "vitest";
import { detectDialect } from "@/lib/intake/dialect";
import { hintsOf } from "@/lib/intake/eventWords";
import { defineField, type FieldKind } from "@/lib/intake/field";
import { Catalogue } from "@/lib/intake/intents/catalogue";
import { mergeIntents } from "@/lib/intake/intents/mergeIntents";
import { stockIntents } from "@/lib/intake/intents/stockIntents";
import { LearnedWords } from "@/lib/intake/learnedWords";
import { readCell } from "@/lib/intake/readCell";
import type { RawCell } from "@/lib/intake/reading";
import { readMeasure } from "@/lib/intake/readMeasure";
import { openQuestions, settleDialect } from "@/lib/intake/settleDialect";
import { suggestNames } from "@/lib/intake/suggestNames";
import { keyParts, suggestParts } from "@/lib/intake/suggestParts";
import { COMMA, rowsOf } from "@/test/support/readRows";

const readOf = (reading: { state: string; value?: unknown }) =>
  reading.state === "value" ? reading.value : null;
const cellOf = (cell: RawCell, kind: FieldKind, unit?: string) =>
  readCell(cell, defineField({ key: "x", label: "X", kind, ...(unit ? { unit } : {}), example: "" }), COMMA)
    .reading;

describe("the problems of real files, one by one, from broken cells on", () => {
  it("11, a spreadsheet's error is nothing, a formula's text is refused where it would count and missed in a remark", () => {
    expect(cellOf("#REF!", "decimal").state).toBe("missing");
    expect(cellOf("=VLOOKUP(A1;B:B;1)", "code").state).toBe("refused");
    expect(cellOf("=cmd|' /C calc'!A0", "text").state).toBe("missing");
    // What hangs on a broken cell is left out; the rest of the row is taken.
    const [row] = rowsOf("assets", [
      ["Site", "Line", "Line name", "Cost per hour", "Cost owner"],
      ["VEL", "VEL-01", "Carton", "#N/A", "Finance"],
    ]);
    expect(row).toMatchObject({ state: "warning", values: { lineCode: "VEL-01", costOwner: null } });
  });

  it("12, a row given twice is an error on the later one, a serial number met twice a warning", () => {
    const header = ["Line", "Machine", "Axis", "Drive maker", "Drive part", "Drive serial"];
    const rows = rowsOf("axes", [
      header,
      ["VEL-01", "M1", "A1", "Tarnholt", "TM-HR-020", "S1"],
      ["VEL-01", "M1", "A2", "Tarnholt", "TM-HR-020", "S1"],
      ["VEL-01", "M1", "A1", "Tarnholt", "TM-HR-020", "S2"],
    ]);
    expect(rows.map(({ state }) => state)).toEqual(["ok", "warning", "error"]);
  });

  it.each([
    ["2+1", 3],
    ["ca. 5", 5],
    ["5 (2 def.)", 3],
    ["some", null],
    ["", null],
  ])("13, the count “%s” is %s, and what is no count is not zero", (text, wanted) => {
    expect(readOf(cellOf(text, "quantity"))).toBe(wanted);
  });

  it("14, what a quantity counts is asked where names or cells speak of machines or sets", () => {
    const named = (header: string, ...cells: string[]) =>
      detectDialect([{ header, kind: "quantity", cells }]);
    expect(named("On hand", "3", "4").ask).toEqual([]);
    for (const finding of [named("Qty per machine", "3"), named("Menge (Satz)", "3"), named("Qty", "2 sets")])
      expect(openQuestions(finding, settleDialect(finding, {}))).toEqual(["quantityBasis"]);
    const finding = named("Menge (Satz)", "3");
    expect(openQuestions(finding, settleDialect(finding, { quantityBasis: "sets:2" }))).toEqual([]);
    const [row] = rowsOf(
      "stock",
      [
        ["Site", "Bin", "Part number", "Menge (Satz)"],
        ["VEL", "A-1", "TM-HR-020", "3"],
      ],
      { dialect: { quantityBasis: "sets:2" } },
    );
    expect(row).toMatchObject({ values: { quantity: 6 }, inferred: ["quantity"] });
  });

  it("14, sets in a single cell are multiplied, the plain numbers beside them are not", () => {
    const rows = rowsOf(
      "stock",
      [
        ["Site", "Bin", "Part number", "Quantity"],
        ["VEL", "A-1", "TM-HR-020", "2 sets"],
        ["VEL", "A-2", "TM-HR-020", "3"],
        ["VEL", "A-3", "TM-HR-020", "2 sets of 3"],
      ],
      { dialect: { quantityBasis: "sets:2" } },
    );
    expect(rows.map(({ values }) => values.quantity)).toEqual([4, 3, 6]);
  });

  it.each([
    ["20.011", { level: 20, minor: "011" }],
    ["20.11", { level: 20, minor: "11" }],
    ["≥20", { level: 20, bound: "atLeast" }],
    ["latest", null],
  ])(
    "15, the firmware %s keeps its digits, its bound, and what names no level is not known",
    (text, wanted) => {
      const value = readOf(cellOf(text, "firmware"));
      if (wanted === null) expect(value).toBeNull();
      else expect(value).toMatchObject(wanted);
    },
  );

  it("16, new and repaired pieces of one bin add up, the same word twice is a duplicate, a customer's are nobody's to use", () => {
    const table = (first: string, second: string) => [
      ["Site", "Bin", "Maker", "Part number", "Quantity", "Valuation type"],
      ["VEL", "A-1", "Tarnholt", "TM-HR-020", "2", first],
      ["VEL", "A-1", "Tarnholt", "TM-HR-020", "3", second],
    ];
    const catalogue = new Catalogue([
      { maker: "Tarnholt", number: "TM-HR-020", itemClass: "drive", aliases: [] },
    ]);
    const rows = rowsOf("stock", table("new", "repaired"));
    expect(rows.map(({ state }) => state)).toEqual(["ok", "ok"]);
    const said = rows.flatMap(
      ({ values, rowNumber }) => stockIntents(values, { catalogue, rowNumber }).intents,
    );
    const { merged, contradictions } = mergeIntents(said);
    expect(contradictions).toEqual([]);
    expect(merged.find(({ entity }) => entity === "StockLot")?.values).toMatchObject({ quantity: 5 });
    expect(rowsOf("stock", table("new", "new")).map(({ state }) => state)).toEqual(["ok", "error"]);
    expect(rowsOf("stock", table("new", "Kundeneigentum"))[1]).toMatchObject({
      state: "warning",
      values: { state: "reserved" },
    });
  });

  it("16, pieces of which one share is not counted are not known as a whole", () => {
    const lot = (quantity: number | null) => ({
      ...{
        entity: "StockLot" as const,
        key: "k",
        parents: {},
        whenNew: {},
        adds: ["quantity"],
        rowNumber: 1,
      },
      values: quantity === null ? {} : { quantity },
    });
    expect(mergeIntents([lot(2), lot(null)]).merged[0]?.values.quantity).toBeNull();
  });

  it.each([
    ["L3", "VEL-03"],
    ["Line 03", "VEL-03"],
    ["Carton C", "VEL-02"],
    ["vel 03", "VEL-03"],
  ])("17, the line %s is suggested as %s, and once it was learned it is read so", (written, code) => {
    const lines = [
      { code: "VEL-02", name: "Carton C" },
      { code: "VEL-03", name: "Wrapper" },
      { code: "VEL-13", name: "Palletiser" },
    ];
    expect(suggestNames(written, lines)[0]?.code).toBe(code);
    const words = new LearnedWords([{ kind: "line", within: "", written, meaning: code }]);
    expect(words.translate({ lineCode: written.toUpperCase(), machineCode: null }).values).toEqual({
      lineCode: code,
    });
  });

  it.each([
    ["Umrichter getauscht", "removal", "drive", "German"],
    ["wymiana napędu oś 3", "removal", "drive", "Polish"],
    ["cambio drive eje 3", "removal", "drive", "Spanish"],
    ["variateur axe 3 remplacé", "removal", "drive", "French"],
    ["sostituito azionamento asse 3", "removal", "drive", "Italian"],
    ["bytt driv axel 3", "removal", "drive", "Swedish"],
    ["motor failed on axis 3", "failure", "motor", "English"],
    ["sin fallo, motor probado", "no_fault_found", "motor", "Spanish"],
    ["Störung, Motor defekt", "failure", "motor", "German"],
  ])("18, “%s” probably tells of a %s and a %s", (...[text, kind, itemClass, language]) => {
    const hints = hintsOf(text);
    expect(hints.find(({ field }) => field === "kind")).toMatchObject({ meaning: kind, language });
    expect(hints.find(({ field }) => field === "itemClass")?.meaning).toBe(itemClass);
  });

  it("18, a word tells nothing until a person confirmed it for the source", () => {
    const table = [
      ["Site", "Work order", "Date", "Text"],
      ["VEL", "1", "03.04.2026 10:00", "Umrichter getauscht"],
    ];
    expect(rowsOf("events", table)[0]?.values).toMatchObject({ kind: null, itemClass: null });
    const words = new LearnedWords([
      { kind: "text", within: "kind", written: "getauscht", meaning: "removal" },
      { kind: "text", within: "itemClass", written: "Umrichter", meaning: "drive" },
    ]);
    expect(rowsOf("events", table, { words })[0]).toMatchObject({
      values: { kind: "removal", itemClass: "drive" },
      inferred: ["kind", "itemClass"],
    });
  });

  it("20, stand-ins are nothing, by the source's own list where it has one", () => {
    for (const [cell, kind] of [
      ["9999", "decimal"],
      ["1900-01-01", "date"],
      ["XXX", "text"],
      ["-", "decimal"],
    ] as const)
      expect(cellOf(cell, kind).state).toBe("missing");
    const own = { ...COMMA, nullWords: ["leer", "777"] };
    const field = defineField({ key: "x", label: "X", kind: "decimal", example: "" });
    expect(readCell("777", field, own).reading.state).toBe("missing");
    expect(readCell("9999", field, own).reading).toMatchObject({ value: 9999 });
  });

  it("21, classes drift: known words are one class, a new one is mapped once a person said so", () => {
    const class_ = (word: string, words?: LearnedWords) =>
      rowsOf(
        "events",
        [
          ["Site", "Work order", "Date", "Item class"],
          ["VEL", "1", "03.04.2026 10:00", word],
        ],
        words ? { words } : {},
      )[0];
    for (const word of ["Drive", "Servo amp", "Amplifier", "Inverter axis", "variateur", "azionamento"])
      expect(class_(word)?.values.itemClass).toBe("drive");
    expect(class_("Achsmodul")?.state).toBe("error");
    const words = new LearnedWords([
      { kind: "choice", within: "itemClass", written: "achsmodul", meaning: "drive" },
    ]);
    expect(class_("Achsmodul", words)).toMatchObject({ state: "ok", values: { itemClass: "drive" } });
  });

  it("22, a text cut at forty letters is matched to the part by its words, with a score and why", () => {
    const known = (id: string, text: string) => ({ id, maker: "Tarnholt", number: id, text, aliases: [] });
    const parts = keyParts([
      known("TM-HR-020", "drive servo heron r 20a 400v w/ safe off"),
      known("TM-HR-040", "drive servo heron r 40a 400v w/ safe off"),
      known("CV-LA-010", "power supply 24v"),
    ]);
    const detail = "DRIVE SERVO HERON R 20A 400V W/ SAFE OF";
    const [first, second] = suggestParts({ written: "4711", maker: "", siteCode: "", detail }, parts);
    expect(first).toMatchObject({ partId: "TM-HR-020", why: expect.stringContaining("cut off") });
    expect(first?.score).toBeGreaterThan(second?.score ?? 0);
    expect(first?.score).toBeLessThan(1);
  });

  it("24, shuffled columns are found again by their names", () => {
    const table = [
      ["Quantity", "Bin", "Part number", "Site"],
      ["3", "A-1", "TM-HR-020", "VEL"],
    ];
    expect(rowsOf("stock", table)[0]?.values).toMatchObject({ siteCode: "VEL", bin: "A-1", quantity: 3 });
  });

  it("25, negative stock and a price of zero are flagged", () => {
    expect(cellOf("-3", "quantity").state).toBe("refused");
    const price = defineField({
      key: "p",
      label: "P",
      kind: "decimal",
      unit: "currency of the row",
      example: "",
    });
    expect(readMeasure("0", price, COMMA)).toMatchObject({
      value: 0,
      caution: { problem: "The amount is zero" },
    });
  });
});
