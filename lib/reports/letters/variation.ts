import { ByteReader } from "@/lib/reports/letters/byteReader";

/** By how much a glyph's points move in one region of the axis, weighted by how far inside it one stands. */
export interface PointMoves {
  /** In (0, 1]. */
  readonly share: number;
  /** Points named; null is every one. */
  readonly points: readonly number[] | null;
  readonly xs: readonly number[];
  readonly ys: readonly number[];
}

const F2DOT14 = 16_384;
const SHARED_POINTS = 0x8000;
const COUNT = 0x0fff;
const OWN_PEAK = 0x8000;
const BETWEEN = 0x4000;
const OWN_POINTS = 0x2000;

/**
 * A weight as the axis counts it, 0 at the font's default and 1 at its heaviest.
 *
 * @throws {RangeError} where the font does not vary along one axis alone.
 * @see ISO/IEC 14496-22, fvar and avar (from memory).
 */
export function placeOnAxis(
  weight: number,
  { fvar, avar }: { fvar: Buffer; avar: Buffer | undefined },
): number {
  const at = fvar.readUInt16BE(4);
  if (fvar.readUInt16BE(8) !== 1) throw new RangeError("the font must vary along one axis");
  const [low, usual, high] = [4, 8, 12].map((offset) => fvar.readInt32BE(at + offset) / 65_536) as [
    number,
    number,
    number,
  ];
  const held = Math.min(high, Math.max(low, weight));
  const straight = held < usual ? (held - usual) / (usual - low) : (held - usual) / (high - usual);
  return avar ? bent(Number.isNaN(straight) ? 0 : straight, avar) : straight;
}

/** The place after the font's own table of places. */
function bent(place: number, avar: Buffer): number {
  const reader = new ByteReader(avar);
  reader.skip(8);
  const pairs = Array.from(
    { length: reader.u16() },
    () => [reader.i16() / F2DOT14, reader.i16() / F2DOT14] as const,
  );
  for (const [index, [from, to]] of pairs.entries()) {
    const next = pairs[index + 1];
    if (next && place >= from && place <= next[0])
      return to + ((place - from) / (next[0] - from)) * (next[1] - to);
  }
  return place;
}

/**
 * The moves of each glyph's points at a place on the axis; the four last points of a glyph are its metrics.
 *
 * @see ISO/IEC 14496-22, gvar (from memory).
 */
export class Variation {
  readonly #reader: ByteReader;
  readonly #place: number;
  readonly #peaks: readonly number[];
  readonly #offsets: readonly number[];

  constructor(gvar: Buffer, place: number) {
    this.#reader = new ByteReader(gvar);
    this.#place = place;
    const reader = this.#reader;
    reader.skip(6);
    const shared = reader.u16();
    const sharedAt = reader.u32();
    const glyphs = reader.u16();
    const isLong = (reader.u16() & 1) !== 0;
    const start = reader.u32();
    this.#offsets = Array.from(
      { length: glyphs + 1 },
      () => start + (isLong ? reader.u32() : 2 * reader.u16()),
    );
    const peaks = reader.from(sharedAt);
    this.#peaks = Array.from({ length: shared }, () => peaks.i16() / F2DOT14);
  }

  /** @param points How many the glyph has, its metrics included. */
  movesOf(glyph: number, points: number): PointMoves[] {
    const [start = 0, end = 0] = [this.#offsets[glyph], this.#offsets[glyph + 1]];
    if (start === end) return [];
    const heads = this.#reader.from(start);
    const counts = heads.u16();
    const data = this.#reader.from(start + heads.u16());
    const shared = counts & SHARED_POINTS ? pointsOf(data) : null;
    let at = data.at;
    return Array.from({ length: counts & COUNT }, () => {
      const { size, share, hasPoints } = this.#headOf(heads);
      const body = data.from(at);
      at += size;
      const named = hasPoints ? pointsOf(body) : shared;
      const count = named?.length ?? points;
      return { share, points: named, xs: stepsOf(body, count), ys: stepsOf(body, count) };
    }).filter(({ share }) => share > 0);
  }

  #headOf(heads: ByteReader) {
    const size = heads.u16();
    const code = heads.u16();
    const peak = code & OWN_PEAK ? heads.i16() / F2DOT14 : (this.#peaks[code & COUNT] ?? 0);
    const ends =
      code & BETWEEN
        ? [heads.i16() / F2DOT14, heads.i16() / F2DOT14]
        : [Math.min(peak, 0), Math.max(peak, 0)];
    const share = shareOf(this.#place, { peak, start: ends[0] ?? 0, end: ends[1] ?? 0 });
    return { size, share, hasPoints: (code & OWN_POINTS) !== 0 };
  }
}

/** How far inside a region a place stands: 1 at its peak, 0 at its ends and outside. */
function shareOf(place: number, { peak, start, end }: { peak: number; start: number; end: number }): number {
  if (peak === 0 || place === peak) return 1;
  if (place <= start || place >= end) return 0;
  return place < peak ? (place - start) / (peak - start) : (end - place) / (end - peak);
}

/** Numbers of points, packed as runs of steps; none named is every one. */
function pointsOf(reader: ByteReader): readonly number[] | null {
  const first = reader.u8();
  const count = first & 0x80 ? ((first & 0x7f) << 8) + reader.u8() : first;
  if (count === 0) return null;
  const points: number[] = [];
  let point = 0;
  while (points.length < count) {
    const control = reader.u8();
    for (let left = (control & 0x7f) + 1; left > 0 && points.length < count; left -= 1) {
      point += control & 0x80 ? reader.u16() : reader.u8();
      points.push(point);
    }
  }
  return points;
}

/** Steps, packed as runs of nothing, bytes or words. */
function stepsOf(reader: ByteReader, count: number): number[] {
  const steps: number[] = [];
  while (steps.length < count) {
    const control = reader.u8();
    for (let left = (control & 0x3f) + 1; left > 0 && steps.length < count; left -= 1) {
      if (control & 0x80) steps.push(0);
      else steps.push(control & 0x40 ? reader.i16() : reader.i8());
    }
  }
  return steps;
}
