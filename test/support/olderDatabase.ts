import type { Client } from "pg";
import { copiedTables } from "@/lib/data/archive/catalogue";
import { migrate } from "@/lib/launch/migrate";
import { on } from "@/test/support/archives";

interface Column {
  readonly table: string;
  readonly column: string;
}

const columnsOf = async (client: Client) =>
  (
    await client.query<Column>(
      `SELECT c.relname AS table, a.attname AS column FROM pg_attribute a JOIN pg_class c ON c.oid = a.attrelid
       WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r' AND a.attnum > 0 AND NOT a.attisdropped
         AND a.attgenerated = ''`,
    )
  ).rows;

/**
 * Makes the empty database `older` as the release of that migration had it, with the rows of `current` as far as it
 * had tables and columns for them. What only the older one had is for the caller to write.
 */
export async function makeOlder(older: string, current: string, migration: string): Promise<void> {
  await migrate(older, undefined, migration);
  await on(older, (into) =>
    on(current, async (from) => {
      const held = new Set((await columnsOf(from)).map(({ table, column }) => `${table}.${column}`));
      const columns = await columnsOf(into);
      for (const { name } of await copiedTables(into, { withSecrets: true })) {
        const own = columns.filter(({ table, column }) => table === name && held.has(`${table}.${column}`));
        const list = own.map(({ column }) => `"${column}"`).join();
        if (list === "") continue;
        const { rows } = await from.query<{ row: object }>(
          `SELECT to_jsonb(r) AS row FROM (SELECT ${list} FROM "${name}") r`,
        );
        await into.query(
          `INSERT INTO "${name}" (${list}) SELECT ${list} FROM jsonb_populate_recordset(NULL::"${name}", $1)`,
          [JSON.stringify(rows.map(({ row }) => row))],
        );
      }
    }),
  );
}
