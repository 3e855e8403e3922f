import { readFile } from "node:fs/promises";
import { expect, type Page } from "@playwright/test";
import { parse } from "csv-parse/sync";
import readWorkbook from "read-excel-file/node";
import { expectAccessible } from "./support/accessible";
import { settled } from "./support/settled";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const engineer = "engineer@halvenor.example";
const thornby = "viewer.tho@halvenor.example";
const ACTION = "Ask the line what the panel really needs";

const worse = (page: Page) => page.getByRole("table", { name: "Parts that got worse" });
const actions = (page: Page) => page.getByRole("table", { name: "Actions" });
const purchases = (page: Page) => page.getByRole("table", { name: "Purchase list" });

/** Pages of the PDF the page prints to. */
async function printedPages(page: Page, format: "A4" | "Letter"): Promise<number> {
  const pdf = await page.pdf({ format });
  return pdf.toString("latin1").match(/\/Type\s*\/Page(?![a-zA-Z])/g)?.length ?? 0;
}

async function fetched(page: Page, name: string): Promise<Buffer> {
  const waiting = page.waitForEvent("download");
  await page.getByRole("link", { name }).click();
  return readFile(await (await waiting).path());
}

/** Focuses the row of a part by walking there with j. */
async function walkTo(page: Page, number: string): Promise<void> {
  await page.getByRole("heading", { level: 1 }).click();
  const link = worse(page).getByRole("link", { name: number, exact: true });
  for (let step = 0; step < 20; step += 1) {
    await page.keyboard.press("j");
    if (await link.evaluate((one) => one === document.activeElement)) return;
  }
  throw new Error(`j never came to ${number}`);
}

test.describe("the weekly review", () => {
  test.describe.configure({ mode: "serial", timeout: 180_000 });
  let number = "";

  test("says only what got worse since the last one, and why, in steps that add up", async ({ page }) => {
    await signIn(page, engineer);
    await page.goto("/spares");
    await page.goto("/review?site=VEL");
    await expect(page.getByRole("heading", { level: 1, name: "Weekly review of VEL Velmark" })).toBeVisible();
    await expect(
      page.getByText(/^Since 24 Nov 2026 \(the last review\)\. Listed from a gain of/),
    ).toBeVisible();
    const row = worse(page).locator("tbody > tr").first();
    number = (await row.getByRole("link").first().textContent()) ?? "";
    await row.locator("summary").click();
    const steps = page.getByRole("table", { name: `Steps of ${number}` });
    await expect(steps.getByRole("row")).toHaveCount(8);
    const euros = (await steps.locator("tbody tr td:nth-child(3)").allTextContents()).map((text) =>
      Number(text.replaceAll("\u202f", "").replace("\u2212", "-")),
    );
    expect(euros.slice(0, 6).reduce((sum, one) => sum + one, 0)).toBe(euros[6]);
    await expect(actions(page).locator("tbody tr").first()).toContainText("▲ late");
    await expectAccessible(page);
  });

  test("adds an action from a row with one key, and takes it back", async ({ page }) => {
    await signIn(page, engineer);
    await page.goto("/review?site=VEL");
    await walkTo(page, number);
    await page.keyboard.press("a");
    const dialog = page.getByRole("dialog");
    await dialog.getByLabel("What is to be done").fill(ACTION);
    await page.keyboard.press("Escape");
    await expect(dialog).toBeHidden();
    await walkTo(page, number);
    await page.keyboard.press("a");
    // What was typed and not saved is still there.
    await expect(dialog.getByLabel("What is to be done")).toHaveValue(ACTION);
    await dialog.getByRole("button", { name: "Add the action" }).click();
    await expect(actions(page).getByRole("row", { name: ACTION })).toContainText(number);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(actions(page).getByRole("row", { name: ACTION })).toHaveCount(0);
    await page.getByRole("button", { name: "Add an action" }).click();
    await dialog.getByLabel("What is to be done").fill(ACTION);
    await dialog.getByLabel("Due on").fill("2026-11-27");
    await dialog.getByRole("button", { name: "Add the action" }).click();
    await expect(actions(page).getByRole("row", { name: ACTION })).toContainText("▲ late");
  });

  test("settles an action at once, and opens it again", async ({ page }) => {
    await signIn(page, engineer);
    await page.goto("/review?site=VEL");
    const row = actions(page).getByRole("row", { name: ACTION });
    await row.getByRole("button", { name: "Done" }).click();
    await expect(row).toContainText("● done");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(row).toContainText("▲ late");
  });

  test("keeps what is typed while nobody saved it, lists what is bought, and gives it as files", async ({
    page,
  }) => {
    await signIn(page, engineer);
    await page.goto("/review?site=VEL");
    await page.getByRole("button", { name: "Open the review" }).click();
    const decisions = page.getByRole("textbox", { name: /^Decisions/ });
    await decisions.fill("Two more for the shelf.");
    await page.reload();
    await expect(decisions).toHaveValue("Two more for the shelf.");
    await expect(page.getByText("Typed, on this device")).toBeVisible();
    await decisions.focus();
    await decisions.blur();
    await expect(page.getByRole("form", { name: "Decisions" }).getByText("Saved")).toBeVisible();

    await walkTo(page, number);
    await page.keyboard.press("b");
    const dialog = page.getByRole("dialog");
    await dialog.getByLabel("Quantity").fill("2");
    await dialog.getByRole("button", { name: "Put it on the list" }).click();
    await expect(purchases(page).getByRole("row", { name: number })).toContainText("no-spare chance");
    await page.getByRole("button", { name: "Add a part" }).click();
    await dialog.getByLabel("Part").selectOption({ label: await labelOf(page, "TM-HR-040") });
    await dialog.getByLabel("Quantity").fill("3");
    await dialog.getByLabel("Why").fill("=2+3");
    await dialog.getByRole("button", { name: "Put it on the list" }).click();
    const bought = purchases(page).getByRole("row", { name: "TM-HR-040" });
    await expect(bought).toContainText("€\u00a03\u202f100.00");

    const [sheet] = await readWorkbook(await fetched(page, "Purchase list as XLSX"));
    const cells = sheet?.data.find(([part]) => part === "TM-HR-040");
    expect(cells?.slice(2, 6)).toEqual(["VEL", 3, "pieces", "'=2+3"]);
    expect(cells?.slice(8)).toEqual([3100, "EUR", new Date("2026-06-01T00:00:00.000Z")]);
    await page.getByLabel(`${number} in the file`).uncheck();
    const text = parse(await fetched(page, "Purchase list as CSV"), { bom: true }) as string[][];
    expect(text.map(([part]) => part)).toEqual(["Part", "TM-HR-040"]);
    expect(text[1]?.slice(8)).toEqual(["3100", "EUR", "2026-06-01"]);
  });

  test("is closed as it was shown, prints on two pages at most and stands when opened again", async ({
    page,
  }) => {
    await signIn(page, engineer);
    await page.goto("/review?site=VEL");
    for (const name of ["On what got worse", "On dates and orders", "On repairs, holds and counts"]) {
      const text = page.getByRole("textbox", { name: new RegExp(`^${name}`) });
      await text.fill("A long word. ".repeat(92).trim());
      await text.blur();
      await expect(page.getByRole("form", { name }).getByText("Saved")).toBeVisible();
    }
    await page.getByRole("button", { name: "Close the review" }).click();
    const sheet = page.getByRole("article");
    await expect(sheet.getByRole("heading", { level: 1 })).toHaveText(
      "Weekly review of VEL Velmark, 30 Nov 2026",
    );
    await expect(sheet).toContainText("Two more for the shelf.");
    await expect(sheet).toContainText(ACTION);
    expect(await printedPages(page, "A4")).toBeLessThanOrEqual(2);
    expect(await printedPages(page, "Letter")).toBeLessThanOrEqual(2);
    await expectAccessible(page);
    const before = await sheet.textContent();
    await page.goto("/review?site=VEL");
    await expect(page.getByText(/^Since 30 Nov 2026 \(the last review\)/)).toBeVisible();
    await expect(page.getByText("Nothing got worse since 30 Nov 2026")).toBeVisible();
    await expect(actions(page).getByRole("row", { name: ACTION })).toContainText("▲ late");
    await page.getByRole("table", { name: "Reviews held" }).getByRole("link").first().click();
    await expect(sheet).toBeVisible();
    expect(await sheet.textContent()).toBe(before);
  });

  test("says what a first one compares with", async ({ page }) => {
    await signIn(page, engineer);
    await page.goto("/review?site=KAR");
    await expect(
      page.getByText(/^Since .* \((the records as known a week earlier|the last snapshot)/),
    ).toBeVisible();
    await expect(page.getByText("None yet. The first one compares with")).toBeVisible();
  });

  test("is read and not written by a viewer, and is not there for another site", async ({ page }) => {
    await signIn(page, engineer);
    await page.goto("/review?site=VEL");
    const link = page.getByRole("table", { name: "Reviews held" }).getByRole("link").first();
    const address = (await link.getAttribute("href")) ?? "";
    await page.context().clearCookies();
    await signIn(page, thornby);
    await page.goto("/review");
    await expect(page.getByRole("heading", { level: 1, name: "Weekly review of THO Thornby" })).toBeVisible();
    await expect(page.getByRole("button", { name: /Open the review|Add action|Add an action/ })).toHaveCount(
      0,
    );
    for (const foreign of [address, "/review?site=VEL"]) {
      await page.goto(foreign);
      await expect(page.getByText("There is nothing here")).toBeVisible();
    }
    const file = await page.request.get(`/api${address}?as=csv`);
    expect(file.status()).toBe(404);
  });

  test("comes by mail to who asks for it; without a mail server as a file", async ({ page }) => {
    await signIn(page, engineer);
    await page.goto("/account");
    await expect(page.getByText(/No mail server is set, so each mail is written to a file/)).toBeVisible();
    await page.getByLabel("Mail of").selectOption({ label: "VEL Velmark" });
    await page.getByRole("button", { name: "Send me one now" }).click();
    await expect(async () => {
      await page.reload();
      await expect(page.getByText(/Asked for .*: written to .*\.eml\./).first()).toBeVisible({
        timeout: 500,
      });
    }).toPass({ timeout: 30_000 });
    await expectAccessible(page);
  });

  test("works on a phone without sideways scrolling", async ({ page }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await signIn(page, engineer);
    await page.goto("/review?site=VEL");
    await settled(page);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(Math.max(0, overflow)).toBe(0);
  });
});

/** The whole label of the choice that begins with a part's number. */
async function labelOf(page: Page, start: string): Promise<string> {
  const labels = await page.getByRole("dialog").getByLabel("Part").locator("option").allTextContents();
  return labels.find((label) => label.startsWith(`${start} `)) ?? start;
}
