import { Client } from "pg";
import { copyRows } from "@/lib/data/intake/copyRows";
import { accountRows } from "@/seed/accountRows";
import { demoAccounts } from "@/seed/accounts";
import { keepPast } from "@/seed/keepPast";
import { seedId } from "@/seed/seedId";
import type { SeedTables } from "@/seed/tables";

/** Why a seed was not written; printed without a stack. */
export class SeedRefusal extends Error {}

export interface Loaded {
  readonly table: string;
  readonly rows: number;
}

/** Instant the demo's accounts and settings are dated, so that one seed gives one content. */
const MADE_AT = "2026-11-30T06:00:00.000Z";

/**
 * Writes a scenario into an empty, migrated database, all or nothing, with its accounts, one audit entry and a
 * new data version.
 *
 * @throws {SeedRefusal} when the database has sites or people already, or no tables.
 */
export async function load(url: string, scenario: string, tables: SeedTables): Promise<Loaded[]> {
  const client = new Client({ connectionString: url });
  await client.connect();
  try {
    await refuseUsed(client);
    await client.query("BEGIN");
    const loaded = await write(client, scenario, tables);
    await client.query("COMMIT");
    await client.query("ANALYZE");
    return loaded;
  } catch (error) {
    await client.query("ROLLBACK").catch(() => undefined);
    throw error;
  } finally {
    await client.end();
  }
}

async function refuseUsed(client: Client): Promise<void> {
  const { rows: known } = await client.query<{ site: string | null }>(
    `SELECT to_regclass('"Site"')::text AS site`,
  );
  if (!known[0]?.site) throw new SeedRefusal("The database has no tables yet: apply the migrations first.");
  const { rows } = await client.query<{ used: boolean }>(
    `SELECT EXISTS (SELECT FROM "Site") OR EXISTS (SELECT FROM "User") AS used`,
  );
  if (rows[0]?.used)
    throw new SeedRefusal(
      "The database has sites or people already; a demonstration is only written into an empty one.",
    );
}

async function write(client: Client, scenario: string, tables: SeedTables): Promise<Loaded[]> {
  const loaded: Loaded[] = [];
  for (const [table, rows] of Object.entries(tables) as [string, Iterable<object>][])
    loaded.push({ table, rows: await copyRows(client, table, rows) });
  const sites = await client.query<{ id: string; code: string }>(`SELECT "id", "code" FROM "Site"`);
  const siteIds = new Map(sites.rows.map(({ id, code }) => [code, id]));
  for (const [table, rows] of Object.entries(await accountRows(demoAccounts, siteIds, MADE_AT)))
    loaded.push({ table, rows: await copyRows(client, table, rows) });
  await copyRows(client, "AuditEntry", [auditOf(scenario, loaded)]);
  await keepPast(client);
  await client.query(`UPDATE "DataVersion" SET "version" = "version" + 1`);
  return loaded;
}

function auditOf(scenario: string, loaded: readonly Loaded[]) {
  return {
    id: seedId("AuditEntry", `seed:load/${scenario}`),
    at: MADE_AT,
    userId: null,
    deed: "seed:load",
    entity: "Scenario",
    entityId: scenario,
    siteId: null,
    after: JSON.stringify(Object.fromEntries(loaded.map(({ table, rows }) => [table, rows]))),
  };
}
