import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { keepEvent, takeEventBack } from "@/lib/data/eventCapture";
import { readEventPlaces } from "@/lib/data/eventPlaces";
import { type CaptureEvent, captureEvent } from "@/lib/schema/event";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let positionId = "";
let partId = "";
let lotId = "";

beforeAll(async () => {
  made = await freshDatabase("event_capture");
  world = await makeTwoSites();
  const lineId = world.lines["SUD-01"] ?? "";
  const part = await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } });
  partId = part.id;
  const machine = await database().machine.create({ data: { lineId, code: "M9", name: "Wrapper" } });
  const place = { machineId: machine.id, itemClass: "drive" as const, designation: "-T1", partId };
  positionId = (await database().position.create({ data: place })).id;
  const unit = await database().unit.create({ data: { partId, serial: "OLD-1" } });
  await database().placement.create({ data: { unitId: unit.id, positionId } });
  const lot = await database().stockLot.findFirstOrThrow({ where: { siteId: world.south, partId } });
  lotId = lot.id;
});

afterAll(() => made.close());

const technician = () => personWith("technician", world.south);

const told = (given: object = {}): CaptureEvent =>
  captureEvent.parse({
    ...{ positionId, kind: "failure", happenedAt: "2026-07-01T14:30", downtimeHours: "4,5" },
    ...{ logisticHours: "1", spareAtHand: "yes", unitOut: "shelf", binOut: "Returns", serialIn: "NEW-1" },
    ...{ revisionIn: "B2", lotId, text: "Tripped", sure: false },
    ...given,
  });

async function state() {
  const lots = await database().stockLot.findMany({
    where: { siteId: world.south, partId },
    orderBy: { bin: "asc" },
    select: { bin: true, quantity: true, state: true },
  });
  const standing = await database().placement.findMany({
    where: { positionId, untilOn: null },
    select: { unit: { select: { serial: true } } },
  });
  return { lots, standing: standing.map(({ unit }) => unit.serial), events: await database().event.count() };
}

describe("an event told at the machine", () => {
  it("knows the lines of the person's site, the unit in each place and the spares for it", async () => {
    const asked = { line: "SUD-01", machine: "M9", position: positionId };
    const places = await readEventPlaces(technician(), asked);
    expect(places.lines.map(({ code }) => code)).toEqual(["SUD-01", "SUD-02"]);
    const found = places.places.find(({ id }) => id === positionId);
    expect(found).toMatchObject({ label: "-T1", part: "BW-OK-020", serial: "OLD-1" });
    expect(places.spares).toMatchObject([{ id: lotId, bin: "R1", quantity: 1 }]);
    expect((await readEventPlaces(technician(), { ...asked, line: "NOR-01" })).machines).toEqual([]);
    expect((await readEventPlaces(personWith("viewer", null), asked)).lines).toEqual([]);
  });

  it("moves the units and the spare, keeps the time of the site's clock, and is taken back whole", async () => {
    const before = await state();
    const version = await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
    const kept = await keepEvent(technician(), told());
    if (!kept.ok) throw new Error(kept.error.reason);
    const event = await database().event.findUniqueOrThrow({ where: { id: kept.value.eventId } });
    expect(event).toMatchObject({ kind: "failure", source: "by hand", partId, spareAtHand: true });
    const { timeZone } = await database().site.findUniqueOrThrow({ where: { id: world.south } });
    const local = event.happenedAt.toLocaleString("sv-SE", { timeZone });
    expect(local.slice(0, 16)).toBe("2026-07-01 14:30");
    expect([Number(event.downtimeHours), Number(event.logisticHours)]).toEqual([4.5, 1]);
    expect(await state()).toMatchObject({
      standing: ["NEW-1"],
      lots: [
        { bin: "R1", quantity: 0 },
        { bin: "Returns", quantity: 1, state: "removed_untested" },
      ],
    });
    const after = await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
    expect(after.version).toBeGreaterThan(version.version);
    expect(await takeEventBack(technician(), { eventId: kept.value.eventId })).toEqual({
      ok: true,
      value: null,
    });
    const back = await state();
    expect(back).toMatchObject({ standing: before.standing, events: before.events });
    expect(back.lots[0]).toEqual(before.lots[0]);
    expect(back.lots[1]).toMatchObject({ bin: "Returns", quantity: 0 });
    expect(await database().unit.count({ where: { serial: "NEW-1" } })).toBe(0);
  });

  it("close to another at the same place asks first, and is kept when the person is sure", async () => {
    const first = await keepEvent(technician(), told({ serialIn: "", lotId: "", unitOut: "repair" }));
    expect(first).toMatchObject({ ok: true });
    expect(await database().repairOrder.count({ where: { siteId: world.south, serial: "OLD-1" } })).toBe(1);
    const again = { happenedAt: "2026-07-03T08:00", serialIn: "", lotId: "" };
    const asked = await keepEvent(technician(), told(again));
    expect(asked).toMatchObject({
      ok: false,
      error: { code: "conflict", fields: { sure: expect.any(String) } },
    });
    if (!asked.ok && first.ok) expect(asked.error.reason).toContain(first.value.reference);
    expect(await keepEvent(technician(), told({ ...again, sure: true }))).toMatchObject({ ok: true });
    expect(await keepEvent(technician(), told({ ...again, happenedAt: "2026-07-20T08:00" }))).toMatchObject({
      ok: true,
    });
  });

  it("is refused whole when a step cannot be done", async () => {
    await database().stockLot.update({ where: { id: lotId }, data: { quantity: 0 } });
    const before = await state();
    const empty = await keepEvent(technician(), told({ happenedAt: "2026-08-20T08:00", serialIn: "NEW-2" }));
    expect(empty).toMatchObject({ ok: false, error: { fields: { lotId: expect.any(String) } } });
    expect(await state()).toEqual(before);
    const machine = await database().machine.findFirstOrThrow({ where: { code: "M9" } });
    const other = await database().position.create({
      data: { machineId: machine.id, itemClass: "drive", designation: "-T2", partId },
    });
    const unit = await database().unit.create({ data: { partId, serial: "BUSY" } });
    await database().placement.create({ data: { unitId: unit.id, positionId: other.id } });
    const busy = await keepEvent(
      technician(),
      told({ happenedAt: "2026-08-21T08:00", serialIn: "BUSY", lotId: "" }),
    );
    expect(busy).toMatchObject({ ok: false, error: { fields: { serialIn: expect.any(String) } } });
    expect(await state()).toEqual(before);
  });

  it("is closed to another site's people and to viewers, and nobody takes back what is not theirs", async () => {
    for (const actor of [personWith("technician", world.north), personWith("viewer", world.south)])
      expect(await keepEvent(actor, told({ lotId: "" }))).toMatchObject({
        ok: false,
        error: { code: "missing" },
      });
    const event = await database().event.findFirstOrThrow({ where: { source: "by hand" } });
    const stranger = personWith("technician", world.north);
    expect(await takeEventBack(stranger, { eventId: event.id })).toMatchObject({ ok: false });
  });

  it("cannot lie ahead, wait longer than it stood, or be put in no bin", async () => {
    const ahead = await keepEvent(technician(), told({ happenedAt: "2999-01-01T08:00", lotId: "" }));
    expect(ahead).toMatchObject({ ok: false, error: { code: "invalid" } });
    const parse = (given: object) =>
      captureEvent.safeParse({ ...told(), downtimeHours: "2", spareAtHand: "", ...given });
    expect(parse({ logisticHours: "3", lotId: "" }).success).toBe(false);
    expect(parse({ logisticHours: "1", lotId: "", binOut: "" }).success).toBe(false);
    expect(parse({ logisticHours: "1", lotId: "" }).success).toBe(true);
  });
});
