import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { openFolds } from "./support/openFolds";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const group = "engineer@halvenor.example";
const velmark = "engineer.vel@halvenor.example";
const thornby = "viewer.tho@halvenor.example";

const table = (page: Page) => page.getByRole("table", { name: /^Lines by/ });

/** Line codes in the order they stand. */
async function codes(page: Page): Promise<string[]> {
  return (await table(page).getByRole("rowheader").allTextContents()).map((text) => text.trim());
}

/** Cells of one column, heads and foot left out. */
async function column(page: Page, head: RegExp): Promise<string[]> {
  const heads = await table(page).getByRole("columnheader").allTextContents();
  const place = heads.findIndex((text) => head.test(text));
  expect(place).toBeGreaterThan(0);
  return table(page)
    .locator(`tbody tr > :nth-child(${place + 1})`)
    .allTextContents();
}

const numberOf = (text: string | undefined) => Number((text ?? "").replaceAll(/[^\d.]/g, ""));

test.describe("the ranking of lines", () => {
  test("leads with where the money sits and ranks all lines by it", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/");
    await expect(page).toHaveURL(/\/lines/);
    await expect(page.getByText(/lines? carr(y|ies) \d+ % of the group's/)).toBeVisible();
    await expect(table(page).getByRole("rowheader")).toHaveCount(40);
    const ranks = (await column(page, /Money rank/)).map(numberOf);
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(ranks[0]).toBe(1);
    await expect(
      page.getByText(/of 100 pairs of these lines, about \d+ stand in the same order/),
    ).toBeVisible();
  });

  test("lets the score lead, in the address", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines");
    await page.getByRole("link", { name: "By score" }).click();
    await expect(page).toHaveURL(/by=score/);
    await expect(page.getByRole("table", { name: "Lines by risk score" })).toBeVisible();
    const scores = (await column(page, /^Score0/)).map(Number);
    expect(scores).toHaveLength(40);
    expect(scores).toEqual([...scores].sort((a, b) => b - a));
    await page.reload();
    await expect(page.getByRole("link", { name: "By score" })).toHaveAttribute("aria-current", "true");
  });

  test("adds up the lines that are shown, and keeps the filter in the address", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines");
    const total = table(page).locator("tfoot td");
    await expect(total.first()).toHaveText("Sum of 40");
    await page.getByLabel("Show only Site").selectOption({ label: "OST Ostrowka Mała" });
    await expect(total.first()).toHaveText("Sum of 8");
    await expect(page).toHaveURL(/lines\.is\.site=/);
    const losses = (await column(page, /Stop loss/)).map(numberOf);
    const heads = await table(page).getByRole("columnheader").allTextContents();
    const place = heads.findIndex((text) => /Stop loss/.test(text));
    const sum = losses.reduce((all, one) => all + one, 0);
    expect(Math.abs(sum - numberOf((await total.nth(place).textContent()) ?? ""))).toBeLessThanOrEqual(4);
    await page.reload();
    expect(await codes(page)).toHaveLength(8);
    await page.getByRole("searchbox").fill("tube");
    await expect(total.first()).toHaveText("Sum of 1");
    expect(await codes(page)).toEqual(["OST-06"]);
  });

  test("marks controllers below the firmware floor and costs nobody approved", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines");
    const swap = table(page).getByRole("row", { name: /VEL-03/ });
    await expect(swap).toContainText("Firmware floor");
    await expect(table(page).getByRole("row", { name: /VEL-04/ })).not.toContainText("Firmware floor");
    await expect(table(page).getByRole("row", { name: /TAD-01/ })).toContainText(
      "Nobody answers for the figure",
    );
    await expect(swap).not.toContainText("Nobody answers");
  });

  test("says how sure each place is, which cuts hold and what would settle the rest", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines");
    const spans = (await column(page, /^Rank span/)).map((text) => /^(\d+)(?:–(\d+))?/.exec(text));
    expect(spans).toHaveLength(40);
    for (const span of spans) expect(Number(span?.[1])).toBeLessThanOrEqual(Number(span?.[2] ?? span?.[1]));
    // Of 40 lines, five share out the first five places in every draw: their chances add up to five.
    const chances = (await column(page, /^In the first five/)).map((text) => Number.parseFloat(text) || 0);
    expect(Math.abs(chances.reduce((sum, one) => sum + one, 0) - 500)).toBeLessThan(25);
    const sure = page.getByRole("region", { name: "How sure is the order?" });
    await expect(sure).toContainText(/Firm: the cut after places? [\d, and]+, where at least 16 of 20 draws/);
    await expect(sure).toContainText("400 draws, seed 20261130");
    await expect(sure.getByText("Finance confirms the cost per hour of TAD-01")).toBeVisible();
    await sure.getByRole("link", { name: "TAD-01" }).click();
    await expect(page).toHaveURL(/lines\/TAD-01/);
    const place = page.getByRole("region", { name: "How sure is its place" });
    await expect(place).toContainText("Fragile: one unknown alone moves it by");
    await expect(place.getByRole("list", { name: "Against its neighbours" })).toContainText(
      /In 20 such groups about \d+ put TAD-01 before [A-Z]{3}-\d\d\./,
    );
  });

  test("has loss, ranks, score, supply stage and the first empty shelf on a screen of 1440", async ({
    page,
  }) => {
    await signIn(page, group);
    await page.goto("/lines");
    for (const name of [
      /^Money rank/,
      /^Stop loss/,
      /^Rank span/,
      /^Score0|^Score 0/,
      "Supply stage",
      /^First shelf/,
    ]) {
      const box = await table(page).getByRole("columnheader", { name }).first().boundingBox();
      expect((box?.x ?? 9999) + (box?.width ?? 0)).toBeLessThanOrEqual(1440);
    }
  });

  test("shows a one-site viewer the own lines with their places in the group", async ({ page }) => {
    await signIn(page, thornby);
    await page.goto("/lines");
    await expect(page.getByText(/of your lines' €/)).toBeVisible();
    expect((await codes(page)).sort()).toEqual(["THO-01", "THO-02", "THO-03", "THO-04"]);
    await expect(table(page).getByRole("columnheader", { name: /Money rank/ })).toContainText("of 40");
    expect(await page.content()).not.toContain("VEL-03");
  });
});

test.describe("the dossier of a line", () => {
  test("is not found at another site, just as a line that is not there", async ({ page }) => {
    await signIn(page, thornby);
    const answers: string[] = [];
    for (const code of ["VEL-03", "XYZ-99"]) {
      const response = await page.goto(`/lines/${code}`);
      expect(response?.status()).toBe(404);
      await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
      answers.push((await page.getByRole("heading").allTextContents()).join());
    }
    expect(answers[0]).toBe(answers[1]);
  });

  test("names no neighbour of another site", async ({ page }) => {
    await signIn(page, thornby);
    await page.goto("/lines/THO-01");
    await openFolds(page);
    const odds = page.getByRole("list", { name: "Against its neighbours" });
    await expect(odds).toContainText("a line of another site just");
    expect(await page.content()).not.toMatch(/(VEL|PIN|KAR|OST|TAD)-\d\d/);
  });

  test("opens from the ranking and shows drivers, blockers, machines and events", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines");
    await page.getByRole("link", { name: "VEL-03" }).click();
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("VEL-03 Carton C");
    await expect(page.getByRole("table", { name: /What drives the loss/ })).toContainText("BW-OK-");
    await openFolds(page);
    await expect(page.getByText(/Hardware ceiling: \d+ of \d+ blocked/)).toBeVisible();
    const verdicts = page.getByRole("table", { name: "What the rules say of the controllers of VEL-03" });
    await expect(verdicts.getByRole("row", { name: /^VEL-03-K1/ })).toContainText(
      "Slate 3 ends at 18, and no level of it is accepted.",
    );
    await expect(verdicts.getByRole("row", { name: /^VEL-03-K1/ })).toContainText("memory 93 %");
    await expect(page.getByText("De-energise, lock out", { exact: false })).toBeVisible();
    const machine = page.locator("summary").filter({ hasText: "Slate 3" }).first();
    await machine.click();
    await expect(page.getByRole("table", { name: /^Axes of/ }).first()).toContainText("serial");
    const events = page.getByRole("table", { name: /Events of VEL-03/ });
    await expect(events).toContainText("work order");
    await page.getByLabel("Show only Counts?").selectOption("set aside");
    await expect(events.locator("tbody tr").first()).toContainText("set aside:");
  });

  test("opens the arithmetic of the part that is chosen", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines/VEL-03");
    await page.getByRole("link", { name: "Arithmetic of BW-OK-010" }).click();
    const steps = page.getByRole("table", { name: "How the figures of BW-OK-010 on VEL-03 are worked out" });
    const row = steps.getByRole("row", { name: /^Failures on this line/ });
    const [units, rate] = [
      ...((await row.getByRole("cell").first().textContent()) ?? "").matchAll(/\d[\d.]*/g),
    ];
    const failures = Number.parseFloat((await row.getByRole("cell").nth(1).textContent()) ?? "");
    expect(Number(units?.[0]) * Number(rate?.[0])).toBeCloseTo(failures, 3);
  });

  test("says what comes from not knowing and what the years ahead cost, and opens both", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines/PIN-03");
    const unknowns = page.getByText("From unknowns", { exact: true }).locator("..");
    await expect(unknowns).toContainText("Would go were all that is unknown found at its best: Unidentified");
    await page.getByRole("link", { name: "How From unknowns is worked out" }).click();
    const depth = page.getByRole("table", { name: "How the unknowns and the years ahead of PIN-03" });
    const sum = async (title: RegExp) => {
      const row = depth.getByRole("row", { name: title });
      const text = (await row.getByRole("cell").first().textContent()) ?? "";
      const parts = text.split("+").map((part) => Number.parseFloat(part.replaceAll(/[\s\u202f]/g, "")));
      const result = numberOf((await row.getByRole("cell").nth(1).textContent()) ?? "");
      return { parts: parts.length, share: parts.reduce((all, one) => all + one, 0) / result };
    };
    await expect(depth).toBeVisible();
    expect((await sum(/^What comes from not knowing/)).share).toBeCloseTo(1, 2);
    const years = await sum(/^Stop loss of 5 years/);
    expect(years.parts).toBe(5);
    expect(years.share).toBeCloseTo(1, 2);
  });

  test("lets an engineer of the site change the cost per hour, and take it back", async ({ page }) => {
    await signIn(page, velmark);
    await page.goto("/lines/VEL-09");
    const cost = page.getByText("Cost of a stop", { exact: true }).first().locator("..");
    await expect(cost).toContainText("€ 700");
    await page.getByRole("button", { name: "Edit figures" }).click();
    const field = page.getByLabel(/Cost of a stop/);
    await field.fill("-1");
    await page.getByRole("button", { name: "Save figures" }).click();
    await expect(page.getByText("Write an amount of 0 or more", { exact: false })).toBeVisible();
    await field.fill("1400");
    await page.getByRole("button", { name: "Save figures" }).click();
    await expect(page.getByText("Figures of VEL-09 changed", { exact: false })).toBeVisible();
    await expect(cost).toContainText(/€ 1.400/);
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(cost).toContainText("€ 700");
  });

  test("offers no change to somebody who may only read", async ({ page }) => {
    await signIn(page, thornby);
    await page.goto("/lines/THO-01");
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("THO-01 Tea bag");
    await expect(page.getByRole("button", { name: "Edit figures" })).toHaveCount(0);
  });
});

test.describe("the folded parts of a line", () => {
  const fold = (page: Page, title: string) =>
    page.locator("details[data-fold]").filter({ has: page.getByRole("heading", { name: title }) });

  test("leave a first view that answers, each closed part with its figure", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines/VEL-03");
    await expect(page.getByRole("table", { name: /What drives the loss/ })).toBeVisible();
    expect(await page.evaluate(() => document.documentElement.scrollHeight)).toBeLessThan(2700);
    await expect(fold(page, "Machines and axes")).toContainText("7 machines, 54 axes");
    await expect(fold(page, "What stands in the way of a retrofit")).toContainText("Controller swap;");
    await expect(page.getByRole("table", { name: /Events of VEL-03/ })).toBeHidden();
  });

  test("are opened by keyboard and stay as they were left, on the next line too", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines/VEL-03");
    await fold(page, "Events of the last five years").locator("summary").first().focus();
    await page.keyboard.press("Enter");
    await expect(page.getByRole("table", { name: /Events of VEL-03/ })).toBeVisible();
    await page.goto("/lines/VEL-04");
    await expect(page.getByRole("table", { name: /Events of VEL-04/ })).toBeVisible();
  });

  test("are opened by the row of contents, by a figure's link and by an address", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines/VEL-03");
    const contents = page.getByRole("navigation", { name: "On this page" });
    await contents.getByRole("link", { name: "How long it stands" }).click();
    await expect(page.getByRole("table", { name: "Stops of VEL-03 by class and spare" })).toBeVisible();
    await page.getByRole("link", { name: "How Risk score is worked out" }).click();
    await expect(page.getByRole("table", { name: /^How the figures of/ })).toBeInViewport();
    await page.goto("/lines/VEL-03#controller-VEL-03-K2");
    await expect(page.getByText("(VEL-03-K2)").first()).toBeInViewport();
  });
});

test.describe("both pages", () => {
  for (const path of ["/lines", "/lines/VEL-03"]) {
    test(`${path} is accessible in light and dark, and fits a phone`, async ({ page }) => {
      await signIn(page, group);
      await page.goto(path);
      await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
      await expectAccessible(page);
      await page.setViewportSize({ width: 390, height: 844 });
      const width = await page.evaluate(() => document.documentElement.scrollWidth);
      expect(width).toBeLessThanOrEqual(390);
    });
  }
});
