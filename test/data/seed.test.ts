import { Client } from "pg";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { database } from "@/lib/data/client";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import { evaluate } from "@/lib/risk/evaluate";
import { demoAccounts } from "@/seed/accounts";
import { load } from "@/seed/load";
import { refuseForeign } from "@/seed/localDatabase";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

// Loading a database takes its time on a busy machine.
vi.setConfig({ testTimeout: 240_000 });

const D0 = "2026-11-30";
let fresh: FreshDatabase;
let client: Client;

beforeAll(async () => {
  fresh = await freshDatabase("seed");
  await load(fresh.url, "showcase", showcase());
  client = new Client({ connectionString: fresh.url });
  await client.connect();
}, 60_000);

afterAll(async () => {
  await client.end();
  await fresh.close();
});

async function ask<T extends object>(sql: string): Promise<T[]> {
  return (await client.query<T>(sql)).rows;
}

test("what is stored is what was built, table by table", async () => {
  for (const [table, rows] of Object.entries(showcase())) {
    const [count] = await ask<{ n: number }>(`SELECT count(*)::int AS n FROM "${table}"`);
    expect([table, count?.n]).toEqual([table, rows.length]);
  }
});

test("letters of every site's language and awkward characters arrive as they were", async () => {
  const [site] = await ask<{ name: string }>(`SELECT "name" FROM "Site" WHERE "code" = 'OST'`);
  expect(site?.name).toBe("Ostrowka Mała");
  const [texts] = await ask<{ n: number }>(
    `SELECT count(*)::int AS n FROM "Event" WHERE "text" ~ 'Napęd|Überstrom|återställ|överström|dañado'`,
  );
  expect(texts?.n).toBeGreaterThan(10);
});

test("the load raises the data version by one and leaves one audit entry without a person", async () => {
  expect(await ask(`SELECT "version"::int AS version FROM "DataVersion"`)).toEqual([{ version: 1 }]);
  expect(await ask(`SELECT "deed", "entityId", "userId" FROM "AuditEntry"`)).toEqual([
    { deed: "seed:load", entityId: "showcase", userId: null },
  ]);
});

test("each demo account has a password of 12 characters or more and a grant at its own sites only", async () => {
  expect(demoAccounts.filter(({ password }) => password.length < 12)).toEqual([]);
  const rows = await ask<{ email: string; role: string; site: string | null }>(
    `SELECT u."email", g."role"::text AS role, s."code" AS site FROM "User" u
     JOIN "Grant" g ON g."userId" = u."id" LEFT JOIN "Site" s ON s."id" = g."siteId" ORDER BY u."email"`,
  );
  const expected = demoAccounts
    .map(({ email, role, sites }) => ({ email, role, site: sites === "all" ? null : (sites[0] ?? "") }))
    .sort((a, b) => (a.email < b.email ? -1 : 1));
  expect(rows).toEqual(expected);
});

test("a second load into the same database is refused and changes nothing", async () => {
  await expect(load(fresh.url, "showcase", showcase())).rejects.toThrow("only written into an empty one");
  expect(await ask(`SELECT count(*)::int AS n FROM "Site"`)).toEqual([{ n: 6 }]);
});

test.each([
  "postgresql://a@db.halvenor.example/x",
  "postgresql://a@10.0.0.7:5432/x",
  "postgresql://a@localhost/x?host=10.0.0.7",
])("a database that is not on this machine is refused: %s", (url) => {
  expect(() => refuseForeign(url)).toThrow("not to");
});

test.each([
  "postgresql://a@localhost/x",
  "postgresql://a@127.0.0.1:55432/x",
  "postgresql://a@[::1]/x",
  "postgresql://a@database:5432/x",
  "postgresql:///x?host=/var/run/postgresql",
])("a database of this machine is taken: %s", (url) => {
  expect(() => refuseForeign(url)).not.toThrow();
});

async function evaluated() {
  const input = await database().$transaction((tx) => loadGroupInput(tx, D0));
  const result = evaluate(input, likelyAssumptions);
  const code = new Map(input.lines.map((line) => [line.id, line.code]));
  const ranked = result.lines
    .map((line) => ({ code: code.get(line.lineId) ?? "", loss: line.stopLoss?.mean ?? 0 }))
    .sort((a, b) => b.loss - a.loss);
  return { result, ranked };
}

test("loud notice, quiet fire: the first-year loss leads with lines of Oak, not of Heron R", async () => {
  const { ranked } = await evaluated();
  expect(ranked.slice(0, 4).map((line) => line.code)).toEqual(["PIN-03", "VEL-03", "TAD-01", "KAR-03"]);
});

test("the oldest line is not among the first ten by loss", async () => {
  const { ranked } = await evaluated();
  expect(ranked.findIndex((line) => line.code === "VEL-07")).toBeGreaterThanOrEqual(10);
});

test("the loss of the group is the sum of its lines and of its sites", async () => {
  const { result, ranked } = await evaluated();
  const sites = new Map<string, number>();
  for (const { code, loss } of ranked) sites.set(code.slice(0, 3), (sites.get(code.slice(0, 3)) ?? 0) + loss);
  const sum = (numbers: Iterable<number>) => [...numbers].reduce((a, b) => a + b, 0);
  expect(ranked).toHaveLength(40);
  expect(sum(ranked.map(({ loss }) => loss)) / result.stopLoss.mean).toBeCloseTo(1, 9);
  expect(sum(sites.values()) / result.stopLoss.mean).toBeCloseTo(1, 9);
});

test("Heron R stands in the buy window and Oak on own stock; half a year earlier Heron R was open", async () => {
  const stagesAt = async (asOf: string) => {
    const input = await database().$transaction((tx) => loadGroupInput(tx, asOf));
    const numbers = new Map((await database().part.findMany()).map(({ id, number }) => [id, number]));
    const { pools } = evaluate(input, likelyAssumptions);
    return Object.fromEntries(pools.map(({ poolId, stage }) => [numbers.get(poolId) ?? poolId, stage]));
  };
  expect(await stagesAt(D0)).toMatchObject({
    "TM-HR-020": "buy-window",
    "BW-OK-020": "own-stock",
    "TM-HE-020": "open",
  });
  expect(await stagesAt("2026-05-31")).toMatchObject({ "TM-HR-020": "open", "BW-OK-020": "own-stock" });
});
