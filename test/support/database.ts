import { createHash, randomBytes } from "node:crypto";
import { Client } from "pg";
import { migrate } from "@/lib/launch/migrate";

export interface FreshDatabase {
  readonly url: string;
  /** Closes the app's own client and drops the database. */
  close(): Promise<void>;
}

const LOCAL_HOSTS = ["127.0.0.1", "localhost", "[::1]"];
const LOCK = 72_707_370;

/**
 * A migrated, empty database of its own for one test file, which `lib/data` then works on.
 *
 * Made from a template that is migrated once, so it costs a fraction of a second.
 */
export async function freshDatabase(name: string): Promise<FreshDatabase> {
  const server = testServer();
  const tag = createHash("sha256").update(name).digest("hex").slice(0, 6);
  const own = `ebbline_test_${tag}_${randomBytes(5).toString("hex")}`;
  await withServer(server, async (client) => {
    await client.query(`CREATE DATABASE ${own} TEMPLATE ${await template(client, server)}`);
  });
  const url = at(server, own);
  process.env.DATABASE_URL = url;
  return { url, close: () => close(server, own) };
}

/** An empty database without any table, for tests of the migrations themselves. */
export async function emptyDatabase(): Promise<FreshDatabase> {
  const server = testServer();
  const own = `ebbline_test_empty_${randomBytes(5).toString("hex")}`;
  await withServer(server, (client) => client.query(`CREATE DATABASE ${own} TEMPLATE template0`));
  return { url: at(server, own), close: () => close(server, own) };
}

function testServer(): string {
  const url = process.env.EBBLINE_TEST_DATABASE_URL;
  if (!url)
    throw new Error(
      "These tests need a PostgreSQL of this machine: run npm test, or set EBBLINE_TEST_DATABASE_URL.",
    );
  const { hostname } = new URL(url);
  if (!LOCAL_HOSTS.includes(hostname))
    throw new Error(`Tests make and drop databases, so only on this machine and not on ${hostname}.`);
  return url;
}

/** Name of the migrated template, made anew when the migrations were edited. */
async function template(client: Client, server: string): Promise<string> {
  await client.query("SELECT pg_advisory_lock($1)", [LOCK]);
  const scratch = "ebbline_template";
  const { rowCount } = await client.query("SELECT 1 FROM pg_database WHERE datname = $1", [scratch]);
  if (rowCount === 0) await client.query(`CREATE DATABASE ${scratch} TEMPLATE template0`);
  try {
    await migrate(at(server, scratch));
  } catch {
    await client.query(`DROP DATABASE ${scratch} WITH (FORCE)`);
    await client.query(`CREATE DATABASE ${scratch} TEMPLATE template0`);
    await migrate(at(server, scratch));
  }
  return scratch;
}

/** Lets `lib/data` work on another database from now on. */
export async function workOn(url: string): Promise<void> {
  await letGo();
  process.env.DATABASE_URL = url;
}

/** Closes the app's own client. */
async function letGo(): Promise<void> {
  const kept = globalThis as typeof globalThis & { ebblineDatabase?: { $disconnect(): Promise<void> } };
  await kept.ebblineDatabase?.$disconnect();
  delete kept.ebblineDatabase;
}

async function close(server: string, own: string): Promise<void> {
  await letGo();
  await withServer(server, (client) => client.query(`DROP DATABASE IF EXISTS ${own} WITH (FORCE)`));
}

async function withServer<T>(server: string, run: (client: Client) => Promise<T>): Promise<T> {
  const client = new Client({ connectionString: at(server, "postgres") });
  await client.connect();
  try {
    return await run(client);
  } finally {
    await client.end();
  }
}

function at(server: string, name: string): string {
  const url = new URL(server);
  url.pathname = `/${name}`;
  return url.href;
}
