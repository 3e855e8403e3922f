import { readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, type Page, test } from "@playwright/test";
import type { RegisterKey } from "@/lib/intake/registers";
import { seedDemo } from "@/lib/launch/fillDatabase";
import { LOADING_ORDER } from "@/lib/view/importPattern";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { leaveOutUnregistered } from "@/test/support/leaveOutUnregistered";
import { addAccounts, type SecondApp, startSecondApp } from "@/test/support/secondApp";
import { handIn, loadShown } from "./support/loadRegister";
import { signIn } from "./support/signIn";

const FOLDER = join(import.meta.dirname, "../../seed/registers");
const AS_OF = "2026-11-30";

let seeded: FreshDatabase;
let fresh: FreshDatabase;
/** The demonstration without what no register has a column for. */
let first: SecondApp;
let second: SecondApp;

test.beforeAll(async () => {
  seeded = await freshDatabase("registers-demo");
  await seedDemo(seeded.url);
  await leaveOutUnregistered(seeded.url);
  first = await startSecondApp(seeded.url);
  fresh = await freshDatabase("registers-browser");
  await addAccounts(fresh.url);
  second = await startSecondApp(fresh.url);
});
test.afterAll(async () => {
  await first?.stop();
  await second?.stop();
  await seeded?.close();
  await fresh?.close();
});

test("an empty installation fed with the demonstration's registers ranks its lines as the demonstration does", async ({
  browser,
}) => {
  test.setTimeout(600_000);
  const shown = await browser.newContext({ baseURL: first.address });
  const page = await shown.newPage();
  await signIn(page, "planner@halvenor.example");
  const wanted = [await ranking(page, "loss"), await ranking(page, "score")];
  expect(wanted[0]?.length).toBeGreaterThan(20);
  await shown.close();

  const context = await browser.newContext({ baseURL: second.address });
  const other = await context.newPage();
  await signIn(other, "planner@halvenor.example");
  await other.goto("/import");
  await expect(other.getByText("Nothing is known yet.")).toBeVisible();
  for (const { key } of LOADING_ORDER)
    for (const name of filesOf(key)) {
      await handIn(other, key, join(FOLDER, name));
      await loadShown(other);
    }
  expect([await ranking(other, "loss"), await ranking(other, "score")]).toEqual(wanted);
  await context.close();
});

function filesOf(register: RegisterKey): string[] {
  return readdirSync(FOLDER)
    .filter((name) => name.includes(`-${register}.`))
    .sort();
}

/** Line codes from the first place to the last. */
async function ranking(page: Page, by: "loss" | "score"): Promise<(string | null)[]> {
  await page.goto(`/lines?asOf=${AS_OF}&by=${by}`);
  const table = page.getByRole("table", {
    name: by === "loss" ? "Lines by stop loss" : "Lines by risk score",
  });
  await expect(table).toBeVisible({ timeout: 60_000 });
  const links = table.getByRole("rowheader").getByRole("link");
  return links.evaluateAll((all) => all.map((link) => new URL((link as HTMLAnchorElement).href).pathname));
}
