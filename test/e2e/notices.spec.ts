import { expect } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { csv, handIn, loadShown } from "./support/loadRegister";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const NOTICE = `Tarnholt Motion
Bulletin 2026-15 of 30 October 2026

All drives TM-HR-* leave production.
Last orders are accepted until 07/05/2027.
Last shipment: twelve months after this notice
Repair until 31 December 2031
Successor: TM-HE-*`;

test("a notice for a whole family is entered, counted and priced in under a minute, and taken back", async ({
  page,
}) => {
  test.setTimeout(240_000);
  await signIn(page, "planner@halvenor.example");
  await page.goto("/notices/new");
  await expectAccessible(page);
  const started = Date.now();
  await page.getByLabel("Text of the notice").fill(NOTICE);
  await page.getByRole("button", { name: "Read it" }).click();
  await expect(page.getByLabel(/^Parts/)).toHaveValue("TM-HR-*");
  await expect(page.getByLabel(/^Notice given on/)).toHaveValue("2026-10-30");
  await expect(page.getByLabel(/^Last shipment/)).toHaveValue("2027-10-30");
  // Day and month can be swapped: nothing is taken until a person says which.
  await expect(page.getByLabel(/^Last order/)).toHaveValue("");
  await expect(page.getByText("which day is meant?")).toBeVisible();
  await page.getByRole("button", { name: "7 May 2027, day before month" }).click();
  await expect(page.getByText("Start the order by 5 Mar 2027.")).toBeVisible();
  await page.getByRole("button", { name: "Look it over" }).click();
  await expect(
    page.getByText("4 parts, 560 units in service: KAR 90, OST 100, PIN 120, TAD 60, THO 40, VEL 150."),
  ).toBeVisible({ timeout: 60_000 });
  await page.getByRole("button", { name: "Keep this notice" }).click();
  await page.getByRole("link", { name: "Work out Heron R" }).click({ timeout: 60_000 });
  const price = page.getByText("at list price, without freight");
  await expect(price).toBeVisible({ timeout: 60_000 });
  const seconds = (Date.now() - started) / 1000;
  process.stdout.write(`A notice for the Heron R family entered and priced in ${seconds.toFixed(1)} s.\n`);
  expect(seconds).toBeLessThan(60);

  await page.goto("/dates");
  await expect(page.getByText("5 Mar 2027").first()).toBeVisible({ timeout: 60_000 });
  await page.goto("/notices");
  await expectAccessible(page);
  await page.getByRole("link", { name: "Bulletin 2026-15", exact: true }).first().click();
  await expect(page.getByText(/^SHA-256 [0-9a-f]{64}$/)).toBeVisible();
  await expectAccessible(page);
  const download = page.waitForEvent("download");
  await page.getByRole("link", { name: "pasted text" }).click();
  expect((await download).suggestedFilename()).toBe("notice.txt");
  await page.getByRole("button", { name: "Take it back" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Take it back" }).click();
  await expect(page.getByText(/taken back\.$/)).toBeVisible();
});

test("entries that cannot hold are named at their fields, and nothing typed is lost", async ({ page }) => {
  await signIn(page, "planner@halvenor.example");
  await page.goto("/notices/new");
  await page.getByLabel(/^Document/).fill("Letter 1");
  await page.getByLabel(/^Parts/).fill("ZZ-*");
  await page.getByLabel(/^Last order/).fill("2027-04-30");
  await page.getByRole("button", { name: "Look it over" }).click();
  await expect(page.getByText("No part on record fits this.")).toBeVisible();
  await expect(page.getByLabel(/^Document/)).toHaveValue("Letter 1");
});

test("a decision is kept with every step, reads the same later, and gives way to another", async ({
  page,
}) => {
  test.setTimeout(240_000);
  await signIn(page, "planner@halvenor.example");
  await page.goto("/notices");
  await page.getByRole("link", { name: /^Heron R: / }).click();
  const standing = page.getByRole("link", { name: /: \d+ pieces?, by / });
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible({ timeout: 60_000 });
  if ((await standing.count()) === 0 && page.url().includes("/decisions/"))
    await page.getByRole("link", { name: "How many to buy" }).click();
  const buy = page.getByRole("table", { name: "Quantities by assumption" }).getByRole("row").nth(1);
  const quantity = async () => Number(await buy.getByRole("cell").nth(2).textContent());
  const bySize = await quantity();
  await page.getByLabel("Who shares the stock").selectOption("family");
  await expect.poll(quantity).toBeLessThan(bySize);
  await page.getByLabel("Who shares the stock").selectOption("site");
  await expect.poll(quantity).toBeGreaterThan(bySize);
  await page.getByLabel("Who shares the stock").selectOption("part");
  await page.getByLabel("Repair goes on as offered").uncheck();
  await expect.poll(quantity).toBeGreaterThan(bySize);
  await page.getByLabel("Repair goes on as offered").check();
  await page.getByLabel("The retrofits come").selectOption({ label: "two years late" });
  await expect.poll(quantity).toBeGreaterThan(bySize);
  await page.getByLabel("The retrofits come").selectOption({ label: "as planned" });
  await page.getByText("Suppose a year of retrofit").click();
  await page.getByLabel("Lines and years").fill("VEL-01 2028\nVEL-02 2028\nPIN-01 2028");
  await expect(page.getByText("A year of retrofit is supposed for 3 of 18 lines")).toBeVisible();
  await expect.poll(quantity).toBeLessThan(bySize);
  await expect(page.getByText(/Does not run on: .*VEL-03/)).toBeVisible();
  await expectAccessible(page);

  await page.getByLabel("TM-HR-010 at KAR").fill("9");
  await page.getByLabel(/^Decided by/).fill("Planner and site manager of VEL");
  await page.getByLabel(/^Reason/).fill("Bridge to the retrofits of 2028");
  await page.getByRole("button", { name: "Keep the decision" }).click();
  await expect(page).toHaveURL(/\/last-buy\/decisions\//, { timeout: 60_000 });
  await expect(page.getByText("Bridge to the retrofits of 2028")).toBeVisible();
  await expect(page.getByText("VEL-02 2028")).toBeVisible();
  await expectAccessible(page);
  const words = async () => (await page.getByRole("main").textContent()) ?? "";
  const first = await words();
  const address = page.url();
  const download = page.waitForEvent("download");
  await page.getByRole("link", { name: "Every step as XLSX" }).click();
  expect((await download).suggestedFilename()).toBe("last-buy-Heron-R-2026-11-30.xlsx");
  await page.goto(address);
  expect(await words()).toBe(first);

  await page.goto("/notices");
  await expect(page.getByRole("row", { name: /2026-14/ })).toContainText("decided");
  await page.goto(address);
  await page.getByRole("link", { name: "How many to buy" }).click();
  await page.getByLabel(/^Decided by/).fill("Planner");
  await page.getByLabel(/^Reason/).fill("The supplier sells in tens");
  await page.getByRole("button", { name: "Keep the decision" }).click();
  await page.getByRole("link", { name: "the decision before" }).click({ timeout: 60_000 });
  await expect(page.getByText("A later decision took its place")).toBeVisible();
  expect(await words()).toContain("Bridge to the retrofits of 2028");
});

test("one event in two registers is merged on a person's word, and parted again", async ({ page }) => {
  test.setTimeout(240_000);
  await signIn(page, "planner@halvenor.example");
  const mark = Date.now().toString(36).toUpperCase();
  const rows = `Site;Line;Machine;Class of item;Kind of event;Happened at;Stop;Source register;Number in the source
VEL;VEL-01;M01;drive;failure;2026-11-25 08:00;3.5;work order;WO-${mark}
VEL;VEL-01;M01;drive;failure;2026-11-25 08:25;;stop log;SL-${mark}
`;
  await handIn(page, "events", csv("two.csv", rows));
  await loadShown(page);
  await page.goto("/events?days=90");
  const pair = page.getByRole("listitem").filter({ hasText: `SL-${mark}` });
  await expect(pair).toContainText("same machine M01");
  await expectAccessible(page);
  await pair.getByRole("button", { name: "One event" }).click();
  await expect(pair.getByText("Say how you know.")).toBeVisible();
  await pair.getByLabel("How you know").fill("Told by the shift lead");
  await pair.getByRole("button", { name: "One event" }).click();
  await expect(page.getByText("Merged: they count once.")).toBeVisible();
  const settled = page.getByRole("table", { name: "Pairs settled by people" });
  await expect(settled).toContainText("Told by the shift lead");
  await expect(page.getByText(`set aside: Same event as work order WO-${mark}`)).toBeVisible();
  await settled.getByRole("button", { name: `Part WO-${mark} and SL-${mark}` }).click();
  await expect(pair).toBeVisible();
  await page.goto("/import");
  const row = page.getByRole("row").filter({ hasText: "two.csv" }).first();
  await row.getByRole("button", { name: "Take back" }).click();
  await page.getByRole("button", { name: "Take this file back" }).click();
  await expect(row).toContainText("taken back");
});

test("a viewer of one site reads notices, and records none", async ({ page }) => {
  await signIn(page, "viewer.tho@halvenor.example");
  await page.goto("/notices");
  await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
  await expect(page.getByRole("link", { name: "Record a notice" })).toHaveCount(0);
  await page.goto("/notices/new");
  await expect(page.getByLabel("Text of the notice")).toHaveCount(0);
});
