import { afterAll, beforeAll, expect, test } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { change } from "@/lib/data/change";
import { database } from "@/lib/data/client";
import { err, ok } from "@/lib/kernel/result";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";

let fresh: FreshDatabase;
let actor: Actor;
const rate = { currency: "SEK", perEuro: 11.3, validFrom: new Date("2026-01-01") };

beforeAll(async () => {
  fresh = await freshDatabase("change");
  actor = await makeActor("admin");
});
afterAll(() => fresh.close());

async function version(): Promise<bigint> {
  return (await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } })).version;
}

test("a change, its audit entry and the new data version come together", async () => {
  const before = await version();
  await change(actor, async (tx, record) => {
    await tx.currencyRate.create({ data: rate });
    record({ deed: "rate:add", entity: "CurrencyRate", entityId: "SEK", after: { perEuro: 11.3 } });
    return ok(null);
  });
  expect(await version()).toBe(before + 1n);
  const [entry] = await database().auditEntry.findMany();
  expect(entry).toMatchObject({ deed: "rate:add", userId: actor.userId, after: { perEuro: 11.3 } });
});

test("a refusal takes back what was written before it, and keeps no entry", async () => {
  const [before, entries] = [await version(), await database().auditEntry.count()];
  const answer = await change(actor, async (tx, record) => {
    await tx.currencyRate.delete({ where: { currency: "SEK" } });
    record({ deed: "rate:remove", entity: "CurrencyRate", entityId: "SEK" });
    return err({ code: "conflict" as const });
  });
  expect(answer).toEqual({ ok: false, error: { code: "conflict" } });
  expect(await database().currencyRate.count()).toBe(1);
  expect([await version(), await database().auditEntry.count()]).toEqual([before, entries]);
});

test("an unforeseen error leaves nothing behind and is not swallowed", async () => {
  await expect(
    change(actor, async (tx) => {
      await tx.currencyRate.delete({ where: { currency: "SEK" } });
      throw new Error("unforeseen");
    }),
  ).rejects.toThrow("unforeseen");
  expect(await database().currencyRate.count()).toBe(1);
});

test("looking without changing keeps the data version", async () => {
  const before = await version();
  await change(actor, async (tx) => ok(await tx.currencyRate.count()));
  expect(await version()).toBe(before);
});

test("a change nobody computes from is audited, and the computed figures stay", async () => {
  const [before, entries] = [await version(), await database().auditEntry.count()];
  await change(actor, async (_tx, record) => {
    record({ deed: "people:close", entity: "User", entityId: actor.userId });
    return ok(null);
  });
  expect([await version(), await database().auditEntry.count()]).toEqual([before, entries + 1]);
});
