import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { AXES_A_PAGE, countAxes, readAxes, readAxisChoices } from "@/lib/data/axes";
import { database } from "@/lib/data/client";
import { readInstalled } from "@/lib/data/installed";
import { readMachine } from "@/lib/data/machine";
import { readRingSheet, readRingsOfLine } from "@/lib/data/rings";
import { type AxisFilter, type ListedAxis, readAxisFilter } from "@/lib/view/axisList";
import { installedTotals } from "@/lib/view/installed";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
const machines: Record<string, string> = {};
let ring: string;

const day = (text: string) => new Date(`${text}T00:00:00Z`);
const group = () => personWith("viewer", null);
const north = () => personWith("viewer", world.north);

beforeAll(async () => {
  made = await freshDatabase("installed");
  world = await makeTwoSites();
  for (const { id, line } of await database().machine.findMany({ include: { line: true } }))
    machines[line.code] = id;
  ring = await makeRing();
  await moveUnit();
});

afterAll(() => made.close());

/** The three axes of NOR-01 in one ring, the second and third place changed over. */
async function makeRing(): Promise<string> {
  const { id } = await database().network.create({
    data: { siteId: world.north, name: "NOR-01-R1", kind: "fibre_ring" },
  });
  for (const [index, code] of ["X1", "X2", "X3"].entries())
    await database().axis.updateMany({
      where: { machineId: machines["NOR-01"] ?? "", code },
      data: {
        ...{ networkId: id, nodeAddress: index + 1, ringOrder: [1, 3, 2][index] ?? null },
        ...{ inServiceYear: 2004 - index, countsPerRev: 8192, motorRevs: 10, loadRevs: 1 },
        ...{ unitsPerLoadRev: index === 0 ? 400 : null, travelUnit: "mm", evidence: "measured" },
      },
    });
  return id;
}

/** A unit that was in NOR-01 and is in SUD-01 now; another took its place. */
async function moveUnit(): Promise<void> {
  const place = async (code: string) =>
    database().position.findFirstOrThrow({
      where: { machineId: machines[code] ?? "", designation: "-UX1" },
    });
  const [from, to] = [await place("NOR-01"), await place("SUD-01")];
  const partId = from.partId ?? "";
  const unit = (serial: string) =>
    database().unit.create({ data: { partId, serial, revision: "A1", madeYear: 2003 } });
  const [old, fresh] = [await unit("OLD-1"), await unit("NEW-1")];
  const stays = [
    { unitId: old.id, positionId: from.id, fromOn: null, untilOn: day("2025-05-01") },
    { unitId: fresh.id, positionId: from.id, fromOn: day("2025-05-01"), untilOn: null },
    { unitId: old.id, positionId: to.id, fromOn: day("2025-06-01"), untilOn: null },
  ];
  for (const data of stays) await database().placement.create({ data });
}

describe("the installed map", () => {
  it("counts down from the group to the machines, and the parts add up to the whole", async () => {
    const sites = await readInstalled(group(), { asOf, level: { of: "group" } });
    const lines = await readInstalled(group(), { asOf, level: { of: "site", code: "NOR" } });
    const ofLine = await readInstalled(group(), { asOf, level: { of: "line", code: "NOR-01" } });
    expect(sites?.rows.map(({ code, lines, axes, units }) => [code, lines, axes, units])).toEqual([
      ["NOR", 2, 6, 1],
      ["SUD", 2, 6, 1],
    ]);
    expect(lines?.rows.map(({ code, places }) => [code, places])).toEqual([
      ["NOR-01", 3],
      ["NOR-02", 3],
    ]);
    expect(installedTotals(lines?.rows ?? [])).toMatchObject({ axes: 6, machines: 2 });
    expect(ofLine?.rows).toMatchObject([
      {
        ...{ id: machines["NOR-01"], code: "M1", axes: 3, places: 3, units: 1, unidentified: 0 },
        ...{ lastChangeOn: "2025-05-01", readSince: null, controllersUnread: 1 },
        evidence: { measured: 0, documented: 3, inferred: 0, assumed: 0 },
      },
    ]);
  });

  it("counts units as they sat on the day", async () => {
    const before = await readInstalled(group(), { asOf: "2025-05-15", level: { of: "group" } });
    expect(before?.rows.map(({ units }) => units)).toEqual([1, 0]);
  });

  it("holds nothing of another site, and answers for one as for none", async () => {
    const map = await readInstalled(north(), { asOf, level: { of: "group" } });
    expect(map?.rows.map(({ code }) => code)).toEqual(["NOR"]);
    for (const level of [
      { of: "site", code: "SUD" },
      { of: "line", code: "SUD-01" },
      { of: "line", code: "NO-99" },
    ] as const)
      expect(await readInstalled(north(), { asOf, level })).toBeNull();
  });
});

describe("a machine", () => {
  it("shows what sits in a place, what sat there before, and where that went", async () => {
    const machine = await readMachine(group(), { id: machines["NOR-01"] ?? "", asOf });
    const [place] = machine?.axes[0]?.positions ?? [];
    expect(place?.unit).toMatchObject({ serial: "NEW-1", fromOn: "2025-05-01", untilOn: null });
    expect(place?.before).toMatchObject([
      { serial: "OLD-1", fromOn: null, untilOn: "2025-05-01", elsewhere: [{ place: "SUD-01 / M1 / -UX1" }] },
    ]);
    expect(machine?.axes.map(({ countsPerUnit }) => countsPerUnit)).toEqual([204.8, null, null]);
    expect(machine?.controller).toMatchObject({ designation: "NOR-01-K1", axes: 3, sharedWith: [] });
  });

  it("is as it was on an earlier day", async () => {
    const machine = await readMachine(group(), { id: machines["NOR-01"] ?? "", asOf: "2025-04-30" });
    const [place] = machine?.axes[0]?.positions ?? [];
    expect(place?.unit).toMatchObject({ serial: "OLD-1", untilOn: null, elsewhere: [] });
    expect(place?.before).toEqual([]);
  });

  it("does not tell a reader of one site where at another a unit went", async () => {
    const machine = await readMachine(north(), { id: machines["NOR-01"] ?? "", asOf });
    expect(JSON.stringify(machine)).not.toMatch(/SUD/);
    expect(await readMachine(north(), { id: machines["SUD-01"] ?? "", asOf })).toBeNull();
    expect(await readMachine(group(), { id: "no-id", asOf })).toBeNull();
  });
});

describe("a ring", () => {
  it("is read with its nodes for whoever may see its site, and for nobody else", async () => {
    const sheet = await readRingSheet(group(), { id: ring, asOf });
    expect(sheet?.rows.map(({ label, nodeAddress, ringOrder }) => [label, nodeAddress, ringOrder])).toEqual([
      ["M1 / X1", 1, 1],
      ["M1 / X2", 2, 3],
      ["M1 / X3", 3, 2],
    ]);
    expect(sheet?.rows[0]).toMatchObject({ drive: { number: "BW-OK-020" }, controller: "NOR-01-K1" });
    const south = personWith("viewer", world.south);
    expect(await readRingSheet(south, { id: ring, asOf })).toBeNull();
    expect(await readRingsOfLine(south, { code: "NOR-01", asOf })).toEqual([]);
    expect(await readRingsOfLine(north(), { code: "NOR-01", asOf })).toHaveLength(1);
  });
});

describe("the list of axes", () => {
  const filter = (query: string): AxisFilter => readAxisFilter(new URLSearchParams(query));
  const list = async (query: string, actor = group()) =>
    (await readAxes(actor, { asOf, filter: filter(query), after: null })).axes;
  const names = (axes: readonly ListedAxis[]) =>
    axes.map(({ lineCode, axisCode }) => `${lineCode} ${axisCode}`);

  it("is in the order of places, with drive, network and scaling", async () => {
    const axes = await list("");
    expect(names(axes).slice(0, 4)).toEqual(["NOR-01 X1", "NOR-01 X2", "NOR-01 X3", "NOR-02 X1"]);
    expect(axes[0]).toMatchObject({
      ...{ drive: { number: "BW-OK-020" }, motor: null, network: "NOR-01-R1", networkKind: "fibre_ring" },
      ...{ countsPerUnit: 204.8, evidence: "measured" },
    });
  });

  it("is sorted either way with what is not known last", async () => {
    const years = async (query: string) => (await list(query)).map(({ inServiceYear }) => inServiceYear);
    expect((await years("axes.sort=year.asc")).slice(0, 4)).toEqual([2002, 2003, 2004, null]);
    expect((await years("axes.sort=year.desc")).slice(0, 4)).toEqual([2004, 2003, 2002, null]);
  });

  it.each([
    ["site=SUD", 6],
    ["line=NOR-01", 3],
    ["network=fibre_ring", 3],
    ["network=none", 9],
    ["evidence=measured", 3],
    ["q=NOR-01 x2", 1],
    ["q=%25", 0],
    ["family=none", 0],
    ["network=nonsense", 12],
  ])("is narrowed by %s to %i", async (query, left) => {
    expect(await list(query)).toHaveLength(left);
    expect(await countAxes(group(), { asOf, filter: filter(query) })).toBe(left);
  });

  it("is narrowed by the family of what sits in the drive's place, not of what belongs there", async () => {
    const make = (name: string) =>
      database().family.create({ data: { maker: "Brindlewick", name, itemClass: "drive" } });
    const [oak, elm] = [await make("Oak"), await make("Elm")];
    await database().part.updateMany({ where: { number: "BW-OK-020" }, data: { familyId: oak.id } });
    const part = await database().part.create({
      data: {
        ...{ maker: "Brindlewick", number: "BW-EL-020", description: "Drive" },
        ...{ itemClass: "drive", familyId: elm.id },
      },
    });
    const unit = await database().unit.create({ data: { partId: part.id, serial: "ELM-1" } });
    const place = await database().position.findFirstOrThrow({
      where: { machineId: machines["NOR-02"] ?? "", designation: "-UX1" },
    });
    await database().placement.create({ data: { unitId: unit.id, positionId: place.id } });
    expect(names(await list("family=Elm"))).toEqual(["NOR-02 X1"]);
    expect(await list("family=Oak")).toHaveLength(8);
    await database().placement.deleteMany({ where: { unitId: unit.id } });
  });

  it("holds and counts nothing of another site, whatever is asked", async () => {
    expect(new Set((await list("", north())).map(({ siteCode }) => siteCode))).toEqual(new Set(["NOR"]));
    for (const query of ["site=SUD", "line=SUD-01", "q=SUD"]) {
      expect(await list(query, north())).toEqual([]);
      expect(await countAxes(north(), { asOf, filter: filter(query) })).toBe(0);
    }
    expect(JSON.stringify(await readAxisChoices(north()))).not.toMatch(/SUD/);
    const foreign = await database().axis.findFirstOrThrow({
      where: { machineId: machines["SUD-01"] ?? "" },
    });
    const after = await readAxes(north(), { asOf, filter: filter("axes.sort=year.desc"), after: foreign.id });
    expect(after).toEqual({ axes: [], next: null });
  });

  it("gives every axis once over its pages, in each order", async () => {
    const machineId = machines["NOR-02"] ?? "";
    const many = Array.from({ length: AXES_A_PAGE + 50 }, (_, n) => ({
      ...{
        machineId,
        code: `P${String(n).padStart(3, "0")}`,
        inServiceYear: n % 3 === 0 ? null : 2000 + (n % 5),
      },
      evidence: n % 2 === 0 ? ("inferred" as const) : ("documented" as const),
    }));
    await database().axis.createMany({ data: many });
    for (const sort of ["place", "year", "network", "feedback", "evidence"])
      for (const direction of ["asc", "desc"]) {
        const wanted = filter(`axes.sort=${sort}.${direction}`);
        const seen: string[] = [];
        let after: string | null = null;
        do {
          const page = await readAxes(group(), { asOf, filter: wanted, after });
          seen.push(...page.axes.map(({ id }) => id));
          after = page.next;
        } while (after !== null);
        expect([sort, direction, seen.length, new Set(seen).size]).toEqual([
          sort,
          direction,
          AXES_A_PAGE + 62,
          AXES_A_PAGE + 62,
        ]);
      }
    await database().axis.deleteMany({ where: { machineId, code: { startsWith: "P" } } });
  });

  it("has no page after something that is no id", async () => {
    expect(await readAxes(group(), { asOf, filter: filter(""), after: "x' OR true" })).toEqual({
      axes: [],
      next: null,
    });
  });
});
