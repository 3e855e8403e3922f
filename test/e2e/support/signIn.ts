import { type BrowserContext, expect, type Page } from "@playwright/test";
import { demoAccounts } from "@/seed/accounts";

type Cookies = Parameters<BrowserContext["addCookies"]>[0];

/** Sessions opened in this worker, by installation and e-mail: the sign-in page counts attempts by address. */
const opened = new Map<string, Cookies>();

/**
 * Signs in as the demo account of that e-mail: through the sign-in page once, then by the session it opened.
 *
 * No page is opened for that: whoever signs in goes where they want to be.
 */
export async function signIn(page: Page, email: string): Promise<void> {
  const account = demoAccounts.find((one) => one.email === email);
  if (!account)
    throw new Error(`No demo account ${email}. There are: ${demoAccounts.map((a) => a.email).join(", ")}`);
  const health = await page.request.get("/api/health");
  const key = `${new URL(health.url()).origin} ${email}`;
  const known = opened.get(key);
  if (known) {
    await page.context().addCookies(known);
    // A session may have been ended meanwhile.
    if ((await (await page.request.get("/api/auth/get-session")).json()) !== null) return;
  }
  await page.goto("/sign-in");
  await page.getByLabel("E-mail").fill(account.email);
  await page.getByLabel("Password").fill(account.password);
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page).not.toHaveURL(/sign-in/);
  opened.set(key, await page.context().cookies());
}
