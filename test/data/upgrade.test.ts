import { createHash, randomUUID } from "node:crypto";
import type { Client } from "pg";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { readRanking } from "@/lib/data/ranking";
import { isoDate } from "@/lib/kernel/isoDate";
import { migrate } from "@/lib/launch/migrate";
import { load } from "@/seed/load";
import { small } from "@/seed/scenarios/small";
import { makeActor } from "@/test/support/actors";
import { on } from "@/test/support/archives";
import { emptyDatabase, type FreshDatabase, freshDatabase, workOn } from "@/test/support/database";
import { makeOlder } from "@/test/support/olderDatabase";

// Loading a database takes its time on a busy machine.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const asOf = isoDate("2026-11-30");
const MEBIBYTE = 1024 * 1024;
const [batchId, planId] = [randomUUID(), randomUUID()];
let current: FreshDatabase;

beforeAll(async () => {
  current = await freshDatabase("an installation to be older");
  await load(current.url, "small", small());
});
afterAll(() => current.close());

/** What the first releases kept otherwise than today: a file in one piece, steps with numbers, money of two places. */
async function addOldRows(client: Client): Promise<string> {
  const file = Buffer.alloc(2.5 * MEBIBYTE, "Site;Line\r\n");
  const hash = createHash("sha256").update(file).digest("hex");
  await client.query(
    `INSERT INTO "ImportBatch" ("id", "register", "fileName", "fileHash", "fileBytes", "mapping", "dialect", "state", "createdBy")
     VALUES ($1, 'assets', 'long.csv', $2, $3, '{}', '{}', 'committed', 'Planner')`,
    [batchId, hash, file],
  );
  await client.query(
    `INSERT INTO "ImportBatch" ("id", "register", "fileName", "fileHash", "fileBytes", "mapping", "dialect", "createdBy")
     VALUES (gen_random_uuid(), 'assets', 'empty.csv', '', '', '{}', '{}', 'Planner')`,
  );
  await client.query(
    `INSERT INTO "ImportChange" ("id", "batchId", "sequence", "rowNumber", "entity", "entityId", "after")
     SELECT gen_random_uuid(), $1, n, n, 'Site', 'x', '{}' FROM generate_series(1, 3) n`,
    [batchId],
  );
  await client.query(
    `INSERT INTO "Plan" ("id", "name", "year", "budget", "status", "asOf", "rankedBy", "dataVersion", "engine", "createdBy")
     VALUES ($1, 'Kept', 2027, 1234567.89, 'funded', '2026-11-30', 'loss', 1, 'e', 'Approver')`,
    [planId],
  );
  await client.query(
    `WITH project AS (INSERT INTO "Project" ("id", "siteId", "lineId", "code", "name", "currency", "budget")
       SELECT gen_random_uuid(), "siteId", "id", 'OLD-1', 'Older', 'EUR', 99999.99 FROM "Line" LIMIT 1 RETURNING "id")
     INSERT INTO "CostEntry" ("id", "projectId", "kind", "amount", "spentOn", "text", "reference")
     SELECT gen_random_uuid(), "id", 'actual', 1234.56, '2026-10-01', 'Invoice', 'R1' FROM project`,
  );
  return hash;
}

const one = async (client: Client, sql: string) =>
  (await client.query({ text: sql, rowMode: "array" })).rows[0];

const COUNTED = ["Line", "Unit", "Event", "StockLot", "LifecycleFact", "AuditEntry"];
const countsOf = (client: Client) =>
  one(client, `SELECT ${COUNTED.map((table) => `(SELECT count(*)::int FROM "${table}")`)}`);

describe("an installation of an earlier release", () => {
  test.each(["0019_solve", "0032_prepared"])("of %s comes up to date with its rows", async (release) => {
    const older = await emptyDatabase();
    try {
      await makeOlder(older.url, current.url, release);
      expect((await migrate(older.url)).length).toBeGreaterThan(0);
      expect(await on(older.url, countsOf)).toEqual(await on(current.url, countsOf));
      await workOn(current.url);
      const viewer = await makeActor("viewer");
      const { dataVersion: _, ...shown } = await readRanking(viewer, asOf);
      await workOn(older.url);
      const { dataVersion: __, ...after } = await readRanking(viewer, asOf);
      expect(after).toEqual(shown);
    } finally {
      await workOn(current.url);
      await older.close();
    }
  });

  test("keeps its files to the byte, the steps of its loads and its money", async () => {
    const older = await emptyDatabase();
    try {
      await makeOlder(older.url, current.url, "0019_solve");
      const hash = await on(older.url, addOldRows);
      await migrate(older.url);
      await on(older.url, async (client) => {
        const pieces = `SELECT encode(sha256(string_agg("bytes", NULL ORDER BY "place")), 'hex'), count(*)::int
          FROM "ImportPiece" WHERE "fileId" = '${batchId}'`;
        expect(await one(client, pieces)).toEqual([hash, 3]);
        const file = `SELECT "fileName", "work"::text FROM "ImportBatch" WHERE "fileName" = 'empty.csv'`;
        expect(await one(client, file)).toEqual(["empty.csv", "idle"]);
        const steps = `SELECT array_agg("sequence" ORDER BY "sequence") FROM "ImportChange" WHERE "batchId" = '${batchId}'`;
        expect(await one(client, steps)).toEqual([[1, 2, 3]]);
        const plan = `SELECT "budget"::text, "kind"::text, "status"::text FROM "Plan" WHERE "id" = '${planId}'`;
        expect(await one(client, plan)).toEqual(["1234567.89", "cut", "funded"]);
        const money = `SELECT p."budget"::numeric = 99999.99, c."amount"::numeric = 1234.56, c."rate"
          FROM "Project" p JOIN "CostEntry" c ON c."projectId" = p."id" WHERE p."code" = 'OLD-1'`;
        expect(await one(client, money)).toEqual([true, true, null]);
      });
    } finally {
      await older.close();
    }
  });
});
