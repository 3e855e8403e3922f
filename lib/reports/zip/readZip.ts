import { createReadStream } from "node:fs";
import { type FileHandle, open } from "node:fs/promises";
import { crc32, createInflateRaw } from "node:zlib";

/** Why an archive cannot be read, in words for whoever sent it. */
export class BrokenZip extends Error {}

/** A file of an archive, as the archive's list has it. */
export interface ZippedFile {
  readonly name: string;
  /** Bytes once unpacked, as the list says; reading more of it fails. */
  readonly size: number;
  readonly packed: number;
  readonly crc: number;
  readonly offset: number;
}

const TAIL_BYTES = 22 + 0xffff;
const LONGEST_LIST = 16 * 1024 * 1024;
const DEFLATE = 8;

/**
 * The files of an archive on disk, by its list at the end; nothing is unpacked yet.
 *
 * @throws {BrokenZip} when it is cut, no ZIP archive, or of a kind `writeZip` does not write.
 */
export async function listZip(path: string): Promise<ZippedFile[]> {
  const file = await open(path, "r");
  try {
    const { size } = await file.stat();
    const { at, files, bytes, offset } = await findEnd(file, size);
    if (offset + bytes !== at || bytes > LONGEST_LIST)
      throw new BrokenZip("The list of files at its end does not fit: it was cut or put together anew.");
    const found = readList(await readAt(file, offset, bytes));
    if (found.length !== files) throw new BrokenZip("The list of files at its end is not whole.");
    return found;
  } finally {
    await file.close();
  }
}

async function findEnd(file: FileHandle, size: number) {
  const start = Math.max(0, size - TAIL_BYTES);
  const tail = await readAt(file, start, size - start);
  const place = tail.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]));
  if (place < 0 || place + 22 > tail.length)
    throw new BrokenZip(
      "It is no ZIP archive, or its end is missing: it was probably not loaded to its end.",
    );
  return {
    at: start + place,
    files: tail.readUInt16LE(place + 10),
    bytes: tail.readUInt32LE(place + 12),
    offset: tail.readUInt32LE(place + 16),
  };
}

async function readAt(file: FileHandle, position: number, length: number): Promise<Buffer> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, position);
  if (bytesRead !== length) throw new BrokenZip("It ends too early.");
  return buffer;
}

function readList(list: Buffer): ZippedFile[] {
  const found: ZippedFile[] = [];
  for (let at = 0; at + 46 <= list.length; ) {
    if (list.readUInt32LE(at) !== 0x0201_4b50 || list.readUInt16LE(at + 10) !== DEFLATE)
      throw new BrokenZip("Its list holds something that Ebbline does not write.");
    const nameBytes = list.readUInt16LE(at + 28);
    found.push({
      name: list.toString("utf8", at + 46, at + 46 + nameBytes),
      crc: list.readUInt32LE(at + 16),
      packed: list.readUInt32LE(at + 20),
      size: list.readUInt32LE(at + 24),
      offset: list.readUInt32LE(at + 42),
    });
    at += 46 + nameBytes + list.readUInt16LE(at + 30) + list.readUInt16LE(at + 32);
  }
  return found;
}

/**
 * The bytes of one file of an archive, unpacked piece by piece.
 *
 * @throws {BrokenZip} when they are fewer, more or others than the list says; what came before is then not to be used.
 */
export async function* unzip(path: string, file: ZippedFile): AsyncGenerator<Buffer> {
  const start = await startOfBytes(path, file);
  if (file.packed === 0) throw new BrokenZip(`${file.name} has no bytes.`);
  const packed = createReadStream(path, { start, end: start + file.packed - 1 });
  const inflate = createInflateRaw();
  packed.once("error", (error) => inflate.destroy(error));
  let [crc, size] = [0, 0];
  try {
    for await (const piece of packed.pipe(inflate) as AsyncIterable<Buffer>) {
      crc = crc32(piece, crc);
      size += piece.length;
      if (size > file.size) throw new BrokenZip(`${file.name} holds more than the list says.`);
      yield piece;
    }
  } catch (error) {
    if (isOfZlib(error)) throw new BrokenZip(`${file.name} is damaged and cannot be unpacked.`);
    throw error;
  } finally {
    packed.destroy();
  }
  if (size !== file.size || crc !== file.crc)
    throw new BrokenZip(`${file.name} is damaged: its checksum is another than the list says.`);
}

/** Where the bytes begin: behind the file's own header, which names it again. */
async function startOfBytes(path: string, { offset, name }: ZippedFile): Promise<number> {
  const file = await open(path, "r");
  try {
    const head = await readAt(file, offset, 30);
    const nameBytes = head.readUInt16LE(26);
    const told = await readAt(file, offset + 30, nameBytes);
    if (head.readUInt32LE(0) !== 0x0403_4b50 || told.toString("utf8") !== name)
      throw new BrokenZip(`${name} is not where the list says.`);
    return offset + 30 + nameBytes + head.readUInt16LE(28);
  } finally {
    await file.close();
  }
}

const isOfZlib = (error: unknown) => /^Z_/.test(String((error as { code?: unknown }).code));
