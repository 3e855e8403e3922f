import { type Browser, expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const PHONE = { width: 390, height: 844 };

/** Opens a count of some bins of a site and gives its address. */
async function open(page: Page, site: RegExp, bins: string): Promise<string> {
  await page.goto("/counts");
  const choice = page.getByLabel("Site", { exact: true });
  await choice.selectOption({
    label: (await choice.locator("option").filter({ hasText: site }).textContent()) ?? "",
  });
  await page.getByLabel("Bins that begin with").fill(bins);
  await page.getByRole("button", { name: "Open the count" }).click();
  await expect(page).toHaveURL(/\/counts\/[0-9a-f-]{36}$/);
  return page.url();
}

const lots = (page: Page) => page.locator("main details.disclosure");

/** Opens the lot at a place of the sheet and gives its form. */
async function lot(page: Page, place: number) {
  const one = lots(page).nth(place);
  const form = one.getByRole("form");
  if (!(await form.isVisible())) await one.locator("summary").click();
  await expect(form).toBeVisible();
  return form;
}

/** Leaves what is being written, which saves it. */
const leave = (page: Page) => page.getByRole("heading", { level: 1 }).click();

async function someoneElse(browser: Browser, email: string): Promise<Page> {
  const page = await (await browser.newContext({ viewport: PHONE })).newPage();
  await signIn(page, email);
  return page;
}

test("two people on phones write the same line: one stands, the other sees what changed and loses nothing", async ({
  page,
  browser,
}) => {
  test.setTimeout(120_000);
  await page.setViewportSize(PHONE);
  await signIn(page, "planner@halvenor.example");
  const address = await open(page, /^OST/, "R2");
  const other = await someoneElse(browser, "technician.ost@halvenor.example");
  await other.goto(address);

  const theirs = await lot(other, 0);
  await theirs.getByLabel("Pieces found").fill("2");
  await theirs.getByLabel("Note").fill("one box open");
  await leave(other);
  await expect(theirs.getByRole("status")).toContainText("Saved");

  const mine = await lot(page, 0);
  await mine.getByLabel("Pieces found").fill("5");
  await mine.getByLabel("Note").fill("counted twice");
  await leave(page);
  await expect(mine.getByRole("alert")).toContainText("Technician Ostrowka wrote this line meanwhile");
  await expect(mine).toContainText("2, usable, one box open; by Technician Ostrowka");
  await expect(mine).toContainText("5, usable, counted twice; by you");
  await expect(mine.getByLabel("Pieces found")).toHaveValue("5");
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);

  // What was typed outlives the page.
  await page.reload();
  const again = await lot(page, 0);
  await expect(again.getByLabel("Note")).toHaveValue("counted twice");
  await again.getByLabel("Note").fill("counted three times");
  await leave(page);
  await again.getByRole("button", { name: "Write mine over theirs" }).click();
  await expect(again.getByRole("status")).toContainText("Saved");
  await other.reload();
  const seen = await lot(other, 0);
  await expect(seen.getByLabel("Pieces found")).toHaveValue("5");
  await expect(seen.getByLabel("Note")).toHaveValue("counted three times");
  await other.context().close();
});

test("what is counted without a connection is kept on the phone and sent when it is back", async ({
  page,
  context,
}) => {
  test.setTimeout(120_000);
  await page.setViewportSize(PHONE);
  await signIn(page, "planner@halvenor.example");
  await open(page, /^OST/, "R4");
  const form = await lot(page, 1);
  await context.setOffline(true);
  await form.getByLabel("Pieces found").fill("3");
  await leave(page);
  await expect(form.getByRole("status")).toContainText("No connection");
  await context.setOffline(false);
  await expect(form.getByRole("status")).toContainText("Saved", { timeout: 30_000 });
  await page.reload();
  await expect((await lot(page, 1)).getByLabel("Pieces found")).toHaveValue("3");
});

test("a count is written, a find put on it, compared, approved by a second person, posted and taken back", async ({
  page,
  browser,
}) => {
  test.setTimeout(180_000);
  await signIn(page, "planner@halvenor.example");
  const address = await open(page, /^KAR/, "R1");
  await expectAccessible(page);
  const count = await lots(page).count();
  for (let place = 0; place < count; place += 1) {
    const form = await lot(page, place);
    await form.getByLabel("Pieces found").fill("0");
    await form.getByRole("button", { name: "Save this line" }).click();
    await expect(form.getByRole("status")).toContainText("Saved");
  }
  const find = page.getByRole("form", { name: "Pieces found without a record" });
  await find.getByLabel("Number on the plate").fill("tm hr 010");
  await find.getByLabel("Where it lies").fill("Cupboard 3");
  await find.getByLabel("Pieces found").fill("4");
  await find.getByRole("button", { name: "Put it on the sheet" }).click();
  await expect(page.getByText("Bin Cupboard 3, TM-HR-010")).toBeVisible();

  await page.getByRole("link", { name: "Differences" }).click();
  const differing = page.getByRole("table", { name: "Lines that differ from the book" });
  await expect(differing).toContainText("Cupboard 3");
  await expect(differing).toContainText("+4");
  await expectAccessible(page);
  await page.getByRole("button", { name: "Post the count" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "second person" })).toBeVisible();
  await page.getByRole("button", { name: "Approve the differences" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "You counted on this sheet" })).toBeVisible();

  const other = await (await browser.newContext()).newPage();
  await signIn(other, "engineer@halvenor.example");
  await other.goto(`${address}/variance`);
  await other.getByRole("button", { name: "Approve the differences" }).click();
  await expect(other.getByText(/^Approved on .* by Group engineer/)).toBeVisible();
  await other.context().close();

  await page.reload();
  await page.getByRole("button", { name: "Post the count" }).click();
  await expect(page.getByRole("heading", { name: "Posted" })).toBeVisible();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByRole("heading", { name: "Post the count" })).toBeVisible();
});

test("the sheet prints with room to write, and a technician sees no differences", async ({ page }) => {
  await signIn(page, "technician.ost@halvenor.example");
  await page.goto("/counts");
  await page.getByRole("link", { name: "OST Count 2" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("OST Count 2");
  await expect(page.getByRole("link", { name: "Differences" })).toHaveCount(0);
  await expect(page.getByText("On the book")).toHaveCount(0);
  await page.emulateMedia({ media: "print" });
  await expect(page.getByRole("table", { name: "Count sheet on paper" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Save this line" }).first()).toBeHidden();
  await page.emulateMedia({ media: "screen" });
  const address = page.url();
  await page.goto(`${address}/variance`);
  await expect(page.getByRole("heading", { level: 1 })).not.toHaveText("OST Count 2");
});
