import { expect } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("an event is told at the machine in under two minutes, asked about when close to it, and taken back", async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/events/new");
  await expectAccessible(page);
  const started = Date.now();
  await page.getByLabel("Line", { exact: true }).selectOption("THO-01");
  await page.getByLabel("Machine", { exact: true }).selectOption({ index: 1 });
  const place = page.getByLabel("Place", { exact: true });
  await place.selectOption({ index: 1 });
  const form = page.getByRole("form", { name: "Event" });
  await form.getByLabel(/^When it failed/).fill("2026-11-29T02:10");
  await form.getByLabel(/^Hours the line stood/).fill("3,5");
  await form.getByLabel(/^The unit taken out/).selectOption({ label: "Goes to repair" });
  await form.getByRole("button", { name: "Keep this event" }).click();
  await expect(page.getByText(/Event H-20261129-\w+ kept/)).toBeVisible();
  expect(Date.now() - started).toBeLessThan(120_000);
  await expectAccessible(page);

  await form.getByLabel(/^When it failed/).fill("2026-11-30T06:00");
  await form.getByRole("button", { name: "Keep this event" }).click();
  await expect(page.getByRole("alert").filter({ hasText: "Within three days" })).toBeVisible();
  await expect(form.getByLabel(/^It is another event/)).toBeVisible();
  await expect(form.getByLabel(/^When it failed/)).toHaveValue("2026-11-30T06:00");

  await page.getByRole("button", { name: "Undo" }).click();
  await page.goto("/lines/THO-01");
  await expect(page.getByText(/H-20261129/)).toHaveCount(0);
});

test("a viewer is told whom to ask", async ({ page }) => {
  await signIn(page, "viewer@halvenor.example");
  await page.goto("/events/new");
  await expect(page.getByText(/Ask an administrator for the role of a technician/)).toBeVisible();
});
