import { ByteReader } from "@/lib/reports/letters/byteReader";
import { METRIC_POINTS, moveOutline } from "@/lib/reports/letters/movePoints";
import { type Outline, writeOutlines } from "@/lib/reports/letters/outline";
import { placeOnAxis, Variation } from "@/lib/reports/letters/variation";
import { type PackedTable, unpackTables } from "@/lib/reports/letters/woff2";
import { unpackOutlines } from "@/lib/reports/letters/woff2Glyphs";

/** What a font needs that stands still; the tables of its variation are left behind. */
const KEPT = ["cmap", "head", "hhea", "maxp", "OS/2", "post", "GDEF", "GPOS", "GSUB"];
const TRUE_TYPE = 0x00010000;

export interface FontWanted {
  /** Clamped to what the font has. */
  readonly weight: number;
  /** What it is called; fonts of one name are taken for one. Letters and hyphens. */
  readonly name: string;
}

/**
 * A variable WOFF2 font at one weight, as a TrueType font that stands still and can be embedded in part.
 *
 * @throws {RangeError} where the bytes are no such font.
 * @see ISO/IEC 14496-22 (from memory).
 */
export function fontOfWeight(packed: Uint8Array, { weight, name }: FontWanted): Buffer {
  const tables = unpackTables(packed);
  const bytesOf = (tag: string) => tables.get(tag)?.bytes;
  const [glyf, fvar, gvar, head] = ["glyf", "fvar", "gvar", "head"].map(bytesOf);
  if (!glyf || !fvar || !gvar || !head || !tables.get("glyf")?.isTransformed)
    throw new RangeError("the font must be packed and vary");
  const variation = new Variation(gvar, placeOnAxis(weight, { fvar, avar: bytesOf("avar") }));
  const moved = unpackOutlines(glyf).map((outline, glyph) =>
    moveOutline(outline, variation.movesOf(glyph, pointsOf(outline))),
  );
  const { lefts, ...outlines } = writeOutlines(moved.map(({ outline }) => outline));
  const widths = widthsOf(tables, moved.length).map((width, glyph) => width + (moved[glyph]?.wider ?? 0));
  const plain = new Map<string, Buffer>();
  for (const tag of KEPT) {
    const bytes = bytesOf(tag);
    if (bytes) plain.set(tag, Buffer.from(bytes));
  }
  // Outlines are found by whole offsets, and each glyph has its own width.
  plain.get("head")?.writeInt16BE(1, 50);
  plain.get("hhea")?.writeUInt16BE(moved.length, 34);
  plain.set("glyf", outlines.glyf).set("loca", outlines.loca).set("hmtx", metrics(widths, lefts));
  plain.set("name", nameTable(name));
  return assemble(plain);
}

function pointsOf(outline: Outline): number {
  const own = outline.kind === "points" ? outline.points : outline.kind === "parts" ? outline.parts : [];
  return own.length + METRIC_POINTS;
}

/** The width of each glyph; those after the last one written have the same. */
function widthsOf(tables: ReadonlyMap<string, PackedTable>, count: number): number[] {
  const hmtx = tables.get("hmtx");
  const written = tables.get("hhea")?.bytes.readUInt16BE(34) ?? 0;
  if (!hmtx) throw new RangeError("the font must have widths");
  const reader = new ByteReader(hmtx.bytes);
  // The first byte of the packed form says which bearings are left out; widths come first.
  const isPacked = hmtx.isTransformed;
  const hasBearings = !isPacked || (reader.u8() & 1) === 0;
  const widths: number[] = [];
  for (let glyph = 0; glyph < written; glyph += 1) {
    widths.push(reader.u16());
    if (!isPacked && hasBearings) reader.skip(2);
  }
  return Array.from({ length: count }, (_, glyph) => widths[Math.min(glyph, written - 1)] ?? 0);
}

function metrics(widths: readonly number[], lefts: readonly number[]): Buffer {
  const bytes = Buffer.alloc(widths.length * 4);
  widths.forEach((width, glyph) => {
    bytes.writeUInt16BE(width, glyph * 4);
    bytes.writeInt16BE(lefts[glyph] ?? 0, glyph * 4 + 2);
  });
  return bytes;
}

const FAMILY = 1;
const STYLE = 2;
const WHOLE = 4;
const POSTSCRIPT = 6;
const RECORD = 12;

/** The names of a font, each the same, in English for Windows. */
function nameTable(name: string): Buffer {
  const text = Buffer.from(name, "utf16le").swap16();
  const ids = [FAMILY, STYLE, WHOLE, POSTSCRIPT];
  const head = Buffer.alloc(6 + RECORD * ids.length);
  head.writeUInt16BE(ids.length, 2);
  head.writeUInt16BE(head.length, 4);
  ids.forEach((id, place) => {
    [3, 1, 0x409, id, text.length, 0].forEach((value, field) => {
      head.writeUInt16BE(value, 6 + RECORD * place + 2 * field);
    });
  });
  return Buffer.concat([head, text]);
}

/** Tables as one font file, each at a multiple of four bytes; nobody reads the checksums. */
function assemble(tables: ReadonlyMap<string, Buffer>): Buffer {
  const sorted = [...tables].sort(([a], [b]) => (a < b ? -1 : 1));
  const head = Buffer.alloc(12 + 16 * sorted.length);
  head.writeUInt32BE(TRUE_TYPE, 0);
  head.writeUInt16BE(sorted.length, 4);
  const parts: Buffer[] = [head];
  let at = head.length;
  sorted.forEach(([tag, bytes], place) => {
    const entry = 12 + 16 * place;
    head.write(tag, entry, "latin1");
    head.writeUInt32BE(at, entry + 8);
    head.writeUInt32BE(bytes.length, entry + 12);
    const padded = Buffer.alloc(Math.ceil(bytes.length / 4) * 4);
    bytes.copy(padded);
    parts.push(padded);
    at += padded.length;
  });
  return Buffer.concat(parts);
}
