import { expect } from "@playwright/test";
import { openFolds } from "./support/openFolds";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("care given is recorded, lifts the lot off the top, and is taken back", async ({ page }) => {
  test.setTimeout(120_000);
  await signIn(page, "planner@halvenor.example");
  await page.goto("/care");
  const due = page.getByRole("table", { name: "Lots that need care, the most urgent first" });
  const first = due.getByRole("row").nth(1);
  await expect(first).toContainText("Overdue");
  const bin = (await first.getByRole("rowheader").textContent()) ?? "";
  await first.getByRole("button", { name: /^Record / }).click();
  const form = page.getByRole("dialog");
  await form.getByLabel("Done by").fill("Electrician A");
  await form.getByRole("button", { name: "Record it" }).click();
  await expect(page.getByText(`Care of ${bin} recorded.`)).toBeVisible();
  await expect(due.getByRole("row", { name: new RegExp(bin) })).toContainText("Later");
  await expect(page.getByRole("table", { name: "Care given" })).toContainText("Electrician A");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(due.getByRole("row", { name: new RegExp(bin) })).toContainText("Overdue");
});

test("levels say what to order and why, and the surplus is handed over as a file", async ({ page }) => {
  test.setTimeout(120_000);
  await signIn(page, "planner@halvenor.example");
  await page.goto("/levels");
  await expect(page.getByRole("table", { name: "Minimum and maximum by part and site" })).toContainText(
    "Order up to the maximum below the minimum.",
  );
  const files = page.getByRole("link", { name: "CSV" });
  const answer = await page.request.get((await files.getAttribute("href")) ?? "");
  expect(answer.status()).toBe(200);
  expect(await answer.text()).toContain("Surplus, pieces");
  const sheet = await page.request.get(
    (await page.getByRole("link", { name: "XLSX" }).getAttribute("href")) ?? "",
  );
  expect((await sheet.body()).subarray(0, 2).toString()).toBe("PK");
});

test("the book of a part opens to its lots, and pieces go on hold under a name", async ({ page }) => {
  test.setTimeout(120_000);
  await signIn(page, "planner@halvenor.example");
  await page.goto("/parts");
  await page.getByRole("link", { name: "TM-HR-010" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "TM-HR-010" })).toBeVisible();
  await openFolds(page);
  const opened = page.locator("details").filter({ hasText: /^OST: from \d+ on the book/ });
  await opened.locator("summary").first().click();
  await expect(opened).toContainText("wrong revision");
  await expect(opened).toContainText("last powered 20 May 2016");
  await page.getByRole("button", { name: "Put pieces on hold" }).click();
  const form = page.getByRole("dialog");
  await form.getByLabel("Pieces").fill("1");
  await form.getByLabel("Why").fill("wet box");
  await form.getByRole("button", { name: "Put on hold" }).click();
  await expect(page.getByText("Put on hold under your name")).toBeVisible();
  await page.goto("/care");
  const held = page.getByRole("table", { name: "Pieces on hold" });
  await expect(held.getByRole("row", { name: /wet box/ })).toContainText("Spares planner");
});
