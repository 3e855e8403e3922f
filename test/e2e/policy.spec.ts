import { expect, test } from "@playwright/test";

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

  const ran = await page.evaluate((nonce) => {
    const run = (mark: string, withNonce: boolean) => {
      const script = document.createElement("script");
      script.textContent = `document.documentElement.dataset.ran = "${mark}"`;
      if (withNonce) script.nonce = nonce ?? "";
      document.body.append(script);
      return document.documentElement.dataset.ran ?? "nothing";
    };
    return [run("slipped in", false), run("own", true)];
  }, one);
  expect(ran).toEqual(["nothing", "own"]);
});
