import { afterAll, beforeAll, describe, expect, test, vi } from "vitest";
import { countWrong, isResting } from "@/lib/access/signInPause";
import { troubleOf } from "@/lib/access/trouble";
import { database } from "@/lib/data/client";
import { problem } from "@/lib/interface/shapes/writes";
import { startTcpProxy, type TcpProxy } from "@/test/faults/tcpProxy";
import { makeActor } from "@/test/support/actors";
import { callInterface } from "@/test/support/callInterface";
import { type FreshDatabase, freshDatabase, workOn } from "@/test/support/database";
import { failureAt, named, tokenOf } from "@/test/support/interfaceCalls";
import { makeTwoSites } from "@/test/support/twoSites";

let made: FreshDatabase;
let proxy: TcpProxy;

beforeAll(async () => {
  made = await freshDatabase("troubles");
  await makeTwoSites();
  const { hostname, port } = new URL(made.url);
  proxy = await startTcpProxy({ host: hostname, port: Number(port) });
  await workOn(proxy.url(made.url));
});
afterAll(async () => {
  await workOn(made.url);
  await proxy.stop();
  await made.close();
});

async function event(happenedAt: string) {
  const token = await tokenOf(await makeActor("technician"), { deeds: ["event:write"] });
  return { method: "POST", path: "/events", token, headers: named(), body: await failureAt(happenedAt) };
}

const kept = (day: string) =>
  database().event.count({ where: { happenedAt: { gt: new Date(`${day}T00:00:00Z`) } } });

describe("a database that goes away", () => {
  test("is told in words while it is away, and the same request is done once when it is back", async () => {
    const call = await event("2026-06-02T06:00");
    expect(await kept("2026-06-01")).toBe(0);
    proxy.cut();
    expect((await callInterface(call)).status).toBe(503);
    proxy.mend();
    const [one, other] = [await callInterface(call), await callInterface(call)];
    expect([one.status, other.status, other.json]).toEqual([201, 201, one.json]);
    expect(await kept("2026-06-01")).toBe(1);
  });

  test("amid a request leaves all of it or nothing, and says that it is not known", async () => {
    const call = await event("2026-07-02T06:00");
    proxy.delay(20);
    const answering = callInterface(call);
    await new Promise((resolve) => setTimeout(resolve, 400));
    proxy.cut();
    const answer = await answering;
    proxy.delay(0);
    proxy.mend();
    expect([answer.status, problem.parse(answer.json).detail]).toEqual([
      503,
      expect.stringContaining("it is done once"),
    ]);
    expect(answer.headers.get("Retry-After")).toBe("10");
    expect((await callInterface(call)).status).toBe(201);
    expect(await kept("2026-07-01")).toBe(1);
  });
});

test("a slow database makes a request slow and nothing else", async () => {
  const call = await event("2026-08-02T06:00");
  proxy.delay(40);
  const answer = await callInterface(call);
  proxy.delay(0);
  expect(answer.status).toBe(201);
  expect(await kept("2026-08-01")).toBe(1);
});

test("a disk that is full is told from everything else", async () => {
  const full = database().$executeRaw`DO $$ BEGIN RAISE 'no room' USING ERRCODE = 'disk_full'; END $$`.catch(
    troubleOf,
  );
  expect(await full).toBe("full");
  expect(troubleOf(Object.assign(new Error("no room"), { code: "ENOSPC" }))).toBe("full");
  const wrong = database().$queryRaw`SELECT 1 / 0`.catch(troubleOf);
  expect(await wrong).toBeNull();
});

test("an address rests by the clock of the database, whatever that of the process says", async () => {
  const email = "clock@halvenor.example";
  for (let i = 0; i < 10; i++) await countWrong(email);
  for (const hours of [-1, 24]) {
    vi.useFakeTimers({ toFake: ["Date"], now: Date.now() + hours * 3_600_000 });
    expect(await isResting(email)).toBe(true);
    vi.useRealTimers();
  }
});
