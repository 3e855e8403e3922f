import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";

/** Expects no accessibility violation on the page as it stands, in the light and in the dark theme. */
export async function expectAccessible(page: Page): Promise<void> {
  for (const theme of ["light", "dark"]) {
    await page.evaluate((name) => {
      document.documentElement.dataset.theme = name;
    }, theme);
    const { violations } = await new AxeBuilder({ page }).analyze();
    const found = violations.map(
      ({ id, nodes }) => `${theme}: ${id} at ${nodes.map((n) => n.target.join(" ")).join("; ")}`,
    );
    expect(found).toEqual([]);
  }
}
