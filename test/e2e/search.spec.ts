import { expect, type Page } from "@playwright/test";
import { expectAccessible } from "./support/accessible";
import { openFolds } from "./support/openFolds";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const group = "viewer@halvenor.example";
const thornby = "viewer.tho@halvenor.example";

/** Types into the search by keyboard alone and waits for its first hit. */
async function searchFor(page: Page, text: string) {
  await page.keyboard.press("Control+k");
  const dialog = page.getByRole("dialog", { name: "Search" });
  await expect(dialog).toBeVisible();
  await page.keyboard.type(text);
  return dialog;
}

test.describe("the search", () => {
  for (const start of ["/lines", "/projects"])
    test(`works by keyboard from ${start}`, async ({ page }) => {
      await signIn(page, group);
      await page.goto(start);
      await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
      const dialog = await searchFor(page, "tm hr 020");
      await expect(dialog.getByRole("option").first()).toContainText("TM-HR-020");
      await page.keyboard.press("ArrowDown");
      await page.keyboard.press("Enter");
      await expect(page.getByRole("heading", { level: 1, name: "TM-HR-020" })).toBeVisible();
    });

  test("says where a serial number is, and reads well", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/parts");
    await page.getByRole("link", { name: "TM-HR-020", exact: true }).click();
    await expect(page.getByRole("heading", { level: 1, name: "TM-HR-020" })).toBeVisible();
    await openFolds(page);
    const places = page.getByRole("table", { name: "Places that hold the part" });
    const serial =
      (await places
        .getByText(/^HR\d+$/)
        .first()
        .textContent()) ?? "";
    const dialog = await searchFor(page, serial);
    await expect(dialog.getByRole("option").first()).toContainText(`${serial} TM-HR-020`);
    await expect(dialog.getByRole("option").first()).toContainText(/in [A-Z]{3}-\d\d \/ M\d\d/);
    await expectAccessible(page);
    await page.keyboard.press("Enter");
    await expect(page).toHaveURL(/\/lines\/.*#place-/);
    await expect(page.getByText(`serial ${serial}`)).toBeInViewport();
  });

  test("finds nothing of another site", async ({ page }) => {
    await signIn(page, thornby);
    for (const [text, found] of [
      ["VEL-03", 0],
      ["THO-01", 1],
    ] as const) {
      const answer = await page.request.get(`/api/search?q=${text}`);
      const { results } = await answer.json();
      expect(results.filter((hit: { title: string }) => hit.title === text)).toHaveLength(found);
      expect(JSON.stringify(results)).not.toMatch(/VEL/);
    }
  });

  test("opens at a key pressed alone until somebody switches such keys off, and at Ctrl K always", async ({
    page,
  }) => {
    await signIn(page, group);
    await page.goto("/account");
    await page.getByRole("button", { name: "Account of Viewer of the group" }).click();
    await page.getByRole("checkbox", { name: "Keys pressed alone act" }).uncheck();
    await page.keyboard.press("Escape");
    await expect(page.getByRole("dialog")).toHaveCount(0);
    await page.keyboard.press("/");
    await page.keyboard.press("?");
    const dialog = await searchFor(page, "VEL-03");
    await expect(page.getByRole("dialog")).toHaveCount(1);
    await expect(dialog.getByRole("option").first()).toContainText("VEL-03");
    // The first clears what was typed, the second closes.
    await page.keyboard.press("Escape");
    await page.keyboard.press("Escape");
    await expect(page.getByRole("dialog")).toHaveCount(0);
    await page.getByRole("button", { name: "Account of Viewer of the group" }).click();
    await page.getByRole("checkbox", { name: "Keys pressed alone act" }).check();
    await page.keyboard.press("Escape");
    await page.keyboard.press("/");
    await expect(page.getByRole("dialog", { name: "Search" })).toBeVisible();
  });

  test("answers nobody who is not signed in", async ({ request }) => {
    const answer = await request.get("/api/search?q=TM-HR-020");
    expect(await answer.text()).not.toContain("TM-HR-020");
  });
});
