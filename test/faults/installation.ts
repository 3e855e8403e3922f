import { randomBytes } from "node:crypto";
import { join } from "node:path";
import type { Actor } from "@/lib/access/actor";
import { makeKey } from "@/lib/data/accessKeys";
import { makeBoard } from "@/lib/data/planBoardChange";
import { makeHook } from "@/lib/data/webhookChange";
import { isoDate } from "@/lib/kernel/isoDate";
import type { Result } from "@/lib/kernel/result";
import { asAccount, openToApplication } from "@/lib/launch/appAccount";
import { wipePlace } from "@/lib/launch/embedded/place";
import { type EmbeddedServer, startEmbedded } from "@/lib/launch/embedded/startEmbedded";
import { makeDatabase, seedDemo } from "@/lib/launch/fillDatabase";
import { APP_ACCOUNT, stateFolder } from "@/lib/launch/folders";
import { on } from "@/test/support/archives";
import { workOn } from "@/test/support/database";
import { type SecondApp, startSecondApp } from "@/test/support/secondApp";

export const VICTIMS = ["application", "worker", "database"] as const;
export type Victim = (typeof VICTIMS)[number];

const FOLDER = join(stateFolder, "faults-database");
const NAME = "ebbline_faults";
const AS_OF = isoDate("2026-11-30");

/** The demonstration on a durable database, served by two application processes; each part can be killed. */
export interface Installation {
  /** For its owner. */
  readonly url: string;
  /** Answers the requests of the load, and works the queue as well. */
  readonly application: () => SecondApp;
  readonly kill: (victim: Victim) => Promise<void>;
  /** Starts again what was killed. @returns Seconds from that start to the first good answer of the application. */
  readonly startAgain: (victim: Victim) => Promise<number>;
  readonly stop: () => Promise<void>;
}

/** Keys and ids the load works with. */
export interface Tools {
  readonly keys: readonly string[];
  readonly planId: string;
}

const KEYS = 4;

function granted<T>(result: Result<T, { readonly reason: string }>): T {
  if (result.ok) return result.value;
  throw new Error(result.error.reason);
}

/** What a person would set up on the pages: a key for each part of the load, a plan to search, a webhook. */
export async function makeTools(url: string, hookAddress: string): Promise<Tools> {
  await workOn(url);
  const [admin] = await on(url, async (client) => {
    const sql = `SELECT "id" AS "userId", "name", "email" FROM "User" WHERE "email" = $1`;
    return (await client.query<Omit<Actor, "grants">>(sql, ["admin@halvenor.example"])).rows;
  });
  if (!admin) throw new Error("the demonstration has no administrator");
  const actor: Actor = { ...admin, grants: [{ role: "admin", siteId: null }] };
  const deeds = ["read", "event:write", "stock:write", "register:import"] as const;
  const keys: string[] = [];
  for (let i = 0; i < KEYS; i++)
    keys.push(
      granted(await makeKey(actor, { name: `Load ${i}`, deeds: [...deeds], siteIds: null, days: 30 })).token,
    );
  granted(
    await makeHook(actor, {
      name: "Ledger",
      address: hookAddress,
      subjects: ["stock.changed"],
      siteId: null,
    }),
  );
  const { planId } = granted(await makeBoard(actor, { name: "Searched", asOf: AS_OF }));
  await workOn(url);
  return { keys, planId };
}

/** Makes the demonstration anew and serves it twice. */
export async function openInstallation(): Promise<Installation> {
  wipePlace(FOLDER);
  let server: EmbeddedServer = await startEmbedded(FOLDER);
  const url = await makeDatabase(server.url, NAME, seedDemo);
  const appUrl = asAccount(url, APP_ACCOUNT, randomBytes(24).toString("base64url"));
  await openToApplication(url, appUrl);
  let application = await startSecondApp(appUrl);
  let worker = await startSecondApp(appUrl);
  const kill = {
    application: () => application.kill(),
    worker: () => worker.kill(),
    database: async () => {
      process.kill(server.processId, "SIGKILL");
      await server.ended;
      await server.stop();
    },
  };
  const start = {
    application: async () => {
      application = await startSecondApp(appUrl, application.port);
    },
    worker: async () => {
      worker = await startSecondApp(appUrl, worker.port);
    },
    database: async () => {
      server = await startEmbedded(FOLDER);
      if (server.url(NAME) !== url) throw new Error("the port of the database was taken meanwhile");
    },
  };
  return {
    url,
    application: () => application,
    kill: (victim) => kill[victim](),
    startAgain: async (victim) => {
      const from = performance.now();
      await start[victim]();
      await untilGood(victim === "worker" ? worker.address : application.address);
      return (performance.now() - from) / 1_000;
    },
    stop: async () => {
      await Promise.all([application.stop(), worker.stop()]);
      await server.stop();
      wipePlace(FOLDER);
    },
  };
}

const LONGEST_WAIT_MS = 60_000;
const LOOK_MS = 50;

async function untilGood(address: string): Promise<void> {
  const end = performance.now() + LONGEST_WAIT_MS;
  for (;;) {
    const good = await fetch(`${address}/api/health`, { signal: AbortSignal.timeout(5_000) }).then(
      (answer) => answer.ok,
      () => false,
    );
    if (good) return;
    if (performance.now() > end) throw new Error(`${address} gave no good answer within a minute`);
    await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
  }
}
