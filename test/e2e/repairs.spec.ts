import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { openFolds } from "./support/openFolds";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const out = (page: Page) =>
  page.getByRole("table", { name: "Units out for repair, the longest overdue first" });

/** Pieces of a part expected to work at a site, as the part's page says. */
async function usableAt(page: Page, part: string, site: string): Promise<string> {
  await page.goto("/repairs");
  await out(page).getByRole("link", { name: part }).first().click();
  await expect(page.getByRole("heading", { level: 1, name: part })).toBeVisible();
  await openFolds(page);
  const shelf = page.getByRole("table", { name: "Book against usable stock by site" });
  const cells = shelf.getByRole("row", { name: new RegExp(`^${site}`) }).getByRole("cell");
  return (await cells.last().textContent()) ?? "";
}

test("overdue units come first; one is received, moves the figures of its part, and goes out again on undo", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await signIn(page, "planner@halvenor.example");
  const before = await usableAt(page, "TM-HR-040", "VEL");
  await page.goto("/repairs");
  const first = out(page).getByRole("row").nth(1);
  await expect(first).toContainText("97 days overdue");
  await expectAccessible(page);

  await first.getByRole("button", { name: /^Receive / }).click();
  const form = page.getByRole("dialog");
  await form.getByRole("button", { name: "Book it" }).click();
  await expect(form.getByText("Choose what was found.")).toBeVisible();
  await form.getByLabel("Finding").selectOption({ label: "Repaired" });
  await form.getByLabel("Book it as").selectOption({ label: "Usable: it ran under load" });
  await form.getByLabel("Bin it lies in").fill("Returns");
  await form.getByLabel("Cost").fill("910,50");
  await form.getByLabel("Currency").fill("EUR");
  await form.getByRole("button", { name: "Book it" }).click();
  await expect(page.getByText(/^RO-\d+ received\./)).toBeVisible();
  await expect(out(page)).not.toContainText("97 days overdue");

  const tab = await page.context().newPage();
  expect(Number(await usableAt(tab, "TM-HR-040", "VEL"))).toBeGreaterThan(Number(before));
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(out(page)).toContainText("97 days overdue");
  expect(await usableAt(tab, "TM-HR-040", "VEL")).toBe(before);
});

test("a unit is sent out of a lot, promised anew, and taken back", async ({ page }) => {
  test.setTimeout(120_000);
  await signIn(page, "planner@halvenor.example");
  await page.goto("/repairs");
  const choice = page.getByLabel("Taken from");
  const lot = choice.locator("option").filter({ hasText: /^OST TM-HR-010 B2, .* on hold/ });
  await choice.selectOption({ label: (await lot.first().textContent()) ?? "" });
  await page.getByLabel("Serial").fill("HR900001");
  await page.getByRole("textbox", { name: /^Repairer/ }).fill("Quellbrook repair shop");
  await page.getByLabel("Order number").fill("J-1");
  await page.getByRole("button", { name: "Send it out" }).click();
  await expect(page.getByText("J-1 sent out.")).toBeVisible();
  const row = out(page).getByRole("row", { name: /J-1/ });
  await expect(row).toContainText("HR900001");
  await page.getByRole("button", { name: "Close" }).click();

  await row.getByRole("button", { name: "Change J-1" }).click();
  await page.getByRole("dialog").getByLabel("Promised for").fill("2026-12-24");
  await page.getByRole("dialog").getByRole("button", { name: "Save" }).click();
  await expect(row).toContainText("24 Dec 2026");
  await row.getByRole("button", { name: "Take J-1 back" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "It was not sent" }).click();
  await expect(row).toHaveCount(0);
});

test("a unit that went out again soon is marked, and repairers are compared with their spans", async ({
  page,
}) => {
  await signIn(page, "viewer@halvenor.example");
  await page.goto("/repairs");
  await expect(page.getByText("again after 41 days")).toBeVisible();
  const records = page.getByRole("table", { name: "Repairs by part and repairer" });
  await expect(records).toContainText("Quellbrook repair shop");
  await expect(page.getByRole("button", { name: "Send it out" })).toHaveCount(0);
});
