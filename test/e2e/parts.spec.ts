import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { openFolds } from "./support/openFolds";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const planner = "planner@halvenor.example";
const thornby = "viewer.tho@halvenor.example";

/** Opens the page of a part from the list. */
async function openPart(page: Page, number: string): Promise<void> {
  await page.goto("/parts");
  await page.getByRole("link", { name: number, exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: number })).toBeVisible();
  await openFolds(page);
}

const shelf = (page: Page) => page.getByRole("table", { name: /Who has one/ });

test.describe("the parts", () => {
  test("are filtered by class, stage and number without dashes, in the address", async ({ page }) => {
    await signIn(page, planner);
    await page.goto("/parts");
    const table = page.getByRole("table", { name: "Parts of the group" });
    const all = await table.getByRole("rowheader").count();
    await page.getByLabel("Show only Supply stage").selectOption("Own stock");
    await expect(page).toHaveURL(/parts\.is\.stage=Own\+stock/);
    await expect.poll(() => table.getByRole("rowheader").count()).toBeLessThan(all);
    expect(await table.getByRole("rowheader").count()).toBeGreaterThan(0);
    await page.getByRole("button", { name: "Clear filters" }).click();
    await page.getByLabel("Filter rows").fill("tmhr020");
    await expect(table.getByRole("rowheader")).toHaveText(["TM-HR-020"]);
    await expectAccessible(page);
  });

  test("say at the top who has one, in which bin, and what to heed", async ({ page }) => {
    await signIn(page, planner);
    await openPart(page, "TM-HR-020");
    const first = shelf(page).getByRole("row").nth(1);
    await expect(first).toContainText("Usable");
    await expect(first).toContainText(/R\d-\d+/);
    await page.locator("summary", { hasText: "not ready to fit: " }).click();
    await expect(page.getByRole("table", { name: "On the shelf, not ready to fit" })).toContainText(
      "Wrong revision: will not run",
    );
    await expect(page.getByRole("heading", { name: "Stored drives: power up with care" })).toBeVisible();
    await expect(page.getByText("Notice was given").or(page.getByText("The last order is"))).toBeVisible();
    await expect(
      page.getByRole("figure").filter({ hasText: "Chance that a failure finds the shelf empty" }),
    ).toBeVisible();
    await page.locator("summary", { hasText: "How the removal rate is worked out" }).click();
    await expect(page.getByRole("table", { name: "How the removal rate is worked out" })).toContainText("÷");
    await expectAccessible(page);
  });

  test("name nothing of other sites to somebody at one site, but a sum", async ({ page }) => {
    await signIn(page, thornby);
    await openPart(page, "TM-HR-020");
    await expect(page.getByText(/At other sites: [\d.]+ usable of \d+ pieces on the books/)).toBeVisible();
    const codes = await shelf(page).getByRole("rowheader").allTextContents();
    expect(new Set(codes.map((code) => code.trim()))).toEqual(new Set(["THO"]));
    await expect(page.getByText(/At other sites: \d+ removals?, \d+ failures? of them, in/)).toBeVisible();
    await expect(page.getByRole("table", { name: /^Counts of the sites/ })).toContainText(
      "Other sites together",
    );
    // The whole document, so that what is sent but not drawn counts too.
    expect(await page.content()).not.toMatch(/\b(VEL|OST|KAR|PIN|TAD)\b/);
    await expect(page.getByRole("button", { name: /^Change R/ })).toHaveCount(0);
    await expectAccessible(page);
  });

  test("answer alike for a part that is not there and an address that is none", async ({ page }) => {
    await signIn(page, thornby);
    for (const id of ["018f0000-0000-7000-8000-000000000000", "drive"]) {
      await page.goto(`/parts/${id}`);
      await expect(page.getByText("There is nothing here")).toBeVisible();
    }
  });

  test("let a planner put pieces on hold, see the figures follow, and take it back", async ({ page }) => {
    await signIn(page, planner);
    await openPart(page, "TM-HR-020");
    const row = shelf(page)
      .getByRole("row")
      .filter({ has: page.getByRole("rowheader", { name: "OST" }) })
      .filter({ has: page.getByRole("cell", { name: "Usable" }) });
    const bin = (await row.getByRole("cell").first().textContent()) ?? "";
    await row.getByRole("button", { name: /^Change/ }).click();
    const dialog = page.getByRole("dialog", { name: `Stock in OST ${bin}` });
    await dialog.getByLabel("State").selectOption("On hold");
    await dialog.getByRole("button", { name: "Save" }).click();
    await expect(dialog).toBeHidden();
    await expect(page.getByText(`Stock in OST ${bin} changed.`)).toBeVisible();
    const book = page.getByRole("table", { name: "Book against usable stock by site" });
    const ostrowka = book.getByRole("row").filter({ has: page.getByRole("rowheader", { name: /^OST/ }) });
    await expect(ostrowka).toContainText("on hold");
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(ostrowka).not.toContainText("on hold");
    await expect(row).toHaveCount(1);
  });

  test("open each rate to its rows, as many as it counts", async ({ page }) => {
    await signIn(page, planner);
    for (const kind of ["removal", "failure"]) {
      await openPart(page, "TM-HR-020");
      const rates = page.getByRole("region", { name: "Rates", exact: true });
      const link = rates.getByRole("link", { name: new RegExp(`^\\d+ ${kind}s$`) }).first();
      const counted = Number.parseInt((await link.textContent()) ?? "", 10);
      expect(counted).toBeGreaterThan(5);
      await link.click();
      await expect(page).toHaveURL(new RegExp(`events\\.is\\.${kind}s=yes#events$`));
      const rows = page.getByRole("table", { name: "Events of TM-HR-020 in the last five years" });
      await expect(rows.getByRole("rowheader")).toHaveCount(counted);
    }
  });

  test("say level by level what is believed, whether sites may share a rate, and whether it moves", async ({
    page,
  }) => {
    await signIn(page, planner);
    await openPart(page, "TM-HR-020");
    const levels = page.getByRole("table", { name: "Failure rate by level" });
    await expect(levels.getByRole("rowheader").first()).toHaveText("Class: drive");
    await expect(levels).toContainText("Site: VEL");
    await expect(page.getByRole("table", { name: /^Counts of the sites/ })).toContainText("VEL");
    await expect(page.getByText(/sites (show no difference|differ)/).first()).toBeVisible();
    await expect(page.getByRole("table", { name: "Trend of failures and removals" })).toContainText("p = ");
    await expect(
      page.getByRole("img", { name: /\d+ failures and \d+ removals? without a fault/ }),
    ).toBeVisible();
    const stops = page.getByRole("table", { name: "Stops of TM-HR-020 by whether a spare was at hand" });
    await expect(stops).toContainText("with a spare");
    const rows = page.getByRole("table", { name: "Events of TM-HR-020 in the last five years" });
    await expect(rows).toContainText("set aside: The stop ends before it starts");
  });

  test("are reached from the loss of a line: from its arithmetic to the rows of a part", async ({ page }) => {
    await signIn(page, planner);
    await page.goto("/lines/PIN-03");
    await openFolds(page);
    await expect(page.getByRole("table", { name: "Stops of PIN-03 by class and spare" })).toContainText(
      "drive",
    );
    const records = page.getByRole("navigation", { name: "Records behind the arithmetic" });
    await records.getByRole("link", { name: /^Rows: \d+ failures?$/ }).click();
    await expect(page).toHaveURL(/parts\/[0-9a-f-]+\?events\.is\.failures=yes#events$/);
    await expect(page.getByRole("region", { name: "The records behind the rates" })).toBeVisible();
    await expectAccessible(page);
  });

  test("refuse a part of a piece in words", async ({ page }) => {
    await signIn(page, planner);
    await openPart(page, "TM-HR-020");
    await shelf(page)
      .getByRole("button", { name: /^Change/ })
      .first()
      .click();
    const dialog = page.getByRole("dialog");
    await dialog.getByLabel(/Pieces in this bin/).fill("1.5");
    await dialog.getByRole("button", { name: "Save" }).click();
    await expect(dialog.getByText("Write a whole number of pieces.")).toBeVisible();
    await expectAccessible(page);
  });
});

test.describe("the weekly look at the spares", () => {
  test("shows who holds more than the demand explains", async ({ page }) => {
    await signIn(page, planner);
    await page.goto("/spares");
    await expect(
      page.getByText(/OST holds 62\s%\sof the Heron R spares \(41 of 66\) with 18\s%\sof the units/),
    ).toBeVisible();
    await expect(page.getByText(/as they stood when 23 Nov 2026 ended: its shelf/)).toBeVisible();
    await expectAccessible(page);
  });

  test("puts what got worse first and leads to the part", async ({ page }) => {
    await signIn(page, planner);
    await page.goto("/spares");
    const table = page.getByRole("table", { name: "Spares pools, what got worse first" });
    const heads = await table.getByRole("columnheader").allTextContents();
    const place = heads.findIndex((head) => head.startsWith("Change of chance"));
    const changes = await table.locator(`tbody tr > :nth-child(${place + 1})`).allTextContents();
    const worse = changes.map((text) => text.includes("Worse:"));
    expect(worse).toContain(true);
    expect(worse).toEqual([...worse].sort((a, b) => Number(b) - Number(a)));
    const first = table.getByRole("rowheader").first();
    const number = ((await first.textContent()) ?? "").trim();
    await first.getByRole("link").click();
    await expect(page.getByRole("heading", { level: 1, name: number })).toBeVisible();
  });

  test("names to a viewer of one site only that site", async ({ page }) => {
    await signIn(page, thornby);
    await page.goto("/spares");
    await expect(page.getByRole("table", { name: /Share of spares/ })).toBeVisible();
    await expect(page.locator("main")).not.toContainText(/\b(VEL|OST|KAR|PIN|TAD)\b/);
  });
});
