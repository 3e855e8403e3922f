/** The ways a register's text is written in bytes. */
export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1250" | "windows-1252";

export const ENCODINGS: readonly Encoding[] = [
  "utf-8",
  "utf-16le",
  "utf-16be",
  "windows-1250",
  "windows-1252",
];

const SAMPLE_BYTES = 65_536;

function startsWith(bytes: Uint8Array, mark: readonly number[]): boolean {
  return mark.every((byte, index) => bytes[index] === byte);
}

/** UTF-16 without a mark shows by zero bytes in every other place; text in the other encodings has none. */
function detectUnmarkedUtf16(bytes: Uint8Array): Encoding | null {
  const sample = bytes.subarray(0, SAMPLE_BYTES);
  let even = 0;
  let odd = 0;
  for (let index = 0; index < sample.length; index += 1) {
    if (sample[index] !== 0) continue;
    if (index % 2 === 0) even += 1;
    else odd += 1;
  }
  const many = sample.length / 5;
  if (odd > many && even === 0) return "utf-16le";
  return even > many && odd === 0 ? "utf-16be" : null;
}

function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return true;
  } catch {
    return false;
  }
}

function countMatches(text: string, pattern: RegExp): number {
  return text.match(pattern)?.length ?? 0;
}

/** Both single-byte pages read any file; the one that gives letters of the team's languages is meant. */
function chooseSingleByte(bytes: Uint8Array): Encoding {
  const central = countMatches(new TextDecoder("windows-1250").decode(bytes), /[ąćęłńśźżĄĆĘŁŃŚŹŻ]/g);
  const western = countMatches(new TextDecoder("windows-1252").decode(bytes), /[åÅñÑæÆøØàèêçõ]/g);
  return central > western ? "windows-1250" : "windows-1252";
}

/** Finds how bytes write text: by their mark, by zero bytes, by being valid UTF-8, or by their letters. */
export function detectEncoding(bytes: Uint8Array): Encoding {
  if (startsWith(bytes, [0xef, 0xbb, 0xbf])) return "utf-8";
  if (startsWith(bytes, [0xff, 0xfe])) return "utf-16le";
  if (startsWith(bytes, [0xfe, 0xff])) return "utf-16be";
  const wide = detectUnmarkedUtf16(bytes);
  if (wide !== null) return wide;
  return isUtf8(bytes) ? "utf-8" : chooseSingleByte(bytes);
}

/**
 * Letters of Windows-1252 between 0x80 and 0x9F, as the WHATWG Encoding Standard's index lists them (from memory).
 * The decoder of Node 20 gives control characters there (found by trying): the euro sign and the dash would be lost.
 */
const WESTERN_80_TO_9F = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";

function mendWestern(text: string): string {
  return text.replace(
    /[\u0080-\u009f]/g,
    (letter) => WESTERN_80_TO_9F[letter.charCodeAt(0) - 0x80] ?? letter,
  );
}

/** Decodes bytes that come in pieces; call it once without bytes at the end. */
export function pieceDecoder(encoding: Encoding): (bytes?: Uint8Array) => string {
  const decoder = new TextDecoder(encoding);
  const mend = encoding === "windows-1252" ? mendWestern : (text: string) => text;
  return (bytes) => mend(bytes === undefined ? decoder.decode() : decoder.decode(bytes, { stream: true }));
}

/** The text of bytes; a mark at the start is left out, what cannot be read becomes U+FFFD. */
export function decodeText(bytes: Uint8Array, encoding: Encoding): string {
  const decode = pieceDecoder(encoding);
  return decode(bytes) + decode();
}

function singleByteTable(encoding: Encoding): Map<string, number> {
  const all = Uint8Array.from({ length: 256 }, (_, byte) => byte);
  return new Map([...decodeText(all, encoding)].map((letter, byte) => [letter, byte]));
}

function encodeWide(text: string, littleEndian: boolean): Uint8Array {
  const view = new DataView(new ArrayBuffer(text.length * 2));
  for (let index = 0; index < text.length; index += 1)
    view.setUint16(index * 2, text.charCodeAt(index), littleEndian);
  return new Uint8Array(view.buffer);
}

/**
 * Writes text in bytes, without a mark.
 *
 * @throws RangeError when a letter has no byte in a single-byte encoding
 */
export function encodeText(text: string, encoding: Encoding): Uint8Array {
  if (encoding === "utf-8") return new TextEncoder().encode(text);
  if (encoding === "utf-16le" || encoding === "utf-16be") return encodeWide(text, encoding === "utf-16le");
  const table = singleByteTable(encoding);
  return Uint8Array.from([...text], (letter) => {
    const byte = table.get(letter);
    if (byte === undefined) throw new RangeError(`“${letter}” cannot be written in ${encoding}`);
    return byte;
  });
}
