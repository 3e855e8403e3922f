import { randomBytes } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Client } from "pg";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { takeIn } from "@/lib/data/archive/takeIn";
import { database } from "@/lib/data/client";
import { addObligation } from "@/lib/data/obligationChange";
import { startJobs } from "@/lib/jobs/startJobs";
import { asAccount, openToApplication } from "@/lib/launch/appAccount";
import { copyTo, on } from "@/test/support/archives";
import { type FreshDatabase, freshDatabase, workOn } from "@/test/support/database";
import { makeTwoSites, personWith } from "@/test/support/twoSites";

// Making and granting takes its time on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 120_000 });

const account = `ebbline_test_${randomBytes(5).toString("hex")}`;
let made: FreshDatabase;
let empty: FreshDatabase;
let appUrl: string;
let folder: string;
let app: Client;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "ebbline-account-"));
  made = await freshDatabase("audit as its owner");
  const world = await makeTwoSites();
  appUrl = asAccount(made.url, account, "of-a-test");
  await openToApplication(made.url, appUrl);
  await workOn(appUrl);
  app = new Client({ connectionString: appUrl });
  await app.connect();
  // What the application does, it does by that account from here on.
  const added = await addObligation(personWith("engineer", world.north), {
    ...{ siteId: world.north, lineId: world.lines["NOR-01"] ?? "", kind: "safety", title: "Guard" },
    ...{ dueOn: "2027-09-30", source: "Machine file", owner: "Safety officer", evidence: "documented" },
  });
  if (!added.ok) throw new Error(added.error.reason);
});

afterAll(async () => {
  await app?.end();
  await empty?.close();
  await on(made.url, (client) => client.query(`DROP OWNED BY ${account}`));
  await made.close();
  const server = Object.assign(new URL(made.url), { pathname: "/postgres" }).href;
  await on(server, (client) => client.query(`DROP ROLE ${account}`));
  await rm(folder, { recursive: true, force: true });
});

const NO_RIGHT = "42501";

/** The code PostgreSQL refuses the statement with as that account; null when it does it. */
async function refusal(sql: string, client = app): Promise<string | null | undefined> {
  await client.query("BEGIN");
  const refused = await client.query(sql).then(
    () => null,
    (error: { code?: string }) => error.code,
  );
  await client.query("ROLLBACK");
  return refused;
}

const FROZEN = [
  ...["AuditEntry", "AssumptionSet", "BudgetItem", "CompatibilityRule", "Plan", "PlanSlot", "ReportFile"],
  "ReportIssue",
];

describe("the account the application works with", () => {
  test("adds audit entries and reads them", async () => {
    expect(await database().auditEntry.findMany()).toMatchObject([{ deed: "obligation:add" }]);
  });

  test.each([
    `UPDATE "AuditEntry" SET "deed" = 'other'`,
    `DELETE FROM "AuditEntry"`,
    `MERGE INTO "AuditEntry" a USING "Site" s ON true WHEN MATCHED THEN DELETE`,
    "SET session_replication_role = replica",
    "SET ROLE ebbline",
    "CREATE SCHEMA own",
    `CREATE TABLE public."Other" ()`,
    "DELETE FROM guard.taking_in",
    "INSERT INTO guard.taking_in VALUES (pg_current_xact_id(), now())",
    "DROP SCHEMA guard CASCADE",
    "CREATE OR REPLACE FUNCTION is_taking_in() RETURNS boolean LANGUAGE sql AS 'SELECT true'",
    "ALTER FUNCTION refuse_change_of_audit() RENAME TO other",
    "UPDATE _prisma_migrations SET checksum = ''",
  ])("may not: %s", async (sql) => {
    expect(await refusal(sql)).toBe(NO_RIGHT);
  });

  test.each(FROZEN)("may not empty or alter the table %s, nor switch its triggers off", async (table) => {
    for (const sql of [
      `TRUNCATE "${table}" CASCADE`,
      `ALTER TABLE "${table}" DISABLE TRIGGER USER`,
      `ALTER TABLE "${table}" ADD COLUMN "other" int`,
      `ALTER TABLE "${table}" RENAME TO "Other"`,
      `CREATE RULE skip AS ON INSERT TO "${table}" DO INSTEAD NOTHING`,
      `DROP TABLE "${table}" CASCADE`,
    ])
      expect([sql, await refusal(sql)]).toEqual([sql, NO_RIGHT]);
    const { rows } = await on(made.url, (client) =>
      client.query<{ name: string }>(
        `SELECT tgname AS name FROM pg_trigger WHERE tgrelid = '"${table}"'::regclass AND NOT tgisinternal`,
      ),
    );
    expect(rows.length).toBeGreaterThan(0);
    for (const { name } of rows) expect(await refusal(`DROP TRIGGER "${name}" ON "${table}"`)).toBe(NO_RIGHT);
  });

  test("cannot make an installation in use count as unused", async () => {
    await on(appUrl, async (client) => {
      await client.query("BEGIN");
      await client.query(`DELETE FROM "Obligation"; DELETE FROM "StockLot"; DELETE FROM "Event"`);
      const { rows } = await client.query("SELECT begin_taking_in(NULL) AS may");
      await client.query("ROLLBACK");
      expect(rows).toEqual([{ may: false }]);
    });
  });

  test("works the queue", async () => {
    const jobs = await startJobs();
    await on(appUrl, (client) => client.query("SELECT graphile_worker.add_job('weeklySnapshot')"));
    await expect
      .poll(() => database().$queryRaw`SELECT count(*)::int AS open FROM graphile_worker._private_jobs`, {
        timeout: 20_000,
      })
      .toEqual([{ open: 0 }]);
    await jobs.stop();
    expect(await database().$queryRaw`SELECT FROM graphile_worker._private_known_crontabs`).toHaveLength(3);
  });
});

test("not even the owner changes the audit in passing, nor by removing a person", async () => {
  for (const sql of [`UPDATE "AuditEntry" SET "deed" = 'other'`, `DELETE FROM "AuditEntry"`])
    expect(await on(made.url, (owner) => refusal(sql, owner))).toBe("P0001");
});

test("an account that owns the tables is refused as the application's, with its password as it was", async () => {
  await expect(openToApplication(made.url, made.url)).rejects.toThrow("has every right over the audit");
});

test("a copy is taken in by that account into an unused installation, audit and all", async () => {
  const path = join(folder, "copy.zip");
  const { hash } = await copyTo(made.url, path);
  empty = await freshDatabase("taken in by the application");
  const emptyApp = asAccount(empty.url, account, "of-a-test");
  await openToApplication(empty.url, emptyApp);
  await on(emptyApp, (client) => takeIn(client, { path }));
  expect((await copyTo(empty.url, join(folder, "again.zip"))).hash).toBe(hash);
  const edit = `UPDATE "AuditEntry" SET "deed" = 'other'`;
  expect(await on(empty.url, (owner) => refusal(edit, owner))).toBe("P0001");
});
