import { expect } from "@playwright/test";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("a key is made, shown once, opens its sites and no more, and is revoked; a closed address is refused", async ({
  page,
  request,
}) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/interface");
  await expect(page.getByRole("heading", { name: "Systems that are told" })).toHaveCount(0);
  const name = `Line monitor ${Date.now()}`;
  await page.getByRole("button", { name: "Make a key" }).click();
  const form = page.getByRole("dialog");
  await form.getByLabel("Wherever I may").uncheck();
  await form.getByRole("button", { name: "Make the key" }).click();
  await expect(form.getByText("Say which system it is for.")).toBeVisible();
  await expect(form.getByText("Choose at least one site, or all of them.")).toBeVisible();
  await form.getByLabel("System it is for").fill(name);
  await form.getByLabel("THO").check();
  await form.getByRole("button", { name: "Make the key" }).click();
  const token =
    (await page.getByRole("status").filter({ hasText: name }).locator("code").textContent()) ?? "";

  const ask = () => request.get("/api/v1/sites", { headers: { Authorization: `Bearer ${token}` } });
  const { items } = await (await ask()).json();
  expect(items.map(({ code }: { code: string }) => code)).toEqual(["THO"]);
  await page.reload();
  await expect(page.getByText(token)).toHaveCount(0);
  await page.getByRole("button", { name: `Revoke the key ${name}` }).click();
  await expect(page.getByRole("row").filter({ hasText: name })).toContainText("revoked");
  expect((await ask()).status()).toBe(401);

  await page.getByRole("link", { name: "What it does, call by call" }).click();
  await page.getByText("POST /api/v1/events").click();
  await expect(page.getByText("By the clock of the site.")).toBeVisible();
});

test("an administrator cannot have a system told inside a closed network", async ({ page }) => {
  await signIn(page, "admin@halvenor.example");
  await page.goto("/interface");
  await page.getByRole("button", { name: "Add a system" }).click();
  const form = page.getByRole("dialog");
  await form.getByLabel("System").fill("Stores");
  await form.getByLabel("Address").fill("https://169.254.169.254/latest");
  await form.getByLabel("Stock was changed").check();
  await form.getByRole("button", { name: "Add the system" }).click();
  await expect(form.getByText(/inside a closed network/).first()).toBeVisible();
  await expect(form.getByLabel("System")).toHaveValue("Stores");
});
