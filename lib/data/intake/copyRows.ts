import "server-only";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import type { ClientBase } from "pg";
import { from } from "pg-copy-streams";

const CHUNK_LETTERS = 256 * 1024;

const ESCAPES: Readonly<Record<string, string>> = { "\\": "\\\\", "\n": "\\n", "\r": "\\r", "\t": "\\t" };
const TO_ESCAPE = /[\\\n\r\t]/;

/** One cell in the text format of COPY: backslash escapes, `\N` for null; JSON comes as text. */
function writeCell(value: unknown): string {
  if (value === null || value === undefined) return "\\N";
  const text = String(value);
  return TO_ESCAPE.test(text) ? text.replace(/[\\\n\r\t]/g, (char) => ESCAPES[char] ?? char) : text;
}

function* chunksOf(rows: Iterable<object>, columns: readonly string[], count: { rows: number }) {
  let lines = "";
  for (const row of rows) {
    count.rows += 1;
    const cells = row as Readonly<Record<string, unknown>>;
    for (let index = 0; index < columns.length; index += 1)
      lines += `${index === 0 ? "" : "\t"}${writeCell(cells[columns[index] ?? ""])}`;
    lines += "\n";
    if (lines.length < CHUNK_LETTERS) continue;
    yield Buffer.from(lines);
    lines = "";
  }
  if (lines !== "") yield Buffer.from(lines);
}

function* withFirst<T>(first: T, rest: Iterator<T>): Generator<T> {
  yield first;
  for (let next = rest.next(); !next.done; next = rest.next()) yield next.value;
}

/**
 * Writes rows into a table with COPY, far faster than inserts; every row has the columns of the first.
 *
 * @returns How many rows were written.
 */
export async function copyRows(client: ClientBase, table: string, rows: Iterable<object>): Promise<number> {
  const iterator = rows[Symbol.iterator]();
  const first = iterator.next();
  if (first.done) return 0;
  const columns = Object.keys(first.value);
  const count = { rows: 0 };
  const stream = client.query(
    from(`COPY "${table}" (${columns.map((column) => `"${column}"`).join(", ")}) FROM STDIN`),
  );
  await pipeline(Readable.from(chunksOf(withFirst<object>(first.value, iterator), columns, count)), stream);
  return count.rows;
}
