import { expect, type Page } from "@playwright/test";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

/** A plan with the line pinned in is funded, and its project started. @returns Address of the project. */
async function startFunded(page: Page, line: string): Promise<string> {
  await page.goto(`/plans/new?budget=900000&by=loss&in=${line}`);
  await page.getByLabel("Name of the plan").fill("From funded line to closed project");
  await page.getByRole("button", { name: "Keep as a plan" }).click();
  await page.getByRole("button", { name: "Put forward" }).click();
  await page.getByRole("button", { name: "Fund the plan" }).click();
  await page.getByRole("button", { name: `Start a project for ${line}` }).click();
  await expect(page.getByRole("heading", { level: 1, name: new RegExp(`${line}-R\\d+`) })).toBeVisible();
  return new URL(page.url()).pathname;
}

async function pay(page: Page, amount: string, reference: string): Promise<void> {
  const form = page.getByRole("form", { name: "Enter money ordered or paid" });
  await form.getByLabel("Kind").selectOption({ label: "Paid" });
  await form.getByLabel("Amount").fill(amount);
  await form.getByLabel("For", { exact: true }).fill("Drives, motors and their cables");
  await form.getByLabel(/Number in ledger/).fill(reference);
  await form.getByRole("button", { name: "Enter", exact: true }).click();
  await expect(
    page.getByRole("table", { name: "Ledger" }).getByRole("row", { name: reference }),
  ).toBeVisible();
}

async function passGate(page: Page, name: string): Promise<void> {
  const gate = page.getByRole("region", { name: `Gate ${name}` });
  for (const item of await gate.getByRole("checkbox").all()) {
    await item.click();
    await expect(item).toBeChecked();
  }
  await gate.getByRole("button", { name: "Pass: go" }).click();
  await expect(gate.getByRole("heading")).toContainText(`passed: ${name}`);
}

async function answerFor(page: Page, what: string): Promise<void> {
  await page.getByRole("button", { name: `Answer for ${what}` }).click();
  const form = page.getByRole("dialog");
  await form.getByLabel("Who answers for it").fill("Project lead");
  await form.getByRole("button", { name: "Keep it" }).click();
  await expect(page.getByRole("button", { name: `Take back the word on ${what}` })).toBeVisible();
}

test("a funded line becomes a project, its overrun is seen at a fifth of the work, and it is closed", async ({
  page,
}) => {
  test.setTimeout(240_000);
  await signIn(page, "admin@halvenor.example");
  const project = await startFunded(page, "THO-04");

  // Parts delivered earn a fifth of the budget, and most of it is paid: no forecast keeps the budget.
  await page.getByLabel("Done day of Parts delivered").fill("2026-11-30");
  await page.getByLabel("Done day of Parts delivered").press("Enter");
  await expect(page.getByRole("row", { name: /Parts delivered/ })).toContainText("done");
  await page.goto(`${project}/money`);
  await pay(page, "15000.00", "L-THO-1");
  await page.goto(project);
  await expect(page.getByText(/Overrun: with 20.%/)).toBeVisible();
  await page.goto("/projects");
  const code = project.split("/").at(-1) ?? "";
  await expect(page.getByRole("row", { name: new RegExp(code) })).toBeVisible();

  // Closing names what is missing, and each is mended where it says.
  await page.goto(`${project}/close`);
  await page.getByRole("button", { name: `Close ${code}` }).click();
  await expect(page.getByText(/Nothing was booked\./)).toBeVisible();

  // The line turned out to need new controllers only: its axes stay as they are.
  await page.goto(`${project}/axes`);
  await page.getByLabel("Axis", { exact: true }).check();
  await page.getByLabel(/^Round of the \d+ chosen/).selectOption({ label: "Stays as it is" });
  await expect(page.getByRole("status").filter({ hasText: /./ }).first()).toBeVisible();
  await page.goto(`${project}/schedule`);
  await passGate(page, "Readiness");
  await passGate(page, "Go or no-go");
  await page.goto(`${project}/close`);
  for (const what of ["the register", "the drawings", "the levels", "no axes", "nothing removed"])
    await answerFor(page, what);
  await page.getByRole("button", { name: `Close ${code}` }).click();
  await expect(page.getByText(/^Closed 30 Nov 2026 by /)).toBeVisible();
  await page.goto(`${project}/benefit`);
  await expect(page.getByRole("main")).toContainText("30 Nov 2027");
  await page.goto("/dates");
  await expect(page.getByRole("main")).toContainText(code);
});
