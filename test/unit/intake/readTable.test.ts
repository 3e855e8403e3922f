import { describe, expect, it } from "vitest";
import writeWorkbook from "write-excel-file/node";
import { readTable, type TableFile } from "@/lib/intake/readTable";
import { detectEncoding, type Encoding, encodeText } from "@/lib/intake/textEncoding";
import { writeCsv } from "@/lib/intake/writeCsv";

async function open(bytes: Uint8Array): Promise<TableFile> {
  const result = await readTable(bytes);
  if (!result.ok) throw new Error(result.error);
  return result.value;
}

const POLISH = "Zakład;Część;Ilość\r\nOST;Wspornik łożyska;3\r\n";
const SWEDISH = "Anläggning;Benämning;Antal\r\nKAR;Förråd på övre gång;3\r\n";
const SPANISH = "Planta,Descripción,Año\r\nTAD,Señal de caña,2009\r\n";

describe("encodings", () => {
  it.each([
    ["windows-1250", POLISH],
    ["windows-1252", SWEDISH],
    ["windows-1252", SPANISH],
    ["utf-8", POLISH],
    ["utf-16le", SWEDISH],
    ["utf-16be", POLISH],
  ] as [Encoding, string][])("finds %s by itself", async (encoding, text) => {
    const bytes = encodeText(text, encoding);
    expect(detectEncoding(bytes)).toBe(encoding);
    const separator = text.includes(";") ? ";" : ",";
    const wanted = text
      .trim()
      .split("\r\n")
      .map((line) => line.split(separator));
    const file = await open(bytes);
    expect(file).toMatchObject({ format: "csv", encoding, separator });
    expect(file.sheets[0]?.rows).toEqual(wanted);
  });

  it.each([
    ["utf-8", [0xef, 0xbb, 0xbf]],
    ["utf-16le", [0xff, 0xfe]],
    ["utf-16be", [0xfe, 0xff]],
  ] as [Encoding, number[]][])("leaves the mark of %s out of the first cell", async (encoding, mark) => {
    const file = await open(Uint8Array.from([...mark, ...encodeText(POLISH, encoding)]));
    expect(file.encoding).toBe(encoding);
    expect(file.sheets[0]?.rows[0]?.[0]).toBe("Zakład");
  });

  it("reads by the person's choice rather than by what it finds", async () => {
    const result = await readTable(encodeText("ñ;b\r\n", "windows-1252"), { encoding: "windows-1250" });
    expect(result).toMatchObject({ ok: true, value: { sheets: [{ rows: [["ń", "b"]] }] } });
  });

  it("refuses to write a letter an encoding lacks", () => {
    expect(() => encodeText("ł", "windows-1252")).toThrow(RangeError);
  });
});

describe("separators", () => {
  it.each([
    ["a;b;c\n1,5;2,5;3,5\n1,5;2;3\n", ";"],
    ['a,b,c\n"1;2",2,3\n1,2,3\n', ","],
    ["a\tb\tc\n1,5\t2,5\t3,5\n", "\t"],
    ["Stock of site, all bins\n\na;b\n1;2\n3;4\n5;6\n", ";"],
    ["one\ntwo\n", ";"],
    ["A;B;C;D\nx;1,5;2,5;a, b\ny;2,5;3,5;c, d\n", ";"],
  ])("finds what parts %j", async (text, separator) => {
    expect((await open(encodeText(text, "utf-8"))).separator).toBe(separator);
  });

  it("follows a line that names the separator and still counts it as row 1", async () => {
    const file = await open(encodeText("sep=|\r\na|b\r\n", "utf-8"));
    expect(file.separator).toBe("|");
    expect(file.sheets[0]?.rows).toEqual([[], ["a", "b"]]);
  });

  it("keeps a line break inside quotes in its cell", async () => {
    const file = await open(encodeText('a;b\r\n"first\r\nsecond";2\r\n', "utf-8"));
    expect(file.sheets[0]?.rows[1]).toEqual(["first\r\nsecond", "2"]);
  });
});

describe("files that are no table", () => {
  it.each([
    ["empty", new Uint8Array()],
    ["an old workbook", Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0, 0])],
    ["a broken workbook", Uint8Array.from([0x50, 0x4b, 0x03, 0x04, 1, 2, 3])],
    ["an open quotation mark", encodeText('a;b\n"1;2\n', "utf-8")],
  ])("says what to do with %s", async (_name, bytes) => {
    const result = await readTable(bytes);
    expect(result.ok).toBe(false);
    expect(!result.ok && result.error.length).toBeGreaterThan(10);
  });
});

describe("workbooks", () => {
  it("reads sheets, numbers, dates without a shift of zone, and blank rows in their place", async () => {
    const stock = [
      [{ value: "Part" }, { value: "Qty" }, { value: "Counted" }],
      [null, null, null],
      [
        { value: "TM-HR-020-B1" },
        { value: 4, type: Number },
        { value: new Date(Date.UTC(2026, 9, 2)), type: Date, format: "yyyy-mm-dd" },
      ],
    ];
    const buffer = await writeWorkbook([
      { data: stock, sheet: "Stock" },
      { data: [[{ value: "note" }]], sheet: "Notes" },
    ]).toBuffer();
    const file = await open(new Uint8Array(buffer));
    expect(file.format).toBe("workbook");
    expect(file.sheets.map((sheet) => sheet.name)).toEqual(["Stock", "Notes"]);
    expect(file.sheets[0]?.rows).toEqual([
      ["Part", "Qty", "Counted"],
      [],
      ["TM-HR-020-B1", 4, "2026-10-02T00:00"],
    ]);
  });

  it("gives every minute of a day back, though a workbook keeps fractions of a day", async () => {
    const minutes = Array.from({ length: 1440 }, (_, minute) => new Date(Date.UTC(2026, 7, 11, 0, minute)));
    const rows = minutes.map((moment) => [{ value: moment, type: Date, format: "yyyy-mm-dd hh:mm" }]);
    const buffer = await writeWorkbook([{ data: rows, sheet: "Times" }]).toBuffer();
    const file = await open(new Uint8Array(buffer));
    const wanted = minutes.map((moment) => moment.toISOString().slice(0, 16));
    expect(file.sheets[0]?.rows.map((row) => row[0])).toEqual(wanted);
  });
});

describe("writing CSV", () => {
  it("quotes what needs it and ends every row", () => {
    expect(writeCsv([["a;b", 'say "x"', null, 1.5, true, "two\nlines"]], { separator: ";" })).toBe(
      '"a;b";"say ""x""";;1.5;true;"two\nlines"\r\n',
    );
  });

  it.each(["=cmd|' /C calc'!A0", "+1", "-1", "@x", "\tx", "'=1"])("guards %j from being run", (text) => {
    expect(
      writeCsv([[text]])
        .replace(/^"/, "")
        .startsWith("'"),
    ).toBe(true);
  });

  it("writes a number below zero as a number", () => {
    expect(writeCsv([[-5]])).toBe("-5\r\n");
  });
});
