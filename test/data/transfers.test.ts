import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { readPoolBoard } from "@/lib/data/poolBoard";
import { readPoolOfPart } from "@/lib/data/poolOfPart";
import { askForTransfer, moveTransfer } from "@/lib/data/transferChange";
import { readTransfers, readUnderWay } from "@/lib/data/transfers";
import type { TransferStepName } from "@/lib/schema/transferSteps";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, fillSharedShelf, personWith, type SharedShelf } from "../support/sharedShelf";

let made: FreshDatabase;
let group: SharedShelf;

beforeAll(async () => {
  made = await freshDatabase("transfers");
  group = await fillSharedShelf();
});
afterAll(() => made.close());

const giver = () => personWith("planner", group.south);
const taker = () => personWith("planner", group.north);
const everywhere = () => personWith("planner", null);

beforeEach(async () => {
  await database().transfer.deleteMany();
  await database().stockLot.deleteMany({ where: { id: { notIn: [group.northLot, group.southLot] } } });
  await database().stockLot.update({ where: { id: group.southLot }, data: { quantity: 7, state: "usable" } });
});

async function ask(pieces = 3): Promise<string> {
  const asked = await askForTransfer(everywhere(), { lotId: group.southLot, toSiteId: group.north, pieces });
  if (!asked.ok) throw new Error(asked.error.reason);
  return asked.value.id;
}

const step = (id: string, name: TransferStepName, told: { reason?: string; bin?: string } = {}) => ({
  ...{ transferId: id, step: name, reason: "", bin: "" },
  ...told,
});
const south = async () =>
  (await database().stockLot.findUniqueOrThrow({ where: { id: group.southLot } })).quantity;
const north = async () =>
  (await database().stockLot.findMany({ where: { siteId: group.north, bin: "R2-N" } })).map(
    (lot) => lot.quantity,
  );
const usable = async () => {
  const board = await readPoolBoard(everywhere(), asOf);
  return board.pools.find(({ partId }) => partId === group.partId)?.usable ?? 0;
};
const version = async () => (await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } })).version;

describe("a transfer", () => {
  it("goes from asked to agreed to sent to received, each end by its own people", async () => {
    const id = await ask();
    expect(await moveTransfer(taker(), step(id, "agree"))).toMatchObject({
      ok: false,
      error: { code: "forbidden" },
    });
    expect((await moveTransfer(giver(), step(id, "agree"))).ok).toBe(true);
    expect(await south()).toBe(7);
    expect(await moveTransfer(taker(), step(id, "send"))).toMatchObject({ ok: false });
    expect((await moveTransfer(giver(), step(id, "send"))).ok).toBe(true);
    expect(await south()).toBe(4);
    expect(await moveTransfer(giver(), step(id, "receive", { bin: "R2-N" }))).toMatchObject({ ok: false });
    expect((await moveTransfer(taker(), step(id, "receive", { bin: "R2-N" }))).ok).toBe(true);
    expect(await north()).toEqual([3]);
    const [seen] = await readTransfers(taker(), group.partId);
    expect(seen?.steps.map(({ state }) => state)).toEqual(["proposed", "agreed", "sent", "received"]);
  });

  it("counts pieces under way at neither site, and whole again when received", async () => {
    const before = await usable();
    const id = await ask();
    await moveTransfer(giver(), step(id, "agree"));
    expect(await usable()).toBe(before);
    await moveTransfer(giver(), step(id, "send"));
    expect(await usable()).toBeCloseTo(before - 3 * 0.97, 9);
    expect((await readUnderWay(taker())).get(group.partId)).toBe(3);
    await moveTransfer(taker(), step(id, "receive", { bin: "R2-N" }));
    expect(await usable()).toBeCloseTo(before, 9);
    expect((await readUnderWay(taker())).size).toBe(0);
  });

  it("touches the figures only when the shelf moves, and then only those of its part", async () => {
    await currentEvaluation(asOf);
    const start = await version();
    const id = await ask();
    await moveTransfer(giver(), step(id, "agree"));
    expect(await version()).toBe(start);
    await moveTransfer(giver(), step(id, "send"));
    const narrow = await database().narrowChange.findUniqueOrThrow({ where: { version: await version() } });
    expect(narrow.partIds).toEqual([group.partId]);
    const audit = await database().auditEntry.findMany({ where: { entity: "Transfer", entityId: id } });
    expect(audit.map(({ deed }) => deed).sort()).toEqual(["transfer:agree", "transfer:ask", "transfer:send"]);
  });

  it("is refused with a reason the other site reads, and can be thought over", async () => {
    const id = await ask();
    expect((await moveTransfer(giver(), step(id, "refuse", { reason: "Two failures last week" }))).ok).toBe(
      true,
    );
    expect((await readTransfers(taker(), null))[0]).toMatchObject({
      ...{ state: "refused", refusal: "Two failures last week" },
      may: [],
    });
    expect((await moveTransfer(giver(), step(id, "refuse-back"))).ok).toBe(true);
    expect((await readTransfers(taker(), null))[0]).toMatchObject({ state: "proposed", refusal: "" });
  });

  it("is taken back step by step, and every piece is where it was", async () => {
    const id = await ask();
    for (const name of ["agree", "send"] as const) await moveTransfer(giver(), step(id, name));
    await moveTransfer(taker(), step(id, "receive", { bin: "R2-N" }));
    expect((await moveTransfer(taker(), step(id, "receive-back"))).ok).toBe(true);
    expect(await north()).toEqual([0]);
    expect((await moveTransfer(giver(), step(id, "send-back"))).ok).toBe(true);
    expect(await south()).toBe(7);
    expect((await moveTransfer(giver(), step(id, "agree-back"))).ok).toBe(true);
    expect((await moveTransfer(taker(), step(id, "withdraw"))).ok).toBe(true);
  });

  it("is not taken back once somebody used the pieces", async () => {
    const id = await ask();
    for (const name of ["agree", "send"] as const) await moveTransfer(giver(), step(id, name));
    await moveTransfer(taker(), step(id, "receive", { bin: "R2-N" }));
    await database().stockLot.updateMany({
      where: { siteId: group.north, bin: "R2-N" },
      data: { quantity: 1 },
    });
    expect(await moveTransfer(taker(), step(id, "receive-back"))).toMatchObject({
      error: { code: "conflict", reason: expect.stringContaining("used or moved") },
    });
    expect(await north()).toEqual([1]);
  });

  it("is not joined to pieces that are not alike, nor to a bin nobody counted", async () => {
    const id = await ask();
    for (const name of ["agree", "send"] as const) await moveTransfer(giver(), step(id, name));
    const place = { siteId: group.north, partId: group.partId, revision: "B1", state: "usable" as const };
    await database().stockLot.create({ data: { ...place, bin: "OLD", quantity: 1, lastPoweredOn: null } });
    await database().stockLot.create({ data: { ...place, bin: "HEAP", quantity: null } });
    for (const bin of ["OLD", "HEAP"])
      expect(await moveTransfer(taker(), step(id, "receive", { bin }))).toMatchObject({
        error: { code: "conflict", fields: { bin: expect.any(String) } },
      });
    // As old as the lot in R1-N of the same revision: it joins.
    expect((await moveTransfer(taker(), step(id, "receive", { bin: "R1-N" }))).ok).toBe(true);
    const joined = await database().stockLot.findUniqueOrThrow({ where: { id: group.northLot } });
    expect(joined.quantity).toBe(4);
    await database().stockLot.update({ where: { id: group.northLot }, data: { quantity: 1 } });
  });
});

describe("two people", () => {
  it("ask for the same pieces at once: together never more than there are", async () => {
    const wish = { lotId: group.southLot, toSiteId: group.north, pieces: 5 };
    const answers = await Promise.all([askForTransfer(everywhere(), wish), askForTransfer(taker(), wish)]);
    // Who sees only the north does not see the lot in the south.
    expect(answers[1]).toMatchObject({ ok: false, error: { code: "missing" } });
    const again = await Promise.all([askForTransfer(everywhere(), wish), askForTransfer(everywhere(), wish)]);
    expect([answers[0], ...again].filter(({ ok }) => ok)).toHaveLength(1);
  });
  it("send the same transfer at once: one does, the other is told", async () => {
    const id = await ask();
    await moveTransfer(giver(), step(id, "agree"));
    const both = await Promise.all([
      moveTransfer(giver(), step(id, "send")),
      moveTransfer(giver(), step(id, "send")),
    ]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(both.find(({ ok }) => !ok)).toMatchObject({
      error: { reason: expect.stringContaining("sent now") },
    });
    expect(await south()).toBe(4);
  });
  it("find the lot emptied before it was sent: nothing moves", async () => {
    const id = await ask();
    await moveTransfer(giver(), step(id, "agree"));
    await database().stockLot.update({ where: { id: group.southLot }, data: { quantity: 2 } });
    expect(await moveTransfer(giver(), step(id, "send"))).toMatchObject({ error: { code: "conflict" } });
    expect((await readTransfers(giver(), null))[0]?.state).toBe("agreed");
  });
});

describe("who may", () => {
  it("a reader moves nothing; a stranger's transfer is as one that is not there", async () => {
    const id = await ask();
    expect(await moveTransfer(personWith("viewer", null), step(id, "agree"))).toMatchObject({
      error: { code: "forbidden" },
    });
    const site = { name: "Works WES", country: "DE", timeZone: "Europe/Berlin", currency: "EUR" };
    const west = await database().site.create({ data: { code: "WES", ...site } });
    const stranger = personWith("planner", west.id);
    expect(await moveTransfer(stranger, step(id, "agree"))).toMatchObject({ error: { code: "missing" } });
    expect(await readTransfers(stranger, null)).toEqual([]);
    expect((await readUnderWay(stranger)).size).toBe(0);
  });
});

describe("what would be better off elsewhere", () => {
  const terms = { target: 0.2, least: 0 };
  it("proposes from the full shelf to the empty one, and no more once it was asked for", async () => {
    await database().stockLot.update({ where: { id: group.northLot }, data: { quantity: 0 } });
    const found = await readPoolOfPart(everywhere(), { id: group.partId, asOf, ...terms });
    const [move] = found?.moves ?? [];
    expect(move).toMatchObject({ fromSite: "SUD", toSite: "NOR", mayAsk: true });
    expect(found?.sites.find(({ siteCode }) => siteCode === "NOR")?.before).toBe(1);
    await ask(move?.pieces ?? 0);
    const then = await readPoolOfPart(everywhere(), { id: group.partId, asOf, ...terms });
    expect(then?.moves ?? []).toEqual([]);
    await database().stockLot.update({ where: { id: group.northLot }, data: { quantity: 1 } });
  });
  it("looks only between sites the person may see", async () => {
    const found = await readPoolOfPart(taker(), { id: group.partId, asOf, ...terms });
    expect(found?.sites.map(({ siteCode }) => siteCode)).toEqual(["NOR"]);
    expect(found?.moves).toEqual([]);
    expect(JSON.stringify(found)).not.toMatch(/SUD|R9-S/);
    expect(JSON.stringify(await readPoolBoard(taker(), asOf))).not.toMatch(/SUD|R9-S/);
  });
});
