import "server-only";
import { createHash } from "node:crypto";
import { database } from "@/lib/data/client";

/** Wrong passwords for one address, whoever sends them from wherever, before it must rest. */
const MOST_WRONG = 10;
/** How long a wrong password counts, and how long the address rests after the last one. */
const PAUSE_MINUTES = 15;

/**
 * Whether so many wrong passwords were sent for this address that none is looked at for a while.
 *
 * It is asked before it is known whether the address has an account, so that the answer tells nobody. The count lies
 * in the database and goes by its clock: it holds over a restart and for all processes, whatever their clocks, and
 * behind a proxy that hides where people are.
 */
export async function isResting(email: string): Promise<boolean> {
  const rows = await database().$queryRaw<unknown[]>`
    SELECT FROM "WrongPassword" WHERE "addressHash" = ${hashOf(email)} AND count >= ${MOST_WRONG}
      AND "lastAt" > now() - make_interval(mins => ${PAUSE_MINUTES}::int)`;
  return rows.length > 0;
}

/** Counts a wrong password; the count begins anew when the last one is long ago. */
export async function countWrong(email: string): Promise<void> {
  await database().$executeRaw`
    INSERT INTO "WrongPassword" ("addressHash", count, "lastAt") VALUES (${hashOf(email)}, 1, now())
    ON CONFLICT ("addressHash") DO UPDATE SET
      count = CASE WHEN "WrongPassword"."lastAt" < now() - make_interval(mins => ${PAUSE_MINUTES}::int) THEN 1 ELSE "WrongPassword".count + 1 END,
      "lastAt" = now()`;
}

/** After the right password nothing is held against the address. */
export async function forgetWrong(email: string): Promise<void> {
  await database().wrongPassword.deleteMany({ where: { addressHash: hashOf(email) } });
}

/** What people typed is not kept: some type the password into the wrong field. */
function hashOf(email: string): string {
  return createHash("sha256").update(email.trim().toLowerCase()).digest("hex");
}
