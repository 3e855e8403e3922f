import { expect, type Page } from "@playwright/test";
import { readSheet } from "read-excel-file/node";
import { money } from "@/lib/view/format";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

/** The value under a label of key figures. */
const figure = (page: Page, label: string) =>
  page.locator(`p.label:text-is("${label}")`).locator("xpath=following-sibling::p[1]/span[1]");

test("a plan is searched for, a pin is priced, the plan is compared, put forward and exported", async ({
  page,
}) => {
  test.setTimeout(180_000);
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/plans");
  await page.getByRole("button", { name: "New plan over years" }).click();
  await page.getByLabel("Name of the plan").fill("Searched for");
  await page.getByRole("button", { name: "Keep" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Searched for" })).toBeVisible({
    timeout: 60_000,
  });
  const path = new URL(page.url()).pathname;

  await page.getByRole("button", { name: "Plan VEL-01" }).click();
  const menu = page.getByRole("dialog");
  await menu.getByLabel("Why").fill("Promised to the works council");
  await menu.getByRole("button", { name: "Pin in" }).click();
  const board = page.getByRole("table", { name: /Plan board/ });
  await expect(board.getByRole("row", { name: /^VEL-01 / }).getByText("pinned in")).toBeVisible({
    timeout: 30_000,
  });

  await page.getByRole("link", { name: "Search", exact: true }).click();
  await page.getByLabel("Longest search").selectOption({ label: "1 min" });
  await page.getByRole("button", { name: "Search for the best plan" }).click();
  await expect(page.getByRole("status").getByText("Found", { exact: true })).toBeVisible({ timeout: 90_000 });
  await expect(page.getByText(/^Proven: in the linear model no plan brings more than/)).toBeVisible();
  await expect(page.getByText(/^Not proven:/)).toBeVisible();
  const cost = page
    .getByRole("table", { name: "Marginal worth" })
    .getByRole("row", { name: /VEL-01 pinned in/ });
  await expect(cost).toContainText(/costs (€|nothing)/);
  const found = await figure(page, "Less loss by the plan found").textContent();
  await page.getByRole("button", { name: "Put it onto the board" }).click();
  await expect(page.getByText("The plan found stands on the board.")).toBeVisible({ timeout: 30_000 });

  await page.getByRole("link", { name: "Board", exact: true }).click();
  await expect(figure(page, "Less loss by the plan")).toContainText(found ?? "none", { timeout: 30_000 });
  await expect(
    board
      .getByRole("row", { name: /^VEL-01 / })
      .locator(".plan-chip")
      .first(),
  ).toBeVisible();

  await page.goto(`/plans/compare?plan=${path.split("/").at(-1)}`);
  const worth = page
    .getByRole("table", { name: "Figures of the plans" })
    .getByRole("row", { name: /^Less loss by the plan/ });
  await expect(worth).toContainText(found ?? "none", { timeout: 30_000 });

  await page.goto(path);
  await page.getByRole("button", { name: "Put forward" }).click();
  await page.getByRole("button", { name: "Put it forward as it stands" }).click();
  await expect(page.getByText(/Put forward: kept as it stood on/)).toBeVisible({ timeout: 60_000 });
  await expect(page.getByRole("button", { name: "Plan VEL-01" })).toHaveCount(0);

  const file = await page.request.get(`/api${path}/request`);
  const rows = await readSheet(await file.body(), "What the plan is worth");
  const written = rows.find(([what]) => what === "Less loss by the plan")?.[1];
  expect(money(Number(written))).toBe(found?.trim());
});
