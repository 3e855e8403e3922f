import { expect } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { openFolds } from "./support/openFolds";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("the last buy of a family is worked out from a part's page, and says which assumption it hangs on", async ({
  page,
}) => {
  await signIn(page, "planner@halvenor.example");
  await page.goto("/parts?parts.q=TM-HR-020");
  await page.getByRole("link", { name: "TM-HR-020", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: "TM-HR-020" })).toBeVisible();
  await openFolds(page);
  await page.getByRole("link", { name: "how many to buy at the last chance" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/How many Heron R to buy/);
  const cases = page.getByRole("table", { name: "Quantities by assumption" });
  const quantity = async (name: RegExp) =>
    Number(await cases.getByRole("row", { name }).getByRole("cell").nth(2).textContent());
  const shared = await quantity(/^Each part for itself, shared by all sites \d/);
  expect(await quantity(/^All parts of the family are one/)).toBeLessThan(shared);
  expect(await quantity(/^Each site for itself/)).toBeGreaterThan(shared);
  expect(await quantity(/repair stops/)).toBeGreaterThan(shared);
  // Four sizes, each with its own quantity.
  await expect(page.getByRole("table", { name: "Quantity by part" }).getByRole("row")).toHaveCount(5);
  await expect(page.getByText(/can usually not be cancelled/)).toBeVisible();
  await expectAccessible(page);
});

test("a planner of one site sees a sheet of that site", async ({ page }) => {
  await signIn(page, "viewer.tho@halvenor.example");
  await page.goto("/parts?parts.q=TM-HR-020");
  await page.getByRole("link", { name: "TM-HR-020", exact: true }).click();
  await expect(page.getByRole("heading", { level: 1, name: "TM-HR-020" })).toBeVisible();
  await openFolds(page);
  await page.getByRole("link", { name: "how many to buy at the last chance" }).click();
  await expect(page.getByText(/Your sites only/)).toBeVisible();
  expect(await page.content()).not.toMatch(/\b(VEL|OST|KAR|PIN|TAD)\b/);
});
