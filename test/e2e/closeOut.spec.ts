import { expect, type Page } from "@playwright/test";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const PROJECT = "/projects/KAR-02-R1";

const topic = (page: Page, title: string) =>
  page
    .getByRole("table", { name: "What must be true before the project is closed" })
    .getByRole("row", { name: new RegExp(`^${title}`) });

test("closing is refused while eight removed drives lie untested; a test is written, counts, and is undone", async ({
  page,
}) => {
  test.setTimeout(90_000);
  await signIn(page, "engineer@halvenor.example");
  await page.goto(`${PROJECT}/close`);
  const removed = topic(page, "Removed units are tested");
  await expect(removed).toContainText("▲ 8 missing");
  await page.getByRole("button", { name: "Close KAR-02-R1" }).click();
  await expect(page.getByText(/Nothing was booked\. .* is removed, untested\. And 7 more\./)).toBeVisible();

  const units = page.getByRole("table", { name: "Removed units", exact: true });
  await units
    .getByRole("row", { name: /removed, untested/ })
    .first()
    .getByRole("button", { name: /^Test / })
    .click();
  const form = page.getByRole("dialog");
  await form.getByLabel("What the test said").selectOption({ label: "Needs repair: goes on hold" });
  await form.getByRole("button", { name: "Keep it" }).click();
  await expect(form.getByText("Say who tested it, by function.")).toBeVisible();
  await form.getByLabel("Tested by, as a function").fill("Electrical workshop");
  await form.getByLabel("How it was tested").fill("Trips under load");
  await form.getByLabel("Tested on").fill("2026-11-30");
  await form.getByLabel("Bin it will lie in").fill("R7-221");
  await form.getByRole("button", { name: "Keep it" }).click();
  await expect(removed).toContainText("▲ 7 missing");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(removed).toContainText("▲ 8 missing");

  await topic(page, "No open point is in the way").getByRole("link").first().click();
  await expect(page.getByRole("heading", { level: 1, name: "Open points of KAR-02-R1" })).toBeVisible();
  const points = page.getByRole("table", { name: "Points: Open" });
  const guard = points.getByRole("row", { name: /^Guard of M1/ });
  await expect(guard).toContainText("late, was due");
  await guard.getByRole("button", { name: /^Done: Guard/ }).click();
  await expect(guard).toHaveCount(0);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(guard).toBeVisible();
  await expect(page.getByText(/4 open risks|open risks: expected to cost/)).toBeVisible();
});

test("a cutover says what its way back is worth, takes the times of a step, and shows plan against actual", async ({
  page,
}) => {
  test.setTimeout(90_000);
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, "engineer@halvenor.example");
  await page.goto(`${PROJECT}/cutover`);
  await expect(
    page.getByText(/There is no fall-back: putting the old system back was never tried/),
  ).toBeVisible();

  const first = page.getByRole("article").first();
  await first.getByText("Type the times").click();
  await first.getByLabel("Began").fill("2026-12-27T07:30");
  await first.getByRole("button", { name: "Write them down" }).click();
  await expect(first).toContainText("Runs since 27 Dec 2026, 07:30");
  await expect(page.getByRole("article").nth(1)).toContainText("late");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(first).toContainText("○ to come");
  const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  expect(overflow).toBeLessThanOrEqual(0);

  await page.getByRole("link", { name: "First half, 22 axes" }).click();
  await expect(page.getByText("Every step is over; nothing has to be put back.")).toBeVisible();
  await expect(page.getByText("19 Jul 2026, 04:00").first()).toBeVisible();
  const compared = page.getByRole("table", { name: "Planned against actual" });
  await expect(compared.getByRole("row", { name: /^First motion/ })).toContainText("later");
});
