import { createHmac } from "node:crypto";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { PAUSES, sendWaiting } from "@/lib/data/interface/sendWaiting";
import { changeStock } from "@/lib/data/stockChange";
import { makeHook, renewSecret, resend, switchHook, tryHook } from "@/lib/data/webhookChange";
import { readWebhook, readWebhooks } from "@/lib/data/webhooks";
import { sendWebhook } from "@/lib/jobs/sendWebhook";
import { type Jobs, startJobs } from "@/lib/jobs/startJobs";
import { makeActor } from "@/test/support/actors";
import { type Received, startReceiver } from "@/test/support/receiver";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { makeTwoSites, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let admin: Actor;
let receiver: Awaited<ReturnType<typeof startReceiver>>;
let hook: { id: string; secret: string };
const before = { ...process.env };

beforeAll(async () => {
  made = await freshDatabase("webhooks");
  process.env.BETTER_AUTH_SECRET = "of-the-webhooks-of-a-test-long-enough";
  process.env.EBBLINE_WEBHOOK_ALLOW = "127.0.0.1";
  world = await makeTwoSites();
  admin = await makeActor("admin");
  // Makes the queue's own tables; nothing is sent by it until a test starts it again.
  await (await startJobs()).stop();
});
afterAll(async () => {
  for (const name of ["BETTER_AUTH_SECRET", "EBBLINE_WEBHOOK_ALLOW"]) {
    if (before[name] === undefined) delete process.env[name];
    else process.env[name] = before[name];
  }
  await receiver.stop();
  await made.close();
});

beforeEach(async () => {
  await receiver?.stop();
  await database().webhook.deleteMany();
  await database().$executeRaw`DELETE FROM graphile_worker._private_jobs`;
  receiver = await startReceiver();
  const wish = { name: "Line monitor", address: receiver.address, subjects: ["stock.changed" as const] };
  const answer = await makeHook(admin, { ...wish, siteId: null });
  if (!answer.ok) throw new Error(answer.error.reason);
  hook = answer.value;
});

/** Changes one lot of a site, as a person on the screen does. */
async function countLot(siteId: string, quantity: number): Promise<void> {
  const lot = await database().stockLot.findFirstOrThrow({ where: { siteId } });
  const dayOf = (date: Date | null) => date?.toISOString().slice(0, 10) ?? null;
  const { state, lastPoweredOn, countedOn } = lot;
  const seen = {
    state,
    quantity: lot.quantity,
    lastPoweredOn: dayOf(lastPoweredOn),
    countedOn: dayOf(countedOn),
  };
  const changed = await changeStock(admin, { lotId: lot.id, seen, wanted: { ...seen, quantity } });
  if (!changed.ok) throw new Error(changed.error.reason);
}

/** The check the page of the interface tells receivers to make. */
function isSigned({ headers, body }: Received, secret: string): boolean {
  const text = `${headers["ebbline-message"]}.${headers["ebbline-time"]}.${body}`;
  const mine = `v1=${createHmac("sha256", secret).update(text).digest("hex")}`;
  return String(headers["ebbline-signature"]).split(",").includes(mine);
}

const turn = () => sendWaiting(hook.id, sendWebhook);
const states = async () => {
  const rows = await database().webhookDelivery.findMany({ orderBy: { sequence: "asc" } });
  return rows.map(({ state, tries, status }) => [state, tries, status]);
};

it("a change is told by the queue with a signature that holds, and names things without figures", async () => {
  let jobs: Jobs | undefined;
  try {
    jobs = await startJobs();
    await countLot(world.south, 2);
    const end = Date.now() + 20_000;
    while (receiver.received.length === 0 && Date.now() < end)
      await new Promise((resolve) => setTimeout(resolve, 20));
  } finally {
    await jobs?.stop();
  }
  const [message] = receiver.received;
  if (!message) throw new Error("nothing came");
  expect(isSigned(message, hook.secret)).toBe(true);
  expect(isSigned({ ...message, body: message.body.replace("stock", "shelf") }, hook.secret)).toBe(false);
  const lot = await database().stockLot.findFirstOrThrow({ where: { siteId: world.south } });
  expect(JSON.parse(message.body)).toEqual({
    ...{ id: message.headers["ebbline-message"], subject: "stock.changed", at: expect.any(String) },
    ...{ siteId: world.south, things: [{ kind: "StockLot", id: lot.id, deed: "stock:lot" }] },
    ...{ more: 0, read: "/api/v1/stock-lots" },
  });
  expect(await states()).toEqual([["delivered", 1, 200]]);
  const stored = JSON.stringify(await database().webhook.findMany());
  expect(stored).not.toContain(hook.secret);
});

it("a change that was refused tells nobody, and one nobody asked about neither", async () => {
  await expect(countLot(world.south, -1)).rejects.toThrow();
  expect(await states()).toEqual([]);
  expect(await tryHook(await makeActor("engineer"), { webhookId: hook.id })).toMatchObject({
    ok: false,
    error: { code: "forbidden" },
  });
  expect(await states()).toEqual([]);
});

describe("a receiver that fails", () => {
  it("gets the same message again after a growing pause, and those behind it wait their turn", async () => {
    await countLot(world.south, 3);
    await countLot(world.south, 4);
    receiver.answerWith({ status: 500 }, { status: 503 });
    const runAts: number[] = [];
    for (let round = 0; round < 2; round++) {
      await turn();
      const [row] = await database().$queryRaw<{ wait: number }[]>`
        SELECT extract(epoch FROM run_at - now())::float8 AS "wait" FROM graphile_worker._private_jobs`;
      runAts.push(row?.wait ?? Number.NaN);
    }
    expect(runAts[0]).toBeGreaterThan(PAUSES[0] - 2);
    expect(runAts[1]).toBeGreaterThan(PAUSES[1] - 2);
    expect(await states()).toEqual([
      ["waiting", 2, 503],
      ["waiting", 0, null],
    ]);
    // A further change does not cut the pause short.
    await countLot(world.south, 5);
    const [row] = await database().$queryRaw<{ jobs: number; wait: number }[]>`
      SELECT count(*)::int AS "jobs", min(extract(epoch FROM run_at - now()))::float8 AS "wait"
      FROM graphile_worker._private_jobs`;
    expect([row?.jobs, (row?.wait ?? 0) > PAUSES[1] - 5]).toEqual([1, true]);
    await turn();
    const sent = receiver.received.map(({ headers }) => headers["ebbline-message"]);
    expect([sent.length, sent[0], sent[1]]).toEqual([5, sent[2], sent[2]]);
    const order = await database().webhookDelivery.findMany({ orderBy: { sequence: "asc" } });
    expect(sent.slice(2)).toEqual(order.map(({ id }) => id));
    expect((await states()).map(([state]) => state)).toEqual(["delivered", "delivered", "delivered"]);
    await turn();
    expect(receiver.received).toHaveLength(5);
  });

  it("is given up in the end and taken out of use with a note; what waits goes once it is used again", async () => {
    await countLot(world.south, 6);
    await countLot(world.south, 7);
    await database().webhookDelivery.updateMany({ data: { tries: PAUSES.length } });
    receiver.answerWith({ status: 500 });
    await turn();
    const [row] = await readWebhooks(admin);
    expect(row).toMatchObject({ waiting: 1, disabledReason: expect.stringContaining("status 500") });
    await countLot(world.south, 8);
    await turn();
    expect(receiver.received).toHaveLength(1);
    const { id: webhookId, version = 0 } = row ?? { id: "" };
    const late = await switchHook(admin, { webhookId, version: version - 1, inUse: true });
    expect(late).toMatchObject({ ok: false, error: { code: "conflict" } });
    expect((await switchHook(admin, { webhookId, version, inUse: true })).ok).toBe(true);
    await turn();
    expect((await states()).map(([state]) => state)).toEqual(["given_up", "delivered"]);
    const lost = (await readWebhook(admin, hook.id))?.deliveries.find(({ state }) => state === "given_up");
    expect((await resend(admin, { deliveryId: lost?.id ?? "" })).ok).toBe(true);
    await turn();
    expect(receiver.received.at(-1)?.headers["ebbline-message"]).toBe(lost?.id);
  });

  it("cannot lead the sender elsewhere: a redirect is a failure, and nothing is asked where it points", async () => {
    const inner = await startReceiver();
    receiver.answerWith({ status: 302, headers: { Location: inner.address } });
    await tryHook(admin, { webhookId: hook.id });
    await turn();
    expect([inner.received.length, await states()]).toEqual([0, [["waiting", 1, 302]]]);
    await inner.stop();
  });
});

it("a new secret signs at once, and the former one beside it until its day is over", async () => {
  const renewed = await renewSecret(admin, { webhookId: hook.id });
  if (!renewed.ok) throw new Error(renewed.error.reason);
  await tryHook(admin, { webhookId: hook.id });
  await turn();
  const secrets = [hook.secret, renewed.value.secret];
  const [both] = receiver.received;
  expect(secrets.map((secret) => both && isSigned(both, secret))).toEqual([true, true]);
  await database().webhook.updateMany({ data: { formerUntil: new Date(Date.now() - 1000) } });
  await tryHook(admin, { webhookId: hook.id });
  await turn();
  const [, one] = receiver.received;
  expect(secrets.map((secret) => one && isSigned(one, secret))).toEqual([false, true]);
});

it("an address of one site hears of no other", async () => {
  await database().webhook.updateMany({ data: { siteId: world.north } });
  await countLot(world.south, 9);
  await countLot(world.north, 1);
  await turn();
  expect(receiver.received.map(({ body }) => JSON.parse(body).siteId)).toEqual([world.north]);
});

it("an address inside a closed network is refused when it is made and again when it is sent to", async () => {
  process.env.EBBLINE_WEBHOOK_ALLOW = "";
  const wish = { name: "Inside", subjects: ["stock.changed" as const], siteId: null };
  for (const host of [
    "127.0.0.1",
    "localhost",
    "169.254.169.254",
    "10.1.2.3",
    "[::1]",
    "[::ffff:10.0.0.1]",
    "2130706433",
  ]) {
    const answer = await makeHook(admin, { ...wish, address: `https://${host}/x` });
    expect([host, answer]).toMatchObject([host, { ok: false, error: { code: "invalid" } }]);
  }
  await tryHook(admin, { webhookId: hook.id });
  await turn();
  process.env.EBBLINE_WEBHOOK_ALLOW = "127.0.0.1";
  const [row] = (await readWebhook(admin, hook.id))?.deliveries ?? [];
  expect([receiver.received.length, row?.status, row?.answer?.includes("closed network")]).toEqual([
    0,
    null,
    true,
  ]);
});
