const PIECE_LETTERS = 64 * 1024;

/** Short texts joined into pieces worth sending, as UTF-8. */
export async function* inPieces(texts: AsyncIterable<string>): AsyncGenerator<Buffer> {
  let held: string[] = [];
  let letters = 0;
  for await (const text of texts) {
    held.push(text);
    letters += text.length;
    if (letters < PIECE_LETTERS) continue;
    yield Buffer.from(held.join(""));
    held = [];
    letters = 0;
  }
  if (held.length > 0) yield Buffer.from(held.join(""));
}
