import { expect, type Page } from "@playwright/test";
import { codeNow } from "@/test/support/codeNow";
import { expectAccessible } from "./support/accessible";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

const FIRST_PASSWORD = "told in person once";

/** A change of accounts counts as new data: the ranking may be computed anew before it shows. */
const RECKONED = { timeout: 40_000 };

test.setTimeout(120_000);

/** A name and address no earlier run has used. */
function newcomer(title: string) {
  const mark = Date.now().toString(36);
  return { name: `${title} ${mark}`, email: `${mark}.${title.toLowerCase()}@halvenor.example` };
}

const rowOf = (page: Page, email: string) => page.getByRole("row").filter({ hasText: email });

async function addViewerOfVelmark(page: Page, { name, email }: { name: string; email: string }) {
  await page.goto("/people");
  await page.getByRole("button", { name: "Add a person" }).click();
  const dialog = page.getByRole("dialog", { name: "Add a person" });
  await dialog.getByLabel("Name").fill(name);
  await dialog.getByLabel("E-mail").fill(email);
  await dialog.getByLabel("First password").fill(FIRST_PASSWORD);
  await dialog.getByLabel("May act as").selectOption({ label: "Viewer" });
  await dialog.getByLabel("VEL Velmark").check();
  await dialog.getByRole("button", { name: "Make the account" }).click();
  await expect(dialog).toBeHidden();
}

async function trySignIn(page: Page, email: string) {
  await page.goto("/sign-in");
  await page.getByLabel("E-mail").fill(email);
  await page.getByLabel("Password").fill(FIRST_PASSWORD);
  await page.getByRole("button", { name: "Sign in" }).click();
}

test("an administrator adds a viewer of one site, who sees the lines of that site only", async ({
  page,
  browser,
}) => {
  const person = newcomer("Viewer");
  await signIn(page, "admin@halvenor.example");
  await addViewerOfVelmark(page, person);
  await expect(page.getByText(`${person.name} can sign in now.`)).toBeVisible();
  await expect(rowOf(page, person.email)).toContainText("Viewer at VEL");

  const own = await browser.newContext();
  const theirs = await own.newPage();
  await trySignIn(theirs, person.email);
  await expect(theirs).toHaveURL(/\/home/, RECKONED);
  await theirs.goto("/lines");
  const codes = theirs.getByRole("table", { name: /^Lines by/ }).getByRole("rowheader");
  await expect(codes.first()).toContainText("VEL-");
  const shown = await codes.allTextContents();
  expect(shown.filter((text) => !text.includes("VEL-"))).toEqual([]);
  await expect(theirs.getByRole("link", { name: "People" })).toHaveCount(0);
  const other = await theirs.goto("/lines/OST-01");
  expect(other?.status()).toBe(404);
  await own.close();
});

test("roles change in several pairs, and the change can be taken back", async ({ page }) => {
  const person = newcomer("Planner");
  await signIn(page, "admin@halvenor.example");
  await addViewerOfVelmark(page, person);
  const row = rowOf(page, person.email);
  await row.getByRole("button", { name: "Change roles" }).click();
  const dialog = page.getByRole("dialog", { name: `Roles of ${person.name}` });
  await expect(dialog.getByRole("checkbox", { name: "VEL Velmark" })).toBeChecked();
  await dialog.getByRole("button", { name: "Give another role" }).click();
  const second = dialog.getByRole("group", { name: "Role 2" });
  await second.getByLabel("May act as").selectOption({ label: "Planner" });
  await dialog.getByRole("button", { name: "Save roles" }).click();
  await expect(second.getByText("Choose all sites or at least one site.")).toBeVisible();
  await expectAccessible(page);
  await second.getByLabel("OST Ostrowka").check();
  await second.getByLabel("VEL Velmark").check();
  await dialog.getByRole("button", { name: "Save roles" }).click();
  await expect(row).toContainText("Planner at OST and VEL");
  await page.getByRole("button", { name: "Undo" }).click();
  await expect(row).not.toContainText("Planner at");
  await expect(row).toContainText("Viewer at VEL");
});

test("a closed account signs nobody in until it is opened again", async ({ page, browser }) => {
  const person = newcomer("Leaver");
  await signIn(page, "admin@halvenor.example");
  await addViewerOfVelmark(page, person);
  const row = rowOf(page, person.email);
  await row.getByRole("button", { name: "Close account" }).click();
  await expect(row.getByRole("cell", { name: "closed", exact: true })).toBeVisible();

  const own = await browser.newContext();
  const theirs = await own.newPage();
  await trySignIn(theirs, person.email);
  await expect(theirs.getByRole("alert").filter({ hasText: /\S/ })).toBeVisible();
  await expect(theirs).toHaveURL(/sign-in/);

  await page.getByRole("button", { name: "Undo" }).click();
  await expect(row.getByRole("cell", { name: "open", exact: true })).toBeVisible();
  await trySignIn(theirs, person.email);
  await expect(theirs).toHaveURL(/\/home/, RECKONED);
  await own.close();
});

test("a second factor is made, asked for at the next sign-in, and a session elsewhere is ended", async ({
  page,
  browser,
}) => {
  const person = newcomer("Careful");
  await signIn(page, "admin@halvenor.example");
  await addViewerOfVelmark(page, person);

  const own = await browser.newContext();
  const theirs = await own.newPage();
  await trySignIn(theirs, person.email);
  await expect(theirs).toHaveURL(/\/home/, RECKONED);
  await theirs.goto("/account");
  const factor = theirs.getByRole("region", { name: "Second factor" });
  await factor.getByLabel("Password").fill("not the one");
  await factor.getByRole("button", { name: "Begin" }).click();
  await expect(factor.getByRole("alert")).toContainText("The password is not right");
  await factor.getByLabel("Password").fill(FIRST_PASSWORD);
  await factor.getByRole("button", { name: "Begin" }).click();
  const key = (await factor.locator("figcaption code").textContent()) ?? "";
  await factor.getByLabel("Code of six digits").fill(codeNow(key));
  await factor.getByRole("button", { name: "Switch it on" }).click();
  await expect(factor.getByRole("status").filter({ hasText: "shown this once" })).toBeVisible();

  const elsewhere = await browser.newContext();
  const second = await elsewhere.newPage();
  await trySignIn(second, person.email);
  await second.getByLabel("Code of six digits").fill("000000");
  await second.getByRole("button", { name: "Sign in" }).click();
  await expect(second.getByRole("alert").filter({ hasText: "The code is not right" })).toBeVisible();
  await second.getByLabel("Code of six digits").fill(codeNow(key, 1));
  await second.getByRole("button", { name: "Sign in" }).click();
  await expect(second).toHaveURL(/\/home/, RECKONED);

  await theirs.reload();
  const places = theirs.getByRole("table", { name: "Where you are signed in" });
  await expect(places.getByRole("row")).toHaveCount(3);
  await places.getByRole("button", { name: "End it" }).click();
  await expect(theirs.getByText("The password is not right. Nothing was changed.")).toBeVisible();
  await theirs.getByLabel("Your password, to end one").fill(FIRST_PASSWORD);
  await places.getByRole("button", { name: "End it" }).click();
  await expect(places.getByRole("row")).toHaveCount(2);
  await second.reload();
  await expect(second).toHaveURL(/sign-in/);
  await elsewhere.close();
  await own.close();
});

test("somebody is let in by a link, and by another one when the password is lost", async ({
  page,
  browser,
}) => {
  const person = newcomer("Invited");
  await signIn(page, "admin@halvenor.example");
  await page.goto("/people");
  await page.getByRole("button", { name: "Invite by a link" }).click();
  const dialog = page.getByRole("dialog", { name: "Invite somebody" });
  await dialog.getByLabel("Name").fill(person.name);
  await dialog.getByLabel("E-mail").fill(person.email);
  await dialog.getByLabel("VEL Velmark").check();
  await dialog.getByRole("button", { name: "Invite", exact: true }).click();
  const link = async (box: typeof dialog) =>
    (await box.getByText(/\/invitation\?token=/).textContent()) ?? "";
  const own = await browser.newContext();
  const theirs = await own.newPage();
  const follow = async (address: string, password: string) => {
    await theirs.goto(address);
    await theirs.getByLabel("Password").fill(password);
    await theirs.getByRole("button", { name: "Set the password" }).click();
    await expect(theirs).toHaveURL(/sign-in/);
    await theirs.getByLabel("E-mail").fill(person.email);
    await theirs.getByLabel("Password").fill(password);
    await theirs.getByRole("button", { name: "Sign in" }).click();
    await expect(theirs).not.toHaveURL(/sign-in/, RECKONED);
  };
  await follow(await link(dialog), "seven green herons");
  await page.reload();
  await rowOf(page, person.email).getByRole("button", { name: "New password" }).click();
  const renewal = page.getByRole("dialog", { name: `New password of ${person.name}` });
  await renewal.getByRole("button", { name: "Make the link" }).click();
  await follow(await link(renewal), "nine quiet lanterns");
  await own.close();
});

test("what is wrong with a new account stands at its field, and an address is taken once", async ({
  page,
}) => {
  await signIn(page, "admin@halvenor.example");
  await page.goto("/people");
  await page.getByRole("button", { name: "Add a person" }).click();
  const dialog = page.getByRole("dialog", { name: "Add a person" });
  await dialog.getByLabel("Name").fill("Somebody");
  await dialog.getByLabel("E-mail").fill("viewer@halvenor.example");
  await dialog.getByLabel("First password").fill("short");
  await dialog.getByLabel("All sites, those to come included").check();
  await dialog.getByRole("button", { name: "Make the account" }).click();
  await expect(dialog.getByLabel("First password")).toHaveAttribute("aria-invalid", "true");
  await dialog.getByLabel("First password").fill(FIRST_PASSWORD);
  await dialog.getByRole("button", { name: "Make the account" }).click();
  await expect(dialog.getByRole("alert")).toContainText("has an account already");
  await expectAccessible(page);
});

test("only an administrator of all sites sees the page's people", async ({ page }) => {
  await signIn(page, "engineer@halvenor.example");
  await page.goto("/people");
  await expect(page.getByText(/^Only an administrator of all sites/)).toBeVisible();
  await expect(page.getByRole("table")).toHaveCount(0);
  await expectAccessible(page);
});

test("the page says what each role may do and is accessible", async ({ page }) => {
  await signIn(page, "admin@halvenor.example");
  await page.goto("/people");
  const guide = page.getByRole("region", { name: "What each role may do" });
  await expect(guide.getByRole("term")).toHaveText([
    "Viewer",
    "Technician",
    "Planner",
    "Engineer",
    "Approver",
    "Administrator",
    "Contractor",
  ]);
  await expect(rowOf(page, "admin@halvenor.example")).toContainText("Your own account");
  await expectAccessible(page);
});
