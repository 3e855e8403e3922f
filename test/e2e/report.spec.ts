import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

/** The largest site, and the one whose data are weakest. */
const SITES = ["VEL", "TAD"];

/** Pages of the PDF the page prints to: its page objects, without the tree above them. */
async function printedPages(page: Page): Promise<number> {
  const pdf = await page.pdf({ preferCSSPageSize: true });
  return pdf.toString("latin1").match(/\/Type\s*\/Page(?![a-zA-Z])/g)?.length ?? 0;
}

test("the report of the group prints on one A4 page", async ({ page }) => {
  await signIn(page, "viewer@halvenor.example");
  await page.goto("/report");
  await expect(page.getByRole("heading", { level: 1, name: /Monthly report/ })).toBeVisible();
  await expect(page.getByText("expected stop loss in the next twelve months")).toBeVisible();
  expect(await printedPages(page)).toBe(1);
  const pdf = await page.pdf({ preferCSSPageSize: true });
  // A4 in points, 595.28 × 841.89 (ISO 216: 210 mm × 297 mm).
  const boxes = [...pdf.toString("latin1").matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)];
  expect(boxes.map(([, width, height]) => [Math.round(Number(width)), Math.round(Number(height))])).toEqual([
    [595, 842],
  ]);
});

for (const site of SITES)
  test(`the report of ${site} prints on two pages`, async ({ page }) => {
    await signIn(page, "viewer@halvenor.example");
    await page.goto(`/report?site=${site}`);
    await expect(page.getByText(new RegExp(`^${site} .* as of`)).first()).toBeVisible();
    expect(await printedPages(page)).toBe(2);
  });

test("the report names what a reader must decide and what is assumed", async ({ page }) => {
  await signIn(page, "viewer@halvenor.example");
  await page.goto("/report");
  const decisions = page.getByRole("list").filter({ hasText: "how many to buy last" });
  await expect(decisions.getByText(/Heron R: how many to buy last, by/)).toBeVisible();
  await expect(decisions.getByText(/KAR-02-R1: take SEK/)).toBeVisible();
  const projects = page.getByRole("table", { name: "Projects" });
  const row = projects.getByRole("row", { name: /KAR-02-R1/ });
  await expect(row).toContainText("0.75 / 0.79");
  await expect(page.getByText("a 3 % chance happens")).toBeVisible();
});

test("somebody of one site has the report of that site and of no other", async ({ page }) => {
  await signIn(page, "viewer.tho@halvenor.example");
  await page.goto("/report");
  await expect(page.getByText(/^THO .* as of/).first()).toBeVisible();
  await expect(page.getByRole("navigation", { name: "Reports" }).getByRole("link")).toHaveCount(1);
  await page.goto("/report?site=VEL");
  const foreign = await page.getByRole("main").textContent();
  await page.goto("/report?site=XXX");
  expect(await page.getByRole("main").textContent()).toBe(foreign);
  await expect(page.getByText("There is nothing here")).toBeVisible();
});

test("the report can be read by everybody", async ({ page }) => {
  await signIn(page, "viewer@halvenor.example");
  await page.goto("/report");
  await expectAccessible(page);
});
