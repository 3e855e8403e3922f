import { randomBytes } from "node:crypto";
import { existsSync, rmSync } from "node:fs";
import { join } from "node:path";
import { asAccount, openToApplication } from "../appAccount";
import { isBuilt } from "../build";
import { copyDatabase, dropDatabase, makeDatabase, seedDemo } from "../fillDatabase";
import { projectFolder, stateFolder } from "../folders";
import type { Life } from "../live";
import { freePort } from "../port";
import { runNode } from "../run";
import { startWeb } from "../web";
import { add, once, type Tally, tallyOfJourneys } from "./tally";

const CONFIG = "test/e2e/playwright.config.ts";

/** The journeys are parted in two, each half with a server and a database of its own: they wait more than they compute. */
const HALVES = ["1", "2"] as const;

/** Serves the demonstration from throwaway databases and walks through it with browsers, unless there is none. */
export async function runBrowserTests(
  server: (name: string) => string,
  lackOfBrowser: Promise<string | undefined>,
  life: Life,
): Promise<Tally> {
  if (!existsSync(join(projectFolder, CONFIG))) return { passed: 0, failed: 0 };
  const lack = isBuilt()
    ? await lackOfBrowser
    : "The browser tests did not run, since the app was not built.";
  if (lack) {
    console.error(lack);
    return once(false);
  }
  const demo = "ebbline_browser_demo";
  await dropDatabase(server, demo);
  await makeDatabase(server, demo, (fresh) => seedDemo(fresh, life.stopping));
  const walks: (() => Promise<Tally>)[] = [];
  // One after the other: a free port is only found, not held.
  for (const half of HALVES) {
    const name = `ebbline_browser_${half}`;
    await dropDatabase(server, name);
    const address = await serve(name, await copyDatabase(server, demo, name), life);
    const env = { EBBLINE_TEST_ADDRESS: address, EBBLINE_TEST_DATABASE_URL: server("postgres") };
    walks.push(() => walk(half, env, life));
  }
  return (await Promise.all(walks.map((start) => start()))).reduce(add);
}

async function walk(half: string, env: Record<string, string>, { stopping }: Life): Promise<Tally> {
  const report = join(stateFolder, `browser-report-${half}.json`);
  rmSync(report, { force: true });
  const shard = `--shard=${half}/${HALVES.length}`;
  await runNode(["node_modules/@playwright/test/cli.js", "test", "-c", CONFIG, shard], {
    env: {
      ...env,
      EBBLINE_TEST_REPORT: report,
      EBBLINE_TEST_RESULTS: join(projectFolder, "test-results", half),
    },
    signal: stopping,
  });
  return tallyOfJourneys(report);
}

async function serve(name: string, url: string, life: Life): Promise<string> {
  const port = await freePort(0);
  const address = `http://127.0.0.1:${port}`;
  const appUrl = asAccount(url, `${name}_app`, randomBytes(24).toString("base64url"));
  await openToApplication(url, appUrl);
  const of = { externalDatabase: undefined, ownerDatabase: undefined };
  const web = await startWeb({ host: "127.0.0.1", port, demo: true, address, ...of }, appUrl);
  life.endWith(web.stop);
  return address;
}
