import "server-only";
import { createHash } from "node:crypto";
import type { ClientBase } from "pg";
import { to as copyTo } from "pg-copy-streams";
import {
  type CopiedTable,
  copiedTables,
  migrationsOf,
  quoted,
  SAME_WORDS,
} from "@/lib/data/archive/catalogue";
import { LEFT_OUT, SECRETS } from "@/lib/data/archive/leftOut";
import {
  type ArchivedTable,
  FORMAT,
  FORMAT_VERSION,
  hashOfTables,
  MANIFEST_FILE,
  type Manifest,
} from "@/lib/data/archive/manifest";
import { writeZip, type ZipEntry } from "@/lib/reports/zip/writeZip";

interface Choice {
  readonly withSecrets: boolean;
  /** Called once everything is written. */
  readonly whenDone?: (manifest: Manifest) => void;
}

/**
 * The whole installation as one archive, as it stood at one moment, while others go on working.
 *
 * One CSV file a table, the manifest last. Everything is streamed: memory does not grow with the data. Whoever
 * stops reading before the end must end the connection, which is left in the middle of a copy.
 */
export async function* takeOut(client: ClientBase, choice: Choice): AsyncGenerator<Buffer> {
  await client.query("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY");
  await client.query(SAME_WORDS);
  yield* writeZip(entriesOf(client, choice));
  await client.query("COMMIT");
}

async function* entriesOf(client: ClientBase, { withSecrets, whenDone }: Choice): AsyncGenerator<ZipEntry> {
  const tables: ArchivedTable[] = [];
  for (const table of await copiedTables(client, { withSecrets })) {
    const read = readTable(client, table);
    yield { name: fileOf(table.name), content: read.content };
    tables.push(read.archived());
  }
  const { rows } = await client.query<{ version: string }>(`SELECT "version"::text FROM "DataVersion"`);
  const manifest: Manifest = {
    ...{ format: FORMAT, version: FORMAT_VERSION, madeAt: new Date().toISOString(), withSecrets },
    dataVersion: rows[0]?.version ?? "0",
    migrations: await migrationsOf(client),
    tables,
    leftOut: withSecrets ? LEFT_OUT : { ...SECRETS, ...LEFT_OUT },
    hash: hashOfTables(tables),
  };
  yield { name: MANIFEST_FILE, content: whole(JSON.stringify(manifest, null, 1)) };
  whenDone?.(manifest);
}

async function* whole(text: string): AsyncGenerator<Buffer> {
  yield Buffer.from(text);
}

const fileOf = (table: string) => `tables/${table}.csv`;

/** A table's rows as CSV, and once they are read, how many they were and their hash. */
export function readTable(client: ClientBase, { name, columns, order }: CopiedTable) {
  const list = columns.map(quoted).join(", ");
  const query = copyTo(
    `COPY (SELECT ${list} FROM ${quoted(name)} ORDER BY ${order}) TO STDOUT WITH (FORMAT csv, HEADER true)`,
  );
  const digest = createHash("sha256");
  async function* content(): AsyncGenerator<Buffer> {
    for await (const piece of client.query(query) as AsyncIterable<Buffer>) {
      digest.update(piece);
      yield piece;
    }
  }
  return {
    content: content(),
    archived: (): ArchivedTable => ({
      ...{ name, file: fileOf(name), columns: [...columns], rows: query.rowCount },
      sha256: digest.digest("hex"),
    }),
  };
}
