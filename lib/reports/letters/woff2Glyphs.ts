import { ByteReader } from "@/lib/reports/letters/byteReader";
import {
  INSTRUCTED,
  MATRIX,
  MORE,
  type Outline,
  type OutlinePart,
  SCALE,
  TWO_SCALES,
  WORDS,
} from "@/lib/reports/letters/outline";

interface Streams {
  readonly contours: ByteReader;
  readonly points: ByteReader;
  readonly flags: ByteReader;
  readonly glyphs: ByteReader;
  readonly composites: ByteReader;
  readonly boxes: ByteReader;
  readonly instructions: ByteReader;
  /** Whether a glyph's box is written down. */
  readonly hasBox: (glyph: number) => boolean;
}

interface Step {
  readonly dx: number;
  readonly dy: number;
  readonly isOn: boolean;
}

/**
 * Unpacks the outlines of a WOFF2 font.
 *
 * @see W3C, WOFF File Format 2.0, transformed glyf table (from memory).
 */
export function unpackOutlines(packed: Buffer): Outline[] {
  const reader = new ByteReader(packed);
  reader.skip(4);
  const count = reader.u16();
  reader.skip(2);
  const sizes = Array.from({ length: 7 }, () => reader.u32());
  const streams = streamsOf(reader, sizes, count);
  return Array.from({ length: count }, (_, glyph) => outlineOf(streams, glyph));
}

function streamsOf(reader: ByteReader, sizes: readonly number[], count: number): Streams {
  const take = (place: number) => new ByteReader(reader.bytes(sizes[place] ?? 0));
  const [contours, points, flags, glyphs, composites, boxes, instructions] = [0, 1, 2, 3, 4, 5, 6].map(
    take,
  ) as [ByteReader, ByteReader, ByteReader, ByteReader, ByteReader, ByteReader, ByteReader];
  const map = boxes.bytes(4 * Math.ceil(count / 32));
  const hasBox = (glyph: number) => ((map[glyph >> 3] ?? 0) & (0x80 >> (glyph & 7))) !== 0;
  return { contours, points, flags, glyphs, composites, boxes, instructions, hasBox };
}

function outlineOf(streams: Streams, glyph: number): Outline {
  const contours = streams.contours.i16();
  if (contours === 0) return { kind: "empty" };
  return contours < 0 ? ofParts(streams) : ofPoints(streams, { contours, glyph });
}

/** An outline put together from others. */
function ofParts(streams: Streams): Outline {
  const box = streams.boxes.bytes(8);
  const parts: OutlinePart[] = [];
  let isInstructed = false;
  for (let flags = MORE; (flags & MORE) !== 0; ) {
    const part = partOf(streams.composites);
    flags = part.flags;
    isInstructed ||= (flags & INSTRUCTED) !== 0;
    parts.push(part);
  }
  if (isInstructed) skipProgram(streams);
  return { kind: "parts", parts, box };
}

function partOf(reader: ByteReader): OutlinePart {
  const flags = reader.u16();
  const glyph = reader.u16();
  const [x, y] = flags & WORDS ? [reader.i16(), reader.i16()] : [reader.i8(), reader.i8()];
  return { flags, glyph, x, y, scale: reader.bytes(scaleBytes(flags)) };
}

/** Bytes of the numbers a part is scaled by. */
function scaleBytes(flags: number): number {
  if (flags & MATRIX) return 8;
  if (flags & TWO_SCALES) return 4;
  return flags & SCALE ? 2 : 0;
}

function skipProgram({ glyphs, instructions }: Streams): void {
  instructions.skip(glyphs.small());
}

/** An outline of its own points. */
function ofPoints(streams: Streams, { contours, glyph }: { contours: number; glyph: number }): Outline {
  const counts = Array.from({ length: contours }, () => streams.points.small());
  const total = counts.reduce((sum, one) => sum + one, 0);
  const steps = Array.from({ length: total }, () => stepOf(streams.flags.u8(), streams.glyphs));
  skipProgram(streams);
  if (streams.hasBox(glyph)) streams.boxes.skip(8);
  let [x, y, last] = [0, 0, -1];
  const points = steps.map(({ dx, dy, isOn }) => {
    x += dx;
    y += dy;
    return { x, y, isOn };
  });
  const ends = counts.map((one) => {
    last += one;
    return last;
  });
  return { kind: "points", ends, points };
}

/** Reads one step between points, packed into one to four bytes by its flag. */
function stepOf(flag: number, glyphs: ByteReader): Step {
  const code = flag & 0x7f;
  const isOn = flag < 0x80;
  const signed = (bit: number, size: number) => ((code >> bit) & 1 ? size : -size);
  if (code < 10) return { dx: 0, dy: signed(0, ((code & 14) << 7) + glyphs.u8()), isOn };
  if (code < 20) return { dx: signed(0, (((code - 10) & 14) << 7) + glyphs.u8()), dy: 0, isOn };
  if (code < 84) {
    const [high, low] = [code - 20, glyphs.u8()];
    const dx = signed(0, 1 + (high & 0x30) + (low >> 4));
    return { dx, dy: signed(1, 1 + ((high & 0x0c) << 2) + (low & 0x0f)), isOn };
  }
  if (code < 120) {
    const high = code - 84;
    const dx = signed(0, 1 + (Math.floor(high / 12) << 8) + glyphs.u8());
    return { dx, dy: signed(1, 1 + (((high % 12) >> 2) << 8) + glyphs.u8()), isOn };
  }
  if (code < 124) {
    const [first, shared, last] = [glyphs.u8(), glyphs.u8(), glyphs.u8()];
    const dx = signed(0, (first << 4) + (shared >> 4));
    return { dx, dy: signed(1, ((shared & 0x0f) << 8) + last), isOn };
  }
  const dx = signed(0, glyphs.u16());
  return { dx, dy: signed(1, glyphs.u16()), isOn };
}
