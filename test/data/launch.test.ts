import { spawnSync } from "node:child_process";
import { once } from "node:events";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { type AddressInfo, createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Client } from "pg";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { tallyOfJourneys, tallyOfTests } from "@/lib/launch/check/tally";
import { explain } from "@/lib/launch/explain";
import { isEmpty, makeDatabase } from "@/lib/launch/fillDatabase";
import { offerFirstAdmin } from "@/lib/launch/firstAdmin";
import { migrate } from "@/lib/launch/migrate";
import { refuseBusyPort } from "@/lib/launch/port";
import { readSettings, unsafeAddress } from "@/lib/launch/settings";
import { emptyDatabase } from "../support/database";

const project = join(import.meta.dirname, "../..");
let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "ebbline-launch-"));
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function ask(url: string, sql: string, values: unknown[] = []) {
  const client = new Client({ connectionString: url });
  client.on("error", () => undefined);
  await client.connect();
  try {
    return (await client.query(sql, values)).rows;
  } finally {
    await client.end();
  }
}

describe("a start that cannot go on says in one sentence", () => {
  it("that the port is taken", async () => {
    const other = createServer().listen(0, "127.0.0.1");
    await once(other, "listening");
    const { port } = other.address() as AddressInfo;
    await expect(refuseBusyPort("127.0.0.1", port)).rejects.toThrow(
      `Port ${port} is in use by another program`,
    );
    other.close();
    await once(other, "close");
    await refuseBusyPort("127.0.0.1", port);
  });

  it("that Node is too old, before anything else", () => {
    const older = `data:text/javascript,Object.defineProperty(process,"version",{value:"v20.18.9"})`;
    const { status, stderr } = spawnSync(process.execPath, ["--import", older, "lib/launch/start.mjs"], {
      cwd: project,
      encoding: "utf8",
    });
    expect(stderr).toBe("Ebbline needs Node 20.19 or newer, and this is 20.18.9.\n");
    expect(status).toBe(1);
  });

  it("that the port is no port", () => {
    expect(() => readSettings({ PORT: "http" })).toThrow(
      'PORT must be a whole number from 1 to 65535, and it is "http".',
    );
    expect(readSettings({}).address).toBe("http://127.0.0.1:3000");
    expect(readSettings({ HOST: "0.0.0.0", PORT: "80" }).address).toBe("http://127.0.0.1:80");
  });

  it("that passwords could be read on the way, unless https or this machine alone is served", () => {
    const said = (env: Record<string, string>) => unsafeAddress(readSettings(env));
    expect(said({})).toBeUndefined();
    expect(said({ BETTER_AUTH_URL: "http://localhost:3000" })).toBeUndefined();
    expect(said({ HOST: "0.0.0.0", BETTER_AUTH_URL: "https://plant.example" })).toBeUndefined();
    expect(said({ BETTER_AUTH_URL: "http://plant.example" })).toContain("http://plant.example, where");
    expect(said({ HOST: "10.0.0.7" })).toContain("http://10.0.0.7:3000, where");
    expect(said({ HOST: "0.0.0.0" })).toContain("listens to the network without https");
  });

  it("that the disk is full or read-only", () => {
    const full = Object.assign(new Error("write failed"), { code: "ENOSPC" });
    expect(explain(full)).toBe("Ebbline cannot write its files: the disk is full.");
    const readOnly = Object.assign(new Error("open failed"), { code: "EROFS", path: "/a/secret" });
    expect(explain(readOnly)).toBe("Ebbline cannot write /a/secret: the disk is read-only.");
  });

  it("that DATABASE_URL is no address", async () => {
    await expect(migrate("plant")).rejects.toThrow("DATABASE_URL is not the address of a PostgreSQL");
  });
});

describe("the packages", () => {
  const check = async (installed: object | undefined): Promise<boolean> => {
    const { arePackagesInstalled } = await import(join(project, "lib/launch/packages.mjs"));
    const wanted = {
      "": {},
      "node_modules/a": { version: "2.0.0" },
      "node_modules/b": { version: "1.0.0", optional: true },
    };
    writeFileSync(join(folder, "package-lock.json"), JSON.stringify({ packages: wanted }));
    rmSync(join(folder, "node_modules"), { recursive: true, force: true });
    if (installed) {
      mkdirSync(join(folder, "node_modules"));
      writeFileSync(join(folder, "node_modules/.package-lock.json"), JSON.stringify({ packages: installed }));
    }
    return arePackagesInstalled(folder);
  };

  it("are installed again when the lock file asks for others", async () => {
    expect(await check(undefined)).toBe(false);
    expect(await check({ "node_modules/a": { version: "1.9.0" } })).toBe(false);
    expect(await check({ "node_modules/b": { version: "1.0.0" } })).toBe(false);
    expect(await check({ "node_modules/a": { version: "2.0.0" } })).toBe(true);
  });
});

describe("a new database", () => {
  it("appears only once it is filled, so an interrupted start begins anew", async () => {
    const scratch = await emptyDatabase();
    const at = (name: string) => Object.assign(new URL(scratch.url), { pathname: `/${name}` }).href;
    const name = new URL(scratch.url).pathname.slice(1).concat("_demo");
    const addSite = `INSERT INTO "Site" (id, code, name, country, "timeZone", currency)
      VALUES (gen_random_uuid(), 'VEL', 'Velmora', 'DE', 'Europe/Berlin', 'EUR')`;
    try {
      const interrupted = makeDatabase(at, name, async (url) => {
        await ask(url, addSite);
        throw new Error("interrupted");
      });
      await expect(interrupted).rejects.toThrow("interrupted");
      const url = await makeDatabase(at, name, async (fresh) => {
        expect(await isEmpty(fresh)).toBe(true);
        await ask(fresh, addSite);
      });
      expect(await isEmpty(url)).toBe(false);
      await makeDatabase(at, name, () => Promise.reject(new Error("filled twice")));
    } finally {
      await ask(at("postgres"), `DROP DATABASE IF EXISTS ${name} WITH (FORCE)`);
      await ask(at("postgres"), `DROP DATABASE IF EXISTS ${name}_new WITH (FORCE)`);
      await scratch.close();
    }
  });

  it("offers one link to make the first administrator, and none once there is a person", async () => {
    const scratch = await emptyDatabase();
    try {
      await migrate(scratch.url);
      const older = await offerFirstAdmin(scratch.url, "http://plant.example");
      const newer = await offerFirstAdmin(scratch.url, "http://plant.example");
      expect(newer).toMatch(/^http:\/\/plant\.example\/first-admin\?token=[\w-]{43}$/);
      expect(newer).not.toBe(older);
      const kept = await ask(scratch.url, `SELECT "tokenHash" FROM "Invitation"`);
      expect(kept).toHaveLength(1);
      expect(kept[0].tokenHash).not.toContain(newer?.split("token=")[1]);
      await ask(
        scratch.url,
        `INSERT INTO "User" (id, name, email, "updatedAt") VALUES ('1', 'A', 'a@plant.example', now())`,
      );
      // A copy brings people without passwords: nobody can sign in yet.
      expect(await offerFirstAdmin(scratch.url, "http://plant.example")).toContain("token=");
      await ask(
        scratch.url,
        `INSERT INTO "Account" (id, "accountId", "providerId", "userId", "updatedAt") VALUES ('1', '1', 'credential', '1', now())`,
      );
      expect(await offerFirstAdmin(scratch.url, "http://plant.example")).toBeUndefined();
    } finally {
      await scratch.close();
    }
  });
});

describe("the count of the tests", () => {
  const reportOf = (report: object): string => {
    const file = join(folder, "report.json");
    writeFileSync(file, JSON.stringify(report));
    return file;
  };

  it("takes a file that could not be loaded, and a missing report, for a failure", () => {
    const testResults = [
      { status: "passed", assertionResults: [{}, {}] },
      { status: "failed", assertionResults: [] },
    ];
    const file = reportOf({ numPassedTests: 2, numFailedTests: 0, testResults });
    expect(tallyOfTests(file)).toEqual({ passed: 2, failed: 1 });
    expect(tallyOfTests(join(folder, "nowhere.json"))).toEqual({ passed: 0, failed: 1 });
  });

  it("takes a journey that passed only at a second try for a failure", () => {
    const file = reportOf({ stats: { expected: 3, unexpected: 1, flaky: 1, skipped: 0 }, errors: [] });
    expect(tallyOfJourneys(file)).toEqual({ passed: 3, failed: 2 });
  });
});
