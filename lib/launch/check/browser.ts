import { existsSync, rmSync } from "node:fs";
import { join } from "node:path";
import { isBuilt } from "../build";
import { dropDatabase, makeDatabase, seedDemo } from "../fillDatabase";
import { projectFolder, stateFolder } from "../folders";
import type { Life } from "../live";
import { freePort } from "../port";
import { runNode } from "../run";
import { startWeb } from "../web";
import { lackOfChromium } from "./chromium";
import { once, type Tally, tallyOfJourneys } from "./tally";

const CONFIG = "test/e2e/playwright.config.ts";

/** Serves the demonstration from a throwaway database and walks through it with a browser. */
export async function runBrowserTests(server: (name: string) => string, life: Life): Promise<Tally> {
  if (!existsSync(join(projectFolder, CONFIG))) return { passed: 0, failed: 0 };
  const lack = isBuilt() ? lackOfChromium() : "The browser tests did not run, since the app was not built.";
  if (lack) {
    console.error(lack);
    return once(false);
  }
  const address = await serveDemo(server, life);
  const report = join(stateFolder, "browser-report.json");
  rmSync(report, { force: true });
  await runNode(["node_modules/@playwright/test/cli.js", "test", "-c", CONFIG], {
    env: { EBBLINE_TEST_ADDRESS: address, EBBLINE_TEST_DATABASE_URL: server("postgres") },
    signal: life.stopping,
  });
  return tallyOfJourneys(report);
}

async function serveDemo(server: (name: string) => string, life: Life): Promise<string> {
  await dropDatabase(server, "ebbline_browser");
  const url = await makeDatabase(server, "ebbline_browser", (fresh) => seedDemo(fresh, life.stopping));
  const port = await freePort(0);
  const address = `http://127.0.0.1:${port}`;
  const settings = { host: "127.0.0.1", port, demo: true, externalDatabase: undefined, address };
  const web = await startWeb(settings, url);
  life.endWith(web.stop);
  return address;
}
