import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { changeThisRepair, receiveFromRepair, sendForRepair, takeRepairBack } from "@/lib/data/repairChange";
import { readRepairs, readSendableLots } from "@/lib/data/repairs";
import type { PoolFigures } from "@/lib/risk/evaluation";
import { receiveUnit, sendUnit } from "@/lib/schema/repair";
import { outOn } from "@/lib/view/repair";
import { makeActor } from "../support/actors";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let planner: Actor;
let partId = "";
let lotId = "";

beforeAll(async () => {
  made = await freshDatabase("repairs");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  planner = await makeActor("planner", world.south);
  partId = (await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } })).id;
  await database().part.update({
    where: { id: partId },
    data: { repairYield: 0.6, repairTurnaroundDays: 45 },
  });
  const lot = { siteId: world.south, partId, bin: "R7", state: "removed_untested" as const, quantity: 2 };
  lotId = (await database().stockLot.create({ data: lot })).id;
});

afterAll(() => made.close());

const sent = (given: object = {}) =>
  sendUnit.parse({
    ...{ lotId, siteId: "", plate: "", serial: "OK1", reference: "", sentOn: "2026-11-01" },
    ...{ repairer: "Bench", fault: "trips", dueOn: "2026-12-10" },
    ...given,
  });

async function send(given: object = {}) {
  const order = await sendForRepair(planner, sent(given));
  if (!order.ok) throw new Error(order.error.reason);
  return order.value;
}

const received = (order: { orderId: string; version: number }, given: object = {}) =>
  receiveUnit.parse({
    ...{ orderId: order.orderId, version: order.version, returnedOn: "2026-11-28", finding: "repaired" },
    ...{ bookAs: "usable", bin: "R8", revision: "", cost: "480,50", costCurrency: "PLN" },
    ...{ warrantyUntilOn: "", note: "" },
    ...given,
  });

async function pool(): Promise<PoolFigures> {
  const { id } = await currentEvaluation(asOf);
  const row = await database().evaluatedPool.findFirstOrThrow({ where: { evaluationId: id, partId } });
  return row.result as unknown as PoolFigures;
}

const piecesIn = async (bin: string) =>
  (await database().stockLot.findMany({ where: { bin, siteId: world.south } })).map(
    ({ state, quantity }) => `${state} ${quantity}`,
  );

describe("a unit that goes out for repair", () => {
  it("leaves its lot, is counted on for its day, and lowers the cover once it is overdue", async () => {
    const before = await pool();
    const order = await send();
    expect(await piecesIn("R7")).toEqual(["removed_untested 1"]);
    const promised = await pool();
    expect(promised.noSpare.mean).toBeLessThan(before.noSpare.mean);
    const late = { orderId: order.orderId, version: order.version, repairer: "Bench", fault: null };
    const overdue = await changeThisRepair(planner, { ...late, dueOn: "2026-11-15" });
    expect(overdue).toEqual({ ok: true, value: { version: 2 } });
    expect((await pool()).noSpare.mean).toBeGreaterThan(promised.noSpare.mean);
    const [out] = outOn(await readRepairs(planner), asOf);
    expect(out).toMatchObject({ daysOut: 29, daysOverdue: 15, serial: "OK1" });

    expect(await takeRepairBack(planner, { orderId: order.orderId, version: 1 })).toMatchObject({
      error: { code: "conflict" },
    });
    expect(await takeRepairBack(planner, { orderId: order.orderId, version: 2 })).toEqual({
      ok: true,
      value: null,
    });
    expect(await piecesIn("R7")).toEqual(["removed_untested 2"]);
    expect(await pool()).toEqual(before);
  });

  it("touches only the figures of its part, and the rows are those of a whole evaluation", async () => {
    await currentEvaluation(asOf);
    const { version } = await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
    const order = await send();
    const narrow = await database().narrowChange.findMany({ where: { version: { gt: version } } });
    expect(narrow.map(({ partIds }) => partIds)).toEqual([[partId]]);
    const { id } = await currentEvaluation(asOf);
    expect((await database().evaluation.findUniqueOrThrow({ where: { id } })).rowsId).not.toBe(id);
    const stepped = await pool();
    await database().evaluation.deleteMany();
    delete (globalThis as { ebblineGroup?: unknown }).ebblineGroup;
    expect(stepped).toEqual(await pool());
    await takeRepairBack(planner, order);
  });

  it("comes back into a bin with what was found, and out again when that is taken back", async () => {
    const order = await send({ dueOn: "" });
    const out = await pool();
    const back = await receiveFromRepair(planner, received(order));
    expect(back).toEqual({ ok: true, value: { version: 2 } });
    expect(await piecesIn("R8")).toEqual(["usable 1"]);
    expect((await pool()).usable - out.usable).toBeCloseTo(0.97, 10);
    const stored = (await readRepairs(planner)).find(({ id }) => id === order.orderId);
    expect(stored).toMatchObject({ finding: "repaired", cost: "480.50", costCurrency: "PLN", mayUndo: true });
    expect(await receiveFromRepair(planner, received({ ...order, version: 2 }))).toMatchObject({
      error: { code: "impossible" },
    });
    const lot = { bin: "R8", siteId: world.south };
    await database().stockLot.updateMany({ where: lot, data: { quantity: 0 } });
    expect(await takeRepairBack(planner, { orderId: order.orderId, version: 2 })).toMatchObject({
      error: { code: "conflict", reason: expect.stringContaining("R8") },
    });
    await database().stockLot.updateMany({ where: lot, data: { quantity: 1 } });
    expect(await takeRepairBack(planner, { orderId: order.orderId, version: 2 })).toMatchObject({ ok: true });
    expect(await piecesIn("R8")).toEqual([]);
    const again = (await readRepairs(planner)).find(({ id }) => id === order.orderId);
    expect(again).toMatchObject({ returnedOn: null, finding: null, cost: null, version: 3, mayUndo: false });
    expect(await pool()).toEqual(out);
    const scrapped = received(
      { ...order, version: 3 },
      { finding: "beyond repair", bookAs: "none", bin: "" },
    );
    expect(await receiveFromRepair(planner, scrapped)).toMatchObject({ ok: true });
  });

  it("is refused with what to do", async () => {
    expect(await sendForRepair(planner, sent({ sentOn: "2026-12-01", dueOn: "" }))).toMatchObject({
      error: { fields: { sentOn: expect.any(String) } },
    });
    const nowhere = { lotId: "", siteId: world.south, plate: "??" };
    expect(await sendForRepair(planner, sent(nowhere))).toMatchObject({
      error: { fields: { plate: expect.any(String) } },
    });
    const direct = await send({ ...nowhere, plate: "bw-ok 020", reference: "RO-9" });
    expect(
      await sendForRepair(planner, sent({ ...nowhere, plate: "BWOK020", reference: "RO-9" })),
    ).toMatchObject({ error: { fields: { reference: expect.any(String) } } });
    expect(await receiveFromRepair(planner, received(direct, { returnedOn: "2026-10-31" }))).toMatchObject({
      error: { fields: { returnedOn: expect.any(String) } },
    });
    await takeRepairBack(planner, direct);
    const bad = (given: object) => receiveUnit.safeParse({ ...received(direct), cost: "", ...given }).success;
    expect(bad({ warrantyUntilOn: "", note: "" })).toBe(true);
    expect(bad({ warrantyUntilOn: "", note: "", finding: "beyond repair" })).toBe(false);
    expect(bad({ warrantyUntilOn: "", note: "", bin: "" })).toBe(false);
  });

  it("is another site's business only", async () => {
    const order = await send();
    for (const actor of [personWith("planner", world.north), personWith("technician", world.south)]) {
      expect(await sendForRepair(actor, sent())).toMatchObject({ error: { code: "missing" } });
      expect(await receiveFromRepair(actor, received(order))).toMatchObject({ error: { code: "missing" } });
      expect(await takeRepairBack(actor, order)).toMatchObject({ error: { code: "missing" } });
      expect(await readSendableLots(actor)).toEqual([]);
    }
    expect(await readRepairs(personWith("planner", world.north))).toEqual([]);
    await takeRepairBack(planner, order);
    expect((await readSendableLots(planner)).map(({ bin }) => bin)).toEqual(["R7"]);
  });
});
