import "server-only";
import { hashOf } from "@/lib/access/secret";
import { database } from "@/lib/data/client";

/** Longer than a code is taken: its half minute and those beside it. */
const KEPT_SECONDS = 120;

/**
 * Uses up a code of somebody's generator; false when it was used already, so that nobody who saw it typed comes in by it
 * too. Of two at once one is true. What is kept is a hash, in the sign-in's own table, which it clears of what expired.
 */
export async function spendCode(userId: string, code: string): Promise<boolean> {
  const id = hashOf(`code ${userId} ${code}`);
  const spent = await database().$executeRaw`
    INSERT INTO "Verification" ("id", "identifier", "value", "expiresAt", "updatedAt")
    VALUES (${id}, ${`spent-code-${id}`}, '', now() + make_interval(secs => ${KEPT_SECONDS}::int), now())
    ON CONFLICT ("id") DO UPDATE SET "expiresAt" = excluded."expiresAt" WHERE "Verification"."expiresAt" < now()`;
  return spent === 1;
}
