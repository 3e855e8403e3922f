import { spawn } from "node:child_process";
import { once } from "node:events";
import { chmodSync, existsSync, mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Client } from "pg";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type Account, mayEnter } from "@/lib/launch/embedded/account";
import { wipePlace } from "@/lib/launch/embedded/place";
import { runningEmbedded } from "@/lib/launch/embedded/runningEmbedded";
import { type EmbeddedServer, startEmbedded } from "@/lib/launch/embedded/startEmbedded";
import { waitUntilGone } from "@/lib/launch/process";

const project = join(import.meta.dirname, "../..");
let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "ebbline-launch-"));
  chmodSync(folder, 0o755);
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

async function ask(url: string, sql: string) {
  const client = new Client({ connectionString: url });
  client.on("error", () => undefined);
  await client.connect();
  try {
    return (await client.query(sql)).rows;
  } finally {
    await client.end();
  }
}

describe("the embedded database", () => {
  const home = () => join(folder, "database");
  const running: EmbeddedServer[] = [];

  async function start(): Promise<EmbeddedServer> {
    const server = await startEmbedded(home());
    running.push(server);
    return server;
  }

  afterEach(async () => {
    for (const server of running.splice(0)) await server.stop();
    wipePlace(home());
  });

  it("keeps what it acknowledged when it is killed, and starts over its stale note", async () => {
    const first = await start();
    const url = first.url("postgres");
    await ask(url, "CREATE TABLE kept (value int)");
    await ask(url, "INSERT INTO kept VALUES (1)");
    process.kill(first.processId, "SIGKILL");
    await first.ended;
    await first.stop();
    expect(existsSync(join(first.data, "postmaster.pid"))).toBe(true);
    const second = await start();
    expect(await ask(second.url("postgres"), "SELECT value FROM kept")).toEqual([{ value: 1 }]);
  });

  it("refuses a second start on the same data, and goes on", async () => {
    const first = await start();
    await expect(startEmbedded(home())).rejects.toThrow(
      `already runs from this folder, as process ${process.pid}`,
    );
    expect(await ask(first.url("postgres"), "SELECT 1 AS one")).toEqual([{ one: 1 }]);
    // A backup is made of what runs, as somebody else's process.
    const found = runningEmbedded(home());
    expect(await ask(found?.("postgres") ?? "", "SELECT 2 AS two")).toEqual([{ two: 2 }]);
    await running.pop()?.stop();
    expect(runningEmbedded(home())).toBeUndefined();
  });

  it("starts although a process long gone had the number of this one", async () => {
    mkdirSync(home());
    writeFileSync(join(home(), "claimed-by"), `${process.pid} 1`);
    const { url } = await start();
    expect(await ask(url("postgres"), "SELECT 1 AS one")).toEqual([{ one: 1 }]);
  });

  it("asks for the password, which only its owner can read", async () => {
    const { url, data } = await start();
    const stranger = new URL(url("postgres"));
    stranger.password = "guessed";
    await expect(ask(stranger.href, "SELECT 1")).rejects.toThrow("password authentication failed");
    expect(statSync(join(data, "../password")).mode & 0o077).toBe(0);
  });

  it("takes over what a killed start left running", async () => {
    const script = `
      import { startEmbedded } from "${project}/lib/launch/embedded/startEmbedded";
      const server = await startEmbedded(${JSON.stringify(home())});
      console.log(server.processId);`;
    const file = join(folder, "other.mts");
    writeFileSync(file, script);
    const other = spawn(process.execPath, ["--import", "tsx", file], { cwd: project });
    const [said] = await once(other.stdout, "data");
    other.kill("SIGKILL");
    await once(other, "exit");
    const server = await start();
    expect(server.processId).not.toBe(Number(said));
    expect(await waitUntilGone(Number(said), "postgres", 0)).toBe(true);
    expect(await ask(server.url("postgres"), "SELECT 1 AS one")).toEqual([{ one: 1 }]);
  });

  it.runIf(process.getuid?.() === 0)("goes elsewhere when its account cannot enter the folder", async () => {
    chmodSync(folder, 0o700);
    const { url, data } = await start();
    expect(data.startsWith(folder)).toBe(false);
    expect(await ask(url("postgres"), "SELECT 1 AS one")).toEqual([{ one: 1 }]);
  });

  it("judges by the modes of the folders whether an account may enter", () => {
    const stranger: Account = { uid: 12_345, gid: 12_345 };
    expect(mayEnter(folder, stranger)).toBe(true);
    chmodSync(folder, 0o750);
    expect(mayEnter(folder, stranger)).toBe(false);
    expect(mayEnter(folder, { ...stranger, gid: statSync(folder).gid })).toBe(true);
  });
});
