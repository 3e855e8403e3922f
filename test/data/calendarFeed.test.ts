import { afterAll, beforeAll, expect, it } from "vitest";
import { actorOfCalendar } from "@/lib/access/calendarToken";
import { dropCalendarFeed, makeCalendarFeed, readCalendarFeed } from "@/lib/data/calendarFeed";
import { database } from "@/lib/data/client";
import { makeActor } from "@/test/support/actors";
import { type FreshDatabase, freshDatabase } from "../support/database";

let made: FreshDatabase;
beforeAll(async () => {
  made = await freshDatabase("calendar_feed");
  process.env.BETTER_AUTH_URL = "https://ebbline.example";
});
afterAll(() => made.close());

async function tokenOf(actor: Awaited<ReturnType<typeof makeActor>>): Promise<string> {
  const feed = await makeCalendarFeed(actor);
  if (!feed.ok) throw new Error(feed.error.reason);
  expect(feed.value.address).toMatch(/^https:\/\/ebbline\.example\/api\/calendar\/[\w-]{43}$/);
  return feed.value.address.split("/").at(-1) ?? "";
}

it("a calendar address is its person's, is replaced by a new one and gone once taken back", async () => {
  const actor = await makeActor("viewer");
  expect(await readCalendarFeed(actor)).toBeNull();
  const first = await tokenOf(actor);
  expect((await actorOfCalendar(first))?.userId).toBe(actor.userId);
  const second = await tokenOf(actor);
  expect(await actorOfCalendar(first)).toBeNull();
  expect((await actorOfCalendar(second))?.grants).toEqual(actor.grants);
  expect(await dropCalendarFeed(actor)).toEqual({ ok: true, value: null });
  expect(await actorOfCalendar(second)).toBeNull();
  expect(await readCalendarFeed(actor)).toBeNull();
});

it("the database holds no address, an account that was closed opens none, and a guess is nobody's", async () => {
  const actor = await makeActor("viewer");
  const token = await tokenOf(actor);
  const rows = JSON.stringify(await database().calendarFeed.findMany());
  expect(rows).not.toContain(token);
  expect(JSON.stringify(await database().auditEntry.findMany())).not.toContain(token);
  await database().user.update({ where: { id: actor.userId }, data: { banned: true } });
  expect(await actorOfCalendar(token)).toBeNull();
  expect(await actorOfCalendar("")).toBeNull();
});
