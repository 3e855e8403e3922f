import { createHash } from "node:crypto";
import { createWriteStream } from "node:fs";
import { pipeline } from "node:stream/promises";
import { Client } from "pg";
import { hashOfTables, type Manifest } from "@/lib/data/archive/manifest";
import { takeOut } from "@/lib/data/archive/takeOut";
import { listZip, unzip } from "@/lib/reports/zip/readZip";
import { writeZip, type ZipEntry } from "@/lib/reports/zip/writeZip";

/** Works on a database with a connection of its own. */
export async function on<T>(url: string, run: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: url });
  // Without a listener a connection lost later ends the process; the query in flight reports it.
  client.on("error", () => undefined);
  await client.connect();
  try {
    return await run(client);
  } finally {
    await client.end();
  }
}

/** Takes a whole installation out into a file. */
export async function copyTo(url: string, file: string, withSecrets = false): Promise<Manifest> {
  let made: Manifest | undefined;
  const whenDone = (manifest: Manifest) => {
    made = manifest;
  };
  await on(url, (client) => pipeline(takeOut(client, { withSecrets, whenDone }), createWriteStream(file)));
  if (!made) throw new Error("nothing was taken out");
  return made;
}

/** What becomes of the text of a file of an archive; null leaves the file out. */
export type Edit = (name: string, text: string) => string | null;

/** An archive packed again after `edit` had its way with its files, and with some more. */
export async function editArchive(
  { from, to }: { readonly from: string; readonly to: string },
  edit: Edit,
  more: readonly string[] = [],
): Promise<void> {
  const kept: ZipEntry[] = more.map((name) => ({ name, content: once("stray") }));
  for (const file of await listZip(from)) {
    const pieces: Buffer[] = [];
    for await (const piece of unzip(from, file)) pieces.push(piece);
    const text = edit(file.name, Buffer.concat(pieces).toString("utf8"));
    if (text !== null) kept.push({ name: file.name, content: once(text) });
  }
  await pipeline(writeZip(kept), createWriteStream(to));
}

/** A manifest made to fit another text of a table, as somebody would who knows how its hashes are made. */
export function forgeManifest(text: string, table: string, csv: string): string {
  const manifest: Manifest = JSON.parse(text);
  const tables = manifest.tables.map((found) =>
    found.name === table
      ? { ...found, rows: found.rows - 1, sha256: createHash("sha256").update(csv).digest("hex") }
      : found,
  );
  return JSON.stringify({ ...manifest, tables, hash: hashOfTables(tables) });
}

async function* once(text: string): AsyncGenerator<Buffer> {
  yield Buffer.from(text);
}
