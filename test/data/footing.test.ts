import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { setEffort } from "@/lib/data/effortNormChange";
import { readFooting } from "@/lib/data/footing";
import { readGapRows } from "@/lib/data/gapRows";
import { takeSnapshot } from "@/lib/data/group/takeSnapshot";
import { readNextFixes } from "@/lib/data/nextFixes";
import { countGaps } from "@/lib/data/quality/countGaps";
import { setEffortNorm } from "@/lib/schema/effortNorm";
import { GAPS, type GapKey } from "@/lib/view/gap";
import { makeActor } from "../support/actors";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let engineer: Actor;
let machine = { id: "", lineId: "", controllerId: "" };
let partId = "";

beforeAll(async () => {
  made = await freshDatabase("footing");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  engineer = await makeActor("engineer");
  const line = { code: "SUD-01" };
  const found = await database().machine.findFirstOrThrow({ where: { line } });
  machine = { ...found, controllerId: found.controllerId ?? "" };
  partId = (await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } })).id;
});

afterAll(() => made.close());

/** These tests write past the product, which raises the version with every change of a record. */
const raise = () => database().dataVersion.update({ where: { id: 1 }, data: { version: { increment: 1 } } });

async function rowOf(key: GapKey, actor = engineer, siteCode: string | null = null) {
  await raise();
  const row = (await readFooting(actor, { asOf, siteCode }))?.rows.find((one) => one.key === key);
  if (row === undefined) throw new Error(key);
  return row;
}

async function totalOf(key: GapKey, actor = engineer): Promise<number> {
  const gap = GAPS.find((one) => one.key === key);
  if (gap === undefined) throw new Error(key);
  return (await readGapRows(actor, { gap, siteCode: null, asOf })).total;
}

/** How many records have a gap at all sites, without working out what it bears on. */
async function missingOf(key: GapKey): Promise<number> {
  const subjects = GAPS.filter((gap) => gap.key === key).map(({ subject }) => subject);
  const found = await database().$transaction((tx) => countGaps(tx, { asOf, ids: null, subjects }));
  return found.filter((one) => one.key === key).reduce((sum, { missing }) => sum + missing, 0);
}

const day = (text: string) => new Date(`${text}T00:00:00Z`);
const lineWith = (given: object) =>
  database().line.create({
    data: {
      siteId: world.south,
      code: `SUD-${Math.random()}`,
      name: "Line",
      costPerHour: 5,
      bufferHours: 1,
      ...given,
    },
  });
const lotWith = (given: object) =>
  database().stockLot.create({
    data: {
      ...{ siteId: world.south, partId, bin: `B${Math.random()}`, state: "usable" as const, quantity: 2 },
      ...{ countedOn: day("2026-11-01"), lastPoweredOn: day("2026-11-01") },
      ...given,
    },
  });
const eventWith = (given: object) =>
  database().event.create({
    data: {
      ...{
        siteId: world.south,
        kind: "failure" as const,
        happenedAt: day("2026-05-01"),
        source: "work order",
      },
      ...{ reference: `W${Math.random()}`, itemClass: "drive" as const, downtimeHours: 2, ...given },
    },
  });
const controllerWith = (given: object) =>
  database().controller.create({
    data: { siteId: world.south, designation: `K${Math.random()}`, model: "Slate 5", firmware: 20, ...given },
  });
const placeWith = (given: object) =>
  database().position.create({
    data: {
      ...{ machineId: machine.id, itemClass: "io" as const, designation: `D${Math.random()}`, partId },
      ...given,
    },
  });
/** A unit at a new place where a drive of the old part belongs. */
async function unitAt(unitPartId: string, serial: string) {
  const { id: positionId } = await placeWith({});
  const unit = await database().unit.create({ data: { partId: unitPartId, serial } });
  await database().placement.create({ data: { unitId: unit.id, positionId, fromOn: day("2026-01-01") } });
}
/** A further part at a place of the site, with everything on record but what is given. */
async function partWith(given: object, isDated = true) {
  const part = await database().part.create({
    data: {
      ...{ maker: "Brindlewick", number: `N${Math.random()}`, description: "Card", itemClass: "io" as const },
      ...{ price: 10, priceCurrency: "EUR", pricedOn: day("2026-01-01"), leadWeeks: 4, ...given },
    },
  });
  const dated = { source: "bulletin", checkedOn: day("2026-09-01"), recordedOn: day("2026-09-01") };
  if (isDated) await database().lifecycleFact.create({ data: { partId: part.id, ...dated } });
  await placeWith({ partId: part.id });
}
const copyWith = async (given: object) => {
  const { id: controllerId } = await controllerWith({});
  const copy = { controllerId, kind: "program" as const, takenOn: day("2026-01-01"), keptAt: "archive" };
  await database().backup.create({ data: { ...copy, ...given } });
};

const MAKING: Readonly<Partial<Record<GapKey, () => Promise<unknown>>>> = {
  "cost-missing": () => lineWith({ costPerHour: null }),
  "cost-unowned": () => lineWith({ costOwner: "Finance" }),
  "cost-expired": () =>
    lineWith({ costOwner: "Finance", costApprovedOn: day("2025-01-01"), costValidUntil: day("2026-11-29") }),
  "buffer-missing": () => lineWith({ bufferHours: null }),
  "line-bare": () => lineWith({}),
  "contact-missing": () => lineWith({}),
  "firmware-unknown": () => controllerWith({ firmware: null }),
  "controller-old": () => controllerWith({ readOn: day("2024-11-29") }),
  "backup-missing": () => controllerWith({}),
  "backup-untried": () => copyWith({}),
  "axis-driveless": () => database().axis.create({ data: { machineId: machine.id, code: "N1" } }),
  "axis-motorless": () => database().axis.create({ data: { machineId: machine.id, code: "N2" } }),
  "axis-unnumbered": async () => {
    const ring = { siteId: world.south, name: "R1", kind: "fibre_ring" as const };
    const { id: networkId } = await database().network.create({ data: ring });
    await database().axis.create({ data: { machineId: machine.id, code: "N3", networkId } });
  },
  "place-unread": () => placeWith({ partId: null }),
  "place-assumed": () => placeWith({ evidence: "assumed" }),
  "unit-unread": () => placeWith({}),
  // The first stands there already when the second makes it two; both have it.
  "serial-twice": async () =>
    unitAt((await database().part.findFirstOrThrow({ where: { number: "TM-HE-020" } })).id, "T-1"),
  "place-other": async () =>
    unitAt((await database().part.findFirstOrThrow({ where: { number: "TM-HE-020" } })).id, "T-2"),
  "lot-uncounted": () => lotWith({ quantity: null }),
  "count-old": () => lotWith({ countedOn: day("2025-11-29") }),
  "power-unknown": () => lotWith({ lastPoweredOn: null }),
  "lot-unproven": () => lotWith({ state: "unproven" }),
  "origin-unknown": () => lotWith({ originUnknown: true, state: "unproven" }),
  "event-partless": () => eventWith({ itemClass: null }),
  "event-hourless": () => eventWith({ downtimeHours: null }),
  "event-aside": () => eventWith({ setAside: "ends before it starts" }),
  "supply-undated": () => partWith({}, false),
  "price-missing": () => partWith({ price: null, priceCurrency: null, pricedOn: null }),
  "price-old": () => partWith({ pricedOn: day("2024-11-29") }),
  "lead-missing": () => partWith({ leadWeeks: null }),
};

describe("the footing of the figures", () => {
  it.each(Object.keys(MAKING) as GapKey[])("finds one more of %s, and lists it at its site", async (key) => {
    if (key === "serial-twice") await unitAt(partId, "T-1");
    const north = personWith("viewer", world.north);
    const [before, listed, foreign] = [await missingOf(key), await totalOf(key), await totalOf(key, north)];
    await MAKING[key]?.();
    const more = key === "serial-twice" ? 2 : 1;
    expect(await missingOf(key)).toBe(before + more);
    expect(await totalOf(key)).toBe(listed + more);
    expect(listed).toBe(before);
    expect(await totalOf(key, north)).toBe(foreign);
  });

  it("looks for every gap, tells no site that may not be read, and gives nobody's site for nobody", async () => {
    const footing = await readFooting(personWith("viewer", world.north), { asOf, siteCode: null });
    expect(footing?.rows.map(({ key }) => key).sort()).toEqual(GAPS.map(({ key }) => key).sort());
    expect(footing?.sites.map(({ code }) => code)).toEqual(["NOR"]);
    expect(footing?.lines.map(({ code }) => code)).toEqual(["NOR-01", "NOR-02"]);
    expect(JSON.stringify(footing)).not.toContain(world.south);
    expect(await readFooting(personWith("viewer", world.north), { asOf, siteCode: "SUD" })).toBeNull();
  });

  it("says how much of the loss rests on a cost nobody approved, and less once somebody did", async () => {
    const before = await rowOf("cost-unowned", engineer, "NOR");
    expect(before).toMatchObject({ missing: 2, of: 2, effect: { share: 1, unknown: null } });
    await database().line.update({
      where: { code: "NOR-01" },
      data: { costOwner: "Finance", costApprovedOn: day("2026-11-01") },
    });
    const after = await rowOf("cost-unowned", engineer, "NOR");
    expect(after.missing).toBe(1);
    expect(after.effect?.rests).toBeLessThan((before.effect?.rests ?? 0) / 2);
  });

  it("gives what comes from not knowing for a lot nobody counted, and says not known where no figure reads the gap", async () => {
    const { effect } = await rowOf("lot-uncounted", engineer, "NOR");
    expect(effect?.unknown).toBeGreaterThan(0);
    expect(effect?.unknown).toBeLessThanOrEqual(effect?.rests ?? 0);
    expect((await rowOf("firmware-unknown")).effect).toBeNull();
  });

  it("says what moved since the last snapshot, and that nothing is known before there was one", async () => {
    expect((await rowOf("backup-missing")).before).toBeNull();
    await takeSnapshot("2026-11-23", null);
    const then = (await rowOf("backup-missing")).missing;
    const bare = await database().controller.findFirstOrThrow({ where: { backups: { none: {} } } });
    await database().backup.create({
      data: { controllerId: bare.id, kind: "program", takenOn: day("2026-11-28"), keptAt: "archive" },
    });
    const row = await rowOf("backup-missing");
    expect(row.before).toEqual({ missing: then, asOf: "2026-11-23" });
    expect(row.missing).toBe(then - 1);
  });

  it("leaves out what is retired", async () => {
    const before = await rowOf("unit-unread", engineer, "NOR");
    await database().machine.updateMany({
      where: { line: { code: "NOR-02" } },
      data: { retiredOn: day(asOf) },
    });
    const after = await rowOf("unit-unread", engineer, "NOR");
    expect([before.missing, after.missing]).toEqual([6, 3]);
    await database().machine.updateMany({ data: { retiredOn: null } });
  });
});

describe("what to find out next", () => {
  const next = async (actor = engineer, siteCode: string | null = null) => {
    const footing = await readFooting(actor, { asOf, siteCode });
    if (footing === null) throw new Error("no footing");
    return readNextFixes(actor, { footing, asOf });
  };

  it("names the shelf to count, where, and what it takes", async () => {
    const { fixes, cut, plan } = await next(engineer, "NOR");
    expect({ cut, plan }).toEqual({ cut: 5, plan: null });
    expect(fixes.find(({ kind }) => kind === "count")).toMatchObject({
      ...{ what: "Count and power up BW-OK-020: 1 lot at NOR", hours: 0.5, href: `/parts/${partId}` },
    });
  });

  it("takes the hours somebody set, who alone may set them for every site, and one of two wins", async () => {
    const asked = { gap: "lot-uncounted", hours: "2", seen: null };
    const refused = await setEffort(personWith("engineer", world.north), setEffortNorm.parse(asked));
    expect(refused).toMatchObject({ error: { code: "forbidden" } });
    expect(await setEffort(engineer, setEffortNorm.parse(asked))).toEqual({
      ok: true,
      value: { version: 1 },
    });
    expect(await setEffort(engineer, setEffortNorm.parse(asked))).toMatchObject({
      error: { code: "conflict" },
    });
    const { fixes } = await next(engineer, "NOR");
    expect(fixes.find(({ kind }) => kind === "count")?.hours).toBe(2);
    await setEffort(engineer, setEffortNorm.parse({ ...asked, hours: "", seen: 1 }));
    expect((await rowOf("lot-uncounted")).hoursEach).toBe(0.5);
    expect(setEffortNorm.safeParse({ ...asked, hours: "0" }).success).toBe(false);
  });
});
