import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { READS } from "@/lib/interface/operations/reads";
import { problem } from "@/lib/interface/shapes/writes";
import { KEY_DEEDS } from "@/lib/schema/accessKey";
import { makeActor } from "@/test/support/actors";
import { callInterface } from "@/test/support/callInterface";
import { failureAt, named, tokenOf } from "@/test/support/interfaceCalls";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { makeTwoSites, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let lotId = "";

beforeAll(async () => {
  made = await freshDatabase("interface");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: "2026-11-30" } });
  lotId = (await database().stockLot.findFirstOrThrow({ where: { siteId: world.south } })).id;
  await database().repairOrder.create({
    data: {
      ...{
        siteId: world.south,
        partId: await oldPart(),
        reference: "R-1",
        cost: "410.5",
        costCurrency: "PLN",
      },
      sentOn: new Date("2026-10-01T00:00:00Z"),
    },
  });
  await database().project.create({
    data: {
      ...{ siteId: world.south, lineId: world.lines["SUD-01"] ?? "", code: "SUD-01-R1", name: "Retrofit" },
      ...{ currency: "PLN", budget: "1200000.50" },
    },
  });
});
afterAll(() => made.close());

const oldPart = async () => (await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } })).id;

describe("reading", () => {
  it("every list and the evaluation answer as their own schemas say, and page by page as at once", async () => {
    const token = await tokenOf(await makeActor("engineer"));
    const events = await tokenOf(await makeActor("engineer"), { deeds: ["event:write"] });
    const body = await failureAt("2026-02-03T06:40");
    const told = await callInterface({
      method: "POST",
      path: "/events",
      token: events,
      headers: named(),
      body,
    });
    expect(told.status).toBe(201);
    for (const { path, answer } of READS) {
      const whole = await callInterface({ path, token });
      expect([path, whole.status]).toEqual([path, 200]);
      answer.parse(whole.json);
      if (path === "/evaluation") continue;
      const { items, next } = whole.json as { items: unknown[]; next: string | null };
      expect([path, next, items.length > 0]).toEqual([path, null, true]);
      expect([path, await onePageEach(path, token)]).toEqual([path, items]);
    }
  });

  async function onePageEach(path: string, token: string): Promise<unknown[]> {
    const rows: unknown[] = [];
    for (let after = ""; ; ) {
      const page = await callInterface({ path: `${path}?limit=1${after}`, token });
      const { items, next } = page.json as { items: unknown[]; next: string | null };
      rows.push(...items);
      if (next === null) return rows;
      after = `&after=${next}`;
    }
  }

  it("says what it has when nothing changed, and a new answer when something did", async () => {
    const token = await tokenOf(await makeActor("planner"), { deeds: ["read", "stock:write"] });
    const first = await callInterface({ path: "/stock-lots", token });
    const held = { "If-None-Match": first.headers.get("ETag") ?? "" };
    const again = await callInterface({ path: "/stock-lots", token, headers: held });
    expect([again.status, again.json]).toEqual([304, null]);
    const lot = (first.json as { items: Record<string, unknown>[] }).items.find(({ id }) => id === lotId);
    const { state, quantity, lastPoweredOn, countedOn } = lot as Record<string, never>;
    const seen = { state, quantity, lastPoweredOn, countedOn };
    const body = { seen, wanted: { ...seen, quantity: 3, countedOn: "2026-11-29" } };
    const set = { method: "PATCH", path: `/stock-lots/${lotId}`, token, body };
    expect((await callInterface({ ...set, headers: named() })).status).toBe(200);
    const changed = await callInterface({ path: "/stock-lots", token, headers: held });
    expect(changed.status).toBe(200);
    const versionOf = ({ headers }: typeof first) => Number(headers.get("Ebbline-Data-Version"));
    expect(versionOf(changed)).toBe(versionOf(first) + 1);
    const late = await callInterface({ ...set, headers: named() });
    expect([late.status, problem.parse(late.json).title]).toEqual([409, "It stands otherwise by now"]);
  });

  it("shows a key of one site nothing of another, and its things as if there were none", async () => {
    const person = await makeActor("planner");
    const token = await tokenOf(person, { deeds: [...KEY_DEEDS], siteIds: [world.north] });
    for (const { path } of READS) {
      const { json } = await callInterface({ path, token });
      const text = JSON.stringify(json);
      expect([path, text.includes(world.south), /SUD-\d/.test(text)]).toEqual([path, false, false]);
    }
    const seen = { state: "usable", quantity: 3, lastPoweredOn: "2026-06-01", countedOn: "2026-11-29" };
    const body = { seen, wanted: seen };
    const foreign = await callInterface({
      method: "PATCH",
      path: `/stock-lots/${lotId}`,
      token,
      headers: named(),
      body,
    });
    const missing = await callInterface({
      method: "PATCH",
      path: `/stock-lots/${randomUUID()}`,
      token,
      headers: named(),
      body,
    });
    expect([foreign.status, foreign.json]).toEqual([404, missing.json]);
    const event = {
      method: "POST",
      path: "/events",
      token,
      headers: named(),
      body: await failureAt("2026-03-01T06:00"),
    };
    expect((await callInterface(event)).status).toBe(404);
  });
});

describe("a request that cannot be used", () => {
  const fieldsOf = (json: unknown) => problem.parse(json).fields;

  it("is told the field, what came and what would do", async () => {
    const token = await tokenOf(await makeActor("technician"), { deeds: ["read", "event:write"] });
    const long = await callInterface({ path: "/lines?limit=9999", token });
    expect(long.status).toBe(422);
    expect(fieldsOf(long.json)).toEqual([{ field: "limit", got: "9999", cure: "Ask for at most 500 rows." }]);
    const bent = await callInterface({ path: "/lines?after=xx", token });
    expect(fieldsOf(bent.json)).toEqual([
      { field: "after", got: '"xx"', cure: "Take `next` of a page as it came." },
    ]);
    const post = { method: "POST", path: "/events", token };
    const wrong = { ...(await failureAt("2026-13-01")), colour: "red" };
    const bad = await callInterface({ ...post, headers: named(), body: wrong });
    expect(fieldsOf(bad.json).map(({ field }) => field)).toEqual(["happenedAt", "colour"]);
    const waiting = { ...(await failureAt("2026-05-01T06:00")), logisticHours: "9" };
    const rule = await callInterface({ ...post, headers: named(), body: waiting });
    expect(fieldsOf(rule.json)).toEqual([
      { field: "logisticHours", got: '"9"', cure: "The waiting cannot be longer than the stop." },
    ]);
    expect((await callInterface({ ...post, body: await failureAt("2026-05-01T06:00") })).status).toBe(400);
    expect((await callInterface({ path: "/nowhere", token })).status).toBe(404);
    const put = await callInterface({ method: "DELETE", path: "/lines", token, headers: named() });
    expect([put.status, put.headers.get("Allow")]).toEqual([405, "GET"]);
    const above = await callInterface({
      method: "PATCH",
      path: `/stock-lots/${lotId}`,
      token,
      headers: named(),
    });
    expect([above.status, above.headers.get("Content-Type")]).toEqual([403, "application/problem+json"]);
    expect(await database().event.count({ where: { happenedAt: { gt: new Date("2026-04-01") } } })).toBe(0);
  });
});
