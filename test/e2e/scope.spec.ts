import { expect } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const page03 = "/lines/VEL-03/scope";

test("a line below the floor says controller first, and that its window is too short", async ({ page }) => {
  test.setTimeout(120_000);
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/lines/VEL-03");
  await page.getByRole("link", { name: "What a retrofit takes" }).click();
  await expect(page.getByRole("heading", { name: "In the way: Controller first" })).toBeVisible();
  const blockers = page.getByRole("list", { name: "In the way" });
  await expect(blockers).toContainText("Firmware floor (R1)");
  await expect(blockers).toContainText("Hardware ceiling (R2)");
  await expect(blockers).toContainText(
    "Window too short: Needs 17.1 working days (171 hours, enough four times in five); Summer shutdown 2027 has 14 usable days",
  );
  await expect(blockers).toContainText("A competent engineer sizes each replacement");
  const axes = page.getByRole("table", { name: "Axes to convert" });
  await expect(axes.getByRole("row")).toHaveCount(55);
  const ways = page.getByRole("table", { name: "Ways to treat the line" });
  await expect(ways.getByRole("row")).toHaveCount(10);
  await expect(ways.getByRole("row", { name: /^Replace the line/ })).toContainText(
    "not known: ask a builder",
  );
  await expectAccessible(page);
});

test("another family asks for other parts, and they go out as a file", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto(page03);
  const orders = page.getByRole("table", { name: "Parts to order" });
  await expect(orders).toContainText("TM-HE-020");
  await page.getByLabel("Convert to").selectOption("Elm");
  await page.getByRole("button", { name: "Work it out" }).click();
  await expect(orders).toContainText("BW-EL-020");
  await expect(orders).not.toContainText("TM-HE-020");
  const download = page.waitForEvent("download");
  await page.getByRole("link", { name: "Parts as CSV" }).click();
  expect((await download).suggestedFilename()).toBe("parts-VEL-03.csv");
  const text = await (await page.request.get("/api/scope/VEL-03?target=Elm")).text();
  expect(text).toMatch(/^\uFEFFwhat,part number,/);
  expect(text).toMatch(/Drive,BW-EL-020,\d+,/);
});

test("a norm is changed, moves the days, and is taken back", async ({ page }) => {
  await signIn(page, "admin@halvenor.example");
  await page.goto(page03);
  const days = page.getByText(/Needs [\d.]+ working days/).first();
  const before = await days.textContent();
  await page.getByRole("button", { name: "Change Crews at the same time" }).click();
  await page.getByLabel(/^Value/).fill("3");
  await page.getByRole("button", { name: "Save the norm" }).click();
  await expect(page.getByRole("status")).toContainText("Crews at the same time changed for all sites.");
  await expect(days).toContainText("Needs 11.4 working days");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(days).toHaveText(before ?? "");
});

test("a viewer of another site sees neither the scope nor its file", async ({ page }) => {
  await signIn(page, "viewer.tho@halvenor.example");
  await page.goto("/lines/NO-99/scope");
  const nothing = await page.getByRole("main").textContent();
  await page.goto(page03);
  expect(await page.getByRole("main").textContent()).toBe(nothing);
  expect((await page.request.get("/api/scope/VEL-03")).status()).toBe(404);
  await page.goto("/lines/THO-01/scope");
  await expect(page.getByRole("heading", { level: 1 })).toContainText("THO-01");
  expect(await page.content()).not.toMatch(/\b(VEL|OST|KAR|PIN|TAD)\b/);
  await expect(page.getByRole("button", { name: /^Change/ })).toHaveCount(0);
});
