import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";

/** Rows of a table are alike: further ones cost seconds and find what the first ones found. */
const FURTHER_ROWS = "tbody tr:nth-of-type(n + 9)";

/**
 * Looks at the page alone and gathers nothing but what is wrong: frames of other origins there are none, and a blank
 * page beside it with all that is right costs more than the look.
 */
const look = (page: Page) =>
  new AxeBuilder({ page })
    .setLegacyMode()
    .options({ resultTypes: ["violations"] })
    .exclude(FURTHER_ROWS);

/**
 * Expects no accessibility violation on the page as it stands, of a table's body in its first rows.
 *
 * Contrast, the dearest rule, is looked at on every screen in both themes by its own test.
 */
export async function expectAccessible(page: Page): Promise<void> {
  await expectNothingFound(page, look(page).disableRules(["color-contrast"]));
}

/** The same with the contrast, in the light and in the dark theme, in which nothing but the colours is another. */
export async function expectAccessibleInBothThemes(page: Page): Promise<void> {
  await setTheme(page, "light");
  await expectNothingFound(page, look(page));
  await setTheme(page, "dark");
  await expectNothingFound(page, look(page).withRules(["color-contrast"]));
}

async function setTheme(page: Page, theme: "light" | "dark"): Promise<void> {
  await page.evaluate((name) => {
    document.documentElement.dataset.theme = name;
  }, theme);
}

async function expectNothingFound(page: Page, builder: AxeBuilder): Promise<void> {
  const theme = await page.evaluate(() => document.documentElement.dataset.theme ?? "as set");
  // The framework sends a page's title after its first bytes.
  await expect(page).toHaveTitle(/\S/);
  const { violations } = await builder.analyze();
  const found = violations.map(
    ({ id, nodes }) => `${theme}: ${id} at ${nodes.map((n) => n.target.join(" ")).join("; ")}`,
  );
  expect(found).toEqual([]);
}
