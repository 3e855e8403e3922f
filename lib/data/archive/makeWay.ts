import "server-only";
import type { ClientBase } from "pg";
import { quoted } from "@/lib/data/archive/catalogue";
import { ArchiveRefusal } from "@/lib/data/archive/checkArchive";

const USED =
  "This installation holds sites, parts, files or people already, and a copy is only taken into an empty one. Nothing was written. Start an empty installation (another database, or another folder with EBBLINE_DEMO=no) and take the copy in there.";

/** Refuses what holds more than the person who takes the copy in. */
export async function refuseUsed(client: ClientBase, person: string | undefined): Promise<void> {
  const { rows } = await client.query<{ used: boolean }>(
    `SELECT EXISTS (SELECT FROM "Site") OR EXISTS (SELECT FROM "Part") OR EXISTS (SELECT FROM "ImportBatch")
       OR EXISTS (SELECT FROM "User" WHERE "id" IS DISTINCT FROM $1) AS used`,
    [person ?? null],
  );
  if (rows[0]?.used) throw new ArchiveRefusal(USED);
}

/**
 * Lets this transaction write for the first time what the product refuses to change again, and removes what an
 * unused installation has of what is only ever added to: its few audit entries.
 *
 * The database decides whether it is unused, since the application's account may do neither by itself. A database
 * that is made as an older copy was does not know how yet; only its owner works on it, and disables the triggers.
 *
 * @returns Ends that, in the same transaction.
 */
export async function makeWay(
  client: ClientBase,
  person: string | undefined,
  tables: readonly string[],
): Promise<() => Promise<void>> {
  const known = await client.query(`SELECT WHERE to_regprocedure('begin_taking_in(text)') IS NOT NULL`);
  if (known.rowCount === 0) return disableTriggers(client, tables);
  const { rows } = await client.query<{ may: boolean }>("SELECT begin_taking_in($1) AS may", [
    person ?? null,
  ]);
  if (!rows[0]?.may) throw new ArchiveRefusal(USED);
  return async () => undefined;
}

async function disableTriggers(client: ClientBase, tables: readonly string[]) {
  const all = (what: "DISABLE" | "ENABLE") =>
    tables.map((table) => `ALTER TABLE ${quoted(table)} ${what} TRIGGER USER`).join(";");
  await client.query(all("DISABLE"));
  return async () => {
    await client.query(all("ENABLE"));
  };
}
