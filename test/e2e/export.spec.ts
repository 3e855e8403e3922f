import { expect } from "@playwright/test";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("a page's list is saved as it is filtered, and the whole installation is taken out by an administrator", async ({
  page,
  baseURL,
}) => {
  await signIn(page, "admin@halvenor.example");
  await page.goto("/events?days=90");
  await page.getByText("Save as a file").click();
  const few = page.getByRole("link", { name: "Events as CSV" });
  await expect(few).toHaveAttribute("href", /^\/api\/export\/events\?days=90&format=csv$/);
  const lines = async (address: string) =>
    (await (await page.request.get(address)).text()).split("\r\n").length;
  const lately = await lines((await few.getAttribute("href")) ?? "");
  expect(lately).toBeGreaterThan(2);
  expect(await lines("/api/export/events?format=csv")).toBeGreaterThan(lately);

  await page.getByRole("link", { name: "Everything that can be saved" }).click();
  await expect(page.getByRole("heading", { level: 1, name: "Save as files" })).toBeVisible();
  await expect(page.getByRole("link", { name: "Audit trail as JSON" })).toBeVisible();
  const whole = page.getByRole("link", { name: "Take everything out" });
  const archive = await page.request.get((await whole.getAttribute("href")) ?? "");
  expect((await archive.body()).subarray(0, 2).toString()).toBe("PK");
  await page.reload();
  await expect(page.getByRole("table", { name: "Copies so far" })).toContainText("Taken out");

  // Taking in is offered by an empty installation only, and refused by any other.
  await expect(page.getByRole("button", { name: "Take it in" })).toHaveCount(0);
  const refused = await page.request.post("/api/whole", {
    headers: { Origin: baseURL ?? "" },
    data: await archive.body(),
  });
  expect(refused.status()).toBe(409);
  expect(await refused.text()).toContain("only taken into an empty one");
});
