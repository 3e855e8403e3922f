import { expect } from "@playwright/test";
import { signIn } from "./support/signIn";
import { test } from "./support/test";

/** Codes that only appear where another site's data does. */
const foreign = /\b(VEL|OST|KAR|PIN|TAD)\b/;

const areas = [
  "/lines",
  "/installed",
  "/installed?site=THO",
  "/axes",
  "/spares",
  "/counts",
  "/care",
  "/repairs",
  "/levels",
  "/cover",
  "/pool",
  "/spend",
  "/review",
  "/parts",
  "/dates",
  "/plans",
  "/plans/inputs",
  "/plans/compare",
  "/projects",
  "/projects/calendar",
  "/home",
  "/report",
  "/report?site=THO&kind=weekly",
  "/report/archive",
  "/moved",
  "/footing",
  "/footing/price-missing",
  "/sightings",
  "/events",
  "/events/new",
  "/import/sources",
  "/parts/numbers",
  "/parts/merge",
  "/notices",
  "/rules",
  "/assumptions",
  "/export",
  "/audit",
  "/start",
  "/interface",
  "/interface/reference",
];

test("a viewer of one site finds no other site named on any page", async ({ page }) => {
  await signIn(page, "viewer.tho@halvenor.example");
  for (const area of areas) {
    // The whole document as it is sent, so that what is not drawn counts too.
    const answer = await page.request.get(area);
    expect(answer.status(), area).toBe(200);
    const words = await answer.text();
    expect(words, area).toContain("<h1");
    expect(words.match(foreign)?.[0] ?? `nothing foreign on ${area}`).toBe(`nothing foreign on ${area}`);
  }
});

test("addresses of another site's things answer as if there were none", async ({ page }) => {
  await signIn(page, "viewer.tho@halvenor.example");
  await page.goto("/lines/NO-99");
  const nothing = await page.getByRole("main").textContent();
  for (const address of [
    "/lines/PIN-03",
    "/lines/VEL-07",
    "/lines/VEL-07/scope",
    "/projects/KAR-02-R1",
    "/projects/KAR-02-R1/schedule",
    "/projects/KAR-02-R1/axes",
    "/projects/KAR-02-R1/cutover",
    "/projects/KAR-02-R1/points",
    "/projects/KAR-02-R1/close",
    "/projects/KAR-02-R1/benefit",
    "/projects/KAR-02-R1/money",
  ]) {
    await page.goto(address);
    expect(await page.getByRole("main").textContent()).toBe(nothing);
  }
  await page.goto("/report?site=VEL");
  // The address itself names the site; its lines and its town must not appear.
  expect(await page.content()).not.toMatch(/VEL-\d|Velmark/);
});

test("search gives nothing of another site, and nothing at all to the signed-out", async ({
  page,
  request,
}) => {
  await signIn(page, "viewer.tho@halvenor.example");
  for (const words of ["PIN-03", "Wipes", "VEL-01-K1"]) {
    const answer = await page.request.get(`/api/search?q=${encodeURIComponent(words)}`);
    expect(JSON.stringify(await answer.json())).not.toMatch(foreign);
  }
  const answer = await request.get("/api/search?q=THO");
  expect(answer.status()).toBe(401);
});

test("a list saved as a file holds nothing of another site, and nothing is saved by the signed-out", async ({
  page,
  request,
}) => {
  await signIn(page, "viewer.tho@halvenor.example");
  for (const name of ["lines", "events", "stock", "projects", "axes"]) {
    const answer = await page.request.get(`/api/export/${name}?format=json`);
    expect(answer.status(), name).toBe(200);
    const words = await answer.text();
    expect(words, name).toContain("THO");
    expect(words.match(foreign)?.[0] ?? `nothing foreign in ${name}`).toBe(`nothing foreign in ${name}`);
  }
  expect((await page.request.get("/api/export/people?format=csv")).status()).toBe(404);
  expect((await page.request.get("/api/whole")).status()).toBe(403);
  for (const address of ["/api/export/events?format=csv", "/api/whole"])
    expect((await request.get(address)).status()).toBe(401);
});

test("the pages that change things for others are closed to a viewer", async ({ page }) => {
  await signIn(page, "viewer.tho@halvenor.example");
  for (const address of ["/import", "/people"]) {
    await page.goto(address);
    await expect(page.getByRole("button", { name: /load|add|save/i })).toHaveCount(0);
    await expect(page.locator("input[type=file]")).toHaveCount(0);
  }
});

test("the signed-out are led to the sign-in page and back to where they wanted to go", async ({ page }) => {
  await page.goto("/lines/PIN-03");
  await expect(page).toHaveURL(/\/sign-in\?next=%2Flines%2FPIN-03/);
});

test("an address outside is not followed after signing in", async ({ page }) => {
  await page.goto("/sign-in?next=//elsewhere.example/");
  await page.getByLabel("E-mail").fill("viewer@halvenor.example");
  await page.getByLabel("Password").fill("demo-viewer-2026");
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page).toHaveURL(/127\.0\.0\.1:\d+\/home/);
});
