import { type BrowserContext, test as base } from "@playwright/test";

/**
 * The test of a journey: each begins in a browser that knows nobody and keeps nothing.
 *
 * All journeys of a worker share one context, so that the scripts of the pages are fetched and compiled
 * once and not at every journey; what a journey leaves in it is thrown away after it.
 */
export const test = base.extend<object, { shared: BrowserContext }>({
  shared: [
    async ({ browser }, use, { project }) => {
      const { locale = "en-GB", timezoneId = "UTC", viewport = null, baseURL = "" } = project.use;
      const context = await browser.newContext({ locale, timezoneId, viewport, baseURL });
      await use(context);
      await context.close();
    },
    { scope: "worker" },
  ],
  context: async ({ shared }, use) => {
    await use(shared);
    await empty(shared);
  },
  page: async ({ context }, use) => {
    await use(await context.newPage());
  },
});

async function empty(context: BrowserContext): Promise<void> {
  await context.setOffline(false);
  const [page = await context.newPage()] = context.pages();
  const { origin } = new URL(page.url());
  if (origin !== "null") {
    const session = await context.newCDPSession(page);
    await session.send("Storage.clearDataForOrigin", {
      origin,
      storageTypes: "local_storage,indexeddb,service_workers,cache_storage",
    });
  }
  for (const one of context.pages()) await one.close();
  await context.clearCookies();
}
