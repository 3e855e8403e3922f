import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { acceptInvitation } from "@/lib/access/acceptInvitation";
import type { Actor } from "@/lib/access/actor";
import { makeAuth } from "@/lib/access/auth";
import { countWrong } from "@/lib/access/signInPause";
import { database } from "@/lib/data/client";
import {
  type Invited,
  inviteSomebody,
  linkNewPassword,
  readInvitations,
  withdrawOne,
} from "@/lib/data/invitations";
import type { InvitePerson } from "@/lib/schema/invitation";
import { makeActor, roleAt } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const HOME = "http://127.0.0.1:3999";
const PASSWORD = "seven green herons";
let fresh: FreshDatabase;
let admin: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("invitations");
  vi.stubEnv("BETTER_AUTH_URL", HOME);
  vi.stubEnv("BETTER_AUTH_SECRET", "of-a-test-of-invitations-and-nothing-else-at-all");
  vi.stubEnv("EBBLINE_SMTP_URL", "");
  admin = await makeActor("admin");
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await fresh.close();
});

const wish = (email: string): InvitePerson => ({
  ...{ name: "Somebody of a test", email, days: 7, grants: [roleAt("planner")] },
});
const nothing = async () => undefined;

async function invited(email: string): Promise<Invited & { readonly token: string }> {
  const made = await inviteSomebody(admin, wish(email), nothing);
  if (!made.ok) throw new Error(made.error.reason);
  return { ...made.value, token: new URL(made.value.link).searchParams.get("token") ?? "" };
}

const signIn = (email: string, password: string) =>
  makeAuth().handler(
    new Request(`${HOME}/api/auth/sign-in/email`, {
      method: "POST",
      headers: { origin: HOME, "content-type": "application/json" },
      body: JSON.stringify({ email, password }),
    }),
  );

test("the invited choose a password by the link, once, and sign in with the roles they were given", async () => {
  const { token, link, mailed } = await invited("new@halvenor.example");
  expect(mailed).toBe(false);
  expect(link.startsWith(`${HOME}/invitation?token=`)).toBe(true);
  const stored = await database().accountInvitation.findFirstOrThrow({
    where: { email: "new@halvenor.example" },
  });
  expect(JSON.stringify(stored)).not.toContain(token);
  const both = await Promise.all([1, 2].map(() => acceptInvitation({ token, password: PASSWORD })));
  expect(both.filter(({ ok }) => ok)).toHaveLength(1);
  expect((await signIn("new@halvenor.example", PASSWORD)).status).toBe(200);
  const user = await database().user.findUniqueOrThrow({
    where: { email: "new@halvenor.example" },
    include: { grants: true },
  });
  expect(user.grants).toMatchObject([{ role: "planner", siteId: null, without: [] }]);
  expect((await readInvitations(admin))[0]?.state).toBe("used");
});

test("a link that is unknown, used, withdrawn or ended answers alike, and makes nobody", async () => {
  const used = await invited("used@halvenor.example");
  await acceptInvitation({ token: used.token, password: PASSWORD });
  const withdrawn = await invited("withdrawn@halvenor.example");
  const [row] = await readInvitations(admin);
  expect(await withdrawOne(admin, { invitationId: row?.id ?? "" })).toMatchObject({ ok: true });
  const ended = await invited("ended@halvenor.example");
  await database().accountInvitation.updateMany({
    where: { email: "ended@halvenor.example" },
    data: { expiresAt: new Date(Date.now() - 1000) },
  });
  const people = await database().user.count();
  const answers: unknown[] = [];
  const times: number[] = [];
  for (const token of ["nobody knows this one", used.token, withdrawn.token, ended.token]) {
    const from = performance.now();
    answers.push(await acceptInvitation({ token, password: PASSWORD }));
    times.push(performance.now() - from);
  }
  expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(1);
  expect(await database().user.count()).toBe(people);
  // Hashing the password comes first and takes most of the time, whatever the link.
  expect(Math.max(...times) / Math.min(...times)).toBeLessThan(6);
});

test("a wrong password and an address nobody has answer alike at the door, and no reset tells who is there", async () => {
  const told = async (email: string) => {
    const answer = await signIn(email, "not the password at all");
    return [answer.status, await answer.text()];
  };
  expect(await told("used@halvenor.example")).toEqual(await told("nobody@halvenor.example"));
  const reset = async (email: string) => {
    const answer = await makeAuth().handler(
      new Request(`${HOME}/api/auth/request-password-reset`, {
        method: "POST",
        headers: { origin: HOME, "content-type": "application/json" },
        body: JSON.stringify({ email }),
      }),
    );
    return [answer.status, await answer.text()];
  };
  expect(await reset("used@halvenor.example")).toEqual(await reset("nobody@halvenor.example"));
});

test("nobody but an administrator of all sites invites, lists or withdraws", async () => {
  for (const role of ["planner", "engineer", "approver"] as const) {
    const actor = await makeActor(role);
    expect(await inviteSomebody(actor, wish("x@halvenor.example"), nothing)).toMatchObject({ ok: false });
    expect(await readInvitations(actor)).toEqual([]);
    const [row] = await readInvitations(admin);
    expect(await withdrawOne(actor, { invitationId: row?.id ?? "" })).toMatchObject({ ok: false });
  }
});

async function linkFor(userId: string, dropsFactor = false) {
  const made = await linkNewPassword(admin, { userId, days: 3, dropsFactor }, nothing);
  if (!made.ok) throw new Error(made.error.reason);
  return new URL(made.value.link).searchParams.get("token") ?? "";
}

test("who lost the password sets a new one by a link, once; it ends the sessions and the rest of the address", async () => {
  const email = "lost@halvenor.example";
  await acceptInvitation({ token: (await invited(email)).token, password: PASSWORD });
  const { id: userId } = await database().user.findUniqueOrThrow({ where: { email } });
  await signIn(email, PASSWORD);
  await database().user.update({ where: { id: userId }, data: { twoFactorEnabled: true } });
  const early = await linkFor(userId);
  const token = await linkFor(userId, true);
  // The link made first is withdrawn by the second, and until one is followed the old password holds.
  expect(await acceptInvitation({ token: early, password: "nine quiet lanterns" })).toMatchObject({
    ok: false,
  });
  expect((await signIn(email, PASSWORD)).status).toBe(200);
  for (let i = 0; i < 10; i += 1) await countWrong(email);
  expect(await acceptInvitation({ token, password: "nine quiet lanterns" })).toMatchObject({ ok: true });
  expect(await acceptInvitation({ token, password: "ten quiet lanterns" })).toMatchObject({ ok: false });
  expect(await database().session.count({ where: { userId } })).toBe(0);
  expect((await signIn(email, PASSWORD)).status).toBe(401);
  expect((await signIn(email, "nine quiet lanterns")).status).toBe(200);
  expect(await database().user.findUniqueOrThrow({ where: { id: userId } })).toMatchObject({
    twoFactorEnabled: false,
  });
  const deeds = await database().auditEntry.findMany({ where: { entityId: userId }, orderBy: { at: "asc" } });
  expect(deeds.map(({ deed }) => deed)).toEqual(
    expect.arrayContaining(["people:renew", "people:renewed", "session:open"]),
  );
});

test("no link is made for a closed account, nor by anybody but an administrator of all sites", async () => {
  const { id: userId } = await database().user.findUniqueOrThrow({
    where: { email: "lost@halvenor.example" },
  });
  const wanted = { userId, days: 3, dropsFactor: false } as const;
  expect(await linkNewPassword(await makeActor("engineer"), wanted, nothing)).toMatchObject({ ok: false });
  const token = await linkFor(userId);
  await database().user.update({ where: { id: userId }, data: { banned: true } });
  expect(await acceptInvitation({ token, password: "eleven loud bells" })).toMatchObject({ ok: false });
  expect(await linkNewPassword(admin, wanted, nothing)).toMatchObject({ ok: false });
});
