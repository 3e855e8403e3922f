import "server-only";
import { createHash } from "node:crypto";
import { database } from "@/lib/data/client";
import { plainPool } from "@/lib/data/intake/bulk";

/** Bytes of a piece; the migration cuts older files the same. */
const PIECE_BYTES = 1024 * 1024;
/** A file whose upload broke off belongs to no batch; it goes after this time. */
const ORPHAN_HOURS = 24;

/** A stored file, whole or as far as it came. */
export interface KeptFile {
  readonly id: string;
  /** SHA-256, hex. */
  readonly hash: string;
  /** Bytes. */
  readonly size: number;
  /** The piece whose bytes tell how letters are written. */
  readonly tellingPiece: number;
}

/**
 * Keeps a file piece by piece as its bytes come, so that none is held whole; hashed on the way.
 *
 * @throws what `chunks` throws; the pieces kept until then are removed.
 */
export async function keepFile(chunks: AsyncIterable<Uint8Array> | Iterable<Uint8Array>): Promise<KeptFile> {
  await removeOrphans();
  const hash = createHash("sha256");
  const telling = new TellingPiece();
  const { id } = await database().importFile.create({ data: { hash: "", size: 0 }, select: { id: true } });
  let size = 0;
  try {
    let place = 0;
    for await (const bytes of inPieces(chunks)) {
      hash.update(bytes);
      telling.look(bytes, place);
      await plainPool().query(`INSERT INTO "ImportPiece" ("fileId", "place", "bytes") VALUES ($1, $2, $3)`, [
        ...[id, place, bytes],
      ]);
      size += bytes.length;
      place += 1;
    }
    const kept = { hash: hash.digest("hex"), size, tellingPiece: telling.place };
    await database().importFile.update({ where: { id }, data: kept, select: { id: true } });
    return { id, ...kept };
  } catch (error) {
    await database().importFile.deleteMany({ where: { id } });
    throw error;
  }
}

/** Finds the first piece that is no UTF-8: its bytes tell which other way the letters are written. */
class TellingPiece {
  #decoder: TextDecoder | null = new TextDecoder("utf-8", { fatal: true });
  place = 0;

  look(bytes: Uint8Array, place: number): void {
    try {
      this.#decoder?.decode(bytes, { stream: true });
    } catch {
      this.place = place;
      this.#decoder = null;
    }
  }
}

/** The bytes in pieces; each is overwritten by the next, so that a long file needs no more memory than one piece. */
async function* inPieces(chunks: AsyncIterable<Uint8Array> | Iterable<Uint8Array>): AsyncGenerator<Buffer> {
  const piece = Buffer.allocUnsafe(PIECE_BYTES);
  let filled = 0;
  for await (const chunk of chunks) {
    for (let at = 0; at < chunk.length; ) {
      const taken = chunk.subarray(at, at + PIECE_BYTES - filled);
      piece.set(taken, filled);
      filled += taken.length;
      at += taken.length;
      if (filled < PIECE_BYTES) continue;
      yield piece;
      filled = 0;
    }
  }
  if (filled > 0) yield piece.subarray(0, filled);
}

/** One piece of a file; empty when there is none. */
export async function readPiece(fileId: string, place: number): Promise<Uint8Array<ArrayBuffer>> {
  const { rows } = await plainPool().query<{ bytes: Buffer<ArrayBuffer> }>(
    `SELECT "bytes" FROM "ImportPiece" WHERE "fileId" = $1 AND "place" = $2`,
    [fileId, place],
  );
  return rows[0]?.bytes ?? new Uint8Array(0);
}

/** The bytes of a file, a piece at a time. */
export async function* readPieces(fileId: string): AsyncGenerator<Uint8Array<ArrayBuffer>> {
  for (let place = 0; ; place += 1) {
    const bytes = await readPiece(fileId, place);
    if (bytes.length === 0) return;
    yield bytes;
  }
}

/** The whole of a file, for what can only be read whole. */
export async function readWhole({
  id,
  size,
}: Pick<KeptFile, "id" | "size">): Promise<Uint8Array<ArrayBuffer>> {
  const whole = new Uint8Array(size);
  let at = 0;
  for await (const bytes of readPieces(id)) {
    whole.set(bytes, at);
    at += bytes.length;
  }
  return whole;
}

/** Removes a file no batch names any more. */
export async function removeUnused(fileId: string): Promise<void> {
  await database().importFile.deleteMany({ where: { id: fileId, batches: { none: {} } } });
}

async function removeOrphans(): Promise<void> {
  await database().$executeRaw`
    DELETE FROM "ImportFile" f WHERE f."keptAt" < now() - make_interval(hours => ${ORPHAN_HOURS})
      AND NOT EXISTS (SELECT FROM "ImportBatch" b WHERE b."fileId" = f."id")`;
}
