import { expect } from "@playwright/test";
import { csv, handIn, loadShown } from "./support/loadRegister";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const LIST = [
  "Site;Network;Node;Vendor;Catalogue no.;Serial no.;Scan time",
  "THO;THO-01-R1;1;Tarnholt Motion;TM-HR-020-B1;HR8321160;2026-11-12 14:20",
  "THO;THO-01-R1;2;Tarnholt Motion;TM-HR-010-B1;HR4590999;2026-11-12 14:20",
].join("\n");

test("a network list stands beside the register, and what it saw is taken over and given back", async ({
  page,
}) => {
  await signIn(page, "admin@halvenor.example");
  await handIn(page, "scans", csv("panel list.csv", LIST));
  await loadShown(page);
  await page.goto("/sightings?site=THO");
  await expect(page.getByText("serial number: register HR4590742, seen HR4590999")).toBeVisible();
  await expect(page.getByText("Never scan a live motion network")).toBeVisible();
  const settle = page.getByRole("button", { name: "Settle THO-01 / M01 / A02-T1" });
  await settle.click();
  await page.getByRole("button", { name: "Decide", exact: true }).click();
  await expect(page.getByText("THO-01 / M01 / A02-T1 settled.")).toBeVisible();
  await expect(settle).toBeHidden();
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(settle).toBeVisible();
  await page.goto("/import");
  const row = page.getByRole("row").filter({ hasText: "panel list.csv" }).first();
  await row.getByRole("button", { name: "Take back" }).click();
  await page.getByRole("button", { name: "Take this file back" }).click();
  await expect(row).toContainText("taken back");
  await page.goto("/sightings?site=THO");
  await expect(page.getByText("No network list of THO is loaded")).toBeVisible();
});
