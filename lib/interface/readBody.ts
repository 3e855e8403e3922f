import type { Operation } from "@/lib/interface/operation";

const MOST_JSON = 1_048_576;
/** As large as the import page takes. */
const MOST_FILE = 64 * 1_048_576;

export class TooLong extends Error {}
export class Unreadable extends Error {}

interface Body {
  /** JSON value, bytes of a file, or nothing. */
  readonly value: unknown;
  readonly bytes: Uint8Array;
}

/**
 * Reads the body of a request, no further than it may be long.
 *
 * @throws {TooLong} as soon as it is longer. @throws {Unreadable} when it is no JSON where that is needed.
 */
export async function readBody(request: Request, kind: Operation["body"]): Promise<Body> {
  const bytes = await readBytes(request, kind === "file" ? MOST_FILE : MOST_JSON);
  if (kind === "file") return { value: bytes, bytes };
  if (kind === null) return { value: undefined, bytes };
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    return { value: JSON.parse(text) as unknown, bytes };
  } catch {
    throw new Unreadable("Send the body as JSON in UTF-8, with a header Content-Type: application/json.");
  }
}

async function readBytes(request: Request, most: number): Promise<Uint8Array<ArrayBuffer>> {
  const pieces: Uint8Array[] = [];
  let length = 0;
  for await (const piece of request.body ?? []) {
    length += piece.length;
    if (length > most)
      throw new TooLong(`Send at most ${most / 1_048_576} MB at once; split what is longer.`);
    pieces.push(piece);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
