import { expect } from "@playwright/test";
import { test } from "./support/test";

const nonceOf = (policy: string | undefined) => /'nonce-([^']+)'/.exec(policy ?? "")?.[1];

test("a page runs no script but its own, in no frame, with a policy made for each answer", async ({
  page,
}) => {
  const first = await page.goto("/sign-in");
  const second = await page.request.get("/sign-in");
  const headers = first?.headers() ?? {};
  expect(headers["x-content-type-options"]).toBe("nosniff");
  expect(headers["content-security-policy"]).toContain("frame-ancestors 'none'");
  const [one, other] = [headers, second.headers()].map((all) => nonceOf(all["content-security-policy"]));
  expect(one).toMatch(/^[\w+/]{22}==$/);
  expect(one).not.toBe(other);

  const refused = page.waitForEvent("console", (message) =>
    message.text().includes("Content Security Policy"),
  );
  // As text of a stranger would run that a page took for its own markup.
  await page.evaluate(() => {
    document.body.insertAdjacentHTML(
      "beforeend",
      `<img src="data:," alt="" onerror="document.title = 'ran'">`,
    );
  });
  await page.evaluate(() => {
    document.body.lastElementChild?.dispatchEvent(new Event("error"));
  });
  await refused;
  await expect(page).not.toHaveTitle("ran");
});
