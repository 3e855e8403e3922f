import "server-only";
import { PrismaPg } from "@prisma/adapter-pg";
import { Pool, type PoolClient } from "pg";
import type { Actor } from "@/lib/access/actor";
import { looks, presentDatabase } from "@/lib/data/client";
import { databaseUrl } from "@/lib/env";
import type { KnownAt, KnownFrom } from "@/lib/view/knownAt";
import { PrismaClient } from "@/prisma/generated/client";

/** Connections of one look back; they close when nobody looks any more. */
const POOL_SIZE = 3;
const IDLE_MS = 10_000;
const MOST_KEPT = 8;

const kept = globalThis as typeof globalThis & {
  ebblinePast?: {
    readonly url: string;
    readonly built: Promise<unknown>;
    readonly clients: Map<string, PrismaClient>;
  };
};

/** Runs something on the records as they stood; it can only read. */
export async function lookBack<T>(known: KnownAt, run: () => Promise<T>): Promise<T> {
  const client = await pastClient(known.at);
  return looks().run({ client, known }, run);
}

/** The same, or as of now where nobody looks back. */
export function lookBackOrNow<T>(known: KnownAt | null, run: () => Promise<T>): Promise<T> {
  return known === null ? run() : lookBack(known, run);
}

/** What is read piece by piece, each as it stood, whenever the pieces are fetched. */
export async function lookBackPieces<T>(
  known: KnownAt,
  start: () => AsyncGenerator<T>,
): Promise<AsyncGenerator<T>> {
  const pieces = await lookBack(known, async () => start());
  return (async function* () {
    try {
      for (;;) {
        const next = await lookBack(known, () => pieces.next());
        if (next.done) return;
        yield next.value;
      }
    } finally {
      await pieces.return(undefined);
    }
  })();
}

/** How far the running request looks back; null where it looks at now. */
export function lookedBackTo(): KnownAt | null {
  return looks().getStore()?.known ?? null;
}

/** From when on it is known how the records stood; null while nothing was ever recorded. */
export async function readKnownFrom(_actor: Actor): Promise<KnownFrom | null> {
  const [row] = await presentDatabase().$queryRaw<{ kept: Date | null; first: Date | null }[]>`
    SELECT (SELECT "at" FROM "KeptSince") AS "kept", (SELECT min("at") FROM "RowBirth") AS "first"`;
  if (row?.kept) return { at: row.kept.toISOString(), since: "kept" };
  return row?.first ? { at: row.first.toISOString(), since: "first" } : null;
}

/** Names of its own schema stand before those of the tables; the server refuses every write of such a connection. */
async function pastClient(at: string): Promise<PrismaClient> {
  const past = await ready();
  const known = past.clients.get(at);
  past.clients.delete(at);
  const client = known ?? newClient(past.url, at);
  past.clients.set(at, client);
  // One that is dropped may still be read from: its connections close by themselves.
  for (const old of [...past.clients.keys()].slice(0, -MOST_KEPT)) past.clients.delete(old);
  return client;
}

async function ready() {
  const url = databaseUrl();
  if (kept.ebblinePast?.url !== url)
    kept.ebblinePast = {
      url,
      built: presentDatabase().$executeRaw`SELECT build_known()`,
      clients: new Map(),
    };
  const past = kept.ebblinePast;
  try {
    await past.built;
  } catch (error) {
    delete kept.ebblinePast;
    throw error;
  }
  return past;
}

function newClient(connectionString: string, at: string): PrismaClient {
  const options = `-c search_path=known,public -c ebbline.known_at=${at} -c default_transaction_read_only=on -c jit=off`;
  const pool = new Pool({ connectionString, options, max: POOL_SIZE, idleTimeoutMillis: IDLE_MS });
  pool.on("connect", nameKindsWhereTheyAre);
  // An idle connection the server ends is simply gone; the next question opens another.
  pool.on("error", () => undefined);
  return new PrismaClient({ adapter: new PrismaPg(pool, { schema: "known" }) });
}

/** The generated queries look for the kinds of a column where they look for the tables; only these have a past. */
function nameKindsWhereTheyAre(client: PoolClient): void {
  const plain = client.query.bind(client) as (...asked: readonly unknown[]) => unknown;
  const named = (asked: unknown) =>
    typeof asked === "object" && asked !== null && "text" in asked && typeof asked.text === "string"
      ? { ...asked, text: asked.text.replaceAll(' AS "known"."', ' AS "public"."') }
      : asked;
  client.query = ((first: unknown, ...rest: readonly unknown[]) =>
    plain(named(first), ...rest)) as typeof client.query;
}
