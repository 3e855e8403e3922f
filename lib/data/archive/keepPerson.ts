import "server-only";
import type { ClientBase } from "pg";
import { quoted } from "@/lib/data/archive/catalogue";

/** What a person signs in with and by. */
const OWN = ["Account", "TwoFactor", "Session"] as const;

/** What lets the first administrator of an empty installation go on, set aside while a copy is taken in. */
export interface KeptPerson {
  readonly user: object;
  readonly own: readonly { readonly table: string; readonly rows: readonly object[] }[];
}

/** Sets the person's rows aside, so that what is taken in is the copy and nothing else. */
export async function keepPerson(client: ClientBase, userId: string): Promise<KeptPerson> {
  const own = [];
  for (const table of OWN)
    own.push({
      table,
      rows: await rowsOf(
        client,
        `SELECT to_jsonb(t) AS row FROM ${quoted(table)} t WHERE "userId" = $1`,
        userId,
      ),
    });
  const [user] = await rowsOf(client, `SELECT to_jsonb(u) AS row FROM "User" u WHERE "id" = $1`, userId);
  if (!user) throw new RangeError(`there is no person ${userId}`);
  await client.query(`DELETE FROM "User" WHERE "id" = $1`, [userId]);
  return { user, own };
}

async function rowsOf(client: ClientBase, sql: string, userId: string): Promise<object[]> {
  const { rows } = await client.query<{ row: object }>(sql, [userId]);
  return rows.map(({ row }) => row);
}

/** Gives the person back as an administrator: as the one of the copy with the same address, else beside them. */
export async function putPersonBack(client: ClientBase, { user, own }: KeptPerson): Promise<void> {
  const { rows } = await client.query<{ id: string }>(
    `INSERT INTO "User" SELECT * FROM jsonb_populate_record(NULL::"User", $1)
     ON CONFLICT ("email") DO UPDATE SET "banned" = false, "twoFactorEnabled" = excluded."twoFactorEnabled"
     RETURNING "id"`,
    [user],
  );
  const userId = rows[0]?.id;
  for (const { table, rows: kept } of own) {
    await client.query(`DELETE FROM ${quoted(table)} WHERE "userId" = $1`, [userId]);
    await client.query(
      `INSERT INTO ${quoted(table)} SELECT r.* FROM jsonb_array_elements($1::jsonb) e,
         jsonb_populate_record(NULL::${quoted(table)}, e || jsonb_build_object('userId', $2::text)) r`,
      [JSON.stringify(kept), userId],
    );
  }
  await client.query(
    `INSERT INTO "Grant" ("id", "userId", "role") SELECT gen_random_uuid(), $1, 'admin'
     WHERE NOT EXISTS (SELECT FROM "Grant" WHERE "userId" = $1 AND "role" = 'admin' AND "siteId" IS NULL)`,
    [userId],
  );
}
