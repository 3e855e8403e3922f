import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

/** Another set is another evaluation of the whole group. */
const RECKONED = { timeout: 40_000 };

test.setTimeout(180_000);

const setRow = (page: Page, name: string | RegExp) =>
  page.getByRole("table", { name: "Stop loss under each set of assumptions" }).getByRole("row", { name });
const versionTable = (page: Page) => page.getByRole("table", { name: "Versions of the assumptions" });

async function openAssumptions(page: Page): Promise<void> {
  await page.goto("/assumptions");
  await expect(setRow(page, /^Likely/)).toBeVisible(RECKONED);
}

/** Finds one value in the long table and opens its form. */
async function openForm(page: Page, found: { search: string; of: string }) {
  const table = page.getByRole("table", { name: "Assumptions in every set" });
  await page.getByLabel("Filter rows").fill(found.search);
  const row = table.getByRole("row").filter({ has: page.getByRole("cell", { name: found.of, exact: true }) });
  await row.getByRole("button", { name: "Change" }).first().click();
  return page.getByRole("dialog");
}

test("another set in use moves the figures, is named beside them, and is taken back", async ({ page }) => {
  await signIn(page, "admin@halvenor.example");
  await openAssumptions(page);
  await expect(setRow(page, /^Likely/)).toContainText("in use");
  const careful =
    (await setRow(page, /^Careful/)
      .getByRole("cell")
      .first()
      .textContent()) ?? "";
  await expectAccessible(page);
  await setRow(page, /^Careful/)
    .getByRole("button", { name: "Use Careful, version 1" })
    .click();
  await page.getByLabel("Why").fill("The careful view for the plan of the year");
  await page.getByRole("button", { name: "Take into use" }).click();
  await expect(page.getByRole("status").filter({ hasText: "is in use now" })).toBeVisible(RECKONED);
  await expect(setRow(page, /^Careful/).getByText("in use", { exact: true })).toBeVisible(RECKONED);

  const other = await page.context().newPage();
  await other.goto("/report");
  await expect(other.getByText(/assumptions careful, version 1/).first()).toBeVisible(RECKONED);
  await other.goto("/lines/PIN-03#arithmetic");
  await expect(other.getByRole("link", { name: "assumptions careful, version 1" })).toBeVisible(RECKONED);
  await other.close();

  await page.getByRole("button", { name: "Undo" }).click();
  await expect(setRow(page, /^Likely/).getByText("in use", { exact: true })).toBeVisible(RECKONED);
  await page.goto("/report");
  await expect(page.getByText(/assumptions likely, version 1/).first()).toBeVisible(RECKONED);
  // The preview named what the set would give before it was chosen.
  await openAssumptions(page);
  await expect(
    setRow(page, /^Careful/)
      .getByRole("cell")
      .first(),
  ).toHaveText(careful);
});

test("an own value is checked, written as a version with basis and owner, and moves nothing yet", async ({
  page,
}) => {
  await signIn(page, "admin@halvenor.example");
  await openAssumptions(page);
  const likely = await setRow(page, /^Likely/)
    .getByRole("cell")
    .first()
    .textContent();
  const dialog = await openForm(page, { search: "Removal rate", of: "motor" });
  const rate = dialog.getByLabel(/^Removal rate of the class/);
  await rate.fill("25");
  await dialog.getByLabel("Basis").fill("Workshop book of ten years");
  await dialog.getByLabel("Owner").fill("Head of maintenance");
  await dialog.getByRole("button", { name: "Write the version" }).click();
  await expect(dialog.getByText("Write a number from 0.0001 to 5.")).toBeVisible();
  await expect(rate).toHaveAttribute("aria-invalid", "true");
  await expectAccessible(page);

  const fresh = (0.02 + (Date.now() % 10_000) / 1_000_000).toFixed(6);
  await rate.fill(fresh);
  await dialog.getByRole("button", { name: "Write the version" }).click();
  await expect(dialog).toBeHidden();
  await expect(
    page.getByRole("status").filter({ hasText: /Own, version \d+, is written down/ }),
  ).toBeVisible();
  const row = versionTable(page).getByRole("row").filter({ hasText: "Workshop book of ten years" }).first();
  await expect(row).toContainText("Head of maintenance");
  await expect(row).toContainText("Removal rate of the class (motor)");
  await expect(setRow(page, /^Own/)).toBeVisible(RECKONED);
  await expect(setRow(page, /^Likely/)).toContainText("in use");
  await expect(
    setRow(page, /^Likely/)
      .getByRole("cell")
      .first(),
  ).toHaveText(likely ?? "");
});

test("weights are asked for together and must sum to one", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await openAssumptions(page);
  const dialog = await openForm(page, { search: "Weights", of: "all" });
  await expect(dialog.getByRole("spinbutton")).toHaveCount(3);
  const stage = dialog.getByLabel(/^Weights of stage, spares and repair, stage/);
  await stage.fill(String(Number(await stage.inputValue()) + 0.2));
  await dialog.getByLabel("Basis").fill("Agreed in the monthly round, no source");
  await dialog.getByLabel("Owner").fill("Head of maintenance");
  await dialog.getByRole("button", { name: "Write the version" }).click();
  await expect(dialog.getByText("The three weights must sum to 1.")).toBeVisible();
  await expect(dialog.getByRole("alert")).toContainText("Nothing was changed");
});

for (const reader of ["viewer@halvenor.example", "engineer.vel@halvenor.example"])
  test(`${reader} reads the assumptions and changes none`, async ({ page }) => {
    await signIn(page, reader);
    await openAssumptions(page);
    await expect(page.getByRole("table", { name: "Assumptions in every set" })).toBeVisible();
    await expect(page.getByRole("button", { name: /^(Use |Change$)/ })).toHaveCount(0);
    await expect(page.getByRole("columnheader", { name: "Change", exact: true })).toHaveCount(0);
    await expectAccessible(page);
  });
