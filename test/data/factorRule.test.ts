import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { type Actor, currentActor, owesSecondFactor, signedInActor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readRequiredFactor, setRequiredFactor } from "@/lib/data/factorRule";
import { addNewPerson } from "@/lib/data/people";
import { cookieOf, inRequest, TEST_SECRET } from "@/test/support/access/inRequest";
import { makeActor, roleAt } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

let fresh: FreshDatabase;
let admin: Actor;

beforeAll(async () => {
  fresh = await freshDatabase("factor-rule");
  vi.stubEnv("BETTER_AUTH_SECRET", TEST_SECRET);
  vi.stubEnv("BETTER_AUTH_URL", "http://127.0.0.1:3999");
  admin = await makeActor("admin");
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await fresh.close();
});

async function person(role: "planner" | "viewer"): Promise<string> {
  const email = `${role}.factor@halvenor.example`;
  const wanted = { name: "Somebody of a test", email, password: "twelve letters" };
  const made = await addNewPerson(admin, { ...wanted, grants: [roleAt(role)] });
  if (!made.ok) throw new Error(made.error.reason);
  return made.value.userId;
}

const rightsOf = async (userId: string) => {
  const cookie = await cookieOf(userId);
  return inRequest(cookie, async () => [(await currentActor())?.grants.length, await owesSecondFactor()]);
};

test("whose role must have a second factor has no rights until there is one; nobody else loses any", async () => {
  const [planner, viewer] = [await person("planner"), await person("viewer")];
  expect(await rightsOf(planner)).toEqual([1, false]);
  expect(await setRequiredFactor(admin, { roles: ["planner"], seen: [] })).toMatchObject({ ok: true });
  expect(await readRequiredFactor(admin)).toEqual(["planner"]);
  expect(await rightsOf(planner)).toEqual([0, true]);
  expect(await rightsOf(viewer)).toEqual([1, false]);
  // A page is not theirs meanwhile, and that they asked for one is noted.
  const said: string[] = [];
  const stderr = vi.spyOn(process.stderr, "write").mockImplementation((text) => said.push(String(text)) > 0);
  await expect(inRequest(await cookieOf(planner), () => signedInActor())).rejects.toThrow("NEXT_REDIRECT");
  stderr.mockRestore();
  expect(said.map((line) => JSON.parse(line))).toMatchObject([
    { event: "page refused", userId: planner, why: "role" },
  ]);
  await database().user.update({ where: { id: planner }, data: { twoFactorEnabled: true } });
  expect(await rightsOf(planner)).toEqual([1, false]);
  // Who has no password here comes by the company's sign-in, which asks what the company wants.
  await database().user.update({ where: { id: planner }, data: { twoFactorEnabled: false } });
  await database().account.deleteMany({ where: { userId: planner } });
  expect(await rightsOf(planner)).toEqual([1, false]);
});

test("the rule is an administrator's of all sites, who has a factor first, and who saw what holds", async () => {
  const engineer = await makeActor("engineer");
  expect(await setRequiredFactor(engineer, { roles: [], seen: ["planner"] })).toMatchObject({ ok: false });
  expect(await readRequiredFactor(engineer)).toEqual([]);
  const own = { roles: ["admin" as const], seen: ["planner" as const] };
  expect(await setRequiredFactor(admin, own)).toMatchObject({ ok: false, error: { code: "conflict" } });
  expect(await setRequiredFactor(admin, { roles: [], seen: [] })).toMatchObject({
    ok: false,
    error: { code: "conflict" },
  });
  expect(await setRequiredFactor(admin, { roles: [], seen: ["planner"] })).toMatchObject({ ok: true });
  const deeds = await database().auditEntry.findMany({ where: { deed: "people:factor" } });
  expect(deeds).toHaveLength(2);
});
