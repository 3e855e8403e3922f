import type { Page } from "@playwright/test";

/** Waits until the page is there and has nothing left to do: its scripts have run and its parts are alive. */
export async function settled(page: Page): Promise<void> {
  await page.waitForLoadState("load");
  await page.evaluate(
    () => new Promise<void>((done) => requestIdleCallback(() => done(), { timeout: 10_000 })),
  );
}
