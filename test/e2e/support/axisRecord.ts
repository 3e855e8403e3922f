import { expect, type Locator, type Page } from "@playwright/test";

export const STOPPING = "Stopping distance at full speed and load";
export const names = { "Done by": "Technician A", Day: "2026-11-28" };
const both = { ...names, "Second name": "Engineer B" };

/** Ten readings alike. */
export const ten = (value: string) => Array.from({ length: 10 }, () => value).join(" ");

/** The form of one check. */
export const check = (page: Page, title: string): Locator => page.getByRole("form", { name: title });

/** Opens the record of one of the axes of KAR-02 nobody has begun. */
export async function openNotBegun(page: Page, place: number): Promise<void> {
  await page.goto("/projects/KAR-02-R1/axes");
  const rows = page.getByRole("table", { name: "Axes of the project" }).getByRole("row");
  await rows.filter({ hasText: "not begun" }).nth(place).getByRole("link").click();
  await expect(page.getByRole("heading", { level: 1 })).toContainText(/Axis record(?!s)/);
}

/** Leaves the form one is in, which saves it. */
export const leave = (page: Page) => page.getByRole("heading", { level: 1 }).click();

/** Types into a check by the labels of its fields. */
export async function type(form: Locator, given: Readonly<Record<string, string>>): Promise<void> {
  for (const [label, value] of Object.entries(given)) {
    const control = form.getByLabel(new RegExp(`^${label}`));
    if (label === "Result") await control.selectOption({ label: value });
    else await control.fill(value);
  }
}

/** Types into a check, leaves it, and waits until the server has it. */
export async function fill(
  page: Page,
  title: string,
  given: Readonly<Record<string, string>>,
): Promise<void> {
  await type(check(page, title), given);
  await leave(page);
  await expect(check(page, title).getByRole("status")).toContainText("Saved");
}

/** What was measured before the old drive left. */
export const BEFORE: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "Feedback counts of one motor revolution": { "By the record": "4096" },
  "Counts for one unit of travel": { "By the record": "1000" },
  "Travel measured over a long move": { "Before removal": "100" },
  "Homing repeats and meets the mark": { "Before removal": "0", Limit: "0.02" },
  "Following error at production speed": { "Before removal": "0.2" },
  "Effective torque at production speed": { Limit: "80" },
  "Production rate over the proving run": { "Before removal": "300" },
  [STOPPING]: { "Before removal": "95", Limit: "100" },
};

/** What the new drive gave, good throughout; the stopping distance is left to the test. */
export const AFTER: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "Isolation, earth and polarity before power": { Result: "Passed", ...names },
  "Part and firmware as ordered": { Result: "Passed", ...names },
  "Motion network for one hour": { "With the new drive": "0", ...names },
  "Feedback counts of one motor revolution": { "With the new drive": "4096", ...names },
  "Counts for one unit of travel": { "With the new drive": "1000,4", ...names },
  "Travel measured over a long move": { "With the new drive": "100.02", ...names },
  "End limits, hardware then software": { Result: "Passed", ...names },
  "Homing repeats and meets the mark": { "10 readings": ten("0.01"), ...names },
  "Drop when the brake takes the load": { "Does not apply": "horizontal axis", ...both },
  "Following error at production speed": { "With the new drive": "0.21", ...names },
  "Effective torque at production speed": { "With the new drive": "62", ...names },
  "Safety functions, each channel": { Result: "Passed", ...both },
  "Emergency stop, guards and restart interlock": { Result: "Passed", ...both },
  "Backup taken after tuning and restored": { Result: "Passed", ...names },
  "Production rate over the proving run": { "With the new drive": "299", ...names },
};
