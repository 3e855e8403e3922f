import { expect } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("the project over its budget shows indices, forecasts, arithmetic and cause", async ({ page }) => {
  await signIn(page, "viewer@halvenor.example");
  await page.goto("/projects");
  const row = page.getByRole("row", { name: /KAR-02-R1/ });
  await expect(row).toContainText("0.75");
  await expect(row).toContainText("0.79");
  await expect(row).toContainText(/SEK.6.55.M/);
  await page.getByRole("link", { name: "KAR-02-R1" }).click();
  await expect(page.getByText(/11 motors unmatched/)).toBeVisible();
  // 4.90 M × 0.55 = 2.695 M earned; 2.695 ÷ 3.60 = 0.75; 4.90 ÷ 0.7486 = 6.55 M; rest (4.90 − 2.695) ÷ (4.90 − 3.60) = 1.70.
  const steps = page.getByRole("table", { name: /Indices and forecasts/ });
  await expect(steps.getByRole("row", { name: /Cost index/ })).toContainText("0.75");
  await expect(steps.getByRole("row", { name: /Cost at the end, rest as planned/ })).toContainText(
    /5.8[01].M/,
  );
  await expect(steps.getByRole("row", { name: /TCPI/ })).toContainText("1.70");
  await expect(page.getByRole("button", { name: "Enter", exact: true })).toHaveCount(0);
});

test("a milestone is dated in place and taken back", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/projects/KAR-02-R1");
  const done = page.getByLabel("Done day of Motors of the second half delivered");
  await done.fill("2026-11-20");
  await done.press("Enter");
  const row = page.getByRole("row", { name: /Motors of the second half delivered/ });
  await expect(row).toContainText("done");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(row).toContainText("overdue");
  await expect(done).toHaveValue("");
});

test("the project page warns of what can hurt", async ({ page }) => {
  await signIn(page, "viewer@halvenor.example");
  await page.goto("/projects/VEL-09-R1");
  for (const title of [/lock out/, /Stored energy/, /Safety functions/, /substantial modification/])
    await expect(page.getByRole("region", { name: title })).toBeVisible();
});

test("a project of another site is not there, just as one that does not exist", async ({ page }) => {
  await signIn(page, "viewer.tho@halvenor.example");
  await page.goto("/projects/KAR-02-R1");
  const foreign = await page.getByRole("main").textContent();
  await page.goto("/projects/XXX-99-R1");
  expect(await page.getByRole("main").textContent()).toBe(foreign);
  await page.goto("/projects");
  await expect(page.getByText("KAR-02-R1")).toHaveCount(0);
  await expect(page.getByRole("link", { name: "THO-01-S1" })).toBeVisible();
});

test("projects can be used by everybody", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/projects");
  await expectAccessible(page);
  await page.goto("/projects/KAR-02-R1");
  await expectAccessible(page);
});
