import { expect, type Page } from "@playwright/test";
import { readSheet } from "read-excel-file/node";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

async function newPlan(page: Page, name: string): Promise<string> {
  await page.goto("/plans");
  await page.getByRole("button", { name: "New plan over years" }).click();
  await page.getByLabel("Name of the plan").fill(name);
  await page.getByRole("button", { name: "Keep" }).click();
  await expect(page.getByRole("heading", { level: 1, name })).toBeVisible({ timeout: 60_000 });
  return new URL(page.url()).pathname;
}

const row = (page: Page, code: string) =>
  page.getByRole("table", { name: /Plan board/ }).getByRole("row", { name: new RegExp(`^${code} `) });

test("a plan over years is built, moved, pinned, put forward and exported", async ({ page }) => {
  test.setTimeout(240_000);
  await signIn(page, "admin@halvenor.example");
  const path = await newPlan(page, "Three years of the journey");

  await page.getByRole("button", { name: "Plan VEL-03" }).click();
  const controllers = page.getByRole("dialog").getByRole("region", { name: /Controllers first/ });
  await controllers.getByRole("button", { name: "Summer shutdown 2027" }).click();
  const chip = row(page, "VEL-03").getByRole("button", { name: /Controllers first.*Summer shutdown 2027/ });
  await expect(chip).toBeVisible({ timeout: 30_000 });
  await expect(
    page.getByRole("status").getByText("VEL-03: Controllers to Summer shutdown 2027."),
  ).toBeVisible();

  await chip.focus();
  await page.keyboard.press("Alt+ArrowRight");
  await expect(row(page, "VEL-03").getByRole("button", { name: /Summer shutdown 2028/ })).toBeVisible({
    timeout: 30_000,
  });
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(chip).toBeVisible({ timeout: 30_000 });

  await page.getByRole("button", { name: "Plan PIN-06" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Pin out" }).click();
  await expect(page.getByRole("dialog").getByText(/Say why/)).toBeVisible();
  await page.getByRole("dialog").getByLabel("Why").fill("The product is to be dropped");
  await page.getByRole("dialog").getByRole("button", { name: "Pin out" }).click();
  await expect(row(page, "PIN-06").getByText("pinned out")).toBeVisible({ timeout: 30_000 });
  await expect(row(page, "PIN-06").getByText(/risk held until 30 Jun 2027/)).toBeVisible();

  await page.getByRole("button", { name: "Fill by the ranking" }).click();
  await expect(row(page, "PIN-03").locator(".plan-chip").first()).toBeVisible({ timeout: 60_000 });
  await expect(row(page, "PIN-06").locator(".plan-chip")).toHaveCount(0);
  await expectAccessible(page);

  await page.getByRole("link", { name: "Choices" }).click();
  await expect(page.getByRole("table", { name: "Planned ways" })).toBeVisible({ timeout: 60_000 });
  await page.getByRole("link", { name: "Money and hands" }).click();
  await expect(page.getByRole("table", { name: "Money by year" })).toBeVisible({ timeout: 60_000 });
  await expectAccessible(page);

  await page.getByRole("link", { name: "Board" }).click();
  await page.getByRole("button", { name: "Put forward" }).click();
  await page.getByRole("button", { name: "Put it forward as it stands" }).click();
  await expect(page.getByText(/Put forward: kept as it stood on 30 Nov 2026/)).toBeVisible({
    timeout: 60_000,
  });
  await expect(page.getByRole("button", { name: "Plan VEL-03" })).toHaveCount(0);

  await page.goto(`${path}/request`);
  await expect(page.getByRole("article", { name: "Capital request of PIN-03" })).toBeVisible();
  await expect(page.getByText("Do nothing").first()).toBeVisible();
  await expectAccessible(page);
  const file = await page.request.get(`/api${path}/request`);
  const [heads] = await readSheet(await file.body(), "Cash by quarter");
  expect(heads?.slice(0, 2)).toEqual(["Quarter", "All, EUR"]);

  await page.goto(`/plans/compare?plan=${path.split("/").at(-1)}`);
  await expect(page.getByRole("table", { name: "Figures of the plans" })).toContainText("Down the ranking");
  await expectAccessible(page);
});

test("a figure is stated from the keyboard and taken back", async ({ page }) => {
  test.setTimeout(120_000);
  await signIn(page, "admin@halvenor.example");
  await page.goto("/plans/inputs");
  const cell = page.getByRole("button", { name: /^Budget 2028, VEL Velmark/ });
  await cell.focus();
  await page.keyboard.press("Enter");
  await page.getByLabel("Amount").fill("800 000");
  await page.getByLabel("Where it comes from").fill("Site letter");
  await page.getByLabel("Who answers for it").fill("Plant controller VEL");
  await page.keyboard.press("Enter");
  await expect(page.getByRole("button", { name: /^Budget 2028, VEL Velmark: EUR 800/ })).toBeVisible({
    timeout: 30_000,
  });
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByRole("button", { name: /^Budget 2028, VEL Velmark: not stated/ })).toBeVisible({
    timeout: 30_000,
  });
});

test("a plan of more sites than their own is not there for somebody of one", async ({ page, browser }) => {
  test.setTimeout(120_000);
  await signIn(page, "admin@halvenor.example");
  const path = await newPlan(page, "Not for one site");
  const other = await (await browser.newContext()).newPage();
  await signIn(other, "viewer.tho@halvenor.example");
  await other.goto("/plans/00000000-0000-7000-8000-000000000000/choices");
  const nothing = await other.getByRole("main").textContent();
  for (const part of ["choices", "money", "request"]) {
    await other.goto(`${path}/${part}`);
    expect(await other.getByRole("main").textContent()).toBe(nothing);
  }
  expect((await other.request.get(`/api${path}/request`)).status()).toBe(404);
  await other.context().close();
});
