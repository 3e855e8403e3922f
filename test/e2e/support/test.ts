import { type BrowserContext, test as base } from "@playwright/test";

interface Shared {
  /** The context all journeys of a file have. */
  of(file: string): Promise<BrowserContext>;
}

/**
 * The test of a journey: each begins in a browser that knows nobody and keeps nothing.
 *
 * All journeys of a file share one context, so that the scripts of the pages are fetched and compiled once and not at
 * every journey; what a journey leaves in it is thrown away after it, and the context after its file.
 */
export const test = base.extend<object, { shared: Shared }>({
  shared: [
    async ({ browser }, use, { project }) => {
      const { locale = "en-GB", timezoneId = "UTC", viewport = null, baseURL = "" } = project.use;
      let open: { readonly file: string; readonly context: BrowserContext } | null = null;
      await use({
        of: async (file) => {
          if (open?.file !== file) {
            await open?.context.close();
            open = { file, context: await browser.newContext({ locale, timezoneId, viewport, baseURL }) };
          }
          return open.context;
        },
      });
      await (open as { readonly context: BrowserContext } | null)?.context.close();
    },
    { scope: "worker" },
  ],
  context: async ({ shared }, use, { file }) => {
    const context = await shared.of(file);
    await use(context);
    await empty(context);
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
