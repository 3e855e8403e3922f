import { OAuth2Server } from "oauth2-mock-server";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { makeAuth } from "@/lib/access/auth";
import { countWrong } from "@/lib/access/signInPause";
import { database } from "@/lib/data/client";
import { addNewPerson } from "@/lib/data/people";
import { makeActor, roleAt } from "@/test/support/actors";
import { codeNow } from "@/test/support/codeNow";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { HOME, Visitor } from "@/test/support/visitor";

const PASSWORD = "twelve letters";

let fresh: FreshDatabase;
let company: OAuth2Server;
let door: ReturnType<typeof makeAuth>;

beforeAll(async () => {
  fresh = await freshDatabase("sign-in");
  company = new OAuth2Server();
  await company.issuer.keys.generate("RS256");
  await company.start(0, "127.0.0.1");
  vi.stubEnv("BETTER_AUTH_SECRET", "of-a-test-of-the-sign-in-and-nothing-else");
  vi.stubEnv("BETTER_AUTH_URL", HOME);
  vi.stubEnv("EBBLINE_OIDC_ISSUER", company.issuer.url ?? "");
  vi.stubEnv("EBBLINE_OIDC_CLIENT_ID", "ebbline");
  vi.stubEnv("EBBLINE_OIDC_CLIENT_SECRET", "of the test");
  door = makeAuth();
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await company.stop();
  await fresh.close();
});

async function makePerson(email: string): Promise<string> {
  const admin = await makeActor("admin");
  const grants = [roleAt("planner")];
  const made = await addNewPerson(admin, { name: "Somebody of a test", email, password: PASSWORD, grants });
  if (!made.ok) throw new Error(made.error.reason);
  return made.value.userId;
}

const deedsOf = async (userId: string) =>
  (await database().auditEntry.findMany({ where: { entityId: userId }, orderBy: { at: "asc" } })).map(
    ({ deed }) => deed,
  );

test("after ten wrong passwords an address rests, for the right one and for one that has no account alike", async () => {
  const userId = await makePerson("known@halvenor.example");
  const tries = async (email: string) => {
    for (let i = 0; i < 8; i += 1) await countWrong(email);
    const statuses: number[] = [];
    for (const password of ["wrong 9 wrong", "wrong 10 wrong", "wrong 11 wrong", PASSWORD])
      statuses.push((await new Visitor(door).ask("sign-in/email", { email, password })).status);
    return statuses;
  };
  const known = await tries("known@halvenor.example");
  expect(known).toEqual([401, 401, 429, 429]);
  expect(await tries("nobody@halvenor.example")).toEqual(known);
  expect(await deedsOf(userId)).toEqual(["people:add", "session:refuse", "session:refuse"]);

  await database().wrongPassword.updateMany({ data: { lastAt: new Date(Date.now() - 15 * 60_000 - 1) } });
  const visitor = new Visitor(door);
  expect(
    (await visitor.ask("sign-in/email", { email: "known@halvenor.example", password: PASSWORD })).ok,
  ).toBe(true);
  expect(await database().wrongPassword.count()).toBe(1);
});

test("a second factor is asked for after the password, once it has been proved", async () => {
  const email = "second@halvenor.example";
  const userId = await makePerson(email);
  const owner = new Visitor(door);
  await owner.ask("sign-in/email", { email, password: PASSWORD });
  const begun = await (await owner.ask("two-factor/enable", { password: PASSWORD })).json();
  const code = (ahead = 0) => codeNow(new URL(begun.totpURI).searchParams.get("secret") ?? "", ahead);
  const early = new Visitor(door);
  await early.ask("sign-in/email", { email, password: PASSWORD });
  expect(await early.isSignedIn()).toBe(true);
  const spent = code();
  expect((await owner.ask("two-factor/verify-totp", { code: spent })).ok).toBe(true);

  const thief = new Visitor(door);
  const half = await (await thief.ask("sign-in/email", { email, password: PASSWORD })).json();
  expect(half).toMatchObject({ twoFactorRedirect: true });
  expect(await thief.isSignedIn()).toBe(false);
  expect((await thief.ask("two-factor/verify-totp", { code: "000000" })).status).toBe(401);
  expect(await thief.isSignedIn()).toBe(false);

  // The code that switched it on is used up, whoever saw it typed.
  expect((await thief.ask("two-factor/verify-totp", { code: spent })).status).toBe(401);
  expect(await thief.isSignedIn()).toBe(false);

  const person = new Visitor(door);
  await person.ask("sign-in/email", { email, password: PASSWORD });
  // The brake on many tries is another matter.
  await database().rateLimit.deleteMany();
  await person.ask("two-factor/verify-totp", { code: code(1) });
  expect(await person.isSignedIn()).toBe(true);

  const [first] = begun.backupCodes;
  for (const works of [true, false]) {
    const lost = new Visitor(door);
    await lost.ask("sign-in/email", { email, password: PASSWORD });
    await lost.ask("two-factor/verify-backup-code", { code: first });
    expect(await lost.isSignedIn()).toBe(works);
  }
  expect(await deedsOf(userId)).toEqual(["people:add", ...Array.from({ length: 5 }, () => "session:open")]);
});

test("the company's own sign-in opens accounts an administrator made, and makes none", async () => {
  const userId = await makePerson("by.company@halvenor.example");
  const come = async (email: string) => {
    company.service.removeAllListeners();
    company.service.on("beforeTokenSigning", ({ payload }) =>
      Object.assign(payload, { sub: email, email, email_verified: true }),
    );
    company.service.on("beforeUserinfo", (answer) => {
      answer.body = { sub: email, email, email_verified: true, name: "Somebody" };
    });
    const visitor = new Visitor(door);
    const wanted = {
      provider: "company",
      callbackURL: "/lines",
      errorCallbackURL: "/sign-in?company=refused",
    };
    const { url } = await (await visitor.ask("sign-in/social", wanted)).json();
    const back = await fetch(url, { redirect: "manual" });
    const { pathname, search } = new URL(back.headers.get("location") ?? "");
    const landed = await visitor.ask(`${pathname.replace("/api/auth/", "")}${search}`);
    return {
      to: new URL(landed.headers.get("location") ?? "", HOME).pathname,
      isIn: await visitor.isSignedIn(),
    };
  };
  expect(await come("by.company@halvenor.example")).toEqual({ to: "/lines", isIn: true });
  expect(await come("stranger@elsewhere.example")).toEqual({ to: "/sign-in", isIn: false });
  expect(await database().user.count({ where: { email: "stranger@elsewhere.example" } })).toBe(0);
  expect(await deedsOf(userId)).toContain("session:open");
});

test("a company's sign-in that calls itself by another name than the one set is not followed", async () => {
  const { issuer } = company;
  const own = issuer.url;
  const visitor = new Visitor(door);
  const wanted = { provider: "company", callbackURL: "/lines", errorCallbackURL: "/sign-in?company=refused" };
  issuer.url = "http://127.0.0.1:1/another";
  expect((await visitor.ask("sign-in/social", wanted)).status).toBe(403);
  issuer.url = own;
  // The brake on many tries is another matter.
  await database().rateLimit.deleteMany();
  expect((await visitor.ask("sign-in/social", wanted)).status).toBe(200);
});
