import { expect, type Page } from "@playwright/test";
import axe, { type RunOptions } from "axe-core";
import { settled } from "./settled";

/** Rows of a table are alike: further ones cost seconds and find what the first ones found. */
const FURTHER_ROWS = "tbody tr:nth-of-type(n + 9)";

/**
 * Expects no accessibility violation on the page as it stands, of a table's body in its first rows.
 *
 * Contrast, the dearest rule, is looked at on every screen in both themes by its own test.
 */
export async function expectAccessible(page: Page): Promise<void> {
  await expectNothingFound(page, { rules: { "color-contrast": { enabled: false } } });
}

/** The same with the contrast, in the light and in the dark theme, in which nothing but the colours is another. */
export async function expectAccessibleInBothThemes(page: Page): Promise<void> {
  await setTheme(page, "light");
  await expectNothingFound(page, {});
  await setTheme(page, "dark");
  await expectNothingFound(page, { runOnly: { type: "rule", values: ["color-contrast"] } });
}

async function setTheme(page: Page, theme: "light" | "dark"): Promise<void> {
  await page.evaluate((name) => {
    document.documentElement.dataset.theme = name;
  }, theme);
}

/** Looks at the page alone, since there are no frames of other origins, and gathers nothing but what is wrong. */
async function expectNothingFound(page: Page, options: RunOptions): Promise<void> {
  // The framework sends a page's title after its first bytes, and takes the last one away before.
  await settled(page);
  await expect(page).toHaveTitle(/\S/);
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(axe.source);
  const found = await page.evaluate(
    async ({ furtherRows, chosen }) => {
      const { axe: looker } = window as unknown as { axe: typeof axe };
      const theme = document.documentElement.dataset.theme ?? "as set";
      const context = { include: [["html"]], exclude: [[furtherRows]] };
      const { violations } = await looker.run(context, { ...chosen, resultTypes: ["violations"] });
      return violations.map(
        ({ id, nodes }) => `${theme}: ${id} at ${nodes.map((node) => node.target.join(" ")).join("; ")}`,
      );
    },
    { furtherRows: FURTHER_ROWS, chosen: options },
  );
  expect(found).toEqual([]);
}
