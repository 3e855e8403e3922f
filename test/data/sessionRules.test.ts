import { getSessionCookie } from "better-auth/cookies";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { type Actor, readActor } from "@/lib/access/actor";
import { makeAuth } from "@/lib/access/auth";
import { sessionCookies } from "@/lib/access/sessionCookies";
import { countWrong } from "@/lib/access/signInPause";
import { spendCode } from "@/lib/access/spentCode";
import { database } from "@/lib/data/client";
import { addNewPerson, closePersonAccount } from "@/lib/data/people";
import { endSession } from "@/lib/data/sessions";
import { makeActor, roleAt } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { HOME, Visitor } from "@/test/support/visitor";

const PASSWORD = "twelve letters";
const EMAIL = "somebody@halvenor.example";
const HOUR_MS = 3_600_000;

let fresh: FreshDatabase;
let door: ReturnType<typeof makeAuth>;
let admin: Actor;
let userId: string;

beforeAll(async () => {
  fresh = await freshDatabase("session-rules");
  vi.stubEnv("BETTER_AUTH_SECRET", "of-a-test-of-the-sessions-and-nothing-else");
  vi.stubEnv("BETTER_AUTH_URL", HOME);
  door = makeAuth();
  admin = await makeActor("admin");
  const person = { name: "Ines of a test", email: EMAIL, password: PASSWORD, grants: [roleAt("planner")] };
  const made = await addNewPerson(admin, person);
  if (!made.ok) throw new Error(made.error.reason);
  userId = made.value.userId;
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await fresh.close();
});

async function signedIn(): Promise<Visitor> {
  const visitor = new Visitor(door);
  expect((await visitor.ask("sign-in/email", { email: EMAIL, password: PASSWORD })).status).toBe(200);
  return visitor;
}

test("under https the session's cookie is of this host alone, sent by https alone, unseen by scripts", async () => {
  const wanted = { email: EMAIL, password: PASSWORD };
  vi.stubEnv("BETTER_AUTH_URL", "https://ebbline.halvenor.example");
  const answer = await makeAuth().handler(
    new Request("https://ebbline.halvenor.example/api/auth/sign-in/email", {
      method: "POST",
      headers: { "content-type": "application/json", origin: "https://ebbline.halvenor.example" },
      body: JSON.stringify(wanted),
    }),
  );
  const [cookie = ""] = answer.headers.getSetCookie();
  expect(cookie).toMatch(/^__Host-better-auth\.session_token=/);
  for (const mark of [/; Path=\/(;|$)/, /; Secure/, /; HttpOnly/, /; SameSite=Lax/])
    expect(cookie).toMatch(mark);
  expect(cookie).not.toMatch(/Domain/i);
  const request = new Request(HOME, { headers: { cookie: cookie.split(";")[0] ?? "" } });
  expect(getSessionCookie(request, sessionCookies())).not.toBeNull();
  vi.stubEnv("BETTER_AUTH_URL", HOME);
  expect(getSessionCookie(request, sessionCookies())).toBeNull();
});

test("a session ends twelve hours after it was used, and seven days after it was opened, used or not", async () => {
  await database().session.deleteMany();
  const visitor = await signedIn();
  const hoursLeft = async () => {
    const { expiresAt } = await database().session.findFirstOrThrow({ where: { userId } });
    return (expiresAt.getTime() - Date.now()) / HOUR_MS;
  };
  expect(await hoursLeft()).toBeCloseTo(12, 1);

  const hours = (count: number) => new Date(Date.now() + count * HOUR_MS);
  await database().session.updateMany({ where: { userId }, data: { expiresAt: hours(3) } });
  expect(await visitor.isSignedIn()).toBe(true);
  expect(await hoursLeft()).toBeCloseTo(12, 1);

  const sixDays = { createdAt: hours(-7 * 24 + 2), expiresAt: hours(1) };
  await database().session.updateMany({ where: { userId }, data: sixDays });
  expect(await visitor.isSignedIn()).toBe(true);
  expect(await hoursLeft()).toBeCloseTo(2, 1);

  await database().session.updateMany({ where: { userId }, data: { createdAt: hours(-7 * 24 - 1) } });
  expect(await visitor.isSignedIn()).toBe(false);
});

test("each sign-in opens a session of its own; signing out ends it on the server, closing the account all of them", async () => {
  await database().session.deleteMany();
  const [one, other] = [await signedIn(), await signedIn()];
  const tokens = await database().session.findMany({ where: { userId }, select: { token: true } });
  expect(new Set(tokens.map(({ token }) => token)).size).toBe(2);
  // 32 characters of 62: 190 bits.
  for (const { token } of tokens) expect(token).toMatch(/^\w{32}$/);
  await one.ask("sign-out", {});
  expect([await one.isSignedIn(), await other.isSignedIn()]).toEqual([false, true]);
  expect(await database().session.count({ where: { userId } })).toBe(1);

  // Whose account is closed is signed out everywhere at once, and comes in no more.
  expect(await closePersonAccount(admin, { userId, closed: true })).toMatchObject({ ok: true });
  expect(await other.isSignedIn()).toBe(false);
  const late = await new Visitor(door).ask("sign-in/email", { email: EMAIL, password: PASSWORD });
  expect(late.ok).toBe(false);
  expect(await closePersonAccount(admin, { userId, closed: false })).toMatchObject({ ok: true });
});

test("a session elsewhere is ended by who says the password, and wrong ones count as at the door", async () => {
  await database().session.deleteMany();
  const [here, elsewhere] = [await signedIn(), await signedIn()];
  const [other] = await database().session.findMany({ where: { userId }, orderBy: { createdAt: "desc" } });
  const actor = await readActor(userId);
  if (!actor || !other) throw new Error("nobody is signed in");
  const end = (password: string) => endSession(actor, { sessionId: other.id, password });
  expect(await end("not the one of now")).toMatchObject({ ok: false, error: { code: "invalid" } });
  expect(await database().wrongPassword.count()).toBe(1);
  expect(await elsewhere.isSignedIn()).toBe(true);
  expect(await end(PASSWORD)).toMatchObject({ ok: true });
  expect([await here.isSignedIn(), await elsewhere.isSignedIn()]).toEqual([true, false]);
  for (let i = 0; i < 10; i += 1) await countWrong(EMAIL);
  expect(await end(PASSWORD)).toMatchObject({ ok: false, error: { code: "impossible" } });
  await database().wrongPassword.deleteMany();
});

test("a new password needs the one of now, must not be soon guessed, and ends the other sessions", async () => {
  const [here, elsewhere] = [await signedIn(), await signedIn()];
  const change = async (currentPassword: string, newPassword: string) => {
    // The brake on many tries is another test's.
    await database().rateLimit.deleteMany();
    return here.ask("change-password", { currentPassword, newPassword, revokeOtherSessions: true });
  };
  expect((await change("not the one of now", "kettle orchid rails")).status).toBe(400);
  for (const guessed of ["sunshine2026!", "Ebbline-2026", "halvenor.123"]) {
    const answer = await change(PASSWORD, guessed);
    expect(answer.status).toBe(422);
    expect(await answer.json()).toMatchObject({ message: expect.stringContaining("tried first") });
  }
  expect((await change(PASSWORD, "elevenchars")).status).toBe(400);
  expect(await elsewhere.isSignedIn()).toBe(true);
  expect(
    (await change(PASSWORD, "kettle orchid rails, and then seven more words about weather in an old harbour"))
      .status,
  ).toBe(200);
  expect([await here.isSignedIn(), await elsewhere.isSignedIn()]).toEqual([true, false]);
});

test("a password that would soon be guessed makes no account", async () => {
  const person = { name: "Somebody Else", email: "else@halvenor.example", grants: [roleAt("viewer")] };
  const made = await addNewPerson(admin, { ...person, password: "somebody-else-1" });
  expect(made).toMatchObject({
    ok: false,
    error: { code: "invalid", fields: { password: expect.any(String) } },
  });
});

test("a code of somebody's generator is used up once, of two at the same moment by one", async () => {
  const tries = ["123456", "123456", "654321"].map((code) => spendCode("somebody", code));
  expect((await Promise.all(tries)).filter((good) => good)).toHaveLength(2);
  expect(await spendCode("somebody", "123456")).toBe(false);
  expect(await spendCode("somebody else", "123456")).toBe(true);
  await database().verification.updateMany({ data: { expiresAt: new Date(Date.now() - 1000) } });
  expect(await spendCode("somebody", "123456")).toBe(true);
});
