import { expect } from "@playwright/test";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("a task slips out of its shutdown, the plan is kept with its reason, a gate is refused and passed, axes earn", async ({
  page,
}) => {
  test.setTimeout(120_000);
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/projects/VEL-09-R1/schedule");
  const tasks = page.getByRole("table", { name: "Tasks of the project" });
  await expect(tasks.getByRole("row", { name: /W1 .*fit and wire/ })).toContainText("2 Aug 2027");
  await expect(page.getByText(/lies on .*in no shutdown on record/)).toHaveCount(0);

  // One working day by key, and back.
  const bar = page.getByRole("slider", { name: "Place of P1" });
  await bar.focus();
  await page.keyboard.press("ArrowRight");
  await expect(tasks.getByRole("row", { name: /P1 / })).toContainText("5 Jan 2027");
  await page.keyboard.press("Escape");
  await expect(tasks.getByRole("row", { name: /P1 / })).toContainText("4 Jan 2027");

  // Dragged to the right it lies later, and is dropped again.
  const box = await bar.boundingBox();
  if (!box) throw new Error("the bar is not drawn");
  await page.mouse.move(box.x + 10, box.y + 10);
  await page.mouse.down();
  await page.mouse.move(box.x + 60, box.y + 10, { steps: 5 });
  await page.mouse.up();
  await expect(tasks.getByRole("row", { name: /P1 / })).toContainText("changed, not kept");
  await expect(tasks.getByRole("row", { name: /P1 / })).not.toContainText("4 Jan 2027");
  await page.getByRole("button", { name: "Drop these changes" }).click();
  await expect(tasks.getByRole("row", { name: /P1 / })).toContainText("4 Jan 2027");

  // Parts come half a year later: the work in the shutdown leaves it, and the end moves.
  await page.getByLabel("Working days of O2").fill("230");
  await expect(page.getByText(/W1 .* in no shutdown on record\. It would fit from/)).toBeVisible();
  const keep = page.getByRole("form", { name: "Keep a plan" });
  await expect(keep.getByRole("status")).toContainText(/The end moves from 16 Sep 2027 to/);
  await keep.getByRole("button", { name: "Keep this plan" }).click();
  await expect(keep).toContainText("Say why the plan changes.");
  await keep.getByLabel("Why the plan changes").fill("Drives delayed by their maker");
  await keep.getByRole("button", { name: "Keep this plan" }).click();
  const plans = page.getByRole("table", { name: "Plans kept" });
  await expect(plans.getByRole("row", { name: /Drives delayed by their maker/ }).first()).toContainText(
    /\d+ tasks/,
  );
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(plans.getByRole("row", { name: /Plan \d+ taken back/ }).first()).toBeVisible();
  await expect(tasks.getByRole("row", { name: /W1 .*fit and wire/ })).toContainText("2 Aug 2027");

  const gate = page.getByRole("region", { name: "Gate Readiness" });
  await gate.getByRole("button", { name: "Pass: go" }).click();
  await expect(gate.getByRole("alert")).toContainText("The gate cannot be passed: 3 items are open.");
  for (const item of await gate.getByRole("checkbox").all()) {
    await item.click();
    await expect(item).toBeChecked();
  }
  await gate.getByRole("button", { name: "Pass: go" }).click();
  await expect(gate.getByRole("heading")).toContainText("passed: Readiness");
  // Left as it was found.
  await gate.getByRole("button", { name: "Open it again" }).click();
  await expect(gate.getByRole("heading")).toContainText("open: Readiness");
  for (const item of await gate.getByRole("checkbox").all()) {
    await item.click();
    await expect(item).not.toBeChecked();
  }

  // All axes powered earn the 30 % of the cutover; taken back, they do not.
  await page.goto("/projects/VEL-09-R1/axes");
  await page.getByLabel("Axis", { exact: true }).check();
  for (const step of ["wired", "powered"]) {
    await page.getByRole("button", { name: `Mark chosen axes ${step}` }).click();
    await expect(page.getByRole("status").filter({ hasText: `${step} on 30 Nov 2026` })).toBeVisible();
  }
  await page.goto("/projects/VEL-09-R1");
  await expect(page.getByRole("main")).toContainText(/70.%/);
  await page.goto("/projects/VEL-09-R1/axes");
  await page.getByLabel("Axis", { exact: true }).check();
  for (const step of ["powered", "wired"]) {
    await page.getByRole("button", { name: `Take ${step} back of chosen axes` }).click();
    await expect(page.getByRole("status").filter({ hasText: /taken back of/ })).toBeVisible();
    await page.getByRole("button", { name: "Close", exact: true }).click();
  }
});

test("the calendar names work outside shutdowns and crews asked for twice", async ({ page }) => {
  await signIn(page, "viewer@halvenor.example");
  await page.goto("/projects/calendar");
  await expect(page.getByText(/KAR-02-R1: W2 .* in no shutdown on record/)).toBeVisible();
  await expect(page.getByText(/THO-01-S1 W2, VEL-09-R1 W1|VEL-09-R1 W1, THO-01-S1 W2/)).toContainText(
    "need 3 crews of Europe together, 2 crews are stated",
  );
});
