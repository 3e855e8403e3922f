import { readdirSync, readFileSync } from "node:fs";
import readExcelFile from "read-excel-file/node";
import { describe, expect, it } from "vitest";
import { findHeader, readHeaders } from "@/lib/intake/findHeader";
import { readTable, type Sheet } from "@/lib/intake/readTable";
import { REGISTERS } from "@/lib/intake/registers";
import { formatOf } from "@/lib/intake/workbook/cellFormats";
import { rowXml, type WrittenWorkbook, writtenWorkbook } from "@/seed/dirtyFiles/workbookFile";

async function open(workbook: WrittenWorkbook): Promise<Sheet[]> {
  const read = await readTable(writtenWorkbook(workbook));
  if (!read.ok) throw new Error(read.error);
  return read.value.sheets;
}

async function openOne(rows: string, rest: Omit<Partial<WrittenWorkbook>, "sheets"> = {}, after = "") {
  const [sheet] = await open({ ...rest, sheets: [{ name: "One", rows, after }] });
  if (!sheet) throw new Error("no sheet");
  return sheet;
}

const cell = (place: string, inner: string, attributes = "") => ({
  xml: `<c r="${place}"${attributes}>${inner}</c>`,
});

describe("values of a workbook", () => {
  it("takes the value a formula was last worked out to, and never its text", async () => {
    const { rows, notes } = await openOne(
      rowXml(1, [
        cell("A1", "<f>SUM(B1:B9)</f><v>42</v>"),
        cell("B1", '<f>HYPERLINK("http://x","y")</f><v>y</v>', ' t="str"'),
        cell("C1", "<f>C1+1</f>"),
      ]),
    );
    expect(rows).toEqual([[42, "y", "#CALC!"]]);
    expect(notes.join(" ")).toContain("3 formulas");
    expect(notes.join(" ")).toContain("never worked out, the first in C1");
  });

  it("keeps error cells as the spreadsheet shows them", async () => {
    const { rows } = await openOne(
      rowXml(1, [cell("A1", "<v>#N/A</v>", ' t="e"'), cell("B1", "<f>A9</f><v>#REF!</v>", ' t="e"')]),
    );
    expect(rows).toEqual([["#N/A", "#REF!"]]);
  });

  // 45750 is 3 April 2025 and 44288 counted from 1904 the same day (ISO/IEC 29500-1, 18.17.4, from memory).
  it.each([
    [false, 45_750, "2025-04-03T00:00"],
    [true, 44_288, "2025-04-03T00:00"],
    [false, 45_750.604_166_666_7, "2025-04-03T14:30"],
    [false, 59, "1900-02-28T00:00"],
    [false, 61, "1900-03-01T00:00"],
    [false, 2_958_465, "9999-12-31T00:00"],
    [false, 2_958_466, 2_958_466],
    [false, -1, -1],
  ])("counts days from 1904 %s: %s is %s", async (from1904, serial, wanted) => {
    const { rows } = await openOne(rowXml(1, [cell("A1", `<v>${serial}</v>`, ' s="1"')]), {
      from1904,
      formats: ["dd.mm.yyyy"],
    });
    expect(rows).toEqual([[wanted]]);
  });

  it.each([
    ["dd/mm/yyyy", "date"],
    ["[$-407]d. mmmm yyyy;@", "date"],
    ["mmm yy", "date"],
    ["hh:mm", "time"],
    ["[h]:mm:ss", "time"],
    ["h:mm AM/PM", "time"],
    ['#,##0.00 "days"', "number"],
    ["[Red]-#,##0", "number"],
    ["General", "number"],
    ["0.00E+00", "number"],
    ["00000", "digits"],
  ])("the format %s shows a %s", (code, shows) => {
    expect(formatOf(code).shows).toBe(shows);
  });

  it("shows hours as hours and keeps zeros a format puts before a number", async () => {
    const { rows } = await openOne(
      rowXml(1, [cell("A1", "<v>0.0625</v>", ' s="1"'), cell("B1", "<v>123</v>", ' s="2"'), 0.1 + 0.2]),
      { formats: ["[h]:mm", "00000"] },
    );
    expect(rows).toEqual([["1:30", "00123", 0.3]]);
  });

  it("joins runs of shared text, leaves phonetic guides out and reads letters written in code", async () => {
    const { rows } = await openOne(
      rowXml(1, [cell("A1", "<v>0</v>", ' t="s"'), cell("B1", "<v>1</v>", ' t="s"')]),
      {
        strings: [
          "<r><t>Heron</t></r><r><t xml:space='preserve'> R &amp; E</t></r><rPh><t>no</t></rPh>",
          "<t>a_x000D_\nb &#x1F600; _x005F_x</t>",
        ],
      },
    );
    expect(rows).toEqual([["Heron R & E", "a\nb 😀 _x"]]);
  });
});

describe("what a person cannot see in a workbook", () => {
  it("is said: hidden rows, columns and sheets, merged cells, comments", async () => {
    const [one, two] = await open({
      sheets: [
        {
          name: "Drives",
          before: '<cols><col min="2" max="3" hidden="1"/></cols>',
          rows: rowXml(1, ["a", "b"]) + rowXml(2, ["c", "d"], ' hidden="1"'),
          after: '<mergeCells><mergeCell ref="A1:B1"/></mergeCells>',
          comments: { B2: "ask Piotr, 2 more in the cupboard" },
        },
        { name: "Old", state: "veryHidden", rows: rowXml(1, ["x"]) },
      ],
    });
    expect(one?.rows).toEqual([
      ["a", "b"],
      ["c", "d"],
    ]);
    const said = one?.notes.join(" ") ?? "";
    for (const words of [
      "1 row is hidden",
      "2 columns are hidden",
      "1 cell is merged",
      "B2 “ask Piotr, 2 more",
    ])
      expect(said).toContain(words);
    expect(two).toMatchObject({ hidden: true, notes: ["The sheet is hidden in the workbook."] });
  });

  it("puts a value merged over rows into each of them, and two header rows into names", async () => {
    const { rows } = await openOne(
      rowXml(1, ["Site", "Line", "Drive", null, "Motor", null]) +
        rowXml(2, [null, null, "Part", "Serial", "Part", "Serial"]) +
        rowXml(3, ["VEL", "VEL-01", "TM-HR-020", "1", "DW-FI-1", "2"]) +
        rowXml(4, [null, "VEL-02", "TM-HR-020", "3", "DW-FI-1", "4"]),
      {},
      '<mergeCells><mergeCell ref="A1:A2"/><mergeCell ref="B1:B2"/><mergeCell ref="C1:D1"/><mergeCell ref="E1:F1"/><mergeCell ref="A3:A4"/></mergeCells>',
    );
    expect(rows[3]?.[0]).toBe("VEL");
    const place = findHeader(rows, REGISTERS.axes);
    expect(place).toEqual({ row: 2, lines: 2 });
    expect(readHeaders(rows, place)).toEqual([
      "Site",
      "Line",
      "Drive Part",
      "Drive Serial",
      "Motor Part",
      "Motor Serial",
    ]);
  });
});

describe("against another reader", () => {
  const folder = new URL("../../../seed/registers/", import.meta.url);
  const names = readdirSync(folder).filter((name) => name.endsWith(".xlsx"));

  it.each(names)("gives the cells of %s as the package read-excel-file does", async (name) => {
    const bytes = readFileSync(new URL(name, folder));
    const read = await readTable(new Uint8Array(bytes));
    const [other] = await readExcelFile(bytes);
    const wanted = other?.data.map((row) =>
      row.map((one) =>
        one instanceof Date
          ? new Date(Math.round(one.getTime() / 1000) * 1000).toISOString().slice(0, 16)
          : one,
      ),
    );
    const rows = read.ok ? read.value.sheets[0]?.rows : [];
    const width = Math.max(...(rows ?? []).map((row) => row.length));
    const filled = rows?.map((row) => [...row, ...Array.from({ length: width - row.length }, () => null)]);
    expect(filled?.length).toBeGreaterThan(1);
    expect(filled).toEqual(wanted);
  });
});
