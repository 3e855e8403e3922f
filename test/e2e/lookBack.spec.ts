import { expect } from "@playwright/test";
import { settled } from "./support/settled";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("a colleague follows an address into the past, reads it, saves it, and comes back", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/lines?known=2026-05-12");
  await settled(page);
  const band = page.getByRole("region", { name: "Looking back" });
  await expect(band).toContainText("As known on 12 May 2026");
  await expect(band).toContainText("Nothing can be changed while looking back.");
  await expect(page.getByText("From the records as they stood")).toBeVisible();

  await page
    .getByRole("link", { name: /VEL-03/ })
    .first()
    .click();
  await expect(page).toHaveURL(/\/lines\/VEL-03\?known=2026-05-12/);
  await expect(band).toBeVisible();
  await expect(page.getByRole("heading", { level: 1 })).toContainText("VEL-03");
  await expect(page.getByRole("button", { name: "Edit figures" })).toHaveCount(0);

  const saved = await page.request.get("/api/export/lines?format=csv&known=2026-05-12");
  expect(saved.headers()["content-disposition"]).toContain("lines-2026-05-12-as-known-2026-05-12.csv");
  expect(await saved.text()).toContain("VEL-03");

  // Before the company kept former states nothing is shown for true, on a page or in a file.
  const before = await page.request.get("/api/export/lines?format=csv&known=2025-05-12_Europe/Berlin");
  expect(before.status()).toBe(409);
  await page.goto("/spares?known=2025-05-12_Europe/Berlin");
  await expect(page.getByRole("heading", { level: 1, name: "Not known" })).toBeVisible();
  await expect(band).toContainText("12 May 2025, until midnight (Europe/Berlin)");
  await page.goto("/lines/VEL-03?known=2026-05-12");

  await page.getByRole("link", { name: "History" }).click();
  await expect(page).toHaveURL(/\/audit\?/);
  await expect(band).toContainText("This page shows what is known today.");
  await band.getByRole("link", { name: "Back to today" }).click();
  await expect(band).toHaveCount(0);
});

test("a key opens the help of the page, and the first steps say what is done", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.setViewportSize({ width: 390, height: 800 });
  await page.goto("/spares");
  await settled(page);
  await page.keyboard.press("?");
  const help = page.getByRole("dialog", { name: "Spares, weekly look" });
  await expect(help.getByRole("heading", { name: "How to read it" })).toBeVisible();
  await help.getByRole("link", { name: "See what runs out first" }).click();
  await expect(page).toHaveURL(/\/cover$/);
  await expect(help).toHaveCount(0);

  await page.goto("/start");
  await settled(page);
  await expect(page.getByText("6 of 6 steps are done.")).toBeVisible();
  const wide = await page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth);
  expect(wide).toBe(false);
  await page.getByRole("button", { name: "Do not begin here again" }).click();
  await expect(page).toHaveURL(/\/lines$/);
});
