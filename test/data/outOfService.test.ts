import { afterAll, beforeAll, expect, it } from "vitest";
import { countAxes } from "@/lib/data/axes";
import { database } from "@/lib/data/client";
import { readMachine } from "@/lib/data/machine";
import { readNightCard } from "@/lib/data/nightCard";
import { restoreMachine, retireMachine } from "@/lib/data/retireChange";
import { readRingSheet, readRingsOfLine } from "@/lib/data/rings";
import { search } from "@/lib/data/search";
import { readAxisFilter } from "@/lib/view/axisList";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith } from "../support/twoSites";

let made: FreshDatabase;
let machineId: string;
let ringId: string;
const engineer = () => personWith("engineer", null);

beforeAll(async () => {
  made = await freshDatabase("out_of_service");
  const world = await makeTwoSites();
  await database().setting.upsert({
    ...{ where: { key: "asOf" }, create: { key: "asOf", value: asOf }, update: { value: asOf } },
  });
  machineId = (await database().machine.findFirstOrThrow({ where: { line: { code: "NOR-01" } } })).id;
  const ring = await database().network.create({
    data: { siteId: world.north, name: "NOR-01-R1", kind: "fibre_ring" },
  });
  ringId = ring.id;
  await database().axis.updateMany({ where: { machineId }, data: { networkId: ringId } });
});

afterAll(() => made.close());

const axes = () => countAxes(engineer(), { asOf, filter: readAxisFilter(new URLSearchParams()) });
const found = async () =>
  (await search(engineer(), { asked: "NOR-01 M1", asOf })).find(({ kind }) => kind === "machine")?.detail;

it("a retired machine leaves the lists of what runs, and says so where it is still found", async () => {
  const before = await axes();
  expect(await found()).not.toContain("out of service");
  const retired = await retireMachine(engineer(), { machineId, reason: "Sold as a whole", seen: null });
  expect(retired).toEqual({ ok: true, value: { retiredOn: asOf } });

  expect(await axes()).toBe(before - 3);
  expect(await readRingSheet(engineer(), { id: ringId, asOf })).toMatchObject({ rows: [], outOfService: 3 });
  expect(await readRingsOfLine(engineer(), { code: "NOR-01", asOf })).toEqual([]);
  const card = await readNightCard(engineer(), { id: machineId, asOf });
  expect(card?.machine.retired).toEqual({ on: asOf, reason: "Sold as a whole" });
  expect(await found()).toContain("out of service");

  expect((await restoreMachine(engineer(), { machineId, seen: asOf })).ok).toBe(true);
  expect(await axes()).toBe(before);
  expect(await readRingSheet(engineer(), { id: ringId, asOf })).toMatchObject({ outOfService: 0 });
});

it("a retired place is no part of its machine from its day on", async () => {
  const designation = "-UX1";
  const places = async () => {
    const machine = await readMachine(engineer(), { id: machineId, asOf });
    return machine?.axes.flatMap(({ positions }) => positions.map((place) => place.designation)) ?? [];
  };
  expect(await places()).toContain(designation);
  await database().position.updateMany({
    where: { machineId, designation },
    data: { retiredOn: new Date(`${asOf}T00:00:00Z`) },
  });
  expect(await places()).not.toContain(designation);
});
