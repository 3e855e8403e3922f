import { expect, type Page } from "@playwright/test";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const planner = "planner@halvenor.example";
const technician = "technician.ost@halvenor.example";

const transfers = (page: Page) => page.getByRole("table", { name: "Transfers, the open ones first" });
const moves = (page: Page) =>
  page.getByRole("table", { name: "Proposed moves, in the order that saves most" });
const row = (page: Page, text: string | RegExp) =>
  transfers(page).getByRole("row").filter({ hasText: text }).first();

async function openHeron(page: Page): Promise<void> {
  await page.goto("/pool");
  await page
    .getByRole("table", { name: /Pools by site/ })
    .getByRole("link", { name: "TM-HR-010" })
    .click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText("Pool of TM-HR-010");
}

test("pieces are asked for, refused with a reason, asked for again, sent and received", async ({ page }) => {
  test.setTimeout(180_000);
  await signIn(page, planner);
  await openHeron(page);
  const first = moves(page).getByRole("row", { name: /OST .* KAR/ });
  await expect(first).toContainText("100");
  await expect(first).toContainText("Other currency (PLN to SEK)");
  await expect(moves(page).getByRole("row", { name: /OST .* TAD/ })).toContainText("Customs");

  await first.getByRole("button", { name: "Ask OST for KAR" }).click();
  await expect(page.getByRole("status").filter({ hasText: "asked of OST for KAR" })).toBeVisible();
  await expect(moves(page).getByRole("row", { name: /OST .* KAR/ })).toHaveCount(0);

  await row(page, "Proposed").getByRole("button", { name: "Refuse" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByRole("button", { name: "Refuse" }).click();
  await expect(dialog).toContainText("Say why the pieces stay");
  await dialog.getByLabel("Why the pieces stay").fill("Line OST-01 had two failures");
  await dialog.getByRole("button", { name: "Refuse" }).click();
  await expect(row(page, "Refused")).toContainText("Line OST-01 had two failures");
  // What was refused is free again, so it is proposed again.
  await expect(moves(page).getByRole("row", { name: /OST .* KAR/ })).toHaveCount(1);

  await moves(page)
    .getByRole("row", { name: /OST .* TAD/ })
    .getByRole("button")
    .click();
  await row(page, "Proposed").getByRole("button", { name: "Agree to send" }).click();
  await row(page, "Agreed").getByRole("button", { name: "Pieces are sent" }).click();
  await expect(row(page, "Under way")).toContainText("TAD");
  await page.goto("/pool");
  await row(page, "Under way").getByRole("button", { name: "Pieces are here" }).click();
  await page.getByRole("dialog").getByLabel("Bin at TAD").fill("IN-01");
  await page.getByRole("dialog").getByRole("button", { name: "Pieces are here" }).click();
  await expect(row(page, "Received")).toContainText("IN-01");

  await page.getByRole("button", { name: "Undo" }).click();
  await expect(row(page, "Under way")).toContainText("Back to under way");
});

test("who may not change stock sees the board without a button to press", async ({ page }) => {
  await signIn(page, technician);
  await page.goto("/pool");
  await expect(page.getByText("Your sites only")).toBeVisible();
  await expect(
    page.getByRole("table", { name: "What the shelves hold, by site" }).getByRole("rowheader"),
  ).toHaveText(["OST"]);
  await expect(page.getByRole("button", { name: /Agree|Ask|Refuse|Withdraw/ })).toHaveCount(0);
});

test("a budget is typed, spent piece by piece, opened to why, and taken away as a file", async ({ page }) => {
  await signIn(page, planner);
  await page.goto("/spend");
  await page.getByLabel("Budget (EUR)").fill("200k");
  await page.getByRole("button", { name: "Spend it" }).click();
  await expect(page).toHaveURL(/budget=200k/);
  const list = page.getByRole("table", { name: "Pieces in buying order" });
  await expect.poll(() => list.getByRole("row").count()).toBeGreaterThan(50);
  await list.getByText("Why this one").first().click();
  await expect(list.getByText(/Ordered today it is there on/).first()).toBeVisible();
  await expect(page.getByRole("table", { name: "Parts not offered, by reason" })).toContainText(
    "can no longer be ordered",
  );
  for (const [format, start] of [
    ["CSV", "\uFEFFPlace,Part"],
    ["XLSX", "PK"],
  ] as const) {
    const href = await page.getByRole("link", { name: `Pieces as ${format}` }).getAttribute("href");
    const answer = await page.request.get(href ?? "");
    expect(answer.status()).toBe(200);
    expect((await answer.body()).toString("utf8").startsWith(start)).toBe(true);
  }
  await page.getByLabel("Budget (EUR)").fill("a lot");
  await page.getByRole("button", { name: "Spend it" }).click();
  await expect(page.getByText("Write an amount such as 200000")).toBeVisible();
});

test("the cheap converter stands first on the cover ladder, and its part page tells the rungs", async ({
  page,
}) => {
  await signIn(page, planner);
  await page.goto("/cover");
  const rows = page
    .getByRole("table", { name: "Cover of each part, cheap blockers first" })
    .getByRole("rowheader");
  await expect(rows.first()).toHaveText("FB-GL-01");
  await rows.first().getByRole("link").click();
  await expect(page).toHaveURL(/#ladder/);
  const rungs = page.getByRole("table", { name: "Cover ladder: chance of no spare by month" });
  await expect(rungs.getByRole("rowheader").first()).toContainText("now");
  await expect(page.getByText("Exit gap: no planned removal")).toBeVisible();
});
