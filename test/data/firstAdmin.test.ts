import { createHash } from "node:crypto";
import { afterAll, beforeAll, expect, test } from "vitest";
import { createFirstAdmin, firstAdmin } from "@/lib/access/firstAdmin";
import { isPassword } from "@/lib/access/passwordHash";
import { database } from "@/lib/data/client";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

let fresh: FreshDatabase;
const person = {
  token: "one-time",
  name: "First",
  email: "First@halvenor.example",
  password: "a kettle and a rail",
};

beforeAll(async () => {
  fresh = await freshDatabase("firstAdmin");
  const tokenHash = createHash("sha256").update(person.token).digest("hex");
  await database().invitation.create({ data: { tokenHash } });
});
afterAll(() => fresh.close());

test("a wrong link makes nobody an administrator", async () => {
  expect(await createFirstAdmin({ ...person, token: "guessed" })).toMatchObject({ ok: false });
  expect(await database().user.count()).toBe(0);
});

test("a short password is refused with a sentence about it", () => {
  const read = firstAdmin.safeParse({ ...person, password: "short" });
  expect(read.error?.issues.map((issue) => issue.message)).toEqual(["Use at least 12 characters."]);
});

test("of two uses of the link at once, one makes the administrator", async () => {
  const answers = await Promise.all([createFirstAdmin(person), createFirstAdmin(person)]);
  expect(answers.filter((answer) => answer.ok)).toHaveLength(1);
  const [user] = await database().user.findMany({ include: { grants: true, accounts: true } });
  expect(user?.email).toBe("first@halvenor.example");
  expect(user?.grants).toMatchObject([{ role: "admin", siteId: null }]);
  const hash = user?.accounts[0]?.password ?? "";
  expect(await isPassword(hash, person.password)).toBe(true);
});

test("the spent link opens nothing", async () => {
  expect(await createFirstAdmin({ ...person, email: "second@halvenor.example" })).toMatchObject({
    ok: false,
  });
  expect(await database().user.count()).toBe(1);
});

test("where a copy brought people without passwords, the person with that address becomes the administrator", async () => {
  const db = database();
  await db.$executeRaw`TRUNCATE "User" CASCADE`;
  const { id } = await db.user.create({
    data: {
      id: "copied",
      name: "Copied",
      email: "copied@halvenor.example",
      grants: { create: { role: "viewer" } },
    },
  });
  const tokenHash = createHash("sha256").update("again").digest("hex");
  await db.invitation.create({ data: { tokenHash } });
  expect(
    await createFirstAdmin({ ...person, token: "again", email: "Copied@halvenor.example" }),
  ).toMatchObject({
    ok: true,
  });
  const users = await db.user.findMany({ include: { grants: true, accounts: true } });
  expect(users).toHaveLength(1);
  expect(users[0]).toMatchObject({ id, name: "Copied", accounts: [{ providerId: "credential" }] });
  expect(users[0]?.grants.map(({ role }) => role).sort()).toEqual(["admin", "viewer"]);
});
