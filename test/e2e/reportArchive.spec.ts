import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { type Download, expect, type Page } from "@playwright/test";
import readWorkbook from "read-excel-file/node";
import { readPdf, readSlides, tight } from "../support/readReportFiles";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

async function save(page: Page, name: string): Promise<{ file: Download; bytes: Buffer }> {
  const waits = page.waitForEvent("download");
  await page.getByRole("link", { name, exact: true }).click();
  const file = await waits;
  return { file, bytes: await readFile(await file.path()) };
}

/** Text of each cell of a table on the page, row by row. */
const cellsOf = (page: Page, table: string) =>
  page
    .getByRole("table", { name: table })
    .locator("tbody tr")
    .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));

test("a report is given out, saved in each form with the numbers of the screen, and mailed and saved again the same", async ({
  page,
}) => {
  test.setTimeout(240_000);
  await signIn(page, "approver@halvenor.example");
  await page.goto("/account");
  const mail = page.getByRole("region", { name: "Reports by mail" });
  await mail.getByLabel(/^Of/).selectOption({ label: "KAR Karlsvik" });
  await mail.getByRole("button", { name: "Send it to me" }).click();
  await expect(mail.getByText("Monthly report of KAR, PDF, A4")).toBeVisible();
  await page.goto("/report?site=KAR");
  const headline = await page.getByText("expected stop loss in the next twelve months").textContent();
  const projects = await cellsOf(page, "Projects");
  expect(projects.flat().join(" ")).toContain("0.75 / 0.79");
  await page.getByRole("button", { name: "Give out this report" }).click();
  await expect(page).toHaveURL(/\/report\/archive\/[0-9a-f-]{36}/, { timeout: 60_000 });
  await expect(page.getByText(/Given out .* by Capital approver/)).toBeVisible();
  expect(await cellsOf(page, "Projects")).toEqual(projects);

  const a4 = await save(page, "PDF, A4");
  const letter = await save(page, "PDF, Letter");
  const slides = await save(page, "Slides");
  const workbook = await save(page, "Workbook");
  expect(a4.file.suggestedFilename()).toMatch(/^monthly-report-KAR-2026-11\.pdf$/);
  for (const { bytes } of [a4, letter]) {
    const sheets = await readPdf(bytes);
    expect(sheets).toHaveLength(2);
    expect(tight(sheets[0]?.text ?? "")).toContain(tight(headline ?? "?"));
    for (const cell of projects.flat()) expect(tight(sheets[1]?.text ?? "")).toContain(tight(cell));
  }
  const table = readSlides(slides.bytes).tables.find((rows) => rows[0]?.[0] === "Project");
  expect(table?.slice(1)).toEqual(projects);
  const sheet = (await readWorkbook(workbook.bytes)).find((one) => one.sheet === "Projects")?.data ?? [];
  const place = sheet[0]?.indexOf("Cost index") ?? -1;
  const shown = sheet
    .slice(1)
    .map((row) => `${Number(row[place]).toFixed(2)} / ${Number(row[place + 1]).toFixed(2)}`);
  expect(shown).toEqual(projects.map((row) => row[5]));

  await page.goto("/report/archive");
  await expect(page.getByRole("row", { name: /KAR Karlsvik.*Capital approver/ }).first()).toBeVisible();
  await page.goBack();
  const again = await save(page, "PDF, A4");
  const digest = (bytes: Buffer) => createHash("sha256").update(bytes).digest("hex");
  expect(digest(again.bytes)).toBe(digest(a4.bytes));

  await expect(async () => {
    await page.goto("/account");
    const left = mail.getByText(/Monthly report of KAR Karlsvik, Nov 2026\. Asked for .*: (written to|sent)/);
    await expect(left.first()).toBeVisible({ timeout: 1_000 });
  }).toPass({ timeout: 60_000 });
  await mail.getByRole("button", { name: "End it", exact: true }).click();
  await expect(mail.getByText("None is sent to you.")).toBeVisible();
});

test("who only reads and decides begins with five lines, decisions and projects, on a phone too", async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, "approver@halvenor.example");
  await page.goto("/");
  await expect(page).toHaveURL(/\/home/);
  const main = page.getByRole("main");
  await expect(main.getByRole("heading", { level: 2 })).toHaveText([
    ...["The five lines that lose most", "Decisions asked for", "Projects"],
  ]);
  await expect(main.getByText("Needs", { exact: true })).toHaveCount(5);
  await expect(main.getByText(/cost index 0\.75, schedule index 0\.79/)).toBeVisible();
  await main.getByRole("link", { name: /^KAR-02-R1: take SEK/ }).click();
  await expect(page).toHaveURL(/\/projects\/KAR-02-R1/);
});
