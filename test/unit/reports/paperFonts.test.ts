import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { ByteReader } from "@/lib/reports/letters/byteReader";
import { fontOfWeight } from "@/lib/reports/letters/fontOfWeight";
import { placeOnAxis } from "@/lib/reports/letters/variation";
import { unpackTables } from "@/lib/reports/letters/woff2";

const packed = readFileSync(
  "node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2",
);

/** The tables of a plain font. */
function tablesOf(font: Buffer): Map<string, Buffer> {
  const count = font.readUInt16BE(4);
  return new Map(
    Array.from({ length: count }, (_, place) => {
      const entry = 12 + 16 * place;
      const [at, length] = [font.readUInt32BE(entry + 8), font.readUInt32BE(entry + 12)];
      return [font.toString("latin1", entry, entry + 4), font.subarray(at, at + length)];
    }),
  );
}

const widthAt = (weight: number, glyph: number) =>
  tablesOf(fontOfWeight(packed, { weight, name: "A-1" }))
    .get("hmtx")
    ?.readUInt16BE(glyph * 4) ?? Number.NaN;

describe("a packed font at one weight", () => {
  const font = tablesOf(fontOfWeight(packed, { weight: 400, name: "A-400" }));
  const glyphs = font.get("maxp")?.readUInt16BE(4) ?? 0;

  test("has an outline, a width and a place for every glyph, and varies no more", () => {
    expect(glyphs).toBeGreaterThan(200);
    expect(font.get("hmtx")).toHaveLength(glyphs * 4);
    const loca = font.get("loca");
    expect(loca).toHaveLength((glyphs + 1) * 4);
    expect(loca?.readUInt32BE(glyphs * 4)).toBe(font.get("glyf")?.length);
    expect(["fvar", "gvar", "HVAR", "avar"].filter((tag) => font.has(tag))).toEqual([]);
    expect(font.get("name")?.subarray(-10).swap16().toString("utf16le")).toBe("A-400");
  });

  test("has outlines that lie in the box written before them", () => {
    const [loca, glyf] = [font.get("loca"), font.get("glyf")];
    if (!loca || !glyf) throw new Error("no outlines");
    let checked = 0;
    for (let glyph = 0; glyph < glyphs; glyph += 1) {
      const [at, end] = [loca.readUInt32BE(glyph * 4), loca.readUInt32BE(glyph * 4 + 4)];
      if (at === end || glyf.readInt16BE(at) < 0) continue;
      const reader = new ByteReader(glyf.subarray(at, end));
      const contours = reader.i16();
      const [left, , right] = [reader.i16(), reader.i16(), reader.i16(), reader.i16()];
      reader.skip(2 * (contours - 1));
      const points = reader.u16() + 1;
      reader.skip(2 + points);
      let x = 0;
      const xs = Array.from({ length: points }, () => {
        x += reader.i16();
        return x;
      });
      expect([Math.min(...xs), Math.max(...xs)]).toEqual([left, right]);
      checked += 1;
    }
    expect(checked).toBeGreaterThan(100);
  });

  test("grows wider with its weight, and stops at the ends of what it has", () => {
    const widths = [200, 400, 600, 900].map((weight) => widthAt(weight, 40));
    expect(widths).toEqual([...widths].sort((a, b) => a - b));
    expect(new Set(widths).size).toBeGreaterThan(2);
    expect(widthAt(100, 40)).toBe(widths[0]);
    expect(widthAt(1000, 40)).toBe(widths[3]);
  });

  test("is told from bytes that are no font", () => {
    expect(() => fontOfWeight(Buffer.alloc(64), { weight: 400, name: "A" })).toThrow(RangeError);
  });
});

test("a weight lies on the axis from its default to its heaviest", () => {
  const fvar = unpackTables(packed).get("fvar")?.bytes;
  if (!fvar) throw new Error("no axis");
  // The font varies from 200, its default, to 900.
  expect(placeOnAxis(200, { fvar, avar: undefined })).toBe(0);
  expect(placeOnAxis(550, { fvar, avar: undefined })).toBeCloseTo(0.5, 12);
  expect(placeOnAxis(900, { fvar, avar: undefined })).toBe(1);
});
