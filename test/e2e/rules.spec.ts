import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test.setTimeout(180_000);

const rules = (page: Page) => page.getByRole("table", { name: "Compatibility rules in force" });
const stands = (page: Page) => page.getByRole("table", { name: "Lines and where they stand" });
const floorRow = (page: Page) => rules(page).getByRole("row", { name: /^R1, version/ });

async function versionOf(page: Page): Promise<number> {
  const text = await floorRow(page).getByRole("rowheader").textContent();
  return Number(/version (\d+)/.exec(text ?? "")?.[1]);
}

/** Opens the floor rule and states another level for the Slate 5. */
async function stateFloor(page: Page, level: number) {
  await page.getByRole("button", { name: "Change R1" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Controllers that run it").fill(`Slate 5 from ${level}\nSlate 7 from 27`);
  await dialog.getByLabel("Meaning").fill(`Floor at ${level}, tried out`);
  await dialog.getByRole("button", { name: "See what it changes" }).click();
  return dialog;
}

test("the floor is raised: the form names the lines, the line's page the new version, and it goes back", async ({
  page,
}) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/rules");
  const before = await versionOf(page);
  const dialog = await stateFloor(page, 25);
  const effect = dialog.getByRole("region", { name: "What it changes" });
  await expect(effect).toContainText("6 lines of 40 would stand elsewhere.");
  for (const line of ["KAR-05", "OST-08", "PIN-02", "THO-01", "VEL-06", "VEL-09"])
    await expect(effect.getByRole("listitem").filter({ hasText: line }).first()).toContainText(
      "Ready → Below the floor",
    );
  await expectAccessible(page);
  // Seeing wrote nothing.
  expect(await versionOf(page)).toBe(before);

  await dialog.getByRole("button", { name: `Write version ${before + 1}` }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByRole("status").filter({ hasText: "is in force now" })).toBeVisible();
  await expect(floorRow(page)).toContainText("Slate 5 from 25");
  await page.goto("/lines/VEL-06#blockers");
  const verdicts = page.getByRole("table", { name: "What the rules say of the controllers of VEL-06" });
  await expect(verdicts.getByRole("row", { name: /^VEL-06-K1/ })).toContainText(
    `(R1, version ${before + 1}): 24 is below 25`,
  );

  await page.goto("/rules");
  await page.getByRole("button", { name: `Take up R1, version ${before}`, exact: true }).click();
  const again = page.getByRole("dialog");
  await expect(again.getByLabel("Controllers that run it")).toHaveValue("Slate 5 from 24\nSlate 7 from 27");
  await again.getByRole("button", { name: "See what it changes" }).click();
  await expect(again.getByText("6 lines of 40 would stand elsewhere.")).toBeVisible();
  await again.getByRole("button", { name: `Write version ${before + 2}` }).click();
  await expect(again).toBeHidden();
  await expect(floorRow(page)).toContainText("Slate 5 from 24");
  await page.goto("/lines/VEL-06#blockers");
  await expect(verdicts.getByRole("row", { name: /^VEL-06-K1/ })).toContainText(
    `(R1, version ${before + 2}): 24 meets 24`,
  );
});

test("a level that is none is refused at its field, and a change after the preview asks for it anew", async ({
  page,
}) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/rules");
  await page.getByRole("button", { name: "Change R2" }).click();
  const dialog = page.getByRole("dialog");
  const level = dialog.getByLabel("Highest level");
  await level.fill("latest");
  await dialog.getByRole("button", { name: "See what it changes" }).click();
  await expect(dialog.getByText("Write a level such as 24, 24.011 or 24 SP 2.")).toBeVisible();
  await expect(level).toHaveAttribute("aria-invalid", "true");
  await level.fill("17");
  await dialog.getByRole("button", { name: "See what it changes" }).click();
  await expect(dialog.getByText("No line of 40 stands elsewhere by it.")).toBeVisible();
  await expect(dialog.getByRole("button", { name: /^Write version/ })).toBeVisible();
  await level.fill("16");
  await expect(dialog.getByRole("button", { name: /^Write version/ })).toHaveCount(0);
});

test("the counts lead to their lines, and a line to what stands in its way", async ({ page }) => {
  await signIn(page, "viewer@halvenor.example");
  await page.goto("/rules");
  await expectAccessible(page);
  await page.getByRole("link", { name: "Show: Memory blocks the raise" }).click();
  await expect(stands(page).locator("tbody tr")).toHaveCount(1);
  await expect(stands(page).locator("tbody tr")).toContainText("88 % × 1.15 = 101 %");
  await page.getByRole("link", { name: "Show: Controller swap" }).click();
  await expect(stands(page).locator("tbody tr")).toHaveCount(10);
  await stands(page).getByRole("link", { name: "VEL-03" }).click();
  await expect(page.getByRole("heading", { name: "What stands in the way of a retrofit" })).toBeVisible();
  await expectAccessible(page);
});

test("a viewer of one site reads the rules and changes none", async ({ page }) => {
  await signIn(page, "viewer.tho@halvenor.example");
  await page.goto("/rules");
  await expect(floorRow(page)).toBeVisible();
  await expect(page.getByRole("button", { name: /^(Change R|New rule|Take up)/ })).toHaveCount(0);
  await expect(stands(page).locator("tbody tr")).toHaveCount(4);
});

test("a further rule is tried out by its kind, and nothing is written by looking", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/rules");
  const before = await rules(page).getByRole("row").count();
  await page.getByRole("button", { name: "New rule" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Kind", { exact: true }).selectOption("Feedback match");
  await dialog.getByLabel("Code").fill("R90");
  await dialog.getByLabel("Kind of feedback, as in the axis list").fill("resolver");
  await dialog.getByLabel("New drive family").fill("Heron E");
  await dialog.getByLabel("What holds").selectOption("must be sized anew by a competent engineer");
  await dialog.getByRole("button", { name: "See what it changes" }).click();
  await expect(dialog.getByText("No line of 40 stands elsewhere by it.")).toBeVisible();
  await dialog.getByText(/^Verdicts change on \d+ controllers of \d+ lines$/).click();
  await expect(dialog.getByText(/KAR-02-K\d+: R90 silent → blocked/).first()).toBeVisible();
  await expectAccessible(page);
  await dialog.getByRole("button", { name: "Close" }).click();
  await page.reload();
  await expect(rules(page).getByRole("row")).toHaveCount(before);
});
