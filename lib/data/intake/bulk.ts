import "server-only";
import { PrismaPg } from "@prisma/adapter-pg";
import { Pool, type PoolClient } from "pg";
import { type CopyTarget, copyLines, copyRows } from "@/lib/data/intake/copyRows";
import { databaseUrl } from "@/lib/env";
import { PrismaClient } from "@/prisma/generated/client";

/** Writes rows into a table, in the transaction that is open. */
export type CopyRows = (table: string, rows: readonly object[]) => Promise<void>;

interface Bulk {
  readonly url: string;
  readonly pool: Pool;
  readonly client: PrismaClient;
  held: PoolClient | null;
}

/** The way for much; kept over hot reloads, opened at first use. */
const kept = globalThis as typeof globalThis & { ebblineBulk?: Bulk };

function bulk(): Bulk {
  const url = databaseUrl();
  if (kept.ebblineBulk?.url === url) return kept.ebblineBulk;
  const pool = new Pool({ connectionString: url, max: 1 });
  // An idle connection that the database ends is opened again when it is needed.
  pool.on("error", () => undefined);
  const made: Bulk = { url, pool, client: new PrismaClient({ adapter: new PrismaPg(pool) }), held: null };
  pool.on("acquire", (client) => {
    made.held = client;
  });
  kept.ebblineBulk = made;
  return made;
}

/**
 * A client with one connection, so that COPY can write in the very transaction this client has open. Whoever comes
 * meanwhile waits; loads wait for each other in any case.
 */
export function bulkClient(): PrismaClient {
  return bulk().client;
}

/** Writes with COPY into the transaction that is open on the bulk client. */
export const copyInTransaction: CopyRows = async (table, rows) => {
  const { held } = bulk();
  if (rows.length === 0) return;
  if (!held) throw new Error("COPY needs a transaction open on the bulk client");
  await copyRows(held, table, rows);
};

/** Writes lines of COPY into the transaction that is open on the bulk client. */
export async function copyLinesInTransaction(target: CopyTarget, lines: string): Promise<void> {
  const { held } = bulk();
  if (!held) throw new Error("COPY needs a transaction open on the bulk client");
  await copyLines(held, target, lines);
}

/** Runs a statement in the transaction that is open on the bulk client; the database's own refusal is thrown as it is. */
export async function queryInTransaction(text: string, values: readonly unknown[]): Promise<void> {
  const { held } = bulk();
  if (!held) throw new Error("There is no transaction open on the bulk client");
  await held.query(text, [...values]);
}

const PLAIN_CONNECTIONS = 3;
const plain = globalThis as typeof globalThis & { ebblinePlain?: { url: string; pool: Pool } };

/** Connections without Prisma, for bytes and for COPY. */
export function plainPool(): Pool {
  const url = databaseUrl();
  if (plain.ebblinePlain?.url === url) return plain.ebblinePlain.pool;
  const pool = new Pool({ connectionString: url, max: PLAIN_CONNECTIONS });
  pool.on("error", () => undefined);
  plain.ebblinePlain = { url, pool };
  return pool;
}

/** Writes with COPY in a transaction of its own. */
export const copyAlone: CopyRows = async (table, rows) => {
  if (rows.length === 0) return;
  const client = await plainPool().connect();
  try {
    await copyRows(client, table, rows);
  } finally {
    client.release();
  }
};
