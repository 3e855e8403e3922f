import { expect, type Page } from "@playwright/test";
import { demoAccounts } from "@/seed/accounts";

/** Signs in through the sign-in page as the demo account of that e-mail. */
export async function signIn(page: Page, email: string): Promise<void> {
  const account = demoAccounts.find((one) => one.email === email);
  if (!account)
    throw new Error(`No demo account ${email}. There are: ${demoAccounts.map((a) => a.email).join(", ")}`);
  await page.goto("/sign-in");
  await page.getByLabel("E-mail").fill(account.email);
  await page.getByLabel("Password").fill(account.password);
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page).not.toHaveURL(/sign-in/);
}
