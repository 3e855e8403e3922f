import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { actorOfKey } from "@/lib/access/accessKey";
import type { Actor } from "@/lib/access/actor";
import { mayAt, scopeOf } from "@/lib/access/policy";
import { makeKey, readAccessKeys, revokeKey } from "@/lib/data/accessKeys";
import { database } from "@/lib/data/client";
import { setPersonGrants } from "@/lib/data/people";
import { ALLOWANCE, type MakeAccessKey } from "@/lib/schema/accessKey";
import { makeActor, roleAt } from "@/test/support/actors";
import { callInterface } from "@/test/support/callInterface";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { makeTwoSites, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
beforeAll(async () => {
  made = await freshDatabase("access_keys");
  world = await makeTwoSites();
});
afterAll(() => made.close());

async function newKey(actor: Actor, given: Partial<MakeAccessKey> = {}) {
  const wish: MakeAccessKey = { name: "Robot", deeds: ["read"], siteIds: null, days: 30, ...given };
  const key = await makeKey(actor, wish);
  if (!key.ok) throw new Error(key.error.reason);
  const row = await database().accessKey.findFirstOrThrow({ orderBy: { id: "desc" } });
  return { token: key.value.token, id: row.id };
}

const knock = (token: string) => actorOfKey(`Bearer ${token}`);
async function actorBy(token: string): Promise<Actor> {
  const answer = await knock(token);
  if (answer.kind !== "actor") throw new Error(`expected somebody, got ${answer.kind}`);
  return answer.actor;
}

describe("a key", () => {
  it("opens what its person and it may both, and is kept as a hash alone", async () => {
    const person = await makeActor("planner");
    const { token, id } = await newKey(person, { deeds: ["read", "stock:write"], siteIds: [world.north] });
    expect(token).toMatch(/^ebb_[\w-]{43}$/);
    const actor = await actorBy(token);
    expect(actor).toMatchObject({ userId: person.userId, key: { id, name: "Robot" } });
    expect(scopeOf(actor.grants, "stock:write")).toEqual([world.north]);
    expect(scopeOf(actor.grants, "event:write")).toEqual([]);
    const stored = JSON.stringify([
      await database().accessKey.findMany(),
      await database().auditEntry.findMany(),
    ]);
    expect([stored.includes(token), stored.includes(token.slice(4))]).toEqual([false, false]);
    expect((await database().accessKey.findUniqueOrThrow({ where: { id } })).tokenHash).toMatch(
      /^[0-9a-f]{64}$/,
    );
  });

  it("cannot be made beyond its person", async () => {
    const here = await makeActor("technician", world.north);
    const wishes: Partial<MakeAccessKey>[] = [{ deeds: ["stock:write"] }, { siteIds: [world.south] }];
    for (const wish of wishes) {
      const answer = await makeKey(here, {
        name: "Robot",
        deeds: ["read"],
        siteIds: null,
        days: 30,
        ...wish,
      });
      expect(answer).toMatchObject({ ok: false, error: { code: "forbidden" } });
    }
  });

  it("shrinks with its person at once, and dies with the account", async () => {
    const [admin, person] = [await makeActor("admin"), await makeActor("planner")];
    const { token } = await newKey(person, { deeds: ["read", "stock:write"] });
    expect(mayAt((await actorBy(token)).grants, "stock:write", world.south)).toBe(true);
    const grants = [roleAt("viewer", world.north)];
    expect((await setPersonGrants(admin, { userId: person.userId, grants })).ok).toBe(true);
    const { grants: left } = await actorBy(token);
    expect([scopeOf(left, "read"), scopeOf(left, "stock:write")]).toEqual([[world.north], []]);
    await database().user.update({ where: { id: person.userId }, data: { banned: true } });
    expect(await knock(token)).toEqual({ kind: "nobody" });
  });

  it("is the same nobody unknown, mistyped, expired and revoked, and its answers do not tell them apart", async () => {
    const person = await makeActor("viewer");
    const [expired, revoked] = [await newKey(person), await newKey(person)];
    const past = { expiresAt: new Date("2020-01-01T00:00:00Z") };
    await database().accessKey.update({ where: { id: expired.id }, data: past });
    expect((await callInterface({ path: "/sites", token: revoked.token })).status).toBe(200);
    expect((await revokeKey(person, { keyId: revoked.id })).ok).toBe(true);
    const bad = [expired.token, revoked.token, `ebb_${"x".repeat(43)}`, "", "ebb_", `${revoked.token}x`];
    const answers = await Promise.all(bad.map((token) => callInterface({ path: "/sites", token })));
    expect(new Set(answers.map(({ status, json }) => JSON.stringify([status, json]))).size).toBe(1);
    expect(answers[0]?.status).toBe(401);
    const unknownPath = await callInterface({ path: "/nowhere", token: "ebb_none" });
    expect([unknownPath.status, unknownPath.json]).toEqual([401, answers[0]?.json]);
  });

  it("is seen and revoked by its person and by an administrator of all sites, by nobody else", async () => {
    const [person, other, admin] = [
      await makeActor("viewer"),
      await makeActor("engineer"),
      await makeActor("admin"),
    ];
    const { id } = await newKey(person);
    const ids = async (actor: Actor) => (await readAccessKeys(actor)).map((key) => key.id);
    expect(await ids(person)).toEqual([id]);
    expect(await ids(other)).toEqual([]);
    expect(await ids(admin)).toContain(id);
    expect(await revokeKey(other, { keyId: id })).toMatchObject({ ok: false, error: { code: "missing" } });
    expect(await revokeKey(admin, { keyId: id })).toEqual({ ok: true, value: null });
    expect((await readAccessKeys(person))[0]).toMatchObject({ state: "revoked", isOwn: true });
  });

  it("asks so often and no more, which another process and a restart do not forget", async () => {
    const { token, id } = await newKey(await makeActor("viewer"));
    const set = (allowance: number) =>
      database().accessKey.update({ where: { id }, data: { allowance, countedAt: new Date() } });
    await set(5);
    const began = performance.now();
    const asked = Array.from({ length: 40 }, () => callInterface({ path: "/nowhere", token }));
    const passed = (await Promise.all(asked)).filter(({ status }) => status === 404).length;
    const back = ((performance.now() - began) / 1000) * ALLOWANCE.perSecond;
    expect(passed).toBeGreaterThanOrEqual(5);
    expect(passed).toBeLessThanOrEqual(6 + back);
    await set(-600);
    const kept = globalThis as typeof globalThis & { ebblineDatabase?: { $disconnect(): Promise<void> } };
    await kept.ebblineDatabase?.$disconnect();
    delete kept.ebblineDatabase;
    const refused = await callInterface({ path: "/sites", token });
    expect(refused.status).toBe(429);
    expect(Number(refused.headers.get("Retry-After"))).toBeGreaterThan(30);
    await set(1);
    expect((await callInterface({ path: "/sites", token })).status).toBe(200);
  });
});
