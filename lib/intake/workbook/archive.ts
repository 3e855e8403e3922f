import { Inflate } from "fflate";
import { grouped, LIMITS, UnreadableFile } from "@/lib/intake/limits";

/** A part of a zip archive by its directory. */
interface Entry {
  readonly name: string;
  readonly method: number;
  readonly packed: number;
  readonly unpacked: number;
  readonly checksum: number;
  readonly offset: number;
}

/** The parts of a workbook's archive; each is unpacked piece by piece when asked for. */
export interface Archive {
  readonly names: readonly string[];
  /** Pieces of a part; null when there is none of that name. Throws UnreadableFile when it is damaged. */
  unpack(name: string): Iterable<Uint8Array> | null;
}

const END_MARK = 0x06_05_4b_50;
const ENTRY_MARK = 0x02_01_4b_50;
const LOCAL_MARK = 0x04_03_4b_50;
const END_SIZE = 22;
const LONGEST_REMARK = 65_535;
const ENTRY_SIZE = 46;
const LOCAL_SIZE = 30;
/** In place of a size that stands among the extra fields. */
const ELSEWHERE = 0xff_ff_ff_ff;
const MEBIBYTE = 1024 * 1024;
/** Deflate makes at most 1,032 bytes of one, so a piece never unpacks to more than about 4 MB. */
const PIECE = 4_096;

const damaged = (what: string) =>
  new UnreadableFile(
    `The workbook is cut off or damaged: ${what}. Copy it once more from where it comes from, or open it in a spreadsheet program, save it as .xlsx and load that file`,
  );

function tooLarge(bytes: number, how: string): UnreadableFile {
  return new UnreadableFile(
    `The workbook ${how} ${grouped(Math.ceil(bytes / MEBIBYTE))} MB; at most ${grouped(LIMITS.unpackedBytes / MEBIBYTE)} MB are read. Delete what is not needed from it, or save the sheet as .csv and load that`,
  );
}

function findEnd(view: DataView): number {
  const last = view.byteLength - END_SIZE;
  for (let at = last; at >= Math.max(0, last - LONGEST_REMARK); at -= 1)
    if (view.getUint32(at, true) === END_MARK) return at;
  throw damaged("the directory at its end is missing");
}

/** Sizes above four gigabytes stand in the extra field number 1, in the order size, packed size, offset. */
function readLong(extra: DataView, short: readonly number[]): number[] {
  let at = 0;
  while (at + 4 <= extra.byteLength && extra.getUint16(at, true) !== 1)
    at += 4 + extra.getUint16(at + 2, true);
  at += 4;
  return short.map((value) => {
    if (value !== ELSEWHERE) return value;
    const long = Number(extra.getBigUint64(at, true));
    at += 8;
    return long;
  });
}

function readEntry(view: DataView, at: number): { entry: Entry; next: number } {
  if (view.getUint32(at, true) !== ENTRY_MARK) throw damaged("its directory is not in order");
  const short = (place: number) => view.getUint16(at + place, true);
  const word = (place: number) => view.getUint32(at + place, true);
  if ((short(8) & 1) === 1)
    throw new UnreadableFile(
      "The workbook is protected by a password. Save it without one and load that file",
    );
  const [nameLength, extraLength, remarkLength] = [short(28), short(30), short(32)];
  const named = at + ENTRY_SIZE;
  const extra = new DataView(view.buffer, view.byteOffset + named + nameLength, extraLength);
  const [unpacked = 0, packed = 0, offset = 0] = readLong(extra, [word(24), word(20), word(42)]);
  const name = new TextDecoder().decode(new Uint8Array(view.buffer, view.byteOffset + named, nameLength));
  return {
    entry: { name, method: short(10), packed, unpacked, checksum: word(16), offset },
    next: named + nameLength + extraLength + remarkLength,
  };
}

function readDirectory(view: DataView): Entry[] {
  const end = findEnd(view);
  const count = view.getUint16(end + 10, true);
  if (count > LIMITS.archiveParts)
    throw new UnreadableFile(
      `The workbook has ${grouped(count)} parts; at most ${grouped(LIMITS.archiveParts)} are read. Copy the sheet into a new workbook and load that`,
    );
  const entries: Entry[] = [];
  let at = view.getUint32(end + 16, true);
  for (let index = 0; index < count; index += 1) {
    const { entry, next } = readEntry(view, at);
    entries.push(entry);
    at = next;
  }
  const declared = entries.reduce((sum, { unpacked }) => sum + unpacked, 0);
  if (declared > LIMITS.unpackedBytes) throw tooLarge(declared, "says it unpacks to");
  return entries;
}

const CHECKSUMS = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit += 1) rest = rest & 1 ? (rest >>> 1) ^ 0xed_b8_83_20 : rest >>> 1;
  return rest;
});

function addChecksum(sum: number, piece: Uint8Array): number {
  let rest = sum;
  for (const byte of piece) rest = (rest >>> 8) ^ (CHECKSUMS[(rest ^ byte) & 255] ?? 0);
  return rest;
}

function* inflate(packed: Uint8Array): Generator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const inflater = new Inflate((piece) => ready.push(piece));
  for (let at = 0; at < packed.length; at += PIECE) {
    inflater.push(packed.subarray(at, at + PIECE), at + PIECE >= packed.length);
    yield* ready.splice(0);
  }
}

function dataOf(bytes: Uint8Array, view: DataView, { name, offset, packed }: Entry): Uint8Array {
  if (view.getUint32(offset, true) !== LOCAL_MARK)
    throw damaged(`its part ${name} is not where it should be`);
  const start = offset + LOCAL_SIZE + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true);
  if (start + packed > bytes.length) throw damaged(`its part ${name} ends early`);
  return bytes.subarray(start, start + packed);
}

/** The pieces of an entry, as many bytes as it says and with its checksum, or it is damaged. */
function* piecesOf(bytes: Uint8Array, view: DataView, entry: Entry): Generator<Uint8Array> {
  const data = dataOf(bytes, view, entry);
  if (entry.method !== 0 && entry.method !== 8)
    throw damaged(`its part ${entry.name} is packed in a way nobody reads`);
  let size = 0;
  let sum = 0xff_ff_ff_ff;
  for (const piece of entry.method === 0 ? [data] : inflate(data)) {
    size += piece.length;
    if (size > entry.unpacked) throw damaged(`its part ${entry.name} holds more than it says`);
    sum = addChecksum(sum, piece);
    yield piece;
  }
  if (size !== entry.unpacked || (sum ^ 0xff_ff_ff_ff) >>> 0 !== entry.checksum)
    throw damaged(`its part ${entry.name} is not what was packed`);
}

/** Turns whatever a broken archive makes the reader stumble over into the sentence for a person. */
function* guarded(pieces: Iterable<Uint8Array>, name: string): Generator<Uint8Array> {
  try {
    yield* pieces;
  } catch (error) {
    throw error instanceof UnreadableFile ? error : damaged(`its part ${name} cannot be unpacked`);
  }
}

/**
 * Opens a zip archive by its directory. Number of parts and declared sizes are checked before anything is
 * unpacked; unpacking stops as soon as a part holds more than it declared.
 *
 * @throws UnreadableFile
 */
export function openArchive(bytes: Uint8Array): Archive {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let entries: Map<string, Entry>;
  try {
    entries = new Map(readDirectory(view).map((entry) => [entry.name, entry]));
  } catch (error) {
    throw error instanceof UnreadableFile ? error : damaged("its directory points outside the file");
  }
  return {
    names: [...entries.keys()],
    unpack: (name) => {
      const entry = entries.get(name);
      return entry ? guarded(piecesOf(bytes, view, entry), name) : null;
    },
  };
}
