import { createHash, randomBytes } from "node:crypto";
import { connect } from "./connect";

/**
 * A one-time link that lets its holder make the first administrator; undefined once somebody can sign in.
 *
 * A newer link replaces the older ones. Only the token's hash is kept.
 */
export async function offerFirstAdmin(url: string, address: string): Promise<string | undefined> {
  const client = await connect(url);
  try {
    const { rowCount } = await client.query(`SELECT FROM "Account" LIMIT 1`);
    if (rowCount !== 0) return undefined;
    const token = randomBytes(32).toString("base64url");
    const hash = createHash("sha256").update(token).digest("hex");
    await client.query("BEGIN");
    await client.query(`DELETE FROM "Invitation" WHERE "usedAt" IS NULL`);
    await client.query(`INSERT INTO "Invitation" (id, "tokenHash") VALUES (gen_random_uuid(), $1)`, [hash]);
    await client.query("COMMIT");
    return `${address}/first-admin?token=${token}`;
  } finally {
    await client.end();
  }
}
