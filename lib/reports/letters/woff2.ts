import { brotliDecompressSync } from "node:zlib";
import { ByteReader } from "@/lib/reports/letters/byteReader";

/** Tags that WOFF2 writes as their place in this list. */
const TAGS = (
  "cmap head hhea hmtx maxp name OS/2 post cvt_ fpgm glyf loca prep CFF_ VORG EBDT EBLC gasp hdmx kern LTSH PCLT " +
  "VDMX vhea vmtx BASE GDEF GPOS GSUB EBSC JSTF MATH CBDT CBLC COLR CPAL SVG_ sbix acnt avar bdat bloc bsln cvar " +
  "fdsc feat fmtx fvar gvar hsty just lcar mort morx opbd prop trak Zapf Silf Glat Gloc Feat Sill"
)
  .split(" ")
  .map((tag) => tag.replace("_", " "));

const SIGNATURE = 0x774f4632;
const HEADER = 48;
const OWN_TAG = 63;

/** A table of a font as it was packed. */
export interface PackedTable {
  readonly bytes: Buffer;
  /** Written in WOFF2's own way rather than as fonts keep it. */
  readonly isTransformed: boolean;
}

/**
 * The tables of a WOFF2 font by tag.
 *
 * @throws {RangeError} where the bytes are no WOFF2 font.
 * @see W3C, WOFF File Format 2.0 (from memory).
 */
export function unpackTables(packed: Uint8Array): Map<string, PackedTable> {
  const reader = new ByteReader(packed);
  if (reader.u32() !== SIGNATURE) throw new RangeError("the bytes must be a WOFF2 font");
  reader.skip(8);
  const count = reader.u16();
  reader.skip(6);
  const compressed = reader.u32();
  reader.skip(HEADER - 24);
  const entries = Array.from({ length: count }, () => entryOf(reader));
  const data = brotliDecompressSync(packed.subarray(reader.at, reader.at + compressed));
  let at = 0;
  return new Map(
    entries.map(({ tag, length, isTransformed }) => {
      at += length;
      return [tag, { bytes: data.subarray(at - length, at), isTransformed }];
    }),
  );
}

function entryOf(reader: ByteReader) {
  const flags = reader.u8();
  const place = flags & OWN_TAG;
  const tag = place === OWN_TAG ? reader.tag() : (TAGS[place] ?? "");
  const original = reader.base128();
  const version = flags >> 6;
  // Of outlines the packed form is version 0; of all other tables that is the plain one.
  const isTransformed = tag === "glyf" || tag === "loca" ? version === 0 : version !== 0;
  return { tag, isTransformed, length: isTransformed ? reader.base128() : original };
}
