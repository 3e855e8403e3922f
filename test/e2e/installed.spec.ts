import { expect, type Page } from "@playwright/test";
import { demoAccounts } from "@/seed/accounts";
import { seedId } from "@/seed/seedId";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const group = "engineer@halvenor.example";
const velmark = "engineer.vel@halvenor.example";
const thornby = "viewer.tho@halvenor.example";

const machine = (line: string, code: string) => `/machines/${seedId("Machine", `${line}/${code}`)}`;
const kept = (page: Page) => page.getByText(/^Kept on this device/);
const axes = (page: Page) => page.getByRole("table", { name: "Axes", exact: true });

/** Whether the page is no wider than the phone it is on. */
const fits = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth);

test.describe("the installed map", () => {
  test("leads by keyboard from the group to a site, a line and a machine", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/installed");
    await expect(page.getByText("250 machines with 1 800 axes")).toBeVisible();
    await page.getByRole("link", { name: "VEL", exact: true }).focus();
    await page.keyboard.press("Enter");
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Installed at VEL Velmark");
    await page.getByRole("link", { name: "VEL-01", exact: true }).focus();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    await expect(page.getByRole("heading", { level: 1 })).toHaveText("Installed on VEL-03 Carton C");
    await page.getByRole("link", { name: "M02", exact: true }).click();
    await expect(page.getByRole("heading", { level: 1 })).toContainText("VEL-03 / M02");
  });

  test("lists the rings of a line and what their record leaves open", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/installed?line=VEL-03");
    const row = page.getByRole("row", { name: /VEL-03-R1/ });
    await expect(row).toContainText("1 finding");
    await row.getByRole("link").click();
    await expect(
      page.getByText(/M01 \/ A02 stands after M01 \/ A03 but has the lower address/),
    ).toBeVisible();
    await expect(page.getByText(/each node repeats the light for the next one/)).toBeVisible();
    const nodes = page.getByRole("table", { name: "Nodes of the ring" });
    await expect(nodes.getByRole("row").nth(1)).toContainText("the controller");
    await expectAccessible(page);
  });

  test("gives another site's level, machine, ring and card no answer", async ({ page }) => {
    await signIn(page, thornby);
    await page.goto("/lines/NO-99");
    const nothing = await page.getByRole("main").textContent();
    const ring = seedId("Network", "VEL/VEL-03-R1");
    for (const address of ["/installed?line=VEL-03", machine("VEL-03", "M02"), `/rings/${ring}`]) {
      await page.goto(address);
      expect(await page.getByRole("main").textContent()).toBe(nothing);
    }
    const card = await page.goto(`${machine("VEL-03", "M02")}/card`);
    expect(card?.status()).toBe(404);
    expect(await page.content()).not.toMatch(/Velmark|VEL-03 \//);
  });
});

test.describe("a machine", () => {
  test("shows its axes with scaling, and a unit's stay in a place", async ({ page }) => {
    await signIn(page, group);
    await page.goto(machine("VEL-03", "M02"));
    const rows = page.getByRole("table", { name: "Axes of the machine" });
    await expect(rows.getByRole("row").nth(1)).toContainText(/[\d.]+ per (mm|°|degree)/);
    await expect(page.getByRole("table", { name: /Places and units/ })).toContainText(
      "from before records began",
    );
    await expectAccessible(page);
    await page.setViewportSize({ width: 390, height: 844 });
    expect(await fits(page)).toBe(true);
  });

  test("is found by the search and linked from its line", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/lines/VEL-03");
    await page.keyboard.press("Control+k");
    await page.getByRole("searchbox", { name: "Search" }).fill("VEL-03 M02");
    await page.getByRole("option", { name: "VEL-03 / M02", exact: false }).first().click();
    await expect(page).toHaveURL(new RegExp(machine("VEL-03", "M02")));
    await page.getByRole("link", { name: "Line VEL-03" }).click();
    await expect(page).toHaveURL(/lines\/VEL-03#machine-M02/);
    await page.locator("#machine-M02").getByRole("link", { name: "Night card" }).click();
    await expect(page).toHaveURL(/\/card/);
  });

  test("gets a copy and a number for its card, which are taken back again", async ({ page }) => {
    await signIn(page, velmark);
    await page.goto(machine("VEL-02", "M01"));
    await page.getByRole("button", { name: "Add a number" }).click();
    await page.getByRole("button", { name: "Save the number" }).click();
    await expect(page.getByText("Name the function, never a person.")).toBeVisible();
    await page.getByLabel(/^Function/).fill("Gate, at night");
    await page.getByLabel(/^Number/).fill("+49 30 23125999");
    await page.getByLabel(/^When somebody answers/).fill("22:00 to 06:00");
    await page.getByRole("button", { name: "Save the number" }).click();
    await expect(page.getByText("Gate, at night", { exact: false })).toBeVisible();
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(page.getByText("Gate, at night", { exact: false })).toHaveCount(0);
    await page.getByRole("button", { name: "Add a copy" }).click();
    await page.getByLabel(/^Taken on/).fill("2026-11-01");
    await page.getByLabel(/^Where it lies/).fill("Blue folder in the office");
    await page.getByRole("button", { name: "Save the copy" }).click();
    await expect(page.getByText("Blue folder in the office", { exact: false })).toBeVisible();
    await page.getByRole("button", { name: "Undo" }).click();
    await expect(page.getByText("Blue folder in the office", { exact: false })).toHaveCount(0);
  });
});

test.describe("the list of axes", () => {
  test("fetches further pages while it is walked through", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/axes");
    await expect(page.getByText("1 800 axes with drive")).toBeVisible();
    await axes(page).getByRole("link").first().focus();
    await expect
      .poll(
        async () => {
          await page.keyboard.press("End");
          return page.evaluate(() => document.activeElement?.textContent);
        },
        { timeout: 40_000 },
      )
      .toMatch(/^VEL-09/);
  });

  test("is narrowed and sorted in the address", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/axes");
    await page.getByLabel("Show only Drive family").selectOption("Oak");
    await expect(page.getByText("310 axes with drive")).toBeVisible();
    await page.getByLabel("Show only Site").selectOption("PIN");
    await expect(page.getByText("70 axes with drive")).toBeVisible();
    await page.getByRole("button", { name: "Since" }).click();
    await expect(page).toHaveURL(/axes\.sort=year\.asc/);
    await expect(axes(page).getByRole("columnheader", { name: "Since" })).toHaveAttribute(
      "aria-sort",
      "ascending",
    );
    await page.getByLabel("Filter axes").fill("PIN-06 M01");
    await page.keyboard.press("Enter");
    await expect(axes(page).getByRole("rowheader").first()).toContainText("PIN-06 / M01");
    await expectAccessible(page);
    await axes(page).getByRole("link").first().click();
    await expect(page).toHaveURL(/\/machines\/.+#axis-A01/);
  });
});

test.describe("the night card", () => {
  test("holds cautions, numbers, bins and copies, and says what has no source", async ({ page }) => {
    await page.setViewportSize({ width: 390, height: 844 });
    await signIn(page, group);
    await page.goto(`${machine("VEL-03", "M02")}/card`);
    for (const title of ["Before you touch it", "Whom to call", "Spares", "Controller and copies"])
      await expect(page.getByRole("heading", { name: title, exact: true })).toBeVisible();
    await expect(page.getByRole("link", { name: /Electrician on call/ })).toHaveAttribute(
      "href",
      /^tel:\+49/,
    );
    await expect(page.getByText(/^As of 30 Nov 2026; made /)).toBeVisible();
    await expect(page.getByText(/about 30 h on the way/)).toBeVisible();
    expect(await fits(page)).toBe(true);
    const low = await page
      .getByRole("main")
      .locator("a, button")
      .evaluateAll((found) => found.filter((one) => one.getBoundingClientRect().height < 44).length);
    expect(low).toBe(0);
    await expectAccessible(page);
  });

  test("names no other site to a viewer of one", async ({ page }) => {
    await signIn(page, thornby);
    await page.goto(`${machine("THO-01", "M01")}/card`);
    await expect(page.getByText(/^At other sites: /).first()).toBeVisible();
    expect(await page.content()).not.toMatch(/\b(VEL|OST|KAR|PIN|TAD)\b/);
  });

  test("fits one sheet, A4 and Letter, for the machines with the most places", async ({ page }) => {
    await signIn(page, group);
    for (const [line, code] of [
      ["VEL-05", "M01"],
      ["PIN-03", "M05"],
      ["TAD-02", "M02"],
    ] as const)
      for (const format of ["A4", "Letter"]) {
        await page.goto(`${machine(line, code)}/card`);
        const pdf = (await page.pdf({ format, preferCSSPageSize: false })).toString("latin1");
        const pages = pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
        expect(`${line} ${format}: ${pages}`).toBe(`${line} ${format}: 1`);
      }
  });

  test("opens without a network after one visit, and no other page does", async ({ browser }) => {
    // What answers in place of the network stays with its context, so this journey has one to itself.
    const context = await browser.newContext();
    const page = await context.newPage();
    await signIn(page, group);
    const address = `${machine("VEL-03", "M02")}/card`;
    await page.goto(address);
    await expect(kept(page)).toBeVisible();
    await context.setOffline(true);
    await page.reload();
    await expect(page.getByRole("heading", { level: 1 })).toContainText("VEL-03 / M02");
    await expect(page.getByText(/This is the card as it was made on/)).toBeVisible();
    await page.goto(`${machine("VEL-03", "M03")}/card`);
    await expect(page.getByRole("heading", { level: 1 })).toHaveText(
      "No network, and this card is not kept here",
    );
    await page.getByRole("link", { name: "Open the card kept on this device" }).click();
    await expect(page.getByRole("heading", { level: 1 })).toContainText("VEL-03 / M02");
    await expect(page.goto(machine("VEL-03", "M02"))).rejects.toThrow(/ERR_INTERNET_DISCONNECTED/);
    await context.close();
  });

  test("is gone from the device after signing out", async ({ browser }) => {
    const context = await browser.newContext();
    const page = await context.newPage();
    // A session of its own, because signing out ends it.
    await page.goto("/sign-in");
    await page.getByLabel("E-mail").fill(velmark);
    await page
      .getByLabel("Password")
      .fill(demoAccounts.find(({ email }) => email === velmark)?.password ?? "");
    await page.getByRole("button", { name: "Sign in" }).click();
    await expect(page).not.toHaveURL(/sign-in/);
    const address = `${machine("VEL-03", "M02")}/card`;
    await page.goto(address);
    await expect(kept(page)).toBeVisible();
    await page.goto("/lines");
    await page.getByRole("button", { name: /^Account of/ }).click();
    await page.getByRole("button", { name: "Sign out" }).click();
    await expect(page).toHaveURL(/sign-in/);
    expect(
      await page.evaluate(async () => (await caches.keys()).filter((key) => key.startsWith("ebbline"))),
    ).toEqual([]);
    await context.setOffline(true);
    await expect(page.goto(address)).rejects.toThrow(/ERR_INTERNET_DISCONNECTED/);
    await context.close();
  });
});
