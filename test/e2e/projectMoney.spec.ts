import { expect } from "@playwright/test";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

test("what the motors cost is paid, asked for and approved; the overview and the list follow", async ({
  page,
}) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/projects/KAR-02-R1/money");
  const classes = page.getByRole("table", { name: "Budget by class" });
  const sum = classes.getByRole("row", { name: /^Sum/ });
  // Original 4.90 M; paid 3.60 M, ordered 1.04 M, still to order 1.56 M: the lead's 6.20 M.
  await expect(sum).toContainText(/4.900.000\.00/);
  await expect(sum).toContainText(/6.200.000\.00/);
  await expect(page.getByText(/810.000\.00 of new money is asked for and not decided/)).toBeVisible();

  const form = page.getByRole("form", { name: "Enter money ordered or paid" });
  await form.getByLabel("Kind").selectOption({ label: "Paid" });
  await form.getByLabel("Amount").fill("400000.00");
  await form.getByLabel("For", { exact: true }).fill("Motors, first delivery");
  await form.getByLabel("Class").selectOption({ label: "Drives and motors" });
  await form.getByLabel(/Number in ledger/).fill("L-TEST-1");
  await form.getByLabel(/For order number/).fill("PO-26-2218");
  await form.getByRole("button", { name: "Enter", exact: true }).click();
  const entry = page.getByRole("table", { name: "Ledger" }).getByRole("row", { name: /L-TEST-1/ });
  await expect(entry).toContainText(/SEK.400.000\.00/);
  // 610 of the order less 400 is open; with the crew's 430 that is 640.
  await expect(sum).toContainText(/640.000\.00/);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(entry).toHaveCount(0);
  await expect(sum).toContainText(/1.040.000\.00/);
});

test("a change is asked for, approved by who may, raises the budget, and is opened again", async ({
  page,
}) => {
  await signIn(page, "admin@halvenor.example");
  await page.goto("/projects/KAR-02-R1/money");
  const third = page
    .getByRole("table", { name: "Changes of the budget" })
    .getByRole("row", { name: /11 motors/ });
  await expect(third).toContainText("Asked, not decided");
  await page.getByRole("button", { name: "Approve change 3" }).click();
  await expect(third).toContainText("Approved");
  const sum = page.getByRole("table", { name: "Budget by class" }).getByRole("row", { name: /^Sum/ });
  await expect(sum).toContainText(/5.710.000\.00/);
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(third).toContainText("Asked, not decided");
});

test("orders and invoices pasted from a sheet are looked at, taken over at once and taken back at once", async ({
  page,
}) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/projects/VEL-09-R1/money");
  const form = page.getByRole("form", { name: "Orders and invoices from a file" });
  await form
    .getByLabel(/Or rows pasted/)
    .fill(
      [
        "Kind\tNumber\tDay\tAmount\tFor order",
        "Ordered\tT-1\t2026-11-25\t100.50",
        "Paid\tT-2\t2026-11-26\t40.005\tT-1",
      ].join("\n"),
    );
  await form.getByRole("button", { name: "Look at the rows" }).click();
  const rows = page.getByRole("table", { name: "Rows of the file" });
  await expect(rows.getByRole("row", { name: /T-1/ })).toContainText("added");
  await expect(rows.getByRole("row", { name: /left out/ })).toContainText(
    "EUR has 2 places behind the point",
  );
  await form.getByRole("button", { name: "Take 1 entry over" }).click();
  const entry = page.getByRole("table", { name: "Ledger" }).getByRole("row", { name: /T-1/ });
  await expect(entry).toContainText("100.50");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(entry).toHaveCount(0);
  await expect(page.getByRole("table", { name: "Files taken over" })).toContainText("taken back by");
});

test("the overrun is said on the overview with its curve, and an index that divides by nothing is not defined", async ({
  page,
}) => {
  await signIn(page, "viewer@halvenor.example");
  await page.goto("/projects/KAR-02-R1");
  await expect(page.getByText(/Overrun: with 55.%.* earned/)).toBeVisible();
  await page.getByText("The numbers of this chart").click();
  const month = page
    .getByRole("table", { name: /Planned, earned and paid by month/ })
    .getByRole("row", { name: /^Nov 2026/ });
  // 70 % of 4,900 planned, 55 % earned, 3,600 paid, in thousand SEK.
  for (const value of [/3.430/, /2.695/, /3.600/]) await expect(month).toContainText(value);
  await page.goto("/projects/KAR-02-R1?asOf=2026-01-15");
  const steps = page.getByRole("table", { name: /Indices and forecasts/ });
  await expect(steps.getByRole("row", { name: /Cost index/ })).toContainText("not defined");
});
