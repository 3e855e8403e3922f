import { execFile } from "node:child_process";
import { randomUUID } from "node:crypto";
import { join } from "node:path";
import { promisify } from "node:util";
import { Client } from "pg";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { actorOfKey } from "@/lib/access/accessKey";
import { database } from "@/lib/data/client";
import { problem } from "@/lib/interface/shapes/writes";
import { makeActor } from "@/test/support/actors";
import { callInterface } from "@/test/support/callInterface";
import { failureAt, named, tokenOf } from "@/test/support/interfaceCalls";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { makeTwoSites } from "../support/twoSites";

// A process of its own takes its time on a busy machine.
vi.setConfig({ testTimeout: 60_000 });

let made: FreshDatabase;
beforeAll(async () => {
  made = await freshDatabase("interface_writes");
  await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: "2026-11-30" } });
});
afterAll(() => made.close());

describe("a request sent again", () => {
  const eventsFrom = (day: string) =>
    database().event.findMany({ where: { happenedAt: { gt: new Date(day) } }, select: { id: true } });

  it("has one effect and one answer, and is refused with another body", async () => {
    const token = await tokenOf(await makeActor("technician"), { deeds: ["event:write"] });
    const call = {
      method: "POST",
      path: "/events",
      token,
      headers: named(),
      body: await failureAt("2026-06-01T06:00"),
    };
    const answers = await Promise.all([callInterface(call), callInterface(call), callInterface(call)]);
    const json = answers[0]?.json;
    expect(answers.map((answer) => [answer.status, answer.json])).toEqual(answers.map(() => [201, json]));
    const { eventId } = json as { eventId: string };
    expect(await eventsFrom("2026-05-20")).toEqual([{ id: eventId }]);
    expect(await database().auditEntry.findMany({ where: { entityId: eventId } })).toMatchObject([
      { deed: "event:add", keyName: "Line monitor" },
    ]);
    const other = await callInterface({ ...call, body: await failureAt("2026-06-20T06:00") });
    const { title } = problem.parse(other.json);
    expect([other.status, title]).toEqual([422, "The Idempotency-Key was used for another request"]);
    expect(await eventsFrom("2026-05-20")).toHaveLength(1);
  });

  it("has one effect from two processes at once", async () => {
    const token = await tokenOf(await makeActor("technician"), { deeds: ["event:write"] });
    const knock = await actorOfKey(`Bearer ${token}`);
    if (knock.kind !== "actor") throw new Error(`expected somebody, got ${knock.kind}`);
    const actor = { ...knock.actor, request: { name: randomUUID(), hash: "the same" } };
    const unsaid = { spareAtHand: "", binOut: "", serialIn: "", revisionIn: "", lotId: "" };
    // Told as a second event, so that nothing but the name of the request keeps it from being kept twice.
    const told = { ...(await failureAt("2026-08-01T06:00")), ...unsaid, sure: true };
    const script = join(import.meta.dirname, "../support/keepEventAlone.mts");
    const task = JSON.stringify({ actor, told });
    const alone = async () => {
      const options = ["--conditions=react-server", "--import", "tsx", script, task];
      const env = { ...process.env, DATABASE_URL: made.url };
      return JSON.parse((await promisify(execFile)(process.execPath, options, { env })).stdout);
    };
    const [one, other] = await Promise.all([alone(), alone()]);
    expect(one).toMatchObject({ ok: true, value: { reference: expect.stringMatching(/^H-20260801-/) } });
    expect(other).toEqual(one);
    expect(await eventsFrom("2026-07-20")).toEqual([{ id: one.value.eventId }]);
  });

  it("does not wait for ever while the first is being done, and is done by the second when the first is undone", async () => {
    const person = await makeActor("technician");
    const token = await tokenOf(person, { deeds: ["event:write"] });
    const { id: accessKeyId } = await database().accessKey.findFirstOrThrow({
      where: { userId: person.userId },
    });
    const headers = named();
    const call = {
      method: "POST",
      path: "/events",
      token,
      headers,
      body: await failureAt("2026-09-01T06:00"),
    };
    const other = new Client({ connectionString: made.url });
    await other.connect();
    await other.query("BEGIN");
    const claim = `INSERT INTO "KeptAnswer" ("accessKeyId", "name", "requestHash") VALUES ($1, $2, 'x')`;
    await other.query(claim, [accessKeyId, headers["Idempotency-Key"]]);
    const began = performance.now();
    const waited = await callInterface(call);
    expect([waited.status, waited.headers.get("Retry-After")]).toEqual([409, "30"]);
    expect(performance.now() - began).toBeGreaterThan(2_500);
    const second = callInterface(call);
    await other.query("ROLLBACK");
    await other.end();
    expect((await second).status).toBe(201);
  });

  it("may be corrected under the same name after a refusal, which left no trace", async () => {
    const token = await tokenOf(await makeActor("technician"), { deeds: ["event:write"] });
    const call = { method: "POST", path: "/events", token, headers: named() };
    const close = await callInterface({ ...call, body: await failureAt("2026-06-02T06:00") });
    expect(close.status).toBe(409);
    const sure = await callInterface({
      ...call,
      body: { ...(await failureAt("2026-06-02T06:00")), sure: true },
    });
    expect(sure.status).toBe(201);
    const { eventId } = sure.json as { eventId: string };
    const back = { method: "DELETE", path: `/events/${eventId}`, token, headers: named() };
    expect((await callInterface(back)).json).toEqual({ done: true });
    expect((await callInterface(back)).json).toEqual({ done: true });
    expect((await callInterface({ ...back, headers: named() })).status).toBe(404);
  });
});

it("a file is handed in once, waits, and is loaded and taken back on demand", async () => {
  const token = await tokenOf(await makeActor("planner"), { deeds: ["register:import"] });
  const text = "Site;Part number;Bin;Quantity\nSUD;BW-OK-020;R9;2\n";
  const hand = {
    ...{ method: "POST", path: "/imports?register=stock&fileName=stock.csv", token, headers: named() },
    body: new TextEncoder().encode(text),
  };
  const [first, again] = await Promise.all([callInterface(hand), callInterface(hand)]);
  expect([first.status, again.json]).toEqual([201, first.json]);
  expect(await database().importBatch.count()).toBe(1);
  const { batchId } = first.json as { batchId: string };
  const state = async () => (await callInterface({ path: `/imports/${batchId}`, token })).json;
  expect(await state()).toMatchObject({ id: batchId, state: "staged", register: "stock" });
  expect(await database().stockLot.count({ where: { bin: "R9" } })).toBe(0);
  const load = { method: "POST", path: `/imports/${batchId}/load`, token, headers: named(), body: {} };
  const loaded = await callInterface(load);
  expect([loaded.status, loaded.json]).toEqual([200, { added: 1, changed: 0, unchanged: 0, refused: 0 }]);
  expect((await callInterface(load)).json).toEqual(loaded.json);
  expect(await database().stockLot.findMany({ where: { bin: "R9" } })).toMatchObject([{ quantity: 2 }]);
  const back = { method: "POST", path: `/imports/${batchId}/take-back`, token, headers: named() };
  expect((await callInterface(back)).status).toBe(200);
  expect([await state(), await database().stockLot.count({ where: { bin: "R9" } })]).toMatchObject([
    { state: "undone" },
    0,
  ]);
});
