import { expect } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("the chance of an empty shelf is checked by simulation, and the two agree", async ({ page }) => {
  await signIn(page, "viewer.tho@halvenor.example");
  await page.goto("/parts?parts.q=TM-HR-020");
  await page.getByRole("link", { name: "TM-HR-020", exact: true }).click();
  await page.getByRole("link", { name: "Check by simulation" }).click();
  const table = page.getByRole("table", { name: "Computed and simulated chance of an empty shelf" });
  await expect(table.getByRole("row")).toHaveCount(7);
  await expect(table.getByRole("cell", { name: "agrees" })).toHaveCount(6);
  expect(await page.content()).not.toMatch(/\b(VEL|OST|KAR|PIN|TAD)\b/);
  await expectAccessible(page);
});
