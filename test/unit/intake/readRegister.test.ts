import { describe, expect, it } from "vitest";
import type { Dialect } from "@/lib/intake/dialect";
import { findHeader } from "@/lib/intake/findHeader";
import type { RawCell } from "@/lib/intake/reading";
import { readRegister } from "@/lib/intake/readRegister";
import { REGISTERS, type RegisterKey } from "@/lib/intake/registers";
import { isAxisRow, numberValue, partValue, textValue } from "@/lib/intake/rowValues";
import { splitBody } from "@/lib/intake/splitBody";
import { suggestMapping, toMapping } from "@/lib/intake/suggestMapping";

const EUROPEAN: Dialect = { decimalMark: "comma", dateOrder: "dayFirst", columns: {} };

function readRows(key: RegisterKey, rows: RawCell[][], dialect: Dialect = EUROPEAN) {
  const register = REGISTERS[key];
  const body = splitBody(rows, findHeader(rows, register));
  const mapping = toMapping(suggestMapping(body.headers, register));
  return { body, reading: readRegister(body, { register, mapping, dialect }) };
}

const STOCK_HEADER = ["Site", "Bin", "Maker", "Part number", "Quantity", "State", "Counted on"];

describe("finding the rows of a printed list", () => {
  const printed: RawCell[][] = [
    ["Stock list Ostrowka", null, null, null, null, null, null],
    [],
    STOCK_HEADER,
    ["Drives", null, null, null, null, null, null],
    ["OST", "R1", "Tarnholt Motion", "TM-HR-010-B1", "2+1", "sprawny", "02.10.2026"],
    [],
    STOCK_HEADER,
    ["OST", "R2", "Tarnholt Motion", "TM-HR-020-B1", "some", "ok", "02.10.2026"],
    ["Razem", null, null, null, "3", null, null],
    [],
  ];

  it("finds the column names below a title, keeps row numbers, and says why rows are left out", () => {
    const { body } = readRows("stock", printed);
    expect(body.headers).toEqual(STOCK_HEADER);
    expect(body.rows.map((row) => row.rowNumber)).toEqual([5, 8]);
    expect(body.skipped).toEqual([
      { rowNumber: 4, reason: "heading or remark", text: "Drives" },
      { rowNumber: 6, reason: "blank row", text: "" },
      { rowNumber: 7, reason: "column names again", text: STOCK_HEADER.join(" · ") },
      { rowNumber: 9, reason: "total", text: "Razem · 3" },
    ]);
  });

  it("counts and keeps an unknown quantity apart from zero", () => {
    const { reading } = readRows("stock", printed);
    expect(reading.totals).toEqual({ rows: 2, ok: 0, warnings: 2, errors: 0, skipped: 4 });
    expect(reading.rows[0]).toMatchObject({
      inferred: ["quantity"],
      values: { quantity: 3, state: "usable", countedOn: "2026-10-02" },
    });
    expect(reading.rows[1]?.values.quantity).toBeNull();
    expect(reading.rows[1]?.problems).toMatchObject([
      { column: "Quantity", field: "quantity", found: "some", severity: "warning" },
    ]);
  });

  it("joins two header rows into names that differ", () => {
    const { body, reading } = readRows("axes", [
      [null, null, null, "Drive", null, "Motor", null],
      ["Line", "Machine", "Axis", "Part number", "Serial number", "Part number", "Serial number"],
      ["VEL-01", "M01", "A01", "TM-HR-020-B1", "S1", "DV-WR-040", "S2"],
    ]);
    expect(body.headers.slice(3)).toEqual([
      "Drive Part number",
      "Drive Serial number",
      "Motor Part number",
      "Motor Serial number",
    ]);
    expect(reading.rows[0]?.values).toMatchObject({
      driveSerial: "S1",
      motorSerial: "S2",
      drivePart: { base: "TM-HR-020", revision: "B1" },
    });
  });

  it("names columns without a name by their letters and numbers names that repeat", () => {
    const { body } = readRows("stock", [
      ["Site", "Part number", "Note", "Note", null],
      ["OST", "X", "a", "b", "c"],
    ]);
    expect(body.headers).toEqual(["Site", "Part number", "Note", "Note (2)", "Column E"]);
  });
});

describe("what a problem tells", () => {
  it("names row, column, what was found and what to do", () => {
    const { reading } = readRows("stock", [
      STOCK_HEADER,
      ["OST", "R1", null, "4,5871E+08", "-2", "shiny", "31.02.2026"],
    ]);
    const [row] = reading.rows;
    expect(row).toMatchObject({ rowNumber: 2, state: "error" });
    expect(row?.problems.map(({ column, found, severity }) => ({ column, found, severity }))).toEqual([
      { column: "Part number", found: "4,5871E+08", severity: "error" },
      { column: "Quantity", found: "-2", severity: "error" },
      { column: "State", found: "shiny", severity: "error" },
      { column: "Counted on", found: "31.02.2026", severity: "error" },
    ]);
    for (const problem of row?.problems ?? []) expect(problem.remedy).not.toBe("");
  });

  it("tells an empty required cell and a required column that is not there", () => {
    const { reading } = readRows("stock", [
      ["Site", "Part number", "Qty"],
      [null, "TM-HR-020", "1"],
    ]);
    expect(reading.problems).toMatchObject([{ field: "bin", severity: "error" }]);
    expect(reading.rows[0]?.problems.map((problem) => problem.field)).toEqual(["siteCode", "bin"]);
  });

  it("tells prices without a currency and dates that fall", () => {
    const { reading } = readRows("lifecycle", [
      ["Maker", "Part number", "Last order", "Last ship", "Price", "Currency", "Source", "Checked on"],
      ["Corvane", "CV-LA-010", "2027-04-30", "2026-10-29", "700", null, "list", "2026-11-02"],
    ]);
    expect(reading.rows[0]?.problems).toMatchObject([
      { field: "currency", severity: "error" },
      { field: "pricedOn", severity: "warning" },
      { field: "lastShipOn", found: "2026-10-29", severity: "warning" },
    ]);
  });

  it("keeps out a stop shorter than the waiting in it", () => {
    const { reading } = readRows("events", [
      ["Site", "Reference", "Happened at", "Downtime h", "Waiting h"],
      ["KAR", "AO-1", "2026-08-11 14:20", "1,0", "3,5"],
    ]);
    expect(reading.rows[0]).toMatchObject({
      state: "error",
      values: { happenedAt: "2026-08-11T14:20", downtimeHours: 1, waitingHours: 3.5 },
    });
  });

  it("points at the first of two rows alike, and at one unit in two places", () => {
    const twice = readRows("stock", [
      STOCK_HEADER,
      ["OST", "R1", "Corvane", "CV-LA-010", "1", "ok", null],
      ["ost", "R1", "Corvane", "cv la 010", "1", "ok", null],
    ]);
    expect(twice.reading.rows.map((row) => row.state)).toEqual(["ok", "error"]);
    expect(twice.reading.rows[1]?.problems[0]).toMatchObject({ found: "same as row 2", severity: "error" });
    const unit = readRows("axes", [
      ["Line", "Machine", "Axis", "Drive part number", "Drive serial number"],
      ["VEL-01", "M01", "A01", "TM-HR-020-B1", "S1"],
      ["VEL-01", "M01", "A02", "TMHR020B1", "s1"],
    ]);
    expect(unit.reading.rows.map((row) => row.state)).toEqual(["ok", "warning"]);
  });
});

describe("dates known in part", () => {
  it("keeps the precision beside the first day", () => {
    const { reading } = readRows("lifecycle", [
      ["Maker", "Family", "Last order", "Repair until", "Source", "Checked on"],
      ["Corvane", "Birch", "Q2 2027", "31.12.2031", "bulletin", "02.11.2026"],
    ]);
    expect(reading.rows[0]).toMatchObject({
      values: { lastOrderOn: "2027-04-01", repairUntilOn: "2031-12-31" },
      precision: { lastOrderOn: "quarter" },
      inferred: ["lastOrderOn"],
    });
  });
});

describe("an axis survey with other items", () => {
  const header = [
    "Line",
    "Machine",
    "Axis",
    "Drive part number",
    "Item class",
    "Designation",
    "Part number of other item",
  ];

  it("takes axes and items side by side and wants one of the two", () => {
    const { reading } = readRows("axes", [
      header,
      ["VEL-01", "M01", "A01", "TM-HR-020-B1", null, null, null],
      ["VEL-01", "M01", null, null, "Netzteil", "-G1", "PB-BK-240"],
      ["VEL-01", "M01", null, null, null, "-G2", "PB-BK-240"],
      ["VEL-01", "M01", null, "TM-HR-020-B1", null, null, null],
    ]);
    expect(reading.rows.map((row) => row.state)).toEqual(["ok", "ok", "error", "error"]);
    expect(reading.rows.map((row) => isAxisRow(row.values))).toEqual([true, false, false, false]);
    const item = reading.rows[1]?.values ?? {};
    expect(textValue(item, "itemClass")).toBe("power_supply");
    expect(partValue(item, "itemPart")?.key).toBe("PBBK240");
    expect(numberValue(item, "itemPart")).toBeNull();
  });
});

describe("a column written in its own way", () => {
  it("is read by its own customs", () => {
    const dialect: Dialect = { ...EUROPEAN, columns: { "Lead time": { decimalMark: "point" } } };
    const { reading } = readRows(
      "lifecycle",
      [
        ["Maker", "Part number", "Lead time", "Price", "Currency", "Source", "Checked on"],
        ["Corvane", "CV-LA-010", "1.5", "1.234,50", "EUR", "list", "2026-11-02"],
      ],
      dialect,
    );
    expect(reading.rows[0]?.values).toMatchObject({ leadWeeks: 1.5, price: 1234.5 });
  });
});
