import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { loadExperience } from "@/lib/data/group/loadExperience";
import { readLine } from "@/lib/data/line";
import { readPart } from "@/lib/data/part";
import { readPartExperience } from "@/lib/data/partExperience";
import { countEvents, countsIn } from "@/lib/view/partEvent";
import { ladderOf } from "@/lib/view/partExperience";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, day, fillSharedShelf, personWith, type SharedShelf } from "../support/sharedShelf";

let made: FreshDatabase;
let group: SharedShelf;

const everywhere = personWith("viewer", null);
const read = (actor: Actor, partId = group.partId, on = asOf) =>
  readPartExperience(actor, { partId, asOf: on });

interface Given {
  readonly siteId: string;
  readonly reference: string;
  readonly on: string;
  readonly [field: string]: unknown;
}

/** Records an event; one that names no part stands in a place. */
async function record({ on, ...given }: Given) {
  await database().event.create({
    data: { kind: "failure", source: "work order", happenedAt: new Date(`${on}T10:00:00Z`), ...given },
  });
}

/** A place whose part was changed half-way: the successor sat in it until 2025. */
async function changedPlace(): Promise<string> {
  const position = await database().position.findFirstOrThrow({
    where: { machine: { line: { siteId: group.north } } },
    orderBy: { designation: "asc" },
  });
  const unit = await database().unit.create({ data: { partId: group.successorId, serial: "OLD-1" } });
  await database().placement.updateMany({
    where: { positionId: position.id },
    data: { fromOn: day("2025-01-01") },
  });
  await database().placement.create({
    data: { unitId: unit.id, positionId: position.id, untilOn: day("2025-01-01") },
  });
  return position.id;
}

beforeAll(async () => {
  made = await freshDatabase("partExperience");
  group = await fillSharedShelf();
  const { north, south, partId } = group;
  const positionId = await changedPlace();
  await record({
    siteId: north,
    reference: "N-1",
    on: "2023-05-01",
    partId,
    downtimeHours: 8,
    logisticHours: 6,
  });
  await record({ siteId: north, reference: "N-2", on: "2024-05-01", partId, kind: "no_fault_found" });
  await record({ siteId: north, reference: "N-3", on: "2024-06-01", partId, setAside: "Same stop as N-2" });
  for (const [reference, kind] of [
    ["N-4", "no_fault_found"],
    ["N-5", "failure"],
    ["N-6", "failure"],
  ] as const)
    await record({ siteId: north, reference, on: "2026-08-01", partId, kind, commonCause: "Cooling" });
  // Named by the place: the old unit on the day of the change, then the new one.
  await record({ siteId: north, reference: "N-7", on: "2025-01-01", positionId });
  await record({ siteId: north, reference: "N-8", on: "2025-02-01", positionId });
  await record({ siteId: south, reference: "S-1", on: "2026-01-01", partId });
  await record({ siteId: south, reference: "S-2", on: "2026-02-01", partId, kind: "no_fault_found" });
  await record({ siteId: south, reference: "S-3", on: "2021-01-01", partId });
  await record({ siteId: south, reference: "S-4", on: "2026-12-24", partId });
});

afterAll(() => made.close());

describe("the records behind a rate", () => {
  it("are the events of the window, also those that name only the place, newest first", async () => {
    const { events } = await read(everywhere);
    const references = events.map(({ reference }) => reference);
    expect(references.slice(-1)).toEqual(["N-1"]);
    expect([...references].sort()).toEqual(["N-1", "N-2", "N-3", "N-4", "N-5", "N-6", "N-8", "S-1", "S-2"]);
    const next = await read(everywhere, group.successorId);
    expect(next.events.map(({ reference }) => reference)).toEqual(["N-7"]);
    expect(events.find(({ reference }) => reference === "N-8")).toMatchObject({
      ...{ siteCode: "NOR", lineCode: "NOR-01", machine: "M04" },
      ...{ setAside: null, source: "work order" },
    });
  });

  it("add up to the counts of the part's rates: every number opens to exactly its rows", async () => {
    const part = await readPart(everywhere, { id: group.partId, asOf });
    const { events } = await read(everywhere);
    const rows = countEvents(events);
    for (const [kind, rate] of [
      ["removals", part?.pool?.removal],
      ["failures", part?.pool?.failure],
    ] as const)
      expect(rows.filter((event) => countsIn(event, kind))).toHaveLength(rate?.events ?? -1);
    expect(part?.pool?.removal.events).toBe(6);
    expect(part?.pool?.failure.events).toBe(4);
  });

  it("count as the experience of the group does, part by part and at a line's site", async () => {
    const all = await loadExperience(database(), asOf);
    const { family } = await read(everywhere);
    expect(family?.map(({ id }) => id)).toContain(group.partId);
    for (const { id, removals, failures, unitYears } of family ?? []) {
      const own = all.filter(({ poolId }) => poolId === id);
      const sum = (key: "removals" | "failures" | "unitYears") =>
        own.reduce((total, one) => total + one[key], 0);
      expect([removals, failures]).toEqual([sum("removals"), sum("failures")]);
      expect(unitYears).toBeCloseTo(sum("unitYears"), 9);
    }
    const line = await readLine(everywhere, { code: "NOR-01", asOf });
    const atNorth = all.find(({ poolId, siteId }) => poolId === group.partId && siteId === group.north);
    expect(line?.drivers.find(({ poolId }) => poolId === group.partId)?.atSite).toEqual({
      removals: atNorth?.removals,
      failures: atNorth?.failures,
      unitYears: atNorth?.unitYears,
    });
  });

  it("build the rate of the evaluation level by level", async () => {
    const part = await readPart(everywhere, { id: group.partId, asOf });
    const experience = await read(everywhere);
    for (const [kind, rate] of [
      ["removals", part?.pool?.removal],
      ["failures", part?.pool?.failure],
    ] as const)
      expect(ladderOf(experience, "drive", kind).part.mean).toBeCloseTo(rate?.mean ?? Number.NaN, 9);
    const line = await readLine(everywhere, { code: "NOR-01", asOf });
    const driver = line?.drivers.find(({ poolId }) => poolId === group.partId);
    const site = ladderOf(experience, "drive", "failures").sites[0];
    expect(site?.mean).toBeCloseTo((driver?.failuresPerYear ?? 0) / (driver?.units ?? 0), 9);
  });

  it("end on the day asked for", async () => {
    const { events, trends } = await read(everywhere, group.partId, "2024-12-31");
    expect(events.map(({ reference }) => reference)).toEqual(["N-3", "N-2", "N-1", "S-3"]);
    expect(trends.removals).toMatchObject({ events: 3, verdict: "too-few" });
  });
});

describe("a reader of one site", () => {
  it("gets the rows and counts of that site, and of all others one unnamed sum", async () => {
    const own = await read(personWith("viewer", group.north));
    expect(own.events.every(({ siteCode }) => siteCode === "NOR")).toBe(true);
    expect(own.sites.map(({ code, removals, failures }) => [code, removals, failures])).toEqual([
      ["NOR", 4, 3],
    ]);
    expect(own.elsewhere).toMatchObject({ removals: 2, failures: 1 });
    expect(JSON.stringify(own)).not.toMatch(/SUD|S-1|S-2/);
    expect(JSON.stringify(own)).not.toContain(group.south);
  });

  it("reads the same trend and the same rate of the part as everybody", async () => {
    const [own, all] = await Promise.all([read(personWith("viewer", group.north)), read(everywhere)]);
    expect(own.trends).toEqual(all.trends);
    expect(all.trends.removals.events).toBe(6);
    expect(all.elsewhere).toBeNull();
    const mean = (experience: typeof own) => ladderOf(experience, "drive", "failures").part.mean;
    expect(mean(own)).toBeCloseTo(mean(all), 12);
  });

  it("gets no rows, no named site and no family without a grant", async () => {
    const none = await read({ ...everywhere, grants: [] });
    expect(none).toMatchObject({ events: [], sites: [], family: null });
  });
});

it("leaves the store as plain values", async () => {
  const experience = await read(everywhere);
  expect(JSON.parse(JSON.stringify(experience))).toEqual(experience);
});
