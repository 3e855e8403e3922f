import { createHash, randomUUID } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Client } from "pg";
import { connect } from "./connect";
import { Refusal } from "./refusal";

/** The key Prisma's own runner locks, so that both never run at once. */
export const LOCK = 72_707_369;

const ownMigrations = fileURLToPath(new URL("../../prisma/migrations", import.meta.url));

interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly checksum: string;
}

/**
 * Brings the database at `url` up to the migrations in `folder`, each in a transaction of its own.
 *
 * Safe to run from several processes at once: the later ones wait and find nothing to do.
 *
 * @param last Name of the last migration to apply, for rows of an older version; all without it.
 * @returns Names of the migrations applied now.
 * @throws {Refusal} when the server is too old or unreachable, or its history is not ours.
 */
export async function migrate(url: string, folder = ownMigrations, last?: string): Promise<string[]> {
  const client = await connect(url);
  try {
    await client.query("SELECT pg_advisory_lock($1)", [LOCK]);
    await makeHistory(client);
    const applied = await readHistory(client);
    const migrations = readMigrations(folder);
    refuseForeignHistory(migrations, applied);
    const pending = migrations.filter(
      ({ name }) => !applied.has(name) && (last === undefined || name <= last),
    );
    // Its views would hold the tables as they are.
    if (pending.length > 0) await client.query("DROP SCHEMA IF EXISTS known CASCADE");
    for (const migration of pending) await apply(client, migration);
    if (pending.length > 0) await keepPast(client);
    return pending.map(({ name }) => name);
  } finally {
    await client.end();
  }
}

/** Lets former rows of tables that are new be kept too. */
async function keepPast(client: Client): Promise<void> {
  const { rowCount } = await client.query("SELECT WHERE to_regprocedure('keep_past()') IS NOT NULL");
  if (rowCount === 1) await client.query("SELECT keep_past()");
}

function readMigrations(folder: string): Migration[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => {
      const sql = readFileSync(join(folder, name, "migration.sql"), "utf8");
      return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** The table has Prisma's columns, so that its tools can read the history. */
async function makeHistory(client: Client): Promise<void> {
  await client.query(`CREATE TABLE IF NOT EXISTS _prisma_migrations (
    id varchar(36) PRIMARY KEY,
    checksum varchar(64) NOT NULL,
    finished_at timestamptz,
    migration_name varchar(255) NOT NULL,
    logs text,
    rolled_back_at timestamptz,
    started_at timestamptz NOT NULL DEFAULT now(),
    applied_steps_count integer NOT NULL DEFAULT 0
  )`);
}

async function readHistory(client: Client): Promise<Map<string, string>> {
  const { rows } = await client.query<{ name: string; checksum: string }>(
    `SELECT migration_name AS name, checksum FROM _prisma_migrations
     WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL`,
  );
  return new Map(rows.map(({ name, checksum }) => [name, checksum]));
}

function refuseForeignHistory(migrations: readonly Migration[], applied: ReadonlyMap<string, string>): void {
  const known = new Map(migrations.map(({ name, checksum }) => [name, checksum]));
  for (const [name, checksum] of applied) {
    if (!known.has(name))
      throw new Refusal(
        `The database has the migration ${name}, which this version of Ebbline does not know: start the newer version.`,
      );
    if (known.get(name) !== checksum)
      throw new Refusal(
        `The migration ${name} was changed after it was applied to this database: restore its file and add a new migration instead.`,
      );
  }
}

async function apply(client: Client, { name, sql, checksum }: Migration): Promise<void> {
  await client.query("BEGIN");
  try {
    await client.query(sql);
    await client.query(
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at, applied_steps_count)
       VALUES ($1, $2, $3, clock_timestamp(), 1)`,
      [randomUUID(), checksum, name],
    );
    await client.query("COMMIT");
  } catch (error) {
    await client.query("ROLLBACK");
    const reason = error instanceof Error ? error.message : String(error);
    throw new Refusal(`The migration ${name} could not be applied, and nothing of it was kept: ${reason}.`);
  }
}
