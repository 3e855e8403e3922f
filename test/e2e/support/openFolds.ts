import type { Page } from "@playwright/test";

/** Opens every folded part of the page, as somebody would who reads all of it. */
export async function openFolds(page: Page): Promise<void> {
  const folds = page.locator("details[data-fold]:not([open]) > summary");
  while ((await folds.count()) > 0) await folds.first().click();
}
