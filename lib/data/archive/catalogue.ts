import "server-only";
import type { ClientBase } from "pg";
import { LEFT_OUT, SECRET_COLUMNS, SECRETS } from "@/lib/data/archive/leftOut";

/** A table as the database has it. */
export interface CopiedTable {
  readonly name: string;
  readonly columns: readonly string[];
  /** SQL of the order of its rows: by its key, in the same way on every server. */
  readonly order: string;
}

interface CatalogueRow {
  readonly name: string;
  readonly columns: readonly string[];
  readonly key: readonly { readonly column: string; readonly type: string }[];
  readonly parents: readonly string[];
}

/** Types whose order is the same everywhere; any other is ordered by its text, byte for byte. */
const ORDERED_ALIKE = /^(uuid|integer|bigint|date)$/;

export const quoted = (name: string) => `"${name.replaceAll('"', '""')}"`;

/** Tables that a copy holds, parents before those that point to them. */
export async function copiedTables(
  client: ClientBase,
  { withSecrets }: { readonly withSecrets: boolean },
): Promise<CopiedTable[]> {
  const { rows } = await client.query<CatalogueRow>(CATALOGUE);
  const kept = rows.filter(({ name }) => !(name in LEFT_OUT) && (withSecrets || !(name in SECRETS)));
  return parentsFirst(kept).map(({ name, columns, key }) => ({
    name,
    columns: columns.filter((column) => withSecrets || !SECRET_COLUMNS.includes(`${name}.${column}`)),
    order: key
      .map(({ column, type }) =>
        ORDERED_ALIKE.test(type) ? quoted(column) : `${quoted(column)}::text COLLATE "C"`,
      )
      .join(", "),
  }));
}

function parentsFirst(tables: readonly CatalogueRow[]): CatalogueRow[] {
  const byName = new Map(tables.map((table) => [table.name, table]));
  const ordered = new Set<CatalogueRow>();
  const visit = (table: CatalogueRow) => {
    if (ordered.has(table)) return;
    for (const parent of table.parents) {
      const found = byName.get(parent);
      if (found && found !== table) visit(found);
    }
    ordered.add(table);
  };
  for (const table of tables) visit(table);
  return [...ordered];
}

const CATALOGUE = `
  SELECT c.relname AS name,
    (SELECT array_agg(a.attname::text ORDER BY a.attnum) FROM pg_attribute a
      WHERE a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped AND a.attgenerated = '') AS columns,
    (SELECT json_agg(json_build_object('column', a.attname, 'type', format_type(a.atttypid, NULL)) ORDER BY k.place)
      FROM pg_index i CROSS JOIN LATERAL unnest(i.indkey) WITH ORDINALITY AS k(attnum, place)
      JOIN pg_attribute a ON a.attrelid = c.oid AND a.attnum = k.attnum
      WHERE i.indrelid = c.oid AND i.indisprimary) AS key,
    ARRAY(SELECT p.relname::text FROM pg_constraint f JOIN pg_class p ON p.oid = f.confrelid
      WHERE f.conrelid = c.oid AND f.contype = 'f') AS parents
  FROM pg_class c
  WHERE c.relnamespace = 'public'::regnamespace AND c.relkind = 'r'
  ORDER BY c.relname COLLATE "C"`;

/** Name and checksum of each migration the database has, the first first. */
export async function migrationsOf(client: ClientBase): Promise<{ name: string; checksum: string }[]> {
  const { rows } = await client.query<{ name: string; checksum: string }>(
    `SELECT migration_name AS name, checksum FROM _prisma_migrations
     WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL ORDER BY migration_name COLLATE "C"`,
  );
  return rows;
}

/** Settings under which every server writes a value in the same words. */
export const SAME_WORDS = `
  SET LOCAL TimeZone = 'UTC';
  SET LOCAL DateStyle = 'ISO, YMD';
  SET LOCAL IntervalStyle = 'postgres';
  SET LOCAL extra_float_digits = 1;
  SET LOCAL bytea_output = 'hex'`;
