import "server-only";
import { PrismaPg } from "@prisma/adapter-pg";
import { databaseUrl } from "@/lib/env";
import { PrismaClient } from "@/prisma/generated/client";

const POOL_SIZE = 10;

const kept = globalThis as typeof globalThis & { ebblineDatabase?: PrismaClient };

/** The one database client of the process; kept over hot reloads, opened at first use. */
export function database(): PrismaClient {
  kept.ebblineDatabase ??= new PrismaClient({
    adapter: new PrismaPg({ connectionString: databaseUrl(), max: POOL_SIZE }),
  });
  return kept.ebblineDatabase;
}
