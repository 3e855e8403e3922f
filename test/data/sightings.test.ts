import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { commitImport, stageImport, undoImport } from "@/lib/data/import";
import { readInstalled } from "@/lib/data/installed";
import { readLine } from "@/lib/data/line";
import { restoreMachine, retireMachine } from "@/lib/data/retireChange";
import { readSeenLast } from "@/lib/data/seenLast";
import { settleFinding, takeFindingBack } from "@/lib/data/sightingChange";
import { readSightings } from "@/lib/data/sightings";
import { settleSighting } from "@/lib/schema/sighting";
import { lastSign } from "@/lib/view/seenLast";
import { makeActor } from "../support/actors";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let engineer: Actor;
let machineId = "";

beforeAll(async () => {
  made = await freshDatabase("sightings");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  engineer = await makeActor("engineer", world.south);
  await makeRing();
});

afterAll(() => made.close());

/** The axes of SUD-01 in a ring, nodes 1 to 3, each drive a unit with serial S-1 to S-3. */
async function makeRing(): Promise<void> {
  const machine = await database().machine.findFirstOrThrow({
    where: { line: { code: "SUD-01" } },
    include: { axes: { orderBy: { code: "asc" }, include: { positions: true } } },
  });
  machineId = machine.id;
  const ring = await database().network.create({
    data: { siteId: world.south, name: "SUD-01-R1", kind: "fibre_ring" },
  });
  for (const [i, axis] of machine.axes.entries()) {
    await database().axis.update({
      where: { id: axis.id },
      data: { networkId: ring.id, nodeAddress: i + 1 },
    });
    const [place] = axis.positions;
    const unit = await database().unit.create({
      data: { partId: place?.partId ?? "", serial: `S-${i + 1}`, revision: "B1" },
    });
    await database().placement.create({
      data: { unitId: unit.id, positionId: place?.id ?? "", fromOn: new Date("2020-01-01") },
    });
  }
}

const HEAD = "Site;Network;Controller;Node;Vendor;Catalogue no.;Firmware;Serial no.;Scan time;Source";
const node = (at: number, serial: string, { number = "BW-OK-020-B1", day = "2026-11-12" } = {}) =>
  `SUD;SUD-01-R1;SUD-01-K1;${at};Brindlewick;${number};;${serial};${day} 14:20;panel list`;

async function load(rows: readonly string[], actor = engineer) {
  const bytes = new TextEncoder().encode([HEAD, ...rows].join("\n"));
  const staged = await stageImport(actor, { register: "scans", fileName: "list.csv", bytes });
  if (!staged.ok) throw new Error(staged.error.reason);
  const done = await commitImport(actor, { batchId: staged.value.batchId, leftOut: [] });
  if (!done.ok) throw new Error(done.error.reason);
  return { batchId: staged.value.batchId, ...done.value };
}

async function compared(actor = engineer) {
  const found = await readSightings(actor, { siteCode: "SUD", asOf });
  if (found === null) throw new Error("no site");
  return found;
}

const findings = async () =>
  (await compared()).rows.map(({ kind, place, device }) => `${kind} ${place || device}`);

async function settle(kind: string, answer: "taken" | "kept" | "retired", reason = "seen myself") {
  const row = (await compared()).rows.find((one) => one.kind === kind && one.verdict === null);
  const asked = settleSighting.parse({ siteId: world.south, mark: row?.mark, answer, reason });
  const made = await settleFinding(engineer, asked);
  if (!made.ok) throw new Error(made.error.reason);
  return made.value.verdictId;
}

const placeOf = (designation: string) =>
  database().position.findFirstOrThrow({
    where: { machineId, designation },
    include: { placements: { orderBy: { fromOn: "asc" }, include: { unit: true } } },
  });

beforeEach(async () => {
  await database().sighting.deleteMany();
});

describe("a network list", () => {
  it("is loaded as what was seen, changes no record and no figure, once however often it is loaded, and is taken back", async () => {
    const before = await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
    const first = await load([node(1, "S-1"), node(2, "S-2")]);
    expect(first).toMatchObject({ added: 2, refused: 0 });
    expect(await load([node(1, "S-1"), node(2, "S-2")])).toMatchObject({
      added: 0,
      changed: 0,
      unchanged: 2,
    });
    expect(await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } })).toEqual(before);
    expect(await undoImport(engineer, { batchId: first.batchId })).toMatchObject({ ok: true });
    expect(await database().sighting.count()).toBe(0);
  });

  it("says what agrees, differs, is missing and is on no record, at its own site only", async () => {
    await load([node(1, "S-1"), node(2, "S-22"), node(9, "Q-1")]);
    expect(await findings()).toEqual([
      "differs SUD-01 / M1 / -UX2",
      "unregistered SUD-01-R1, address 9",
      "unseen SUD-01 / M1 / -UX3",
      "agrees SUD-01 / M1 / -UX1",
    ]);
    expect(await readSightings(personWith("viewer", world.north), { siteCode: "SUD", asOf })).toBeNull();
    expect(await compared(personWith("viewer", null))).toMatchObject({
      apart: 3,
      compared: 4,
      maySettle: false,
    });
  });

  it("makes another unit stand in a place from the day it was seen, when taken over, and gives the first one back", async () => {
    await load([node(1, "S-1"), node(2, "S-22", { number: "BW-OK-020-C2" }), node(3, "S-3")]);
    const verdictId = await settle("differs", "taken");
    const stays = async () =>
      (await placeOf("-UX2")).placements.map(
        ({ unit, untilOn }) => `${unit.serial} ${unit.revision} ${untilOn?.toISOString().slice(0, 10) ?? ""}`,
      );
    expect(await stays()).toEqual(["S-2 B1 2026-11-12", "S-22 C2 "]);
    expect(await findings()).toEqual(Array.from({ length: 3 }, (_, i) => `agrees SUD-01 / M1 / -UX${i + 1}`));
    expect((await compared()).settled).toHaveLength(1);
    expect(await takeFindingBack(personWith("engineer", world.north), { verdictId })).toMatchObject({
      ...{ ok: false, error: { code: "missing" } },
    });
    expect(await takeFindingBack(engineer, { verdictId })).toEqual({ ok: true, value: null });
    expect(await stays()).toEqual(["S-2 B1 "]);
    expect(await database().unit.count({ where: { serial: "S-22" } })).toBe(0);
  });

  it("keeps what somebody wrote after it was taken over, and takes nothing back then", async () => {
    await load([node(1, "S-1"), node(2, "S-33"), node(3, "S-3")]);
    const verdictId = await settle("differs", "taken");
    const [, stay] = (await placeOf("-UX2")).placements;
    await database().placement.update({
      where: { id: stay?.id ?? "" },
      data: { untilOn: new Date("2026-11-20") },
    });
    expect(await takeFindingBack(engineer, { verdictId })).toMatchObject({ error: { code: "conflict" } });
    expect(await database().sightVerdict.count({ where: { id: verdictId } })).toBe(1);
    await database().placement.update({ where: { id: stay?.id ?? "" }, data: { untilOn: null } });
    expect(await takeFindingBack(engineer, { verdictId })).toMatchObject({ ok: true });
  });

  it("moves a unit on record at another place, however its number is spelt there", async () => {
    await load([node(1, "S-1"), node(2, "s 3"), node(3, "")]);
    expect((await findings())[0]).toBe("elsewhere SUD-01 / M1 / -UX2");
    const verdictId = await settle("elsewhere", "taken");
    const here = async (designation: string) =>
      (await placeOf(designation)).placements
        .filter(({ untilOn }) => untilOn === null)
        .map(({ unit }) => unit.serial);
    expect([await here("-UX2"), await here("-UX3")]).toEqual([["S-3"], []]);
    await takeFindingBack(engineer, { verdictId });
    expect([await here("-UX2"), await here("-UX3")]).toEqual([["S-2"], ["S-3"]]);
  });

  it("asks once about one disagreement, and again when another unit is seen", async () => {
    await load([node(1, "S-1"), node(2, "S-44"), node(3, "S-3")]);
    await settle("differs", "kept", "read it off the plate");
    await load([
      node(1, "S-1", { day: "2026-11-19" }),
      node(2, "S-44", { day: "2026-11-19" }),
      node(3, "S-3", { day: "2026-11-19" }),
    ]);
    const verdictOf = async () =>
      (await compared()).rows.find(({ kind }) => kind === "differs")?.verdict?.answer;
    expect(await verdictOf()).toBe("kept");
    await load([1, 2, 3].map((at) => node(at, at === 2 ? "S-55" : `S-${at}`, { day: "2026-11-26" })));
    expect(await verdictOf()).toBeUndefined();
    await database().sightVerdict.deleteMany();
  });

  it("fills the level of a controller with its day, and the verdict is refused when that no longer stands", async () => {
    const row = `SUD;;SUD-01-K1;10.0.0.2;;;20.011;;2026-11-12 14:20;panel list`;
    await load([row.replace(";SUD-01-K1;", ";;").replace("10.0.0.2", "SUD-01-K1")]);
    const [finding] = (await compared()).rows;
    expect(finding).toMatchObject({ kind: "adds", said: ["firmware: register not known, seen 20.011"] });
    const verdictId = await settle("adds", "taken");
    const stored = () =>
      database().controller.findFirstOrThrow({ where: { designation: "SUD-01-K1" }, omit: { id: true } });
    expect(await stored()).toMatchObject({ firmware: 20, firmwareRaw: "20.011", evidence: "measured" });
    const again = { siteId: world.south, mark: finding?.mark ?? "", answer: "taken" as const, reason: "" };
    expect(await settleFinding(engineer, again)).toMatchObject({ error: { code: "conflict" } });
    await takeFindingBack(engineer, { verdictId });
    expect(await stored()).toMatchObject({ firmware: null, firmwareRaw: null, evidence: "assumed" });
  });

  it("takes a place nobody sees out of every figure when it is retired, and back in when that is taken back", async () => {
    await load([node(1, "S-1"), node(2, "S-2")]);
    const lossOf = async () =>
      (await readLine(engineer, { code: "SUD-01", asOf }))?.result.stopLoss?.mean ?? 0;
    const whole = await lossOf();
    const verdictId = await settle("unseen", "retired", "scrapped in June");
    expect(await lossOf()).toBeLessThan(whole);
    expect(
      (await readInstalled(engineer, { asOf, level: { of: "line", code: "SUD-01" } }))?.rows[0],
    ).toMatchObject({
      places: 2,
    });
    await takeFindingBack(engineer, { verdictId });
    expect(await lossOf()).toBe(whole);
  });
});

describe("a machine no list sees", () => {
  it("is proposed and not retired by itself; retiring and restoring tell what stood on the page", async () => {
    const other = await database().axis.findMany({ where: { machine: { line: { code: "SUD-02" } } } });
    const ring = await database().network.findFirstOrThrow({ where: { name: "SUD-01-R1" } });
    for (const [i, { id }] of other.entries())
      await database().axis.update({ where: { id }, data: { networkId: ring.id, nodeAddress: 10 + i } });
    await load([node(1, "S-1")]);
    const { ghosts } = await compared();
    expect(ghosts).toMatchObject([{ label: "SUD-02 / M1", places: 3, lastSeenOn: null }]);
    const id = ghosts[0]?.machineId ?? "";
    const asked = { machineId: id, reason: "sold", seen: null };
    expect(await retireMachine(personWith("engineer", world.north), asked)).toMatchObject({
      error: { code: "missing" },
    });
    expect(await retireMachine(engineer, asked)).toEqual({ ok: true, value: { retiredOn: asOf } });
    expect(await retireMachine(engineer, asked)).toMatchObject({ error: { code: "conflict" } });
    expect((await readLine(engineer, { code: "SUD-02", asOf }))?.result.pools).toEqual([]);
    expect((await compared()).ghosts).toEqual([]);
    expect(await readSeenLast(engineer, { machineId: id, asOf })).toMatchObject({
      retiredOn: asOf,
      retiredReason: "sold",
    });
    expect(await restoreMachine(engineer, { machineId: id, seen: asOf })).toMatchObject({ ok: true });
    expect((await readLine(engineer, { code: "SUD-02", asOf }))?.result.pools).toHaveLength(1);
  });

  it("says when each source last spoke of a machine, and nothing to who may not read its site", async () => {
    await load([node(1, "S-1"), node(2, "S-2", { day: "2026-11-19" })]);
    const seen = await readSeenLast(engineer, { machineId, asOf });
    expect(seen?.sources.find(({ source }) => source === "Network lists")?.lastOn).toBe("2026-11-19");
    expect(seen?.sources.find(({ source }) => source === "Units exchanged")?.lastOn).toBe("2020-01-01");
    expect(seen && lastSign(seen)).toBe("2026-11-19");
    expect(seen?.places.map(({ place, lastOn }) => `${place} ${lastOn}`)).toEqual([
      "-UX1 2026-11-12",
      "-UX2 2026-11-19",
    ]);
    expect(await readSeenLast(personWith("viewer", world.north), { machineId, asOf })).toBeNull();
  });
});

describe("the asset register", () => {
  it("retires a machine from the day it gives", async () => {
    const rows = "Site;Line;Machine;Machine retired on\nSUD;SUD-02;M1;2026-10-31";
    const bytes = new TextEncoder().encode(rows);
    const staged = await stageImport(engineer, { register: "assets", fileName: "assets.csv", bytes });
    if (!staged.ok) throw new Error(staged.error.reason);
    const done = await commitImport(engineer, { batchId: staged.value.batchId, leftOut: [] });
    expect(done).toMatchObject({ ok: true, value: { changed: 1, refused: 0 } });
    expect((await readLine(engineer, { code: "SUD-02", asOf }))?.result.pools).toEqual([]);
    expect((await readLine(engineer, { code: "SUD-02", asOf: "2026-10-30" }))?.result.pools).toHaveLength(1);
  });
});
