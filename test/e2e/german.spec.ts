import { expect } from "@playwright/test";
import { demoAccounts } from "@/seed/accounts";
import { settled } from "./support/settled";
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
  await page.getByLabel("E-Mail").fill("niemand@halvenor.example");
  await page.getByLabel("Passwort").fill("kein Passwort von hier");
  await page.getByRole("button", { name: "Anmelden" }).click();
  await expect(page.getByText("Diese E-Mail und dieses Passwort gehören nicht zusammen")).toBeVisible();
  // The refusal is told to the console by the browser itself.
  said.length = 0;
  const planner = demoAccounts.find(({ email }) => email.startsWith("planner@"));
  await page.getByLabel("E-Mail").fill(planner?.email ?? "");
  await page.getByLabel("Passwort").fill(planner?.password ?? "");
  await page.getByRole("button", { name: "Anmelden" }).click();

  await expect(page).not.toHaveURL(/sign-in/);
  await page.goto("/lines");
  await settled(page);
  await expect(page).toHaveTitle("Anlagen · Ebbline");
  await expect(page.getByRole("columnheader", { name: "Führende Steuerung" })).toBeVisible();
  // Thousands of euros, a comma before their decimals or none, and never a point.
  await expect(page.getByRole("table").first()).toContainText(/\d Tsd\. €|\d Mio\. €|\d+,\d/);

  await page.goto("/parts");
  await settled(page);
  await expect(page).toHaveTitle("Teile · Ebbline");
  expect(said).toEqual([]);
});
