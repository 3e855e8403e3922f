import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const group = "engineer@halvenor.example";
const velmark = "engineer.vel@halvenor.example";
const thornby = "viewer.tho@halvenor.example";

const dates = (page: Page) => page.getByRole("table", { name: "Dates ahead, soonest first" });
const duties = (page: Page) => page.getByRole("table", { name: "Safety and legal dates on record" });

/** Days of the rows shown, as they are kept. */
async function days(page: Page): Promise<string[]> {
  const times = await dates(page).getByRole("rowheader").getByRole("time").all();
  return Promise.all(times.map(async (time) => (await time.getAttribute("datetime")) ?? ""));
}

test.describe("the dates ahead", () => {
  test("stand in time order, what is overdue first, and lead to where each is kept", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/dates");
    await expect(page.getByText(/overdue and \d+ more lie within the next 365 days/)).toBeVisible();
    const shown = await days(page);
    expect(shown.length).toBeGreaterThan(20);
    expect(shown).toEqual([...shown].sort());
    expect(shown[0]).toBe("2026-09-30");
    const ended = dates(page).getByRole("row", { name: /Cost approval OST-03/ });
    await expect(ended).toContainText("Overdue");
    await expect(ended).toContainText("Plant controller OST answers for it");
    await dates(page)
      .getByRole("row", { name: /Safety date THO-01/ })
      .getByRole("link")
      .click();
    await expect(page).toHaveURL(/\/lines\/THO-01#binding/);
  });

  test("are fewer in a nearer window, at one site and of one kind, all in the address", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/dates");
    const all = (await days(page)).length;
    await page
      .getByRole("navigation", { name: "How far ahead" })
      .getByRole("link", { name: "90 days" })
      .click();
    await expect(page).toHaveURL(/within=90/);
    await expect.poll(async () => (await days(page)).length).toBeLessThan(all);
    for (const day of await days(page)) expect(day <= "2027-02-28").toBe(true);
    await page.getByRole("navigation", { name: "Site" }).getByRole("link", { name: "THO" }).click();
    await page.getByRole("link", { name: "365 days" }).click();
    await page.getByLabel("Show only Kind").selectOption("Safety date");
    await expect(dates(page).getByRole("rowheader")).toHaveCount(1);
    await expect(dates(page)).toContainText("reach their mission time of 20 years");
    await page.reload();
    await expect(dates(page).getByRole("rowheader")).toHaveCount(1);
  });

  test("know nothing of a duty before it was recorded, nor of another site", async ({ page }) => {
    await signIn(page, thornby);
    await page.goto("/dates?within=all");
    await expect(duties(page)).toContainText("THO-01");
    expect(await page.content()).not.toMatch(/OST|VEL-|inspectorate/);
    await expect(page.getByRole("button", { name: /Add a date|Mark done|Change/ })).toHaveCount(0);
    await page.goto("/dates?asOf=2026-05-11");
    await expect(page.getByText("No safety or legal date is on record")).toBeVisible();
  });

  test("are accessible in light and dark, and fit a phone", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/dates");
    await expect(dates(page)).toBeVisible();
    await expectAccessible(page);
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });
});

test.describe("a safety or legal date", () => {
  test("is added, changed, marked done and removed by an engineer of the site", async ({ page }) => {
    await signIn(page, velmark);
    await page.goto("/dates");
    await page.getByRole("button", { name: "Add a date" }).click();
    await page.getByRole("button", { name: "Save the date" }).click();
    await expect(page.getByText("Say what must be done.")).toBeVisible();
    await expect(page.getByText("Choose a site.")).toBeVisible();
    await page.getByLabel(/^What must be done/).fill("Light curtain to be proven again");
    await page.getByLabel(/^What it concerns/).selectOption({ label: "VEL-09 Label" });
    await expect(page.getByLabel(/^What it concerns/).locator("option", { hasText: "OST" })).toHaveCount(0);
    await page.getByLabel(/^Due on/).fill("2027-01-31");
    await page.getByLabel(/^Where the duty comes from/).fill("Invented machine file VEL-09, sheet 2");
    await page.getByRole("button", { name: "Save the date" }).click();
    const row = duties(page).getByRole("row", { name: /Light curtain/ });
    await expect(row).toContainText("31 Jan 2027");
    await expect(dates(page).getByRole("row", { name: /Light curtain/ })).toBeVisible();

    await page.goto("/lines");
    await expect(
      page.getByRole("img", { name: "Safety date 31 Jan 2027: Light curtain to be proven again" }),
    ).toBeVisible();

    await page.goto("/dates");
    await row.getByRole("button", { name: "Change" }).click();
    await page.getByLabel(/^Due on/).fill("2027-02-28");
    await page.getByRole("button", { name: "Save the date" }).click();
    await expect(row).toContainText("28 Feb 2027");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(row).toContainText("31 Jan 2027");

    await row.getByRole("button", { name: "Mark done" }).click();
    await page.getByRole("button", { name: "Mark as done" }).click();
    await expect(row).toContainText("done on 30 Nov 2026");
    await expect(dates(page).getByRole("row", { name: /Light curtain/ })).toHaveCount(0);
    await row.getByRole("button", { name: "Open again" }).click();
    await expect(row).toContainText("open");
    await row.getByRole("button", { name: "Remove" }).click();
    await page.getByRole("button", { name: "Remove from the record" }).click();
    await expect(row).toHaveCount(0);
  });

  test("stands on the dossier beside the money, with who decides", async ({ page }) => {
    await signIn(page, thornby);
    await page.goto("/lines/THO-01");
    const binding = page.getByRole("region", { name: "Binding dates" });
    await expect(binding).toContainText("30 Sep 2027: Safety relays and guard switches");
    await expect(binding).toContainText("A named competent person decides");
    await page.goto("/report");
    const table = page.getByRole("table", { name: "Safety and legal dates within 24 months" });
    await expect(table).toContainText("THO-01");
  });
});

test.describe("what a stop costs", () => {
  test("is told for five lengths, with the step a customer's standstill adds", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines/PIN-01#stop-cost");
    const table = page.getByRole("table", { name: "What a stop costs on PIN-01" });
    await expect(table.getByRole("rowheader")).toHaveText(["1 h", "4 h", "8 h", "24 h", "72 h"]);
    await expect(table.getByRole("row", { name: /^24 h/ }).getByRole("cell").nth(1)).toHaveText("€ 0");
    await expect(table.getByRole("row", { name: /^72 h/ }).getByRole("cell").nth(1)).toHaveText("€ 90.0 k");
    await expect(page.getByText("Found from contracts.", { exact: false })).toBeVisible();
  });

  test("takes steps from an engineer, names the row that is wrong, and gives them back", async ({ page }) => {
    await signIn(page, velmark);
    await page.goto("/lines/VEL-08#stop-cost");
    // A long page listens to its buttons a moment after it is drawn.
    await expect(async () => {
      await page.getByRole("button", { name: "Edit figures" }).click({ timeout: 2_000 });
      await expect(page.getByLabel(/^Cost of any stop at all/)).toBeVisible({ timeout: 2_000 });
    }).toPass();
    await page.getByLabel(/^Cost of any stop at all/).fill("250");
    await page.getByRole("button", { name: "Add a step" }).click();
    await page.getByRole("button", { name: "Add another step" }).click();
    await page.getByLabel(/^Step 1: after/).fill("48");
    await page.getByLabel(/^Step 1: costs more/).fill("5000");
    await page.getByLabel(/^Step 2: after/).fill("24");
    await page.getByLabel(/^Step 2: costs more/).fill("9000");
    await page.getByRole("button", { name: "Save figures" }).click();
    await expect(
      page.getByText("Step 2: begins after a longer stop than step 1", { exact: false }),
    ).toBeVisible();
    await page.getByLabel(/^Step 2: after/).fill("72");
    await page
      .getByLabel(/^How the cost was found/)
      .selectOption({ label: "estimate of people who know the line" });
    await page.getByRole("button", { name: "Save figures" }).click();
    const words = page.getByText("€ 250 by any stop; € 5 000 more after 48 h; € 9 000 more after 72 h.");
    await expect(words).toBeVisible();
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(page.getByText("No fixed cost and no step is recorded.")).toBeVisible();
  });

  test("is marked where its approval has run out, on the line, the ranking and the report", async ({
    page,
  }) => {
    await signIn(page, group);
    await page.goto("/lines/OST-03");
    await expect(page.getByText("Approval ran out on 30 Sep 2026")).toBeVisible();
    await page.goto("/lines");
    await expect(
      page.getByRole("table", { name: /^Lines by/ }).getByRole("row", { name: /OST-03/ }),
    ).toContainText("Approval has run out");
    await page.goto("/report?site=OST");
    await expect(
      page.getByText("Ask Plant controller OST to confirm again what a stop costs on OST-03"),
    ).toBeVisible();
  });
});
