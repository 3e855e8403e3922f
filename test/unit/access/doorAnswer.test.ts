import { expect, test } from "vitest";
import { doorAnswer } from "@/lib/access/doorAnswer";

const at = (path: string) => `https://ebbline.halvenor.example/api/auth/${path}`;
const told = (body: unknown) =>
  Response.json(body, { headers: { "set-cookie": "session=of-a-test; HttpOnly" } });

test("no token of a session is told to scripts, however deep it stands; cookies and the rest stay", async () => {
  const body = { token: "secret", user: { name: "Somebody" }, session: { id: "1", token: "secret" } };
  const answer = await doorAnswer(at("sign-in/email"), told(body));
  expect(await answer.json()).toEqual({ user: { name: "Somebody" }, session: { id: "1" } });
  expect(answer.headers.getSetCookie()).toEqual(["session=of-a-test; HttpOnly"]);
});

test("signing out clears the device, and nothing else does", async () => {
  const cleared = async (path: string, answer: Response) =>
    (await doorAnswer(at(path), answer)).headers.get("clear-site-data");
  expect(await cleared("sign-out", told({ success: true }))).toBe('"storage"');
  expect(await cleared("sign-out", Response.json({}, { status: 500 }))).toBeNull();
  expect(await cleared("sign-in/email", told({}))).toBeNull();
});

test("an answer that is no JSON, or is empty, goes as it came", async () => {
  const leads = await doorAnswer(
    at("callback/company?code=1"),
    new Response(null, { status: 302, headers: { location: "/lines" } }),
  );
  expect([leads.status, leads.headers.get("location")]).toEqual([302, "/lines"]);
  const none = new Response("", { headers: { "content-type": "application/json" } });
  expect(await (await doorAnswer(at("get-session"), none)).text()).toBe("");
});
