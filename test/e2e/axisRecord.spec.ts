import { expect, type Page, test } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";

const check = (page: Page, title: string) => page.getByRole("form", { name: title });

async function openFirst(page: Page): Promise<void> {
  await page.goto("/projects/KAR-02-R1");
  await page.getByRole("link", { name: "a record of each axis" }).click();
  await page.getByRole("table", { name: "Axes of the project" }).getByRole("link").first().click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Axis record");
}

/** Leaves the check's form, which saves it. */
const leave = (page: Page) => page.getByRole("heading", { level: 1 }).click();

async function fill(page: Page, title: string, given: Readonly<Record<string, string>>): Promise<void> {
  const form = check(page, title);
  for (const [label, value] of Object.entries(given)) {
    const control = form.getByLabel(new RegExp(`^${label}`));
    if (label === "Result") await control.selectOption({ label: value });
    else await control.fill(value);
  }
  await leave(page);
  await expect(form.getByRole("status")).toContainText("Saved");
}

const names = { "Done by": "Technician A", Day: "2026-11-28" };
const ten = (value: string) => Array.from({ length: 10 }, () => value).join(" ");

test("an axis is recorded, its acceptance refused with the reason, then given and taken back", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await signIn(page, "engineer@halvenor.example");
  await openFirst(page);
  await expectAccessible(page);
  await page.getByRole("button", { name: "Accept this axis" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "16 checks are not passed" })).toBeVisible();

  for (const title of [
    "Isolation, earth and polarity before power",
    "Part and firmware as ordered",
    "End limits, hardware then software",
    "Backup taken after tuning and restored",
  ])
    await fill(page, title, { Result: "Passed", ...names });
  for (const title of ["Safety functions, each channel", "Emergency stop, guards and restart interlock"])
    await fill(page, title, { Result: "Passed", ...names, "Second name": "Engineer B" });
  await fill(page, "Motion network for one hour", { "With the new drive": "0", ...names });
  await fill(page, "Feedback counts of one motor revolution", {
    ...{ "Before removal": "4096", "With the new drive": "4096" },
    ...names,
  });
  await fill(page, "Counts for one unit of travel", {
    ...{ "Before removal": "1000", "With the new drive": "1000,4" },
    ...names,
  });
  await fill(page, "Travel measured over a long move", {
    ...{ "Before removal": "100", "With the new drive": "100.02" },
    ...names,
  });
  await fill(page, "Homing repeats and meets the mark", {
    ...{ "Before removal": "0", Limit: "0.02", "10 readings": ten("0.01") },
    ...names,
  });
  await fill(page, "Drop when the brake takes the load", {
    "Does not apply": "horizontal axis",
    ...names,
    "Second name": "Engineer B",
  });
  await fill(page, "Following error at production speed", {
    ...{ "Before removal": "0.2", "With the new drive": "0.21" },
    ...names,
  });
  await fill(page, "Effective torque at production speed", {
    Limit: "80",
    "With the new drive": "62",
    ...names,
  });
  await fill(page, "Production rate over the proving run", {
    ...{ "Before removal": "300", "With the new drive": "299" },
    ...names,
  });

  // Longer than before: the guards were placed by the old distance.
  const stopping = "Stopping distance at full speed and load";
  const stops = { "Before removal": "95", Limit: "100", ...names, "Second name": "Technician A" };
  await fill(page, stopping, { ...stops, "10 readings": ten("96") });
  await expect(check(page, stopping).getByRole("status")).toContainText("Worst 96, allowed 95");
  await page.getByRole("button", { name: "Accept this axis" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "1 check is not passed" })).toContainText(
    "Worst 96, allowed 95",
  );
  await fill(page, stopping, { "10 readings": ten("94") });
  await expect(check(page, stopping).getByRole("status")).toContainText(
    "a second name that is not the first",
  );
  await fill(page, stopping, { "Second name": "Engineer B" });

  await page.getByRole("button", { name: "Accept this axis" }).click();
  await expect(page.getByText(/Accepted on/)).toBeVisible();
  await expect(page.getByRole("form", { name: stopping })).toHaveCount(0);
  await expect(page.getByText(/Worst 94, allowed 95 \(before 95/)).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(check(page, stopping)).toBeVisible();
});

test("what was typed without a connection is kept, and sent when it is back", async ({ page, context }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/projects/KAR-02-R1/axes");
  await page.getByRole("table", { name: "Axes of the project" }).getByRole("link").nth(1).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Axis record");
  const form = check(page, "Motion network for one hour");
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
  await page.goto("/projects/KAR-02-R1/axes");
  await page.getByRole("table", { name: "Axes of the project" }).getByRole("link").nth(2).click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("Axis record");
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
