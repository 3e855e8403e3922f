import { expect, type Page } from "@playwright/test";
import { seedId } from "@/seed/seedId";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const group = "engineer@halvenor.example";
const velmark = "engineer.vel@halvenor.example";
const machine = (line: string, code: string) => `/machines/${seedId("Machine", `${line}/${code}`)}`;
const M02 = machine("VEL-03", "M02");

/** Id of a part, from its link in the search. */
async function partOf(page: Page, number: string): Promise<string> {
  const found = await page.request.get(`/api/search?q=${number}`);
  const [, id] = /\/parts\/([0-9a-f-]{36})/.exec(await found.text()) ?? [];
  return id ?? "none";
}

const section = (page: Page, name: string) => page.getByRole("region", { name, exact: true });
const undo = async (page: Page) => {
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(page.getByRole("button", { name: "Undo" })).toBeHidden();
};

/** Whether the page is no wider than the phone it is on. */
const fits = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth <= window.innerWidth);

test.describe("panels of a machine", () => {
  test("are added, sorted into, removed and put back", async ({ page }) => {
    await signIn(page, velmark);
    await page.goto(M02);
    const panels = section(page, "Panels");
    await expect(panels.getByText("+A1", { exact: true })).toBeVisible();
    await panels.getByRole("button", { name: "Add a panel" }).click();
    await page.getByLabel("Designation").fill("+A1");
    await page.getByRole("button", { name: "Save the panel" }).click();
    await expect(
      page.getByText("Choose a designation that no other panel of the machine has."),
    ).toBeVisible();
    await page.getByLabel("Designation").fill("+A9");
    await page.getByLabel("How to find it").fill("up the ladder");
    await page.getByRole("button", { name: "Save the panel" }).click();
    await expect(panels.getByText("up the ladder; 0 places in it")).toBeVisible();

    await panels.getByRole("button", { name: "Say what stands where" }).click();
    await page.getByLabel(/^A01-T1/).selectOption("+A9");
    await page.getByRole("button", { name: "Save the places" }).click();
    await expect(panels.getByText("up the ladder; 1 place in it")).toBeVisible();

    await panels.getByRole("button", { name: "Remove +A9" }).click();
    await expect(panels.getByText("up the ladder", { exact: false })).toBeHidden();
    await undo(page);
    await expect(panels.getByText("up the ladder; 1 place in it")).toBeVisible();

    await page.goto(`${M02}/card`);
    await expect(page.getByRole("heading", { name: "+A9: up the ladder" })).toBeVisible();

    await page.goto(M02);
    await panels.getByRole("button", { name: "Say what stands where" }).click();
    await page.getByLabel(/^A01-T1/).selectOption("+A1");
    await page.getByRole("button", { name: "Save the places" }).click();
    await panels.getByRole("button", { name: "Remove +A9" }).click();
    await expect(panels.getByText("up the ladder", { exact: false })).toBeHidden();
    await expectAccessible(page);
  });

  test("narrow the list of axes, whose further columns are switched on", async ({ page }) => {
    await signIn(page, group);
    await page.goto("/axes");
    const axes = page.getByRole("table", { name: "Axes", exact: true });
    await expect(axes.getByRole("columnheader", { name: "Homing" })).toBeHidden();
    await page.getByRole("button", { name: "Columns" }).click();
    await page.getByRole("menuitemcheckbox", { name: "Homing" }).click();
    await page.keyboard.press("Escape");
    await expect(axes.getByRole("columnheader", { name: "Homing" })).toBeVisible();
    await page.getByLabel("Show only Panel").selectOption("+A2");
    await expect(page).toHaveURL(/panel=%2BA2/);
    await expect(axes.getByRole("columnheader", { name: "Homing" })).toBeVisible();
    await expect(axes.getByRole("row").nth(1)).toContainText("+A2");
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto("/axes?panel=%2BA2");
    expect(await fits(page)).toBe(true);
  });
});

test("cables, travel and homing are entered at the axis, refused where they cannot be, and taken back", async ({
  page,
}) => {
  await signIn(page, velmark);
  await page.goto(M02);
  const row = section(page, "Cables, travel and homing").getByRole("row", { name: /^A01/ });
  const before = await row.textContent();
  await row.getByRole("button", { name: "Change A01" }).click();
  const power = page.getByRole("group", { name: "Power cable" });
  await power.getByLabel("Length").fill("-3");
  await page.getByRole("button", { name: "Save the axis" }).click();
  await expect(power.getByText("A length is 0 or more metres.")).toBeVisible();
  await power.getByLabel("Length").fill("77.5");
  await power.getByLabel("How well it is known").selectOption("measured");
  await power.getByLabel("Read or measured on").fill("2026-11-20");
  await page.getByRole("button", { name: "Save the axis" }).click();
  await expect(row).toContainText("77.5 m");
  await expect(row).toContainText("measured 20 Nov 2026");
  await undo(page);
  await expect(row).toHaveText(before ?? "");
});

test("a controller's hardware, axes and line are entered, and a removed copy is put back", async ({
  page,
}) => {
  await signIn(page, velmark);
  await page.goto(M02);
  const controller = section(page, "Controller");
  const before = await controller.getByRole("definition").allTextContents();
  await controller.getByRole("button", { name: "Change hardware, axes and line" }).click();
  await page.getByLabel("Hardware").fill("third");
  await page.getByRole("button", { name: "Save the controller" }).click();
  await expect(page.getByText("Write a hardware letter, or a letter and level such as C2.")).toBeVisible();
  await page.getByLabel("Hardware").fill("D4");
  await page.getByLabel("Drives at most").fill("48");
  await page.getByRole("button", { name: "Save the controller" }).click();
  await expect(controller).toContainText("D4");
  await expect(controller).toContainText("of at most 48");
  await undo(page);
  await expect(controller.getByRole("definition")).toHaveText(before);

  const card = section(page, "For the night card");
  const numbers = card.getByRole("listitem").filter({ hasText: "Storeroom" });
  await numbers.getByRole("button", { name: "Remove Storeroom" }).click();
  await expect(numbers).toHaveCount(0);
  await undo(page);
  await expect(numbers).toHaveCount(1);
});

test("power and profile family stand on the plate of a part, and the family of a ring beside its drives", async ({
  page,
}) => {
  await signIn(page, group);
  await page.goto(`/rings/${seedId("Network", "VEL/VEL-03-R1")}`);
  const family = section(page, "Communication profile family");
  await expect(family).toContainText("CPF 16 (IEC 61784-1, IEC 61784-2)");
  await family.getByRole("button", { name: "Change the family" }).click();
  await page.getByRole("combobox", { name: /Communication profile family/ }).selectOption("12");
  await page.getByRole("button", { name: "Save the family" }).click();
  await expect(family).toContainText("its drive names CPF 16, the network CPF 12");
  await undo(page);
  await expect(family).toContainText("CPF 16 (IEC 61784-1, IEC 61784-2)");
  await expectAccessible(page);

  await page.goto(`/parts/${await partOf(page, "DV-WR-150")}#identity`);
  const plate = page.getByRole("button", { name: "Change power and profile family" });
  await plate.click();
  await page.getByLabel("Rated power").fill("5.5");
  await page.getByRole("button", { name: "Save the plate" }).click();
  await expect(page.getByText("5.5 kW", { exact: true })).toBeVisible();
  await undo(page);
  await expect(page.getByText("6 kW", { exact: true })).toBeVisible();
});

test("an axis ceiling is a rule like any other: it says what it changes before it holds", async ({
  page,
}) => {
  await signIn(page, group);
  await page.goto("/rules");
  await expect(
    page.getByText("A Slate 5 of hardware older than C drives at most 16 axes.").first(),
  ).toBeVisible();
  await page.getByRole("button", { name: "Change R8" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("Drives at most").fill("0");
  await dialog.getByLabel("Meaning").fill("Tried out");
  await dialog.getByRole("button", { name: "See what it changes" }).click();
  await expect(dialog.getByText("At least 1.")).toBeVisible();
  await dialog.getByLabel("Drives at most").fill("3");
  await dialog.getByRole("button", { name: "See what it changes" }).click();
  await expect(dialog.getByRole("region", { name: "What it changes" })).toContainText("R8");
});
