import { expect } from "@playwright/test";
import { csv, handIn } from "./support/loadRegister";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("a look-alike of a file waits for a person, who says what it is, sees the effect and takes it back", async ({
  page,
}) => {
  const mark = Date.now().toString(36);
  await signIn(page, "engineer@halvenor.example");
  await handIn(
    page,
    "stock",
    csv(
      "storeroom.csv",
      `Site;Bin;Maker;Part number;Quantity;State\nVEL;N-${mark};Tarnholt Motion;TM-HR-O20-B1;4;usable\n`,
    ),
  );
  const file = page.url();
  await expect(page.getByRole("table", { name: "Problems by row and column" })).toContainText("may mean");

  const system = page.getByRole("region", { name: "Which system it comes from" });
  await system.getByLabel("System").selectOption({ label: "Another one…" });
  await system.getByLabel(/^Its name/).fill(`VEL storeroom ${mark}`);
  await system.getByLabel("Whose system").selectOption("VEL");
  await system.getByRole("button", { name: "Keep" }).click();
  await expect(system.getByRole("link", { name: "What is known of this system" })).toBeVisible();

  await page.goto("/parts/numbers");
  const open = page.getByRole("listitem").filter({ has: page.getByRole("heading", { name: "TM-HR-O20" }) });
  await expect(open.getByRole("row").nth(1)).toContainText("TM-HR-020");
  await expect(open.getByRole("row").nth(1)).toContainText("look like digits");
  await open.getByRole("button", { name: "The same part" }).click();
  await expect(open.getByText("Say how you know.")).toBeVisible();
  await open.getByLabel("How you know").fill("Nameplate read");
  await open.getByRole("button", { name: "The same part" }).click();
  await expect(page.getByText("Kept as another number of the part")).toBeVisible();
  await expect(open).toHaveCount(0);

  await page.goto(file);
  await expect(page.getByRole("button", { name: "Load 1 row" })).toBeVisible();
  await page.getByRole("link", { name: "Work out losses and places" }).click();
  const effect = page.getByRole("region", { name: "What it would do to losses and places" });
  await expect(effect.getByText(/Expected stop loss a year: .* now, .* then/)).toBeVisible({
    timeout: 20_000,
  });

  await page.goto("/parts/numbers");
  const back = page.getByRole("button", { name: "Take back what was said of TM-HR-O20", exact: true });
  await back.click();
  await expect(back).toHaveCount(0);
  await page.goto(file);
  await expect(page.getByRole("table", { name: "Problems by row and column" })).toContainText("may mean");
  await page.getByRole("button", { name: "Drop this file" }).click();
});
