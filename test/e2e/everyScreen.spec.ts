import { expect, type Page } from "@playwright/test";
import { expectAccessibleInBothThemes } from "./support/accessible";
import { settled } from "./support/settled";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const screens = [
  "/lines",
  "/lines?asOf=2027-06-01",
  "/lines/PIN-03",
  "/lines/VEL-03",
  "/lines/VEL-03/scope",
  "/installed",
  "/installed?line=VEL-03",
  "/axes",
  "/parts",
  "/spares",
  "/counts",
  "/care",
  "/repairs",
  "/levels",
  "/cover",
  "/pool",
  "/spend",
  "/spend?budget=200k",
  "/review",
  "/review?site=VEL",
  "/dates",
  "/plans",
  "/plans/new?year=2027&budget=1900000",
  "/plans/inputs",
  "/plans/compare",
  "/projects",
  "/projects/KAR-02-R1",
  "/projects/calendar",
  "/projects/KAR-02-R1/schedule",
  "/projects/KAR-02-R1/axes",
  "/projects/KAR-02-R1/cutover",
  "/projects/KAR-02-R1/points",
  "/projects/KAR-02-R1/close",
  "/projects/KAR-02-R1/benefit",
  "/projects/KAR-02-R1/money",
  "/report",
  "/report?site=VEL",
  "/report?site=VEL&kind=weekly",
  "/report/archive",
  "/home",
  "/events",
  "/events/new",
  "/notices",
  "/notices/new",
  "/import",
  "/import/sources",
  "/parts/numbers",
  "/parts/merge",
  "/moved",
  "/footing",
  "/footing?site=VEL",
  "/footing/firmware-unknown",
  "/sightings",
  "/rules",
  "/assumptions",
  "/export",
  "/people",
  "/account",
  "/audit",
  "/start",
  "/lines?known=2026-05-12",
  "/interface",
  "/interface/reference",
  "/lines/NO-99",
];

test("the door is accessible in both themes", async ({ page }) => {
  await page.goto("/sign-in");
  await expectAccessibleInBothThemes(page);
  await page.goto("/first-admin?token=none");
  await expectAccessibleInBothThemes(page);
});

test.describe("signed in", () => {
  let page: Page;
  let said: string[];

  // One page for all screens, as a person has: its scripts are read once.
  test.beforeAll(async ({ browser }) => {
    page = await browser.newPage();
    page.on("pageerror", (error) => said.push(error.message));
    page.on("console", (message) => {
      if (message.type() === "error") said.push(message.text());
    });
    said = [];
    await signIn(page, "admin@halvenor.example");
  });
  test.afterAll(() => page.close());

  for (const screen of screens)
    test(`${screen} is accessible in both themes and says nothing to the console`, async () => {
      test.setTimeout(120_000);
      said = [];
      await page.goto(screen);
      await settled(page);
      await expect(page.getByRole("main")).toBeVisible();
      await expectAccessibleInBothThemes(page);
      // The page that is not there answers 404, which the browser reports of itself.
      expect(said.filter((text) => !(screen.endsWith("/NO-99") && text.includes("404")))).toEqual([]);
    });
});

test("on a phone the line, the part and the search work without sideways scrolling", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, "engineer@halvenor.example");
  for (const screen of ["/lines", "/lines/PIN-03", "/parts", "/home"]) {
    await page.goto(screen);
    await settled(page);
    const overflow = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(`${screen} overflows by ${Math.max(0, overflow)}`).toBe(`${screen} overflows by 0`);
  }
});
