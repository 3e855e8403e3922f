import { join } from "node:path";
import { expect, type Page } from "@playwright/test";
import { wipePlace } from "@/lib/launch/embedded/place";
import { type EmbeddedServer, startEmbedded } from "@/lib/launch/embedded/startEmbedded";
import { makeDatabase } from "@/lib/launch/fillDatabase";
import { stateFolder } from "@/lib/launch/folders";
import { addAccounts, type SecondApp, startSecondApp } from "@/test/support/secondApp";
import { batchOnDisk, beganToWrite, committed, quiet } from "./support/batchOnDisk";
import { csv, handIn, loadShown } from "./support/loadRegister";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

/**
 * A load is one transaction: kill -9 of the application or of its database, at whatever moment, leaves the
 * batch wholly there or wholly not. The database is the durable one that Ebbline brings along.
 */

const FOLDER = join(stateFolder, "kill-database");
const ROWS = 2_000;

interface Trial {
  readonly victim: "application" | "database";
  /** Name of the file and start of each reference in it. */
  readonly load: string;
  readonly moment: (batchId: string) => Promise<unknown>;
}

let server: EmbeddedServer;
let url: string;
let app: SecondApp;

test.beforeAll(async () => {
  wipePlace(FOLDER);
  server = await startEmbedded(FOLDER);
  url = await makeDatabase(server.url, "ebbline_kill", addAccounts);
  app = await startSecondApp(url);
});
test.afterAll(async () => {
  await app?.stop();
  await server?.stop();
  wipePlace(FOLDER);
});

const assets = `Site;Site name;Country;Time zone;Currency;Line;Line name;Cost per hour;Machine
OST;Ostrowka Mała;PL;Europe/Warsaw;PLN;OST-01;Wrap 1;6450;M1
`;

function events(load: string): string {
  const rows = Array.from(
    { length: ROWS },
    (_, i) => `OST;OST-01;M1;drive;failure;2026-03-${String(1 + (i % 28)).padStart(2, "0")};${load}-${i}`,
  );
  return `Site;Line;Machine;Item class;Kind;Date;Reference\n${rows.join("\n")}\n`;
}

/** As after a power cut of the one or the other; what was killed starts anew, and the rest comes round by itself. */
const startAgain = {
  application: async () => {
    await app.kill();
    await quiet(url);
    app = await startSecondApp(url, app.port);
  },
  database: async () => {
    process.kill(server.processId, "SIGKILL");
    await server.ended;
    await server.stop();
    server = await startEmbedded(FOLDER);
    expect(server.url("ebbline_kill")).toBe(url);
    await expect.poll(async () => (await fetch(`${app.address}/api/health`)).status).toBe(200);
  },
};

/** Hands a file of events in, presses the button, and waits for the moment. @returns Id of the batch. */
async function loadUntil(page: Page, load: string, moment: (batchId: string) => Promise<unknown>) {
  await handIn(page, "events", csv(`${load}.csv`, events(load)));
  const batchId = new URL(page.url()).pathname.split("/").at(-1) ?? "";
  await page.getByRole("button", { name: /^Load \d/ }).click();
  await moment(batchId);
  return batchId;
}

/** Kills the victim at the moment, starts again, and expects the load whole or not at all. */
async function killDuring(page: Page, { victim, load, moment }: Trial): Promise<"there" | "not"> {
  const batchId = await loadUntil(page, load, moment);
  await startAgain[victim]();
  const { state, written, kept, audited } = await batchOnDisk(url, batchId, `${load}-%`);
  const isThere = state === "committed";
  expect([written, kept, audited], `${load}, ${state}`).toEqual(isThere ? [ROWS, ROWS, 1] : [0, 0, 0]);
  if (victim === "database" && !isThere)
    await expect(page.getByText(/The database did not answer in time/)).toBeVisible();
  return isThere ? "there" : "not";
}

test("a load that is cut off by kill -9 is wholly there or wholly not", async ({ browser }) => {
  test.setTimeout(600_000);
  const context = await browser.newContext({ baseURL: app.address });
  const page = await context.newPage();
  await signIn(page, "planner@halvenor.example");
  await handIn(page, "assets", csv("assets.csv", assets));
  await loadShown(page);

  const moments: readonly Trial["moment"][] = [() => beganToWrite(url), (batchId) => committed(url, batchId)];
  for (const victim of ["application", "database"] as const) {
    const found = { there: 0, not: 0 };
    for (const [i, moment] of moments.entries())
      found[await killDuring(page, { victim, load: `${victim}-${i}`, moment })] += 1;
    process.stdout.write(
      `kill -9 of the ${victim}: the load was ${found.not} times wholly not there, ${found.there} times wholly there\n`,
    );
    expect(found.not, `no kill of the ${victim} came before the commit`).toBeGreaterThan(0);
    expect(found.there, `no kill of the ${victim} came after the commit`).toBeGreaterThan(0);
  }

  await loadUntil(page, "afterwards", (batchId) => committed(url, batchId));
  await context.close();
});
