import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import type { Role } from "@/lib/access/policy";
import { database } from "@/lib/data/client";
import { readLine } from "@/lib/data/line";
import { changeLine } from "@/lib/data/lineChange";
import { readRanking } from "@/lib/data/ranking";
import { changeLineFigures } from "@/lib/schema/lineFigures";
import { type FreshDatabase, freshDatabase } from "../support/database";

const asOf = "2026-11-30";
const day = (text: string) => new Date(`${text}T00:00:00Z`);
let made: FreshDatabase;
let north = "";
let south = "";
let partId = "";

const actorWith = (role: Role, siteId: string | null): Actor => ({
  userId: "person",
  name: "Person",
  email: "person@halvenor.example",
  grants: [{ role, siteId }],
});

async function addSite(code: string, currency: string, perEuro: number): Promise<string> {
  await database().currencyRate.create({ data: { currency, perEuro, validFrom: day("2026-01-01") } });
  const site = await database().site.create({
    data: { code, name: `Works ${code}`, country: "PL", timeZone: "Europe/Warsaw", currency },
  });
  return site.id;
}

async function addLine(siteId: string, code: string, costPerHour: number | null): Promise<string> {
  const line = await database().line.create({
    data: { siteId, code, name: `Line ${code}`, costPerHour, bufferHours: 1, shiftsPerWeek: 15 },
  });
  const controller = await database().controller.create({
    data: { siteId, designation: `${code}-K1`, model: "Slate 5", firmware: 21, memoryPercent: 88 },
  });
  const machine = await database().machine.create({
    data: { lineId: line.id, code: "M1", name: "Former", controllerId: controller.id },
  });
  for (const axis of ["X1", "X2", "X3"]) await addAxis(machine.id, axis);
  return line.id;
}

async function addAxis(machineId: string, code: string): Promise<void> {
  const scaling = { countsPerRev: 10000, motorRevs: 5, loadRevs: 1, unitsPerLoadRev: 20, travelUnit: "mm" };
  const axis = await database().axis.create({ data: { machineId, code, inServiceYear: 2012, ...scaling } });
  const position = await database().position.create({
    data: { machineId, axisId: axis.id, itemClass: "drive", designation: `-U${code}`, partId },
  });
  const unit = await database().unit.create({
    data: { partId, serial: `${machineId}/${code}`, revision: "B1" },
  });
  await database().placement.create({ data: { unitId: unit.id, positionId: position.id } });
}

async function addEvent(siteId: string, lineId: string, given: { reference: string; setAside?: string }) {
  await database().event.create({
    data: {
      ...{ siteId, lineId, partId, itemClass: "drive", kind: "failure", source: "work order" },
      happenedAt: new Date("2025-06-30T22:30:00Z"),
      ...{ downtimeHours: 4, spareAtHand: true, ...given },
    },
  });
}

beforeAll(async () => {
  made = await freshDatabase("ranking");
  await database().user.create({
    data: { id: "person", name: "Person", email: "person@halvenor.example", emailVerified: true },
  });
  const part = await database().part.create({
    data: { maker: "Tarnholt", number: "TM-HR-020", description: "Drive", itemClass: "drive" },
  });
  partId = part.id;
  north = await addSite("NOR", "EUR", 1);
  south = await addSite("SUD", "PLN", 4);
  const first = await addLine(north, "NOR-01", 1000);
  await addLine(north, "NOR-02", null);
  await addLine(south, "SUD-01", 8000);
  await addEvent(north, first, { reference: "W1" });
  await addEvent(north, first, { reference: "W2", setAside: "same stop as W1" });
  for (const [siteId, quantity] of [
    [north, 1],
    [south, 7],
  ] as const)
    await database().stockLot.create({
      data: { siteId, partId, bin: "R1", state: "usable", quantity, lastPoweredOn: day("2026-06-01") },
    });
});

afterAll(() => made.close());

describe("the ranking", () => {
  it("holds every line of the group for somebody who may read everywhere", async () => {
    const ranking = await readRanking(actorWith("viewer", null), asOf);
    expect(ranking.lines.map((line) => [line.code, line.rankByLoss])).toEqual([
      ["NOR-01", 2],
      ["NOR-02", null],
      ["SUD-01", 1],
    ]);
    expect(ranking.groupLines).toBe(3);
  });

  it("holds nothing of another site but the number of lines", async () => {
    const ranking = await readRanking(actorWith("viewer", north), asOf);
    expect(ranking.lines.map((line) => line.code)).toEqual(["NOR-01", "NOR-02"]);
    expect(ranking.lines[0]?.rankByLoss).toBe(2);
    expect(ranking.groupLines).toBe(3);
    expect(JSON.stringify(ranking)).not.toMatch(/SUD/);
  });

  it("is empty for somebody without a site", async () => {
    const ranking = await readRanking({ ...actorWith("viewer", north), grants: [] }, asOf);
    expect(ranking.lines).toEqual([]);
  });

  it("gives a cost in EUR at the budget rate of the site", async () => {
    const ranking = await readRanking(actorWith("viewer", null), asOf);
    expect(ranking.lines.map((line) => line.cost.perHour)).toEqual([1000, null, 2000]);
  });

  it("leaves the store as plain values", async () => {
    const ranking = await readRanking(actorWith("viewer", null), asOf);
    expect(JSON.parse(JSON.stringify(ranking))).toEqual(ranking);
  });
});

describe("the dossier of a line", () => {
  const read = (actor: Actor, code: string) => readLine(actor, { code, asOf });

  it("is not found for a line of another site, just as for one that is not there", async () => {
    const viewer = actorWith("viewer", north);
    expect(await read(viewer, "SUD-01")).toBeNull();
    expect(await read(viewer, "XXX-99")).toBeNull();
    expect(await read(viewer, "NOR-01")).not.toBeNull();
  });

  it("has drivers that add up to the line", async () => {
    const line = await read(actorWith("viewer", north), "NOR-01");
    const sum = line?.drivers.reduce((all, one) => all + (one.baseLoss ?? 0) + (one.shortageLoss ?? 0), 0);
    expect(sum).toBeCloseTo(line?.result.stopLoss?.mean ?? Number.NaN, 6);
  });

  it("shows the stock of other sites as one unnamed sum", async () => {
    const line = await read(actorWith("viewer", north), "NOR-01");
    const pool = line?.drivers[0]?.pool;
    expect([pool?.here.book, pool?.elsewhere.book]).toEqual([1, 7]);
    expect(JSON.stringify(line)).not.toContain(south);
  });

  it("names the unit in its place with its scaling", async () => {
    const line = await read(actorWith("viewer", north), "NOR-01");
    const axis = line?.machines[0]?.axes[0];
    expect(axis?.countsPerUnit).toBe(2500);
    expect(axis?.items[0]).toMatchObject({ part: { number: "TM-HR-020" }, revision: "B1" });
    expect(line?.machines[0]?.controller).toMatchObject({ firmware: 21, memoryPercent: 88, axes: 3 });
  });

  it("tells events in the time of the site, with those that do not count", async () => {
    const line = await read(actorWith("viewer", north), "NOR-01");
    expect(
      line?.events.map(({ day, time, reference, setAside }) => [day, time, reference, setAside]),
    ).toEqual([
      ["2025-07-01", "00:30", "W1", null],
      ["2025-07-01", "00:30", "W2", "same stop as W1"],
    ]);
    expect(line?.drivers[0]?.atSite.failures).toBe(1);
  });

  it("leaves the store as plain values", async () => {
    const line = await read(actorWith("viewer", null), "SUD-01");
    expect(JSON.parse(JSON.stringify(line))).toEqual(line);
  });
});

describe("the figures of a line", () => {
  async function wish(changes: object) {
    const line = await readLine(actorWith("viewer", null), { code: "NOR-01", asOf });
    if (!line) throw new Error("no line");
    return changeLineFigures.parse({
      lineId: line.id,
      seen: line.stored,
      wanted: { ...line.stored, ...changes },
    });
  }

  it("are changed by an engineer of the site, with an audit entry and a new ranking", async () => {
    const engineer = actorWith("engineer", north);
    const before = await readLine(engineer, { code: "NOR-01", asOf });
    const asked = await wish({
      costPerHour: "3000",
      costOwner: "Plant finance",
      costApprovedOn: "2026-11-01",
    });
    expect(await changeLine(engineer, asked)).toEqual({ ok: true, value: null });
    const after = await readLine(engineer, { code: "NOR-01", asOf });
    expect(after?.cost).toMatchObject({ perHour: 3000, owner: "Plant finance", approvedOn: "2026-11-01" });
    expect(after?.result.stopLoss?.mean).toBeCloseTo(3 * (before?.result.stopLoss?.mean ?? 0), 6);
    expect(after?.rankByLoss).toBe(1);
    expect(
      await database().auditEntry.findFirst({ where: { entity: "Line", entityId: asked.lineId } }),
    ).toMatchObject({
      deed: "line:figures",
      userId: "person",
      siteId: north,
      before: asked.seen,
      after: asked.wanted,
    });
    expect(await changeLine(engineer, { ...asked, seen: asked.wanted, wanted: asked.seen })).toMatchObject({
      ok: true,
    });
    expect((await readLine(engineer, { code: "NOR-01", asOf }))?.stored).toEqual(before?.stored);
  });

  it("hold what any stop costs and the steps of long ones, told in EUR at the budget rate", async () => {
    const engineer = actorWith("engineer", south);
    const read = async () => await readLine(engineer, { code: "SUD-01", asOf });
    const line = await read();
    if (!line) throw new Error("no line");
    const steps = [
      { afterHours: 24, cost: 8000 },
      { afterHours: 48.5, cost: 600_000.5 },
    ];
    const wanted = { ...line.stored, costFixed: "1200.5", costSteps: steps, costMethod: "contract" as const };
    const asked = changeLineFigures.parse({ lineId: line.id, seen: line.stored, wanted });
    expect(await changeLine(engineer, asked)).toEqual({ ok: true, value: null });
    const after = await read();
    expect(after?.stored).toEqual(wanted);
    // Four zloty to the euro in these two sites.
    expect(after?.cost).toMatchObject({
      fixed: 300.125,
      steps: [
        { afterHours: 24, cost: 2000 },
        { afterHours: 48.5, cost: 150_000.125 },
      ],
    });
    expect(await database().auditEntry.findFirst({ where: { entityId: line.id } })).toMatchObject({
      before: { costSteps: [] },
      after: { costSteps: steps },
    });
    // Who saw the line without its steps has seen something else than what stands.
    expect(await changeLine(engineer, asked)).toMatchObject({ error: { code: "conflict" } });
    expect(await changeLine(engineer, { ...asked, seen: asked.wanted, wanted: asked.seen })).toMatchObject({
      ok: true,
    });
  });

  it("are refused with the row of the step that is wrong", async () => {
    const steps = (costSteps: object[]) => wish({ costSteps });
    const step = (afterHours: number, cost: number) => ({ afterHours, cost });
    await expect(steps([step(24, 100), step(24, 200)])).rejects.toThrow("Step 2: begins after a longer stop");
    await expect(steps([step(48, 100), step(24, 200)])).rejects.toThrow("Step 2: begins after a longer stop");
    await expect(steps([step(0, 100)])).rejects.toThrow("Step 1: write hours above 0");
    await expect(steps([step(8, 100), step(24, 0)])).rejects.toThrow("Step 2: write an amount above 0");
    await expect(steps([step(8, 100.005)])).rejects.toThrow("Step 1: write an amount above 0");
    await expect(steps(Array.from({ length: 11 }, (_, i) => step(i + 1, 5)))).rejects.toThrow("at most 10");
  });

  it("are not changed by a viewer, nor by an engineer of another site", async () => {
    const asked = await wish({ bufferHours: "2.5" });
    for (const actor of [actorWith("viewer", north), actorWith("engineer", south)])
      expect(await changeLine(actor, asked)).toMatchObject({ ok: false, error: { code: "missing" } });
    expect((await readLine(actorWith("viewer", null), { code: "NOR-01", asOf }))?.stored.bufferHours).toBe(
      "1",
    );
  });

  it("are changed by one of two who saw the same, and the other hears of it", async () => {
    const engineer = actorWith("engineer", north);
    const asked = await Promise.all([wish({ shiftsPerWeek: 18 }), wish({ shiftsPerWeek: 20 })]);
    const answers = await Promise.all(asked.map((one) => changeLine(engineer, one)));
    expect(answers.filter((one) => one.ok)).toHaveLength(1);
    expect(answers.find((one) => !one.ok)).toMatchObject({ error: { code: "conflict" } });
  });

  it("are refused when an approval names nobody, or more shifts than a week has", async () => {
    await expect(wish({ costOwner: null, costApprovedOn: "2026-11-01" })).rejects.toThrow(
      "names who answers",
    );
    await expect(wish({ shiftsPerWeek: 22 })).rejects.toThrow("21 shifts");
    await expect(wish({ costPerHour: "-5" })).rejects.toThrow("amount of 0 or more");
  });
});
