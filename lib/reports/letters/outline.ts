/** A corner or handle of an outline, in units of the font. */
export interface OutlinePoint {
  readonly x: number;
  readonly y: number;
  /** On the outline, rather than a handle beside it. */
  readonly isOn: boolean;
}

/** Another outline taken into one, with where it is put. */
export interface OutlinePart {
  readonly flags: number;
  readonly glyph: number;
  readonly x: number;
  readonly y: number;
  /** Numbers it is scaled by, as written. */
  readonly scale: Buffer;
}

export type Outline =
  | { readonly kind: "empty" }
  | {
      readonly kind: "points";
      /** Place of the last point of each contour. */
      readonly ends: readonly number[];
      readonly points: readonly OutlinePoint[];
    }
  | { readonly kind: "parts"; readonly parts: readonly OutlinePart[]; readonly box: Buffer };

/** Offsets of a part are two bytes each. */
export const WORDS = 0x1;
export const SCALE = 0x8;
export const MORE = 0x20;
export const TWO_SCALES = 0x40;
export const MATRIX = 0x80;
export const INSTRUCTED = 0x100;

/** Outlines as the tables a font keeps them in, with the left end of each; hints for coarse screens are left out. */
export function writeOutlines(outlines: readonly Outline[]) {
  const written = outlines.map(bytesOf);
  const loca = Buffer.alloc((written.length + 1) * 4);
  let at = 0;
  written.forEach((bytes, glyph) => {
    at += bytes.length;
    loca.writeUInt32BE(at, (glyph + 1) * 4);
  });
  const lefts = written.map((bytes) => (bytes.length === 0 ? 0 : bytes.readInt16BE(2)));
  return { glyf: Buffer.concat(written), loca, lefts };
}

function bytesOf(outline: Outline): Buffer {
  if (outline.kind === "empty") return Buffer.alloc(0);
  const bytes = outline.kind === "points" ? pointBytes(outline) : partBytes(outline);
  // Outlines begin at even places.
  return bytes.length % 2 === 0 ? bytes : Buffer.concat([bytes, Buffer.alloc(1)]);
}

function pointBytes({ ends, points }: Extract<Outline, { kind: "points" }>): Buffer {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
  const steps = (all: readonly number[]) => all.map((one, place) => one - (all[place - 1] ?? 0));
  return Buffer.concat([
    words([ends.length, ...box, ...ends, 0]),
    Buffer.from(points.map(({ isOn }) => (isOn ? 1 : 0))),
    words(steps(xs)),
    words(steps(ys)),
  ]);
}

function partBytes({ parts, box }: Extract<Outline, { kind: "parts" }>): Buffer {
  const written = parts.map(({ flags, glyph, x, y, scale }, place) => {
    const more = place < parts.length - 1 ? MORE : 0;
    const kept = (flags & ~(MORE | INSTRUCTED)) | WORDS | more;
    return Buffer.concat([words([kept, glyph, x, y]), scale]);
  });
  return Buffer.concat([words([-1]), box, ...written]);
}

function words(values: readonly number[]): Buffer {
  const bytes = Buffer.alloc(values.length * 2);
  values.forEach((value, place) => {
    bytes.writeUInt16BE(value & 0xffff, place * 2);
  });
  return bytes;
}
