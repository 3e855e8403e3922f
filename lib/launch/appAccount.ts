import { runMigrations } from "graphile-worker";
import type { Client } from "pg";
import { connect } from "./connect";
import { LOCK } from "./migrate";
import { Refusal } from "./refusal";

const NO_RIGHT = "42501";

/** What is only ever added to: who did what, and how rows stood before. */
const ADDED_TO = ["AuditEntry", "RowPast", "RowBirth", "KeptSince"];

/**
 * Lets the account in `appUrl` do the application's work on the migrated database at `ownerUrl`, and no more: it owns
 * no table, reads and adds to the audit only, and can neither change the schema nor switch a trigger off.
 *
 * Safe to run again and from several starts at once. The account is made where the owner may make accounts.
 *
 * @throws {Refusal} when the account cannot be made, or could change the audit all the same.
 */
export async function openToApplication(ownerUrl: string, appUrl: string): Promise<void> {
  const name = decodeURIComponent(new URL(appUrl).username);
  if (name === "") throw new Refusal("DATABASE_URL names no account for the application.");
  const owner = await connect(ownerUrl);
  try {
    await owner.query("SELECT pg_advisory_lock($1)", [LOCK]);
    await refuseMighty(owner, name);
    await makeAccount(owner, name, decodeURIComponent(new URL(appUrl).password));
    await runMigrations({ connectionString: ownerUrl });
    await grant(owner, name);
    await refuseMighty(owner, name);
  } finally {
    await owner.end();
  }
  await (await connect(appUrl)).end();
}

async function makeAccount(owner: Client, name: string, password: string): Promise<void> {
  const { rowCount } = await owner.query("SELECT FROM pg_roles WHERE rolname = $1", [name]);
  const verb = rowCount === 0 ? "CREATE" : "ALTER";
  const secret = password === "" ? "" : ` PASSWORD ${owner.escapeLiteral(password)}`;
  try {
    await owner.query(`${verb} ROLE ${owner.escapeIdentifier(name)} LOGIN${secret}`);
  } catch (error) {
    if ((error as { code?: string }).code !== NO_RIGHT) throw error;
    // Who looks after the server has made it, and keeps its password.
    if (rowCount !== 0) return;
    throw new Refusal(
      `The account of DATABASE_OWNER_URL may not make the account ${name}: make it with CREATE ROLE ${name} LOGIN PASSWORD '…', then start again.`,
    );
  }
}

/** One transaction, so that an application that runs meanwhile never lacks a right. */
async function grant(owner: Client, name: string): Promise<void> {
  const to = owner.escapeIdentifier(name);
  const added = await owner.query<{ name: string }>(
    "SELECT relname AS name FROM pg_class WHERE relnamespace = 'public'::regnamespace AND relname = ANY($1)",
    [ADDED_TO],
  );
  await owner.query(`BEGIN;
    REVOKE CREATE ON SCHEMA public FROM PUBLIC, ${to};
    GRANT USAGE ON SCHEMA public, graphile_worker TO ${to};
    REVOKE ALL ON ALL TABLES IN SCHEMA public FROM ${to};
    GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA public TO ${to};
    REVOKE UPDATE, DELETE ON ${added.rows.map((table) => `"${table.name}"`).join()} FROM ${to};
    REVOKE INSERT, UPDATE, DELETE ON _prisma_migrations FROM ${to};
    GRANT USAGE ON ALL SEQUENCES IN SCHEMA public TO ${to};
    GRANT EXECUTE ON FUNCTION begin_taking_in(text) TO ${to};
    GRANT SELECT, INSERT, UPDATE, DELETE ON ALL TABLES IN SCHEMA graphile_worker TO ${to};
    GRANT USAGE ON ALL SEQUENCES IN SCHEMA graphile_worker TO ${to};
    GRANT EXECUTE ON ALL FUNCTIONS IN SCHEMA graphile_worker TO ${to};`);
  const { rows } = await owner.query<{ name: string }>(
    `SELECT c.relname AS name FROM pg_class c WHERE c.relnamespace = 'graphile_worker'::regnamespace AND c.relrowsecurity
       AND NOT EXISTS (SELECT FROM pg_policy p WHERE p.polrelid = c.oid AND p.polname = $1)`,
    [name],
  );
  // The queue shows its rows to nobody but its owner and whom a policy names.
  for (const table of rows)
    await owner.query(
      `CREATE POLICY ${to} ON graphile_worker.${owner.escapeIdentifier(table.name)} TO ${to} USING (true) WITH CHECK (true)`,
    );
  await owner.query("COMMIT");
}

/** An account that owns the tables, or may become who does, has every right whatever it was granted. */
async function refuseMighty(owner: Client, name: string): Promise<void> {
  const { rows } = await owner.query<{ mighty: boolean }>(
    `SELECT r.rolsuper OR r.rolcreaterole OR pg_has_role(r.oid, c.relowner, 'MEMBER')
       OR has_table_privilege(r.oid, c.oid, 'UPDATE, DELETE, TRUNCATE') AS mighty
     FROM pg_roles r, pg_class c WHERE r.rolname = $1 AND c.oid = '"AuditEntry"'::regclass`,
    [name],
  );
  if (!rows[0]?.mighty) return;
  throw new Refusal(
    `The account ${name} of DATABASE_URL has every right over the audit: give the application an account of its own that owns nothing, and keep this one in DATABASE_OWNER_URL.`,
  );
}

/** The same database by another account. */
export function asAccount(url: string, name: string, password: string): string {
  const other = new URL(url);
  other.username = encodeURIComponent(name);
  other.password = encodeURIComponent(password);
  return other.href;
}
