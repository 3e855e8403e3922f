import { expect } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { AFTER, BEFORE, check, fill, leave, names, openNotBegun, STOPPING, ten } from "./support/axisRecord";
import { settled } from "./support/settled";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("an axis is recorded, its acceptance refused with the reason, then given and taken back", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await signIn(page, "engineer@halvenor.example");
  await openNotBegun(page, 0);
  await expectAccessible(page);
  await page.getByRole("button", { name: "Accept this axis" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "16 checks are not passed" })).toBeVisible();

  for (const [title, after] of Object.entries(AFTER)) await fill(page, title, { ...BEFORE[title], ...after });

  // Longer than before: the guards were placed by the old distance.
  const stops = { ...BEFORE[STOPPING], ...names, "Second name": "Technician A" };
  await fill(page, STOPPING, { ...stops, "10 readings": ten("96") });
  await expect(check(page, STOPPING).getByRole("status")).toContainText("Worst 96, allowed 95");
  await page.getByRole("button", { name: "Accept this axis" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "1 check is not passed" })).toContainText(
    "Worst 96, allowed 95",
  );
  await fill(page, STOPPING, { "10 readings": ten("94") });
  await expect(check(page, STOPPING).getByRole("status")).toContainText(
    "a second name that is not the first",
  );
  await fill(page, STOPPING, { "Second name": "Engineer B" });

  await page.getByRole("button", { name: "Accept this axis" }).click();
  await expect(page.getByText(/Accepted on .*cannot be changed/)).toBeVisible();
  await expect(page.getByRole("form", { name: STOPPING })).toHaveCount(0);
  await expect(page.getByText(/Worst 94, allowed 95 \(before 95/)).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(check(page, STOPPING)).toBeVisible();
});

test("what was typed without a connection is kept, and sent when it is back", async ({ page, context }) => {
  await signIn(page, "engineer@halvenor.example");
  await openNotBegun(page, 1);
  const form = check(page, "Motion network for one hour");
  await expect(form).toBeVisible();
  await settled(page);
  await context.setOffline(true);
  await form.getByLabel(/^With the new drive/).fill("7");
  await leave(page);
  await expect(form.getByRole("status")).toContainText("No connection");
  await context.setOffline(false);
  await expect(form.getByRole("status")).toContainText("Saved", { timeout: 20_000 });
  await page.reload();
  await expect(check(page, "Motion network for one hour").getByLabel(/^With the new drive/)).toHaveValue("7");
  await expect(check(page, "Motion network for one hour").getByRole("status")).toContainText(
    "Counted 7, allowed 0",
  );
});

test("two people write the same check: the second is told and chooses", async ({ page, browser }) => {
  await signIn(page, "engineer@halvenor.example");
  await openNotBegun(page, 1);
  const other = await (await browser.newContext()).newPage();
  await signIn(other, "admin@halvenor.example");
  await other.goto(page.url());
  const title = "Motion network for one hour";
  await fill(other, title, { "With the new drive": "3" });
  await check(page, title)
    .getByLabel(/^With the new drive/)
    .fill("4");
  await leave(page);
  await expect(check(page, title).getByRole("alert")).toContainText("Somebody else wrote this check");
  await check(page, title).getByRole("button", { name: "Take theirs" }).click();
  await expect(check(page, title).getByLabel(/^With the new drive/)).toHaveValue("3");
  await other.context().close();
});
