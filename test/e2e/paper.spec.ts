import { expect, type Page } from "@playwright/test";
import { seedId } from "@/seed/seedId";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test.setTimeout(180_000);

const group = "engineer@halvenor.example";
/** Width between the margins of 12 mm, CSS px; both from the sizes of the paper, ISO 216 and ANSI/ASME Y14.1. */
const WIDTH = { A4: ((210 - 24) / 25.4) * 96, Letter: ((215.9 - 24) / 25.4) * 96 } as const;
const FORMATS = ["A4", "Letter"] as const;

async function printed(page: Page, format: (typeof FORMATS)[number]): Promise<number> {
  const pdf = (await page.pdf({ format, preferCSSPageSize: false })).toString("latin1");
  return pdf.match(/\/Type\s*\/Page\b/g)?.length ?? 0;
}

/** What of the printed page is cut off at its right edge: tables, and frames narrower than what they hold. */
async function cutOff(page: Page, width: number): Promise<string[]> {
  await page.setViewportSize({ width: Math.floor(width), height: 1000 });
  await page.emulateMedia({ media: "print" });
  const found = await page.evaluate(() => {
    const wide = [...document.querySelectorAll<HTMLTableElement>("main table")].filter((table) => {
      const { left, right, width: drawn } = table.getBoundingClientRect();
      const frame = table.parentElement;
      const clips = frame !== null && getComputedStyle(frame).overflowX !== "visible";
      return drawn > 0 && (right > innerWidth + 1 || left < -1 || (clips && drawn > frame.clientWidth + 1));
    });
    return wide.map((table) => table.caption?.textContent ?? "a table without a caption");
  });
  await page.emulateMedia({ media: null });
  await page.setViewportSize({ width: 1440, height: 900 });
  return found;
}

/** Address and most pages. */
const PAPERS = [
  ["scope of a line", "/lines/VEL-03/scope", 11],
  ["dates ahead", "/dates", 3],
  ["rules", "/rules", 4],
  ["dossier of a line", "/lines/VEL-03", 15],
  ["axes of a project", "/projects/KAR-02-R1/axes", 4],
  ["cutover of a project", "/projects/KAR-02-R1/cutover", 3],
  ["close-out of a project", "/projects/KAR-02-R1/close", 6],
  ["last buy", `/last-buy/${seedId("Family", "HR")}`, 4],
] as const;

for (const [name, address, most] of PAPERS)
  test(`${name}: prints on A4 and Letter with nothing cut off`, async ({ page }) => {
    await signIn(page, group);
    await page.goto(address);
    await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
    for (const format of FORMATS) {
      expect(await cutOff(page, WIDTH[format])).toEqual([]);
      const pages = await printed(page, format);
      expect(pages, `${format}`).toBeGreaterThan(0);
      expect(pages, `${format}`).toBeLessThanOrEqual(most);
    }
  });

/** An axis by the state its record is in. */
async function openRecord(page: Page, state: string): Promise<void> {
  await page.goto("/projects/KAR-02-R1/axes");
  const rows = page.getByRole("table", { name: "Axes of the project" }).getByRole("row");
  await rows.filter({ hasText: state }).first().getByRole("link").click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/Axis record(?!s)/);
}

for (const state of ["not begun", "1 not passed", "accepted"])
  test(`an axis record that is ${state} prints as two sheets, one to fill in and one to sign`, async ({
    page,
  }) => {
    await signIn(page, group);
    await openRecord(page, state);
    for (const format of FORMATS) {
      expect(await cutOff(page, WIDTH[format])).toEqual([]);
      expect(`${format}: ${await printed(page, format)}`).toBe(`${format}: 2`);
    }
    await page.emulateMedia({ media: "print" });
    const before = page.getByRole("region", { name: "Sheet 1, before removal" });
    await expect(before.getByRole("table").getByRole("row")).toHaveCount(10);
    const accepting = page.getByRole("region", { name: "Sheet 2, acceptance" });
    await expect(accepting.getByRole("table").getByRole("row")).toHaveCount(17);
    await expect(accepting).toContainText("Second name, safety checks");
    await expect(accepting).toContainText("off the recorded value by the limit at most, or by 0.05 % of it");
    await expect(page.getByText("First motion, stored energy, falling axes")).toHaveCount(2);
  });

test("every printed page names its page, its day and where it came from", async ({ page }) => {
  await signIn(page, group);
  await page.goto("/lines/VEL-03/scope");
  const foot = () =>
    page.evaluate(() => getComputedStyle(document.documentElement).getPropertyValue("--paper-foot"));
  await expect
    .poll(foot)
    .toMatch(/^"Scope of a retrofit: VEL-03 Carton C, as of 30 Nov 2026 – [^"]+\/lines\/VEL-03\/scope"$/);
  await page.getByRole("navigation").getByRole("link", { name: "Dates ahead" }).click();
  await expect(page.getByRole("heading", { level: 1 })).not.toContainText("Scope");
  await expect.poll(foot).toMatch(/ as of 30 Nov 2026 – [^"]+\/dates"$/);
});
