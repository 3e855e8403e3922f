import { expect } from "@playwright/test";
import ICAL from "ical.js";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("the dates ahead are read by a calendar under a secret address, until it is taken back", async ({
  page,
  playwright,
}) => {
  await signIn(page, "viewer.tho@halvenor.example");
  await page.goto("/account");
  await page.getByRole("button", { name: "Make a calendar address" }).click();
  const shown = page.getByRole("status").locator("code");
  const address = await shown.textContent();
  await expectAccessible(page);
  // Another client, signed in nowhere; the address it was told may name another host than the test's.
  const stranger = await playwright.request.newContext();
  const path = new URL(address ?? "").pathname;
  const feed = await stranger.get(new URL(path, page.url()).href);
  expect(feed.headers()["content-type"]).toContain("text/calendar");
  const text = await feed.text();
  const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents("vevent");
  expect(events.length).toBeGreaterThan(0);
  expect(text).toContain("Last order at the maker");
  expect(text).not.toMatch(/\b(VEL|OST|KAR|PIN|TAD)\b/);
  await page.getByRole("button", { name: "Take it back" }).click();
  await expect(page.getByText("You have no calendar address yet")).toBeVisible();
  expect((await stranger.get(new URL(path, page.url()).href)).status()).toBe(404);
  await stranger.dispose();
});
