import { writeFileSync } from "node:fs";
import { expect } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { csv, handIn, loadShown } from "./support/loadRegister";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

/** One state nobody knows, one count nobody made, dates that do not tell their order, one header that is no name. */
const stock = (mark: string) => `Site;Bin;Maker;Part number;How many there are;State;Last counted
VEL;${mark}-1;Tarnholt Motion;TM-HR-020-B1;4;usable;03/04/2026
VEL;${mark}-2;Tarnholt Motion;TM-HR-020-B1;2;lent to the zoo;05/06/2026
VEL;${mark}-3;Tarnholt Motion;TM-HR-020-B1;some;usable;07/08/2026
`;

test.beforeEach(async ({ page }) => {
  await signIn(page, "planner@halvenor.example");
});

test("the page says what can be loaded, in which order, with a file to start from", async ({ page }) => {
  await page.goto("/import");
  const steps = page.getByRole("region", { name: "Load your registers in this order" });
  await expect(steps.getByRole("heading", { level: 3 })).toHaveText([
    "1. Supply dates",
    "2. Assets",
    "3. Axis survey",
    "4. Stock",
    "5. Events",
    "6. Copies of controllers",
    "7. Numbers to call",
    "8. Shutdown windows",
    "9. Network lists",
  ]);
  const download = page.waitForEvent("download");
  await page.getByRole("link", { name: "Pattern of stock (.csv)" }).click();
  expect((await download).suggestedFilename()).toBe("stock-pattern.csv");
  await expectAccessible(page);
});

test("a file with an error is read, mapped, answered, loaded and taken back", async ({ page }) => {
  const mark = `E${Date.now().toString(36)}`;
  await handIn(page, "stock", csv("shelf.csv", stock(mark)));

  const load = page.getByRole("button", { name: /^Load \d/ });
  await expect(load).toBeDisabled();
  await expect(page.getByText("3 of 3 values (100 %) can be read in two ways")).toBeVisible();

  await page.getByLabel("Field for column How many there are").selectOption({ label: "Quantity" });
  await page.getByRole("radio", { name: /^Day first · 03\/04\/2026 is 3 Apr 2026/ }).check();
  await expect(page.getByText("What stands below is still by the earlier choices.")).toBeVisible();
  await page.getByRole("button", { name: "Read again" }).click();

  const problem = page.getByRole("table", { name: "Problems by row and column" }).getByRole("row").nth(1);
  await expect(problem).toContainText("3");
  await expect(problem).toContainText("State");
  await expect(problem).toContainText("lent to the zoo");
  await expectAccessible(page);

  await expect(load).toHaveText("Load 2 rows");
  await page.getByLabel("Leave out row 4").check();
  await expect(load).toHaveText("Load 1 row");
  await page.getByLabel("Leave out row 4").uncheck();
  await expect(load).toHaveText("Load 2 rows");
  await loadShown(page);
  await expect(page.getByText("2 added, 0 changed")).toBeVisible();
  await expect(page.getByText("1 row refused")).toBeVisible();
  await expect(page.getByRole("link", { name: "Look at the ranking" })).toHaveAttribute("href", /^\/lines/);
  await expectAccessible(page);

  await handIn(page, "stock", csv("shelf.csv", stock(mark)));
  await expect(page.getByText("This very file is loaded already")).toBeVisible();
  await page.getByRole("button", { name: "Drop this file" }).click();
  await expect(page).toHaveURL(/\/import$/);

  const row = page.getByRole("row").filter({ hasText: "shelf.csv" }).first();
  await row.getByRole("button", { name: "Take back" }).click();
  await page.getByRole("button", { name: "Take this file back" }).click();
  await expect(row).toContainText("taken back");
});

test("a file that is none is refused in words, and nothing is kept", async ({ page }) => {
  await page.goto("/import");
  await page.getByRole("button", { name: "Read the file" }).click();
  await expect(page.getByText("Choose the register it holds.")).toBeVisible();
  await expect(page.getByText("Choose a file that is not empty.")).toBeVisible();
  await page.getByLabel("Register it holds").selectOption({ label: "Stock" });
  await page.getByLabel("File", { exact: true }).setInputFiles({
    name: "plan.pdf",
    mimeType: "application/pdf",
    buffer: Buffer.from("%PDF"),
  });
  await page.getByRole("button", { name: "Read the file" }).click();
  await expect(page.getByText("Choose a file that ends in .csv, .txt, .xlsx")).toBeVisible();
});

test("a file above ten megabytes arrives whole, in pieces, and is read beside the page", async ({
  page,
}, info) => {
  const rows = 3_000;
  const remark = "x".repeat(3_900);
  const lines = Array.from(
    { length: rows },
    (_, i) => `VEL;L${i};Tarnholt Motion;TM-HR-020-B1;1;usable;${remark}`,
  );
  const text = `Site;Bin;Maker;Part number;Quantity;State;Remark\n${lines.join("\n")}\n`;
  expect(text.length).toBeGreaterThan(11_000_000);
  const path = info.outputPath("large.csv");
  writeFileSync(path, text);
  await handIn(page, "stock", path);
  await expect(page.getByText(/^3.000 rows: /)).toBeVisible();
  await page.getByRole("button", { name: "Drop this file" }).click();
  await expect(page).toHaveURL(/\/import$/);
});

test("who loads no registers reads so, and gets no pattern", async ({ browser, baseURL }) => {
  const context = await browser.newContext(baseURL === undefined ? {} : { baseURL });
  const page = await context.newPage();
  await signIn(page, "viewer.tho@halvenor.example");
  await page.goto("/import");
  await expect(page.getByText("Registers are loaded by planners and engineers.")).toBeVisible();
  await expect(page.getByRole("button", { name: "Read the file" })).toHaveCount(0);
  const answer = await page.request.get("/api/import/pattern?register=stock");
  expect(answer.status()).toBe(403);
  await expectAccessible(page);
  await context.close();
});
