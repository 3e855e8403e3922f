import { expect } from "@playwright/test";
import { settled } from "./support/settled";
import { PASSWORD } from "./support/signIn";
import { test } from "./support/test";

test("somebody who reads German signs in, reads the ranking and a part, and is told what is wrong", async ({
  page,
}) => {
  const said: string[] = [];
  page.on("pageerror", (error) => said.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error") said.push(message.text());
  });

  await page.goto("/sign-in");
  await page.getByRole("link", { name: "Deutsch" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Anmelden");
  await expect(page.locator("html")).toHaveAttribute("lang", "de");
  await page.getByLabel("E-Mail").fill("planner@halvenor.example");
  await page.getByLabel("Passwort").fill(PASSWORD);
  await page.getByRole("button", { name: "Anmelden" }).click();

  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Heute");
  await page.goto("/lines");
  await settled(page);
  await expect(page).toHaveTitle("Anlagen · Ebbline");
  await expect(page.getByRole("columnheader", { name: "Führende Steuerung" })).toBeVisible();
  // Thousands of euros, a comma before their decimals or none, and never a point.
  await expect(page.getByRole("table").first()).toContainText(/\d Tsd\. €|\d Mio\. €|\d+,\d/);

  await page.goto("/spend?budget=viel");
  await settled(page);
  expect(said).toEqual([]);
});
