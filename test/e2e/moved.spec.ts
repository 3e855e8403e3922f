import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const engineer = "engineer@halvenor.example";
const planner = "planner@halvenor.example";
const thornby = "viewer.tho@halvenor.example";
const NUMBER = "TM-HR-020";

/** Takes the snapshot of a day, or finds it taken. */
async function takeSnapshot(page: Page, asOf: string): Promise<void> {
  await page.goto(`/moved?asOf=${asOf}`);
  await page.getByRole("button", { name: "Take a snapshot now" }).click();
  await expect(
    page.getByText(/^(Snapshot of .* taken\.|There is a snapshot of .* already;.*)$/),
  ).toBeVisible();
}

/** Whole euros as printed, such as −1 234. */
function eurosIn(text: string): number {
  const [, sign = "", digits = ""] = /([+\u2212]?)([\d\u202f]+)\s*$/.exec(text.trim()) ?? [];
  return Number(digits.replaceAll("\u202f", "")) * (sign === "\u2212" ? -1 : 1);
}

const shelf = (page: Page) => page.getByRole("table", { name: /Who has one/ });

async function openPart(page: Page): Promise<void> {
  await page.goto("/parts");
  await page.getByRole("link", { name: NUMBER, exact: true }).click();
  await expect(shelf(page)).toBeVisible();
}

/** The bin of the first usable lot at a site. */
async function firstBin(page: Page, site: string): Promise<string> {
  const row = shelf(page)
    .getByRole("row")
    .filter({ has: page.getByRole("rowheader", { name: site }) })
    .filter({ has: page.getByRole("cell", { name: "Usable" }) })
    .first();
  return ((await row.getByRole("cell").first().textContent()) ?? "").trim();
}

/** Writes the pieces of a bin; gives those it held. */
async function count(page: Page, bin: string, pieces: string): Promise<string> {
  await shelf(page)
    .getByRole("button", { name: `Change ${bin}`, exact: true })
    .first()
    .click();
  const dialog = page.getByRole("dialog");
  const field = dialog.getByLabel(/Pieces in this bin/);
  const was = await field.inputValue();
  await field.fill(pieces);
  await dialog.getByRole("button", { name: "Save" }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByText(new RegExp(`Stock in OST ${bin} changed`))).toBeVisible();
  return was;
}

const movedTable = (page: Page) => page.getByRole("table", { name: "What moved the stop loss of each line" });
const stepInputs = (page: Page, step: string) => page.getByRole("table", { name: `Changed inputs: ${step}` });

test.describe("what moved", () => {
  test.describe.configure({ mode: "serial", timeout: 180_000 });

  test("says when snapshots are taken while there are none", async ({ page }) => {
    await signIn(page, thornby);
    await page.goto("/moved");
    await expect(page.getByText("No snapshot yet")).toBeVisible();
    await expect(page.getByText(/stands at 30 Nov 2026, so none is taken by itself/)).toBeVisible();
    await expect(page.getByRole("button", { name: "Take a snapshot now" })).toHaveCount(0);
    await expectAccessible(page);
  });

  test("takes one for a day, and tells that it is there", async ({ page }) => {
    await signIn(page, engineer);
    await page.goto("/moved");
    await page.getByRole("button", { name: "Take a snapshot now" }).click();
    await expect(page.getByText("One snapshot so far, of 30 Nov 2026")).toBeVisible();
    await page.getByRole("button", { name: "Take a snapshot now" }).click();
    await expect(page.getByText(/There is a snapshot of 30 Nov 2026 already/)).toBeVisible();
  });

  test("tells a count of stock from the passing of a week, to the last euro", async ({ page }) => {
    await signIn(page, planner);
    await openPart(page);
    const bin = await firstBin(page, "OST");
    const was = await count(page, bin, "1");
    expect(Number(was)).toBeGreaterThan(1);
    await signIn(page, engineer);
    await takeSnapshot(page, "2026-12-07");
    await signIn(page, planner);
    await openPart(page);
    expect(await count(page, bin, was)).toBe("1");
    await signIn(page, engineer);
    await page.goto("/moved");
    await expect(
      page.getByText(/stop loss (rose|fell) by €\s[\d\u202f]+ a year from 30 Nov 2026 to 7 Dec 2026/),
    ).toBeVisible();
    const foot = movedTable(page).locator("tfoot").getByRole("cell");
    const [, change = "", ...steps] = await foot.allTextContents();
    const sum = steps.slice(0, 6).map(eurosIn);
    expect(sum.reduce((total, euros) => total + euros, 0)).toBe(eurosIn(change));
    expect(sum[2]).toBeGreaterThan(0);
    const rows = await movedTable(page).locator("tbody tr > :nth-child(2)").allTextContents();
    expect(rows.map(eurosIn).reduce((total, euros) => total + euros, 0)).toBe(eurosIn(change));
    await page.locator("summary", { hasText: "Stock" }).click();
    await expect(
      stepInputs(page, "Stock").getByRole("row", { name: new RegExp(`${NUMBER} at OST.*pieces usable`) }),
    ).toBeVisible();
    await expectAccessible(page);
  });

  test("names to a viewer of one site only that site", async ({ page }) => {
    await signIn(page, thornby);
    await page.goto("/moved");
    await expect(movedTable(page)).toBeVisible();
    const codes = await movedTable(page).locator("tbody").getByRole("rowheader").allTextContents();
    expect(codes.length).toBeGreaterThan(0);
    expect(codes.every((code) => code.trim().startsWith("THO-"))).toBe(true);
    await page.locator("summary", { hasText: "Stock" }).click();
    await expect(stepInputs(page, "Stock").getByRole("rowheader")).toHaveText([`${NUMBER} at other sites`]);
    await expect(page.locator("main")).not.toContainText(/\b(VEL|OST|KAR|PIN|TAD)\b/);
    await expectAccessible(page);
  });

  test("compares with the data as they are, by a choice that stays in the address", async ({ page }) => {
    await signIn(page, engineer);
    await page.goto("/moved");
    await page.getByLabel("To", { exact: true }).selectOption({ label: "The data as they are, 30 Nov 2026" });
    await page.getByRole("button", { name: "Compare" }).click();
    await expect(page).toHaveURL(/to=now/);
    await expect(page.getByText(/from 30 Nov 2026 to 30 Nov 2026/)).toBeVisible();
    await expect(page.locator("summary", { hasText: "Clock" })).toContainText("0 changed inputs");
    await page.goto("/moved?from=018f0000-0000-7000-8000-000000000000&to=now");
    await expect(page.getByText("There is nothing here")).toBeVisible();
  });
});
