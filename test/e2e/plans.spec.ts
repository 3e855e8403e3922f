import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const row = (page: Page, code: string) =>
  page
    .getByRole("table", { name: "Ranked lines and the funding line" })
    .getByRole("row", { name: new RegExp(code) });

async function keep(page: Page, address: string, name: string): Promise<string> {
  await page.goto(address);
  await page.getByLabel("Name of the plan").fill(name);
  await page.getByRole("button", { name: "Keep as a plan" }).click();
  await expect(page.getByRole("heading", { level: 1, name })).toBeVisible();
  return new URL(page.url()).pathname;
}

test("a budget draws the funding line, and a pin says what it changes", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/plans/new");
  await expect(page.getByText("Type a budget to draw the funding line")).toBeVisible();
  await page.getByLabel("Budget (EUR)").fill("1 900 000");
  await page.getByRole("button", { name: "Draw the funding line" }).click();
  await expect(page.getByTestId("funding-line")).toContainText(/of €.1\.90.M spent/);
  await expect(row(page, "PIN-03")).toContainText("Funded");
  await expect(row(page, "THO-01")).toContainText("Not funded");
  await expect(page.getByText("This sum is not what the plan is worth")).toBeVisible();

  await page.getByRole("button", { name: "Pin THO-01 in", exact: true }).click();
  await expect(row(page, "THO-01")).toContainText("pinned in");
  await expect(page.getByText(/^THO-01, pinned in: THO-01 comes in/)).toBeVisible();
  await page.goBack();
  await expect(row(page, "THO-01")).toContainText("Not funded");
});

test("pins that cost more than there is are told with how much would be enough", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/plans/new?budget=1000&in=PIN-03&cost=PIN-03:500000");
  await expect(page.getByText("The lines pinned in cost more than the budget")).toBeVisible();
  await expect(page.getByText(/A budget of €.500.k would be enough/)).toBeVisible();
  await expect(page.getByRole("button", { name: "Keep as a plan" })).toHaveCount(0);
});

test("a planner types another cost and goes back to the estimate", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/plans/new?budget=1900000");
  await page.getByRole("button", { name: "Type the cost of PIN-03" }).click();
  await page.getByLabel("Cost of PIN-03 in EUR").fill("500000");
  await page.getByRole("button", { name: "Use", exact: true }).click();
  await expect(row(page, "PIN-03")).toContainText(/€.500.k typed/);
  await page.getByRole("button", { name: "Type the cost of PIN-03" }).click();
  await page.getByRole("button", { name: "Back to the estimate" }).click();
  await expect(row(page, "PIN-03")).not.toContainText("typed");
});

test("a plan is kept, put forward, funded, and starts a project", async ({ page }) => {
  test.slow();
  await signIn(page, "admin@halvenor.example");
  await keep(page, "/plans/new?budget=900000&by=loss", "Retrofits of the journey");
  await page.getByRole("button", { name: "Put forward" }).click();
  await page.getByRole("button", { name: "Fund the plan" }).click();
  await expect(page.getByRole("button", { name: "Take the decision back" })).toBeVisible();
  await page.getByRole("button", { name: "Start a project for PIN-03" }).click();
  await expect(page.getByRole("heading", { level: 1, name: /PIN-03-R\d+/ })).toBeVisible();
  await expect(page.getByRole("row", { name: /Controllers ready \(firmware floor\)/ })).toBeVisible();
  await page.getByRole("button", { name: "Take the start back" }).click();
  await page.getByRole("dialog").getByRole("button", { name: "Take it back" }).click();
  await expect(page).toHaveURL(/\/projects(\?|$)/);
  await expect(page.getByText(/PIN-03-R\d+/)).toHaveCount(0);
});

test("somebody of one site plans its lines, and sees nothing of a plan without them", async ({
  page,
  browser,
}) => {
  test.slow();
  await signIn(page, "engineer.vel@halvenor.example");
  const path = await keep(page, "/plans/new?budget=900000", "Velmark only");
  await expect(page.getByRole("link", { name: /^(OST|KAR|PIN|TAD|THO)-\d/ })).toHaveCount(0);

  const other = await (await browser.newContext()).newPage();
  await signIn(other, "viewer.tho@halvenor.example");
  await other.goto(path);
  const foreign = await other.getByRole("main").textContent();
  await other.goto("/plans/00000000-0000-7000-8000-000000000000");
  expect(await other.getByRole("main").textContent()).toBe(foreign);
  await other.goto("/plans");
  await expect(other.getByText("Velmark only")).toHaveCount(0);
  await other.context().close();

  await page.getByRole("button", { name: "Throw away" }).click();
  await page.getByRole("button", { name: "Throw the draft away" }).click();
  await expect(page).toHaveURL(/\/plans(\?|$)/);
  await expect(page.getByText("Velmark only")).toHaveCount(0);
});

test("plans and cut can be used by everybody", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/plans/new?budget=1900000&in=THO-01");
  await expect(page.getByTestId("funding-line")).toBeVisible();
  await expectAccessible(page);
  await keep(page, "/plans/new?budget=1900000", "To look at");
  await expectAccessible(page);
  await page.goto("/plans");
  await expect(page.getByRole("link", { name: "To look at" }).first()).toBeVisible();
  await expectAccessible(page);
});
