import AxeBuilder from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";

/** Expects no accessibility violation on the page as it stands. */
export async function expectAccessible(page: Page): Promise<void> {
  await expectNothingFound(page, new AxeBuilder({ page }));
}

/** The same in the light and in the dark theme, in which nothing but the colours is another. */
export async function expectAccessibleInBothThemes(page: Page): Promise<void> {
  await setTheme(page, "light");
  await expectAccessible(page);
  await setTheme(page, "dark");
  await expectNothingFound(page, new AxeBuilder({ page }).withRules(["color-contrast"]));
}

async function setTheme(page: Page, theme: "light" | "dark"): Promise<void> {
  await page.evaluate((name) => {
    document.documentElement.dataset.theme = name;
  }, theme);
}

async function expectNothingFound(page: Page, builder: AxeBuilder): Promise<void> {
  const theme = await page.evaluate(() => document.documentElement.dataset.theme);
  const { violations } = await builder.analyze();
  const found = violations.map(
    ({ id, nodes }) => `${theme}: ${id} at ${nodes.map((n) => n.target.join(" ")).join("; ")}`,
  );
  expect(found).toEqual([]);
}
