import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { packParts, rowXml, workbookParts } from "@/seed/dirtyFiles/workbookFile";

/** A file that something is wrong with, and what. */
export interface BrokenFile {
  readonly name: string;
  readonly kind: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

type Maker = (chance: RandomStream) => Uint8Array<ArrayBuffer>;

const HEADERS = ["Site", "Bin", "Maker", "Part number", "Quantity", "State", "Counted on", "Note"];
const ROW = ["VEL", "R1-001", "Tarnholt Motion", "TM-HR-020", "2", "usable", "2026-10-02", "box opened"];
const SHEET = "xl/worksheets/sheet1.xml";

const text = (content: string): Uint8Array<ArrayBuffer> => new Uint8Array(Buffer.from(content, "utf8"));
const csv = (...rows: readonly (readonly string[])[]) => rows.map((row) => row.join(";")).join("\r\n");

/** A sound file of rows, some cells of which are what the caller puts there. */
function stockText(chance: RandomStream, cellOf: () => string, rows = 12): string {
  const body = Array.from({ length: rows }, (_, index) => {
    const cells = ROW.map((cell, at) => (at === 1 ? `R1-${index}` : cell));
    cells[chance.integer(0, ROW.length - 1)] = cellOf();
    return cells;
  });
  return csv(HEADERS, ...body);
}

const soundParts = (rows = rowXml(1, HEADERS) + rowXml(2, ROW)) =>
  workbookParts({ sheets: [{ name: "S", rows }] });

function withSheet(chance: RandomStream, change: (xml: string, chance: RandomStream) => string) {
  const parts = soundParts();
  return packParts({ ...parts, [SHEET]: change(parts[SHEET] ?? "", chance) });
}

const rowsInstead = (rows: string) => packParts(soundParts(rows));

/** Overwrites a number of the archive's directory for each part: where it stands, and the value. */
function inDirectory(bytes: Uint8Array<ArrayBuffer>, place: number, value: number): Uint8Array<ArrayBuffer> {
  const view = new DataView(bytes.buffer);
  for (let at = 0; at + 46 < bytes.length; at += 1)
    if (view.getUint32(at, true) === 0x02_01_4b_50) view.setUint32(at + place, value, true);
  return bytes;
}

/** A part that unpacks to far more than the directory says. */
function bomb(chance: RandomStream): Uint8Array<ArrayBuffer> {
  const bytes = packParts({
    ...soundParts(),
    [SHEET]: new Uint8Array(chance.integer(1_000_000, 6_000_000)),
  });
  return chance.next() < 0.5 ? bytes : inDirectory(bytes, 24, chance.integer(10, 90_000));
}

function flipped(chance: RandomStream): Uint8Array<ArrayBuffer> {
  const bytes = packParts(soundParts());
  for (let count = chance.integer(1, 20); count > 0; count -= 1)
    bytes[chance.integer(4, bytes.length - 1)] = chance.integer(0, 255);
  return bytes;
}

const randomBytes = (chance: RandomStream, length: number) =>
  Uint8Array.from({ length }, () => chance.integer(0, 255));

const INJECTED = [
  "=cmd|' /C calc'!A0",
  '=HYPERLINK("http://127.0.0.1/?"&A1;"x")',
  "@SUM(1+1)*cmd|' /C x'!A0",
  "<script>alert(1)</script>",
  "<img src=x onerror=alert(1)>",
  '\'; DROP TABLE "Part"; --',
  "{{7*7}}",
  "../../../../etc/passwd",
  "__proto__",
  "\u202Egnp.exe",
  "-2+3+cmd|' /C x'!A0",
];
const DAYS = [
  "9999-12-31",
  "31.12.9999",
  "12/31/9999",
  "99999-01-01",
  "0000-00-00",
  "30.2.2026",
  "2958466",
  "-1",
  "1e9",
];
const ENTITIES = [
  '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;"><!ENTITY c "&b;&b;&b;&b;&b;">]>',
  '<!DOCTYPE x [<!ENTITY a SYSTEM "file:///etc/passwd">]>',
  '<!DOCTYPE x SYSTEM "http://127.0.0.1/x.dtd">',
];
const PLACES = ["ZZZZ1", "A0", "1A", "XFE1", "", "A1:B2", "a1", "A99999999999"];

const afterHead = (xml: string, inserted: string) => xml.replace("?>", `?>${inserted}`);

/** Each way a file is broken, by name. */
const MAKERS: Readonly<Record<string, Maker>> = {
  "cut zip": (chance) => {
    const bytes = packParts(soundParts());
    return bytes.slice(0, chance.integer(1, bytes.length - 1));
  },
  "zip with bytes turned": flipped,
  "zip bomb": bomb,
  "declares ten gigabytes": (chance) =>
    inDirectory(packParts(soundParts()), 24, chance.integer(2_500_000_000, 4_294_967_294)),
  "part beyond the file": (chance) =>
    inDirectory(packParts(soundParts()), 42, chance.integer(100_000, 4_000_000_000)),
  "thousands of parts": (chance) => {
    const bytes = packParts(soundParts());
    new DataView(bytes.buffer).setUint16(bytes.length - 12, chance.integer(5_001, 65_535), true);
    return bytes;
  },
  "zip without a workbook": () => packParts({ "a.csv": "a;b", "b.txt": "x" }),
  "workbook without its sheet": () => packParts({ ...soundParts(), [SHEET]: "" }),
  "not one letter of XML": (chance) => packParts({ ...soundParts(), [SHEET]: randomBytes(chance, 2_000) }),
  "XML cut off": (chance) => withSheet(chance, (xml) => xml.slice(0, chance.integer(1, xml.length - 1))),
  "XML with entities": (chance) => withSheet(chance, (xml) => afterHead(xml, chance.pick(ENTITIES))),
  "XML without end": () => packParts({ ...soundParts(), [SHEET]: "<a>".repeat(400_000) }),
  "text without end": (chance) =>
    rowsInstead(rowXml(1, HEADERS) + rowXml(2, ["x".repeat(chance.integer(32_768, 3_000_000)), "b"])),
  "formulas in a circle": () =>
    rowsInstead(
      rowXml(1, HEADERS) +
        rowXml(2, [
          ...ROW.slice(0, 4),
          { xml: '<c r="E2"><f>F2</f></c>' },
          { xml: '<c r="F2"><f>E2</f></c>' },
        ]),
    ),
  "rows out of order": (chance) =>
    rowsInstead(rowXml(5, HEADERS) + rowXml(chance.pick([5, 4, 0, 1, 1_048_577, 1_000_000]), ROW)),
  "cells out of order": (chance) =>
    rowsInstead(
      `${rowXml(1, HEADERS)}<row r="2"><c r="${chance.pick(PLACES)}"><v>1</v></c><c r="A2"><v>2</v></c></row>`,
    ),
  "strings that are not there": (chance) =>
    rowsInstead(
      `${rowXml(1, HEADERS)}<row r="2"><c r="A2" t="s" s="99"><v>${chance.integer(1, 9e9)}</v></c></row>`,
    ),
  "merged over everything": (chance) =>
    withSheet(chance, (xml) =>
      xml.replace(
        "</sheetData>",
        `</sheetData><mergeCells>${'<mergeCell ref="A1:XFD1048576"/>'.repeat(50)}</mergeCells>`,
      ),
    ),
  "days of the year 9999 in a workbook": (chance) =>
    rowsInstead(
      rowXml(1, HEADERS) + rowXml(2, [...ROW.slice(0, 6), chance.pick([2_958_465, 2_958_466, -1, 1e300])]),
    ),
  "too many columns": (chance) => text(`${"a;".repeat(chance.integer(16_384, 60_000))}\r\n1;2`),
  "text with NUL": (chance) => text(stockText(chance, () => `a\0b${"\0".repeat(chance.integer(0, 40))}`)),
  "any bytes": (chance) => randomBytes(chance, chance.integer(1, 4_000)),
  "letters of another encoding": (chance) =>
    Uint8Array.from([
      ...chance.pick([[0xff, 0xfe], [0xfe, 0xff], [0xef, 0xbb, 0xbf], []]),
      ...randomBytes(chance, 600),
    ]),
  "huge cell": (chance) => text(stockText(chance, () => "y".repeat(chance.integer(1_000, 200_000)))),
  "huge row": (chance) => text(`a;b\r\n"${"z".repeat(chance.integer(4_000_001, 6_000_000))}`),
  "open quotation mark": (chance) => text(stockText(chance, () => '"never closed')),
  "injected code": (chance) => text(stockText(chance, () => chance.pick(INJECTED))),
  "days of the year 9999": (chance) => text(stockText(chance, () => chance.pick(DAYS))),
  "half letters": (chance) => {
    const body = Buffer.from(
      stockText(chance, () => "x\uD800y"),
      "utf16le",
    );
    return Uint8Array.from([0xff, 0xfe, ...body]);
  },
  "only separators": (chance) =>
    text(chance.pick([";", ",", "\t", "\n", '"', "\r"]).repeat(chance.integer(1, 5_000))),
  "header alone": () => text(csv(HEADERS)),
  "old workbook": (chance) => Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, ...randomBytes(chance, 500)]),
  nothing: () => new Uint8Array(),
};

/** So many broken files of all kinds in turn; the same seed gives the same files. */
export function* brokenFiles(count: number, seed: number): Generator<BrokenFile> {
  const kinds = Object.entries(MAKERS);
  for (let index = 0; index < count; index += 1) {
    const [kind, make] = kinds[index % kinds.length] ?? ["nothing", () => new Uint8Array()];
    const bytes = make(randomStream(seed, `${kind} ${index}`));
    const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b;
    yield { name: `broken-${index}.${isZip ? "xlsx" : "csv"}`, kind, bytes };
  }
}
