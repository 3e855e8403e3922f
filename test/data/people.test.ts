import { afterAll, beforeAll, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { addNewPerson, closePersonAccount, readPeople, setPersonGrants } from "@/lib/data/people";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

let fresh: FreshDatabase;
let admin: Actor;
let engineer: Actor;

const newcomer = {
  name: "Planner of a test",
  email: "planner.new@halvenor.example",
  password: "twelve letters",
  grants: [
    {
      role: "planner" as const,
      siteId: null,
      projectId: null,
      without: ["money:read" as const],
      endsOn: null,
    },
  ],
};

beforeAll(async () => {
  fresh = await freshDatabase("people");
  admin = await makeActor("admin");
  engineer = await makeActor("engineer");
});
afterAll(() => fresh.close());

test("nobody but an administrator of all sites sees or makes accounts", async () => {
  const site = await database().site.create({
    data: { code: "THO", name: "Thornby Vale", country: "GB", timeZone: "Europe/London", currency: "GBP" },
  });
  for (const actor of [engineer, await makeActor("admin", site.id)]) {
    expect(await readPeople(actor)).toEqual([]);
    expect(await addNewPerson(actor, newcomer)).toMatchObject({ ok: false, error: { code: "forbidden" } });
  }
});

test("an account comes with its roles, once for an address", async () => {
  expect(await addNewPerson(admin, newcomer)).toMatchObject({ ok: true });
  expect(await addNewPerson(admin, newcomer)).toMatchObject({ ok: false, error: { code: "conflict" } });
  const people = await readPeople(admin);
  expect(people.find((one) => one.email === newcomer.email)?.grants).toEqual(newcomer.grants);
});

test("a person whom a copy brought without a password is given one and the roles named", async () => {
  const { userId, email } = await makeActor("viewer");
  expect(await addNewPerson(admin, { ...newcomer, email })).toMatchObject({ ok: true, value: { userId } });
  expect(await addNewPerson(admin, { ...newcomer, email })).toMatchObject({
    ok: false,
    error: { code: "conflict" },
  });
  const own = (await readPeople(admin)).find((one) => one.userId === userId);
  expect(own).toMatchObject({ name: newcomer.name, grants: newcomer.grants });
});

test("the last administrator of all sites can neither be closed nor lose the role", async () => {
  const answers = [
    await closePersonAccount(admin, { userId: admin.userId, closed: true }),
    await setPersonGrants(admin, { userId: admin.userId, grants: [] }),
  ];
  for (const answer of answers) expect(answer).toMatchObject({ ok: false, error: { code: "conflict" } });
  const own = (await readPeople(admin)).find((one) => one.userId === admin.userId);
  expect(own).toMatchObject({ closed: false });
  expect(own?.grants).toMatchObject([{ role: "admin", siteId: null }]);
});

test("of two administrators closing each other at once, one stays", async () => {
  const other = await makeActor("admin");
  await Promise.all([
    closePersonAccount(admin, { userId: other.userId, closed: true }),
    closePersonAccount(other, { userId: admin.userId, closed: true }),
  ]).catch(() => undefined);
  const open = (
    await database().user.findMany({ where: { grants: { some: { role: "admin", siteId: null } } } })
  ).filter((user) => !user.banned);
  expect(open.length).toBeGreaterThan(0);
});
