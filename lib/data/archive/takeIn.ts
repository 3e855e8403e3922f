import "server-only";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { type ClientBase, DatabaseError } from "pg";
import { from as copyFrom } from "pg-copy-streams";
import { type CopiedTable, copiedTables, quoted, SAME_WORDS } from "@/lib/data/archive/catalogue";
import { ArchiveRefusal, type CheckedArchive, checkArchive } from "@/lib/data/archive/checkArchive";
import { keepPerson, putPersonBack } from "@/lib/data/archive/keepPerson";
import { makeWay, refuseUsed } from "@/lib/data/archive/makeWay";
import { hashOfTables, type Manifest } from "@/lib/data/archive/manifest";
import { noteCopy } from "@/lib/data/archive/noteCopy";
import { readTable } from "@/lib/data/archive/takeOut";
import { unzip } from "@/lib/reports/zip/readZip";

interface Choice {
  readonly path: string;
  /** The one person an otherwise empty installation may have, who stays able to sign in. */
  readonly person?: { readonly userId: string; readonly name: string };
}

/** What an empty installation may have computed of itself, which what is taken in would contradict. */
const COMPUTED = ["NarrowChange", "Evaluation"];

/**
 * Fills an empty installation from an archive, all or nothing, and reads it back before it is kept.
 *
 * @throws {ArchiveRefusal} with nothing written, when the installation is not empty, the archive is not what its
 *   manifest says, or the database refuses a row.
 */
export async function takeIn(client: ClientBase, { path, person }: Choice): Promise<Manifest> {
  await refuseUsed(client, person?.userId);
  const checked = await checkArchive(client, path);
  await client.query("BEGIN");
  try {
    await client.query(SAME_WORDS);
    await client.query(`LOCK TABLE "Site", "User", "DataVersion" IN SHARE ROW EXCLUSIVE MODE`);
    await refuseUsed(client, person?.userId);
    const tables = await copiedTables(client, checked.manifest);
    // Children first, so that nothing is left that points to what is gone.
    const emptied = [...COMPUTED, ...tables.map(({ name }) => name).reverse()];
    const endWay = await makeWay(client, person?.userId, emptied);
    const kept = person === undefined ? undefined : await keepPerson(client, person.userId);
    await empty(client, emptied);
    await fill(client, tables, { ...checked, path });
    await endWay();
    await refuseOtherContent(client, tables, checked.manifest);
    if (kept) await putPersonBack(client, kept);
    await client.query(`UPDATE "DataVersion" SET "version" = greatest("version", $1::bigint) + 1`, [
      checked.manifest.dataVersion,
    ]);
    await noteCopy(client, { direction: "in", by: person?.name ?? null, manifest: checked.manifest });
    await client.query("COMMIT");
  } catch (error) {
    await client.query("ROLLBACK");
    throw error instanceof DatabaseError ? new ArchiveRefusal(refusalOfDatabase(error)) : error;
  }
  await client.query("ANALYZE");
  return checked.manifest;
}

/** What this account may not delete was emptied when way was made. */
async function empty(client: ClientBase, tables: readonly string[]): Promise<void> {
  const { rows } = await client.query<{ name: string }>(
    `SELECT t.name FROM unnest($1::text[]) WITH ORDINALITY AS t(name, place)
     WHERE has_table_privilege(quote_ident(t.name), 'DELETE') ORDER BY t.place`,
    [tables],
  );
  for (const { name } of rows) await client.query(`DELETE FROM ${quoted(name)}`);
}

async function fill(
  client: ClientBase,
  tables: readonly CopiedTable[],
  { path, files, manifest }: CheckedArchive & { readonly path: string },
): Promise<void> {
  for (const { name, columns } of tables) {
    const archived = manifest.tables.find((table) => table.name === name);
    const file = archived && files.get(archived.file);
    if (!file) throw new ArchiveRefusal(`The archive has no table ${name}.`);
    const list = columns.map(quoted).join(", ");
    const sink = client.query(
      copyFrom(`COPY ${quoted(name)} (${list}) FROM STDIN WITH (FORMAT csv, HEADER match)`),
    );
    await pipeline(Readable.from(unzip(path, file), { objectMode: false }), sink);
  }
}

/** Reads back what was written: what does not give the same hash is not kept. */
async function refuseOtherContent(client: ClientBase, tables: readonly CopiedTable[], manifest: Manifest) {
  const found = [];
  for (const table of tables) {
    const read = readTable(client, table);
    for await (const _ of read.content);
    found.push(read.archived());
  }
  if (hashOfTables(found) === manifest.hash) return;
  const other = found.find((table) => manifest.tables.every(({ sha256 }) => sha256 !== table.sha256));
  throw new ArchiveRefusal(
    `Read back, ${other?.name ?? "a table"} is not what the archive says. Nothing was kept. Tell who looks after Ebbline: the archive is whole, so this is a fault of the program.`,
  );
}

function refusalOfDatabase({ table, detail, message }: DatabaseError): string {
  const where = table === undefined ? "" : ` in the table ${table}`;
  return `The database refuses a row of the archive${where}: ${message}${detail === undefined ? "" : ` (${detail})`}. Nothing was written. The archive was edited, or its installation was damaged.`;
}
