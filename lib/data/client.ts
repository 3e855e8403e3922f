import "server-only";
import { AsyncLocalStorage } from "node:async_hooks";
import { PrismaPg } from "@prisma/adapter-pg";
import { databasePool, databaseUrl } from "@/lib/env";
import type { KnownAt } from "@/lib/view/knownAt";
import { PrismaClient } from "@/prisma/generated/client";

/** What a request that looks back reads from. */
export interface Look {
  readonly client: PrismaClient;
  /** What was recorded later is not there. */
  readonly known: KnownAt;
}

const kept = globalThis as typeof globalThis & {
  ebblineDatabase?: PrismaClient;
  ebblineLook?: AsyncLocalStorage<Look>;
};

/** How the running request looks back; kept over hot reloads, and one for all parts of the build. */
export function looks(): AsyncLocalStorage<Look> {
  kept.ebblineLook ??= new AsyncLocalStorage();
  return kept.ebblineLook;
}

/** The database as the running request looks at it: as it stood where it looks back, and then only to read. */
export function database(): PrismaClient {
  return looks().getStore()?.client ?? presentDatabase();
}

/** The one database client of the process; kept over hot reloads, opened at first use. */
export function presentDatabase(): PrismaClient {
  kept.ebblineDatabase ??= new PrismaClient({
    adapter: new PrismaPg({ connectionString: databaseUrl(), max: databasePool() }),
  });
  return kept.ebblineDatabase;
}
