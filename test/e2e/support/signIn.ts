import { type BrowserContext, expect, type Page } from "@playwright/test";
import { demoAccounts } from "@/seed/accounts";

type Cookies = Parameters<BrowserContext["addCookies"]>[0];

/** Sessions opened in this worker, by installation and e-mail: the sign-in page counts attempts by address. */
const opened = new Map<string, Cookies>();

/** Signs in as the demo account of that e-mail: through the sign-in page once, then by the session it opened. */
export async function signIn(page: Page, email: string): Promise<void> {
  const account = demoAccounts.find((one) => one.email === email);
  if (!account)
    throw new Error(`No demo account ${email}. There are: ${demoAccounts.map((a) => a.email).join(", ")}`);
  await page.goto("/sign-in");
  const key = `${new URL(page.url()).origin} ${email}`;
  await page.context().addCookies(opened.get(key) ?? []);
  if (opened.has(key)) await page.goto("/sign-in");
  // A session may have been ended meanwhile; then the page is still there.
  if (page.url().includes("/sign-in")) {
    await page.getByLabel("E-mail").fill(account.email);
    await page.getByLabel("Password").fill(account.password);
    await page.getByRole("button", { name: "Sign in" }).click();
    await expect(page).not.toHaveURL(/sign-in/);
    opened.set(key, await page.context().cookies());
  }
}
