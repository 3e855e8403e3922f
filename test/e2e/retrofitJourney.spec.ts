import { expect, type Page, test } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import {
  AFTER,
  BEFORE,
  check,
  fill,
  leave,
  names,
  openNotBegun,
  STOPPING,
  ten,
  type,
} from "./support/axisRecord";
import { csv, handIn, loadShown } from "./support/loadRegister";
import { signIn } from "./support/signIn";

// A tablet held at the machine.
test.use({ viewport: { width: 834, height: 1112 }, hasTouch: true });
test.setTimeout(300_000);

const engineer = "engineer@halvenor.example";

/** What the survey read off the controller of the last machine: it was raised since. */
const SURVEY = `Site;Line;Machine;Controller;Controller model;Controller firmware;Controller read on
KAR;KAR-02;M06;KAR-02-K5;Slate 5;24;2026-11-26
`;

const fits = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth);

/** The controllers that stand below the firmware floor, as the scope of KAR-02 names them. */
async function belowFloor(page: Page): Promise<string> {
  await page.goto("/lines/KAR-02/scope");
  const floor = page.getByRole("list", { name: "In the way" }).getByRole("listitem");
  return (await floor.filter({ hasText: "Firmware floor" }).textContent()) ?? "";
}

test("a survey is loaded, the line's verdict follows it, and goes back with it", async ({ page }) => {
  await signIn(page, engineer);
  expect(await belowFloor(page)).toMatch(/KAR-02-K4, KAR-02-K5/);

  await handIn(page, "assets", csv("survey-KAR-02-M06.csv", SURVEY));
  await loadShown(page);
  try {
    const floor = await belowFloor(page);
    expect(floor).toContain("KAR-02-K4");
    expect(floor).not.toContain("KAR-02-K5");
    await expect(page.getByText(/11 of 20 motors match no new drive/)).toBeVisible();
    const reading = page.getByRole("row", { name: /^KAR-02-K5/ });
    await expect(reading).toContainText("Slate 5, level 24");
    expect(await fits(page)).toBe(true);
    await expectAccessible(page);
  } finally {
    await page.goto("/import");
    const row = page.getByRole("row").filter({ hasText: "survey-KAR-02-M06.csv" }).first();
    await row.getByRole("button", { name: "Take back" }).click();
    await page.getByRole("button", { name: "Take this file back" }).click();
    await expect(row).toContainText("taken back");
  }
  expect(await belowFloor(page)).toMatch(/KAR-02-K4, KAR-02-K5/);
});

test("an axis goes from its as-found values through a refusal and a lost connection to its acceptance", async ({
  page,
  context,
}) => {
  await signIn(page, engineer);
  await openNotBegun(page, 2);
  expect(await fits(page)).toBe(true);
  await expectAccessible(page);

  // Before removal; the register holds the scaling, so its counts stand there before anything is typed.
  const counts = check(page, "Feedback counts of one motor revolution").getByLabel(/^By the record/);
  expect(Number(await counts.inputValue())).toBeGreaterThan(1000);
  for (const [title, before] of Object.entries(BEFORE)) await fill(page, title, before);

  // After; the connection goes in the middle of it.
  const [ahead, ...rest] = Object.entries(AFTER);
  if (ahead) await fill(page, ...ahead);
  await context.setOffline(true);
  for (const [title, after] of rest.slice(0, 4)) {
    await type(check(page, title), after);
    await leave(page);
    await expect(check(page, title).getByRole("status")).toContainText("No connection");
  }
  await context.setOffline(false);
  for (const [title] of rest.slice(0, 4))
    await expect(check(page, title).getByRole("status")).toContainText("Saved", { timeout: 30_000 });
  await page.reload();
  for (const [title, { "With the new drive": value }] of rest.slice(0, 4))
    if (value)
      await expect(check(page, title).getByLabel(/^With the new drive/)).toHaveValue(value.replace(",", "."));
  for (const [title, after] of rest.slice(4)) await fill(page, title, after);

  // One stop is longer than the old drive's: the guards were placed by that one.
  await fill(page, STOPPING, {
    ...names,
    "10 readings": `${ten("94").slice(0, -2)}96`,
    "Second name": "Engineer B",
  });
  await page.getByRole("button", { name: "Accept this axis" }).click();
  const refused = page.getByRole("alert").filter({ hasText: "1 check is not passed" });
  await expect(refused).toContainText("Stopping distance at full speed and load: Worst 96, allowed 95");
  await expectAccessible(page);

  // Cured, but by one person alone; then by two.
  await fill(page, STOPPING, { "10 readings": ten("94"), "Second name": " technician a" });
  await page.getByRole("button", { name: "Accept this axis" }).click();
  await expect(refused).toContainText("a second name that is not the first");
  await fill(page, STOPPING, { "Second name": "Engineer B" });
  await page.getByRole("button", { name: "Accept this axis" }).click();
  await expect(page.getByText(/Accepted on 30 Nov 2026 by Group engineer\. The record/)).toBeVisible();
  expect(await fits(page)).toBe(true);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(check(page, STOPPING)).toBeVisible();
});
