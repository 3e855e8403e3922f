import { expect, type Page } from "@playwright/test";
import { REGISTERS, type RegisterKey } from "@/lib/intake/registers";

/** A file on disk, or made up in the test. */
export type Handed = string | { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };

/** Hands a register file in and waits until it was read; the page then shows what it would do. */
export async function handIn(page: Page, register: RegisterKey, file: Handed): Promise<void> {
  await page.goto("/import");
  await page.getByLabel("Register it holds").selectOption({ label: REGISTERS[register].label });
  await page.getByLabel("File", { exact: true }).setInputFiles(file);
  await page.getByRole("button", { name: "Read the file" }).click();
  await expect(page.getByRole("heading", { name: "How the file was read" })).toBeVisible({ timeout: 60_000 });
}

/** Loads the file the page shows, and waits until it is loaded. */
export async function loadShown(page: Page): Promise<void> {
  await page.getByRole("button", { name: /^Load \d/ }).click();
  await expect(page.getByText(/^Loaded on /)).toBeVisible({ timeout: 120_000 });
}

/** A CSV file made up in the test. */
export function csv(name: string, text: string): Handed {
  return { name, mimeType: "text/csv", buffer: Buffer.from(text, "utf8") };
}
