import { Readable } from "node:stream";
import { crc32, createDeflateRaw } from "node:zlib";

/** One file of an archive; its bytes are asked for when its turn comes. */
export interface ZipEntry {
  readonly name: string;
  readonly content: AsyncIterable<Uint8Array>;
}

interface Written {
  readonly name: Buffer;
  readonly offset: number;
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
}

/** Sizes and places are 32 bits wide in the format as written here. */
const LIMIT = 0xffff_ffff;
/** Sizes follow the bytes, and names are UTF-8. */
const FLAGS = 0x0808;
const DEFLATE = 8;
/** Every file is dated 1 January 1980, the first day the format knows, so that the same content gives the same bytes. */
const DATE = 0x0021;

/**
 * Files as a ZIP archive, made while they are read: memory holds a few pieces, whatever their size.
 *
 * Layout as in PKWARE's APPNOTE 6.3 (from memory), deflated, with sizes after the bytes.
 *
 * @throws {RangeError} when a file or the archive grows beyond 4 GiB.
 */
export async function* writeZip(
  entries: AsyncIterable<ZipEntry> | Iterable<ZipEntry>,
): AsyncGenerator<Buffer> {
  const written: Written[] = [];
  let offset = 0;
  for await (const { name, content } of entries) {
    const told = Buffer.from(name);
    const start = offset;
    const head = localHeader(told);
    yield head;
    const sums = { crc: 0, size: 0 };
    let packed = 0;
    for await (const piece of packing(content, sums)) {
      packed += piece.length;
      yield piece;
    }
    yield descriptor({ crc: sums.crc, packed, size: sums.size });
    offset += head.length + packed + DESCRIPTOR_BYTES;
    if (Math.max(sums.size, offset) > LIMIT)
      throw new RangeError(`${name} makes the archive larger than 4 GiB.`);
    written.push({ name: told, offset: start, crc: sums.crc, packed, size: sums.size });
  }
  const list = Buffer.concat(written.map(centralHeader));
  yield list;
  yield endOfArchive({ files: written.length, bytes: list.length, offset });
}

/** The content deflated, with its checksum and size counted on the way. */
async function* packing(
  content: AsyncIterable<Uint8Array>,
  sums: { crc: number; size: number },
): AsyncGenerator<Buffer> {
  async function* counted() {
    for await (const piece of content) {
      sums.crc = crc32(piece, sums.crc);
      sums.size += piece.length;
      yield piece;
    }
  }
  const source = Readable.from(counted(), { objectMode: false });
  const deflate = createDeflateRaw({ level: 5 });
  source.once("error", (error) => deflate.destroy(error));
  try {
    for await (const piece of source.pipe(deflate)) yield piece as Buffer;
  } finally {
    source.destroy();
  }
}

function localHeader(name: Buffer): Buffer {
  const head = Buffer.alloc(30);
  head.writeUInt32LE(0x0403_4b50, 0);
  head.writeUInt16LE(20, 4);
  head.writeUInt16LE(FLAGS, 6);
  head.writeUInt16LE(DEFLATE, 8);
  head.writeUInt16LE(DATE, 12);
  head.writeUInt16LE(name.length, 26);
  return Buffer.concat([head, name]);
}

const DESCRIPTOR_BYTES = 16;

function descriptor({ crc, packed, size }: Pick<Written, "crc" | "packed" | "size">): Buffer {
  const tail = Buffer.alloc(DESCRIPTOR_BYTES);
  tail.writeUInt32LE(0x0807_4b50, 0);
  tail.writeUInt32LE(crc, 4);
  tail.writeUInt32LE(packed % (LIMIT + 1), 8);
  tail.writeUInt32LE(size % (LIMIT + 1), 12);
  return tail;
}

function centralHeader({ name, offset, crc, packed, size }: Written): Buffer {
  const head = Buffer.alloc(46);
  head.writeUInt32LE(0x0201_4b50, 0);
  head.writeUInt16LE(20, 4);
  head.writeUInt16LE(20, 6);
  head.writeUInt16LE(FLAGS, 8);
  head.writeUInt16LE(DEFLATE, 10);
  head.writeUInt16LE(DATE, 14);
  head.writeUInt32LE(crc, 16);
  head.writeUInt32LE(packed, 20);
  head.writeUInt32LE(size, 24);
  head.writeUInt16LE(name.length, 28);
  head.writeUInt32LE(offset, 42);
  return Buffer.concat([head, name]);
}

function endOfArchive({ files, bytes, offset }: { files: number; bytes: number; offset: number }): Buffer {
  const tail = Buffer.alloc(22);
  tail.writeUInt32LE(0x0605_4b50, 0);
  tail.writeUInt16LE(files, 8);
  tail.writeUInt16LE(files, 10);
  tail.writeUInt32LE(bytes, 12);
  tail.writeUInt32LE(offset, 16);
  return tail;
}
