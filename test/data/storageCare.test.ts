import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { putOnHold, releaseHold } from "@/lib/data/holdChange";
import { readPart } from "@/lib/data/part";
import { readCareLots, readClassCare, readGivenCare, readHeldPieces } from "@/lib/data/storageCare";
import { recordStorageCare, setClassCare, takeCareBack } from "@/lib/data/storageCareChange";
import { holdPieces, recordCare, releasePieces, setCareInterval } from "@/lib/schema/storageCare";
import { deductionsOf } from "@/lib/view/reconcile";
import type { StockLot } from "@/prisma/generated/client";
import { makeActor } from "../support/actors";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let planner: Actor;
let partId = "";

beforeAll(async () => {
  made = await freshDatabase("storage_care");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  planner = await makeActor("planner", world.south);
  partId = (await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } })).id;
});

afterAll(() => made.close());

let bins = 0;
function lotWith(given: object): Promise<StockLot> {
  bins += 1;
  const at = { siteId: world.south, partId, bin: `C${bins}`, state: "usable" as const, quantity: 3 };
  return database().stockLot.create({ data: { ...at, ...given } });
}

const seenOf = ({ state, quantity, lastPoweredOn }: StockLot) => ({
  ...{ state, quantity, lastPoweredOn: lastPoweredOn?.toISOString().slice(0, 10) ?? null },
});

const care = (lot: StockLot, given: object = {}) =>
  recordCare.parse({
    ...{ lotId: lot.id, seen: seenOf(lot), doneOn: "2026-11-29", doneBy: "Electrician A" },
    ...{ failed: "0", tested: false, note: "" },
    ...given,
  });

const shelf = async (bin: string) =>
  (await database().stockLot.findMany({ where: { bin }, orderBy: { state: "asc" } })).map(
    (lot) => `${lot.state} ${lot.quantity} ${seenOf(lot).lastPoweredOn}`,
  );

describe("storage care", () => {
  it("is due a year after the last power-up, what nobody knows stands apart, and the most urgent is first", async () => {
    const late = await lotWith({ lastPoweredOn: new Date("2023-01-10") });
    const soon = await lotWith({ lastPoweredOn: new Date("2026-01-10") });
    await lotWith({ quantity: 0, lastPoweredOn: new Date("2020-01-10") });
    const lots = await readCareLots(planner, asOf);
    const of = (id: string) => lots.find(({ lotId }) => lotId === id);
    expect(of(late.id)).toMatchObject({ care: "overdue", dueOn: "2024-01-10", kind: "power_up" });
    expect(of(soon.id)).toMatchObject({ care: "soon", dueOn: "2027-01-10" });
    expect(lots[0]?.lotId).toBe(late.id);
    expect(lots.some(({ quantity }) => quantity === 0)).toBe(false);
    expect(
      (await readCareLots(personWith("viewer", world.north), asOf)).map(({ siteCode }) => siteCode),
    ).toEqual(["NOR"]);
  });

  it("makes pieces count as powered, puts those that failed on hold, and is taken back whole", async () => {
    const lot = await lotWith({ lastPoweredOn: new Date("2019-01-10") });
    const usableHere = async () => {
      const part = await readPart(planner, { id: partId, asOf });
      return part?.lots.filter(({ bin }) => bin === lot.bin).map(({ usable }) => usable) ?? [];
    };
    expect(await usableHere()).toEqual([expect.closeTo(3 * 0.7, 10)]);
    const given = await recordStorageCare(planner, care(lot, { failed: "1", note: "smoke" }));
    if (!given.ok) throw new Error(given.error.reason);
    expect(await shelf(lot.bin)).toEqual(["usable 2 2026-11-29", "on_hold 1 2026-11-29"]);
    expect((await usableHere()).sort()).toEqual([0, expect.closeTo(2 * 0.97, 10)]);
    expect(await readHeldPieces(planner)).toMatchObject([
      { bin: lot.bin, pieces: 1, heldBy: "Electrician A", reason: "Failed at storage care: smoke" },
    ]);
    expect(await readGivenCare(planner)).toMatchObject([{ pieces: 3, failed: 1, doneBy: "Electrician A" }]);
    expect(await recordStorageCare(planner, care(lot))).toMatchObject({ error: { code: "conflict" } });
    expect(await takeCareBack(planner, given.value)).toEqual({ ok: true, value: null });
    expect(await shelf(lot.bin)).toEqual(["usable 3 2019-01-10"]);
    expect(await readHeldPieces(planner)).toEqual([]);
  });

  it("proves unproven pieces only when they ran under load, those of unknown origin too", async () => {
    const lot = await lotWith({ state: "unproven", originUnknown: true });
    const powered = await recordStorageCare(planner, care(lot));
    expect(powered).toMatchObject({ ok: true });
    expect(await shelf(lot.bin)).toEqual(["unproven 3 2026-11-29"]);
    const now = await database().stockLot.findUniqueOrThrow({ where: { id: lot.id } });
    expect(await recordStorageCare(planner, care(now, { tested: true }))).toMatchObject({ ok: true });
    expect(await shelf(lot.bin)).toEqual(["usable 3 2026-11-29", "unproven 0 2026-11-29"]);
    const tested = await database().stockLot.findFirstOrThrow({ where: { bin: lot.bin, state: "usable" } });
    expect(tested).toMatchObject({ originUnknown: true });
    expect(tested.testedOn?.toISOString().slice(0, 10)).toBe("2026-11-29");
  });

  it("is refused ahead of time, for more than lie there, for other sites and for who may not", async () => {
    const lot = await lotWith({});
    expect(await recordStorageCare(planner, care(lot, { doneOn: "2026-12-24" }))).toMatchObject({
      error: { fields: { doneOn: expect.any(String) } },
    });
    expect(await recordStorageCare(planner, care(lot, { failed: "4" }))).toMatchObject({
      error: { fields: { failed: "The lot holds 3." } },
    });
    for (const actor of [personWith("planner", world.north), personWith("technician", world.south)])
      expect(await recordStorageCare(actor, care(lot))).toMatchObject({ error: { code: "missing" } });
  });

  it("has an interval for each class, which only who sees all sites sets, one after the other", async () => {
    const asked = setCareInterval.parse({
      ...{ itemClass: "drive", kind: "power_up", everyMonths: "6" },
      seen: { kind: "power_up", everyMonths: 12 },
    });
    expect(await setClassCare(planner, asked)).toMatchObject({ error: { code: "forbidden" } });
    const group = await makeActor("planner");
    const both = await Promise.all([setClassCare(group, asked), setClassCare(group, asked)]);
    expect(both.map(({ ok }) => ok).sort()).toEqual([false, true]);
    const { classes } = await readClassCare(planner);
    expect(classes.find(({ itemClass }) => itemClass === "drive")).toMatchObject({
      ...{ everyMonths: 6, changedBy: group.name, changedOn: asOf },
    });
    expect(classes.find(({ itemClass }) => itemClass === "motor")).toMatchObject({
      ...{ everyMonths: null, changedBy: null },
    });
  });
});

describe("a hold", () => {
  const hold = (lot: StockLot, pieces: string) =>
    holdPieces.parse({ lotId: lot.id, seen: seenOf(lot), pieces, reason: "wet box" });

  it("moves pieces with reason and name, and they are let go in parts", async () => {
    const lot = await lotWith({ lastPoweredOn: new Date("2026-05-01") });
    expect(await putOnHold(planner, hold(lot, "4"))).toMatchObject({
      error: { fields: { pieces: "The lot holds 3." } },
    });
    const put = await putOnHold(planner, hold(lot, "2"));
    if (!put.ok) throw new Error(put.error.reason);
    expect(await shelf(lot.bin)).toEqual(["usable 1 2026-05-01", "on_hold 2 2026-05-01"]);
    expect(await putOnHold(planner, hold(lot, "1"))).toMatchObject({ error: { code: "conflict" } });
    const held = await database().stockLot.findUniqueOrThrow({ where: { id: put.value.lotId } });
    const letGo = releasePieces.parse({
      ...{ lotId: held.id, seen: seenOf(held), pieces: "1", reason: "dried and tested", releaseAs: "usable" },
    });
    expect(await releaseHold(planner, letGo)).toMatchObject({ ok: true });
    expect(await shelf(lot.bin)).toEqual(["usable 2 2026-05-01", "on_hold 1 2026-05-01"]);
    const holds = await database().stockHold.findMany({
      where: { lotId: held.id },
      orderBy: { releasedOn: "asc" },
    });
    expect(holds).toMatchObject([
      { pieces: 1, releasedBy: planner.name, releasedAs: "usable", releaseNote: "dried and tested" },
      { pieces: 1, releasedBy: null, heldBy: planner.name, reason: "wet box" },
    ]);
  });

  it("of pieces of unknown origin ends as unproven until they are tested", async () => {
    const lot = await lotWith({ state: "on_hold", originUnknown: true });
    const letGo = (releaseAs: string) =>
      releaseHold(
        planner,
        releasePieces.parse({ lotId: lot.id, seen: seenOf(lot), pieces: "1", reason: "as is", releaseAs }),
      );
    expect(await letGo("usable")).toMatchObject({ error: { fields: { releaseAs: expect.any(String) } } });
    expect(await letGo("unproven")).toMatchObject({ ok: true });
  });

  it("is a deduction of its site that opens to its lots, and with the others adds up to the book", async () => {
    const part = await readPart(planner, { id: partId, asOf });
    if (!part) throw new Error("no part");
    const deductions = deductionsOf(part.lots);
    const off = deductions.reduce((sum, { pieces }) => sum + pieces, 0);
    const [site] = part.stock;
    expect(off).toBeCloseTo((site?.book ?? 0) - (site?.usable ?? 0), 10);
    const held = deductions.find(({ reason }) => reason === "on_hold");
    expect(held?.pieces).toBe(held?.lots.reduce((sum, { quantity }) => sum + (quantity ?? 0), 0));
    expect(held?.lots.length).toBeGreaterThan(1);
    expect(site?.deductions.map(({ reason }) => reason).sort()).toEqual(
      deductions.map(({ reason }) => reason).sort(),
    );
  });
});
