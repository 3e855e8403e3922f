import { copyFile, mkdtemp, readFile, rm, stat, truncate, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { copiedTables } from "@/lib/data/archive/catalogue";
import type { Manifest } from "@/lib/data/archive/manifest";
import { takeIn } from "@/lib/data/archive/takeIn";
import { database } from "@/lib/data/client";
import { readRanking } from "@/lib/data/ranking";
import { takeOutWhole } from "@/lib/data/wholeCopy";
import { isoDate } from "@/lib/kernel/isoDate";
import { restoreFrom } from "@/lib/launch/copy/restoreFrom";
import { writeBackup } from "@/lib/launch/copy/writeBackup";
import { migrate } from "@/lib/launch/migrate";
import { listZip } from "@/lib/reports/zip/readZip";
import type { Ranking } from "@/lib/view/lineRanking";
import { load } from "@/seed/load";
import { small } from "@/seed/scenarios/small";
import { makeActor } from "@/test/support/actors";
import { copyTo, type Edit, editArchive, forgeManifest, on } from "@/test/support/archives";
import { emptyDatabase, type FreshDatabase, freshDatabase, workOn } from "@/test/support/database";
import { addOddRows } from "@/test/support/oddRows";

// Loading a database takes its time on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "ebbline-copy-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const asOf = isoDate("2026-11-30");
const inFolder = (name: string) => join(folder, name);

describe("a copy of a small company", () => {
  let seeded: FreshDatabase;
  let empty: FreshDatabase;
  let made: Manifest;
  let viewer: Actor;
  let ranking: Ranking;
  const file = () => inFolder("small.zip");

  beforeAll(async () => {
    seeded = await freshDatabase("small company to copy");
    await load(seeded.url, "small", small());
    await addOddRows();
    viewer = await makeActor("viewer");
    made = await copyTo(seeded.url, file());
    ranking = await readRanking(viewer, asOf);
    empty = await freshDatabase("empty for small");
    await workOn(empty.url);
  });
  afterAll(async () => {
    await seeded.close();
    await empty.close();
  });

  test("into an empty installation is the same to the hash, and so are the figures", async () => {
    const filled = await freshDatabase("filled from a copy");
    await on(filled.url, (client) => takeIn(client, { path: file() }));
    const again = await copyTo(filled.url, inFolder("again.zip"));
    await workOn(filled.url);
    const { dataVersion, ...shown } = await readRanking(viewer, asOf);
    await filled.close();
    await workOn(empty.url);

    expect(made.tables.find(({ name }) => name === "Line")?.rows).toBe(4);
    expect(again.tables).toEqual(made.tables);
    expect(again.hash).toBe(made.hash);
    expect({ ...shown, dataVersion: ranking.dataVersion }).toEqual(ranking);
    expect(dataVersion).toBeGreaterThan(ranking.dataVersion);
  });

  test("has the same hash when rows lie in another order and the server speaks otherwise", async () => {
    const name = new URL(seeded.url).pathname.slice(1);
    await on(seeded.url, async (client) => {
      await client.query(`UPDATE "Event" SET "text" = "text" WHERE "happenedAt" > '2024-01-01'`);
      await client.query(`ALTER DATABASE ${name} SET TimeZone = 'Asia/Kathmandu'`);
      await client.query(`ALTER DATABASE ${name} SET DateStyle = 'German'`);
      await client.query(`ALTER DATABASE ${name} SET extra_float_digits = -3`);
    });
    expect((await copyTo(seeded.url, inFolder("otherwise.zip"))).hash).toBe(made.hash);
  });

  test("has another hash once one value differs", async () => {
    await on(seeded.url, (client) =>
      client.query(`UPDATE "Site" SET "name" = "name" || '.' WHERE "code" = 'THO'`),
    );
    expect((await copyTo(seeded.url, inFolder("changed.zip"))).hash).not.toBe(made.hash);
    // The copy holds former states too: put back by the server's owner without a trace, it is the same again.
    await on(seeded.url, async (client) => {
      await client.query(`UPDATE "Site" SET "name" = rtrim("name", '.')`);
      expect((await copyTo(seeded.url, inFolder("changed.zip"))).hash).not.toBe(made.hash);
      await client.query(`DELETE FROM "RowPast" WHERE "table" = 'Site'`);
    });
    expect((await copyTo(seeded.url, inFolder("changed.zip"))).hash).toBe(made.hash);
  });

  test("holds nothing people or systems get in with, and points to nothing it leaves out", async () => {
    const [tables, foreign] = await on(seeded.url, async (client) => [
      await copiedTables(client, { withSecrets: false }),
      (
        await client.query<{ from: string; to: string }>(
          `SELECT conrelid::regclass::text AS "from", confrelid::regclass::text AS "to"
           FROM pg_constraint WHERE contype = 'f'`,
        )
      ).rows.map(({ from, to }) => [from, to].map((name) => name.replaceAll('"', ""))),
    ]);
    const secret = tables.flatMap(({ name, columns }) =>
      columns
        .filter((column) => /token|secret|passw|twoFactor/i.test(column))
        .map((column) => `${name}.${column}`),
    );
    expect(secret).toEqual([]);
    const names = new Set(tables.map(({ name }) => name));
    expect(foreign.length).toBeGreaterThan(100);
    expect(foreign.filter(([from = "", to = ""]) => names.has(from) && !names.has(to))).toEqual([]);
    expect(made.leftOut.Account).toContain("passwords");
  });

  const within = (changed: string, edit: (text: string) => string | null): Edit => {
    return (name, text) => (name === changed ? edit(text) : text);
  };
  const refused: readonly [string, Edit, RegExp][] = [
    [
      "a value edited",
      within("tables/Site.csv", (text) => text.replace("THO", "THX")),
      /Site\.csv is not as it was/,
    ],
    ["a table missing", within("tables/Line.csv", () => null), /tables\/Line\.csv is missing/],
    ["no manifest", within("manifest.json", () => null), /no copy of an installation/],
    [
      "other counts",
      within("manifest.json", (text) => text.replace(/"rows": \d{2,}/, '"rows": 1')),
      /was edited/,
    ],
    ["another manifest", within("manifest.json", () => '{"format":"other"}'), /is not what Ebbline writes/],
    ["half a manifest", within("manifest.json", (text) => text.slice(0, 99)), /is not what Ebbline writes/],
    [
      "other migrations",
      within("manifest.json", (text) => text.replace("0001_first", "0001_x")),
      /version of Ebbline that/,
    ],
    [
      "another format",
      within("manifest.json", (text) => text.replace('"version": 1', '"version": 2')),
      /of format 2/,
    ],
  ];

  test.each(refused)("with %s is refused in words and nothing is written", async (_, edit, words) => {
    await editArchive({ from: file(), to: inFolder("edited.zip") }, edit);
    await expectRefused(inFolder("edited.zip"), words);
  });

  test("with a file more is refused in words", async () => {
    await editArchive({ from: file(), to: inFolder("more.zip") }, (_, text) => text, ["tables/Stray.csv"]);
    await expectRefused(inFolder("more.zip"), /does not name \(tables\/Stray\.csv\)/);
  });

  test.each([0.05, 0.5, 0.98])("cut to %d of its length is refused in words", async (share) => {
    const cut = inFolder("cut.zip");
    await copyFile(file(), cut);
    await truncate(cut, Math.floor((await stat(file())).size * share));
    await expectRefused(cut, /cannot be read/);
  });

  test("with one bit changed in a table or in the manifest is refused in words", async () => {
    const whole = await readFile(file());
    for (const name of ["tables/Event.csv", "manifest.json"]) {
      const { offset = 0, packed = 0 } = (await listZip(file())).find((found) => found.name === name) ?? {};
      const bytes = Buffer.from(whole);
      const at = offset + Math.floor(packed / 2);
      bytes.writeUInt8(bytes.readUInt8(at) ^ 1, at);
      await writeFile(inFolder("bit.zip"), bytes);
      // A bit may make the packed text longer, or break it off, or only change a letter of it.
      await expectRefused(inFolder("bit.zip"), /(is damaged|more than|cannot be read)/);
    }
  });

  test("that is whole by its hashes but breaks a rule of the records is rolled back and named", async () => {
    const forged = inFolder("forged.zip");
    let site = "";
    await editArchive({ from: file(), to: forged }, (name, text) => {
      if (name === "tables/Site.csv") site = text.replace(/\n[^\n]*THO[^\n]*/, "");
      if (name === "tables/Site.csv") return site;
      return name === "manifest.json" ? forgeManifest(text, "Site", site) : text;
    });
    await expectRefused(forged, /refuses a row of the archive in the table \w+/);
  });

  test("is taken into nothing but an empty installation", async () => {
    await expect(on(seeded.url, (client) => takeIn(client, { path: file() }))).rejects.toThrow(
      "only taken into an empty one",
    );
  });

  async function expectRefused(path: string, words: RegExp) {
    await on(empty.url, async (client) => {
      await expect(takeIn(client, { path })).rejects.toThrow(words);
      const { rows } = await client.query(
        `SELECT (SELECT count(*)::int FROM "Site") AS sites, (SELECT count(*)::int FROM "Part") AS parts`,
      );
      expect(rows).toEqual([{ sites: 0, parts: 0 }]);
    });
  }

  test("with secrets is a backup that only its owner may read, and restores accounts into a database without tables", async () => {
    const { file: backup, manifest } = await writeBackup(seeded.url, {
      folder: inFolder("backups"),
      name: "one",
    });
    expect((await stat(backup)).mode & 0o777).toBe(0o600);
    const bare = await emptyDatabase();
    await restoreFrom(bare.url, backup);
    const again = await copyTo(bare.url, inFolder("restored.zip"), true);
    await bare.close();
    expect(again.hash).toBe(manifest.hash);
    expect(again.tables.find(({ name }) => name === "Account")?.rows).toBeGreaterThan(5);
    expect(again.tables.find(({ name }) => name === "Session")).toBeUndefined();
  });

  test("of an older installation is restored as it was and then brought up to date", async () => {
    const [older, bare] = [await emptyDatabase(), await emptyDatabase()];
    await migrate(older.url, undefined, "0030_quality");
    await on(older.url, (client) =>
      client.query(`INSERT INTO "Setting" ("key", "value") VALUES ('asOf', '"2026-11-30"')`),
    );
    await copyTo(older.url, inFolder("older.zip"), true);
    await restoreFrom(bare.url, inFolder("older.zip"));
    const [kept, pending] = await on(bare.url, async (client) => [
      (await client.query(`SELECT "value" FROM "Setting"`)).rows,
      await migrate(bare.url),
    ]);
    await older.close();
    await bare.close();
    await workOn(empty.url);
    expect(kept).toEqual([{ value: "2026-11-30" }]);
    expect(pending).toEqual([]);
  });

  test("that nobody fetches to its end is noted nowhere and lets its connection go", async () => {
    await workOn(seeded.url);
    const before = await database().wholeCopy.count();
    expect(await takeOutWhole(viewer)).toMatchObject({ ok: false, error: { code: "forbidden" } });
    const out = await takeOutWhole({ ...viewer, grants: [{ role: "admin", siteId: null }] });
    if (!out.ok) throw new Error(out.error.reason);
    await out.value.pieces.next();
    await out.value.end();
    await expect
      .poll(
        () =>
          database()
            .$queryRaw`SELECT 1 FROM pg_stat_activity WHERE datname = current_database() AND query LIKE 'COPY%'`,
      )
      .toEqual([]);
    expect(await database().wholeCopy.count()).toBe(before);
    await workOn(empty.url);
  });

  test("leaves the first administrator able to sign in, as the person of the copy with that address", async () => {
    for (const [email, people] of [
      ["somebody@halvenor.example", 1],
      ["admin@halvenor.example", 0],
    ] as const) {
      await on(empty.url, (client) => client.query(`TRUNCATE "Site", "Part", "User", "Family" CASCADE`));
      const user = { id: "first", name: "First", email, emailVerified: true };
      await database().user.create({ data: user });
      const account = { id: "of-first", accountId: "first", providerId: "credential", password: "kept hash" };
      await database().account.create({ data: { ...account, userId: "first" } });
      await database().grant.create({ data: { userId: "first", role: "admin" } });
      const person = { userId: "first", name: "First" };
      await on(empty.url, (client) => takeIn(client, { path: file(), person }));
      const owner = await database().account.findUniqueOrThrow({
        where: { id: "of-first" },
        select: {
          password: true,
          user: { select: { email: true, grants: { select: { role: true, siteId: true } } } },
        },
      });
      expect(owner).toMatchObject({ password: "kept hash", user: { email } });
      expect(owner.user.grants).toContainEqual({ role: "admin", siteId: null });
      expect(await database().user.count({ where: { id: "first" } })).toBe(people);
      expect(await database().wholeCopy.findFirst({ orderBy: { at: "desc" } })).toMatchObject({
        ...{ direction: "in", by: "First", hash: made.hash },
      });
    }
  });
});
