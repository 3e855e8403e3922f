import { mkdirSync } from "node:fs";
import { generateClient } from "./build";
import { runBrowserTests } from "./check/browser";
import { lackOfChromium } from "./check/chromium";
import { checkSources } from "./check/sources";
import { add, type Tally } from "./check/tally";
import { openTestServer } from "./check/testServer";
import { runTests } from "./check/tests";
import { stateFolder } from "./folders";
import { live } from "./live";

await live(async (life) => {
  mkdirSync(stateFolder, { recursive: true });
  // Fetched while the rest is built and run.
  const lackOfBrowser = lackOfChromium();
  await generateClient(life.stopping);
  let tally: Tally = await checkSources(life);
  const server = await openTestServer(life);
  tally = add(tally, await runTests(server("postgres"), life));
  tally = add(tally, await runBrowserTests(server, lackOfBrowser, life));
  console.log(`${tally.passed} passed, ${tally.failed} failed`);
  return tally.failed === 0 && tally.passed > 0 ? 0 : 1;
}, 1);
