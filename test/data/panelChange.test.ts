import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { readAxes } from "@/lib/data/axes";
import { changeAxisFacts } from "@/lib/data/axisFacts";
import { addBackup, addContact, removeBackup, removeContact } from "@/lib/data/cardChange";
import { readCardEntries } from "@/lib/data/cardEntries";
import { database } from "@/lib/data/client";
import { readInstalled } from "@/lib/data/installed";
import { readMachine } from "@/lib/data/machine";
import { addPanel, changePanel, placeInPanels, removePanel } from "@/lib/data/panelChange";
import { changeControllerPlate, changeNetworkPlate, changePartPlate } from "@/lib/data/plateChange";
import { putBackBackup, putBackContact, putBackPanel } from "@/lib/data/putBack";
import type { Result } from "@/lib/kernel/result";
import { type AxisFacts, changeAxisFacts as schema } from "@/lib/schema/axisFacts";
import type { ControllerPlate } from "@/lib/schema/plate";
import { plainFacts } from "@/lib/view/axisFacts";
import { NO_PANEL, readAxisFilter } from "@/lib/view/axisList";
import { placesOf } from "@/lib/view/machine";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let machineId: string;

beforeAll(async () => {
  made = await freshDatabase("panelChange");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  machineId = (await database().machine.findFirstOrThrow({ where: { line: { code: "NOR-01" } } })).id;
});
afterAll(() => made.close());

const engineer = () => personWith("engineer", world.north);
const foreign = () => personWith("engineer", world.south);
const viewer = () => personWith("viewer", null);
const missing = { ok: false, error: { code: "missing" } };
const conflict = { ok: false, error: { code: "conflict" } };
const machine = async () => {
  const found = await readMachine(viewer(), { id: machineId, asOf });
  if (!found) throw new Error("no machine");
  return found;
};
function saved<T>(answer: Result<T, unknown>): T {
  if (!answer.ok) throw new Error(JSON.stringify(answer.error));
  return answer.value;
}
const version = async () => (await database().dataVersion.findFirstOrThrow()).version;

describe("panels", () => {
  const words = { designation: "+A1", name: "Main panel", location: "left of the gate" };

  it("are added, named anew and refused twice of one designation", async () => {
    const { id } = saved(await addPanel(engineer(), { machineId, ...words }));
    expect(await addPanel(engineer(), { machineId, ...words })).toMatchObject({
      error: { code: "conflict", fields: { designation: expect.any(String) } },
    });
    const wanted = { ...words, location: "behind the machine" };
    expect(await changePanel(engineer(), { panelId: id, seen: words, wanted })).toMatchObject({ ok: true });
    const late = await changePanel(engineer(), { panelId: id, seen: words, wanted: { ...words, name: "B" } });
    expect(late).toMatchObject({ error: { reason: expect.stringContaining("behind the machine") } });
    expect((await machine()).panels).toEqual([{ id, ...wanted }]);
    await database().panel.deleteMany();
  });

  it("hold the places they are given, until somebody else has moved one", async () => {
    const { id } = saved(await addPanel(engineer(), { machineId, ...words }));
    const places = placesOf(await machine());
    const seen = places.map((place) => ({ positionId: place.id, panelId: null }));
    const wanted = seen.map((one, i) => (i === 0 ? { ...one, panelId: id } : one));
    const before = await version();
    expect(await placeInPanels(engineer(), { machineId, seen, wanted })).toEqual({ ok: true, value: null });
    expect(await version()).toBe(before);
    expect(placesOf(await machine()).map(({ panel }) => panel?.designation ?? null)).toEqual([
      "+A1",
      null,
      null,
    ]);
    expect(await placeInPanels(engineer(), { machineId, seen, wanted })).toMatchObject({
      error: { code: "conflict", reason: expect.stringContaining("-UX1") },
    });
    // Taking it back is the same change the other way round.
    expect(await placeInPanels(engineer(), { machineId, seen: wanted, wanted: seen })).toMatchObject({
      ok: true,
    });
    expect(await placeInPanels(engineer(), { machineId, seen, wanted })).toMatchObject({ ok: true });
  });

  it("are counted on the map, and the list of axes is narrowed by them", async () => {
    const map = await readInstalled(viewer(), { asOf, level: { of: "line", code: "NOR-01" } });
    expect(map?.rows[0]).toMatchObject({ panels: 1, unplaced: 2 });
    const ask = (query: string) =>
      readAxes(viewer(), { asOf, filter: readAxisFilter(new URLSearchParams(query)), after: null });
    const inPanel = await ask("panel=%2BA1");
    expect(inPanel.axes.map(({ axisCode, panel }) => [axisCode, panel])).toEqual([["X1", "+A1"]]);
    const inNone = await ask(`line=NOR-01&panel=${encodeURIComponent(NO_PANEL)}`);
    expect(inNone.axes.map(({ axisCode, panel }) => [axisCode, panel])).toEqual([
      ["X2", null],
      ["X3", null],
    ]);
  });

  it("come back with their places after a removal, under the same id", async () => {
    const [panel] = (await machine()).panels;
    const id = panel?.id ?? "";
    expect(await putBackPanel(engineer(), { id })).toMatchObject(missing);
    expect(await removePanel(engineer(), { id })).toEqual({ ok: true, value: null });
    expect((await machine()).panels).toEqual([]);
    expect(await putBackPanel(foreign(), { id })).toMatchObject(missing);
    expect(await putBackPanel(engineer(), { id })).toEqual({ ok: true, value: { id } });
    expect(placesOf(await machine()).map((place) => place.panel?.id ?? null)).toEqual([id, null, null]);
    expect(await putBackPanel(engineer(), { id })).toMatchObject(missing);
  });

  it("of another site do not exist, and a place of another machine takes none", async () => {
    const [panel] = (await machine()).panels;
    const panelId = panel?.id ?? "";
    expect(await addPanel(foreign(), { machineId, ...words, designation: "+A7" })).toMatchObject(missing);
    expect(await changePanel(foreign(), { panelId, seen: words, wanted: words })).toMatchObject(missing);
    expect(await removePanel(foreign(), { id: panelId })).toMatchObject(missing);
    const [place] = await database().position.findMany({ where: { machine: { line: { code: "NOR-02" } } } });
    const move = (id: string) => [{ positionId: place?.id ?? "", panelId: id }];
    const other = await database().machine.findFirstOrThrow({ where: { line: { code: "NOR-02" } } });
    const seen = [{ positionId: place?.id ?? "", panelId: null }];
    for (const machineOf of [machineId, other.id])
      expect(
        await placeInPanels(engineer(), { machineId: machineOf, seen, wanted: move(panelId) }),
      ).toMatchObject(missing);
  });
});

describe("what is known of an axis", () => {
  const facts = async () => plainFacts((await machine()).axes[0] as AxisFacts);
  const axisId = async () => (await machine()).axes[0]?.id ?? "";

  it("is written with its evidence, beside the figures, and a group of which nothing is known carries none", async () => {
    const seen = await facts();
    const wanted: AxisFacts = {
      ...{ ...seen, powerCable: "4G2.5", powerCableLength: 12.5, powerCableInChain: null },
      ...{ powerCableEvidence: "measured", powerCableReadOn: "2026-11-01" },
      ...{ homingEvidence: "assumed", homingReadOn: "2026-11-01" },
    };
    const before = await version();
    const { facts: written } = saved(
      await changeAxisFacts(engineer(), { axisId: await axisId(), seen, wanted }),
    );
    expect(written).toEqual({ ...wanted, homingEvidence: null, homingReadOn: null });
    expect(await facts()).toEqual(written);
    expect(await version()).toBe(before);
  });

  it("is not overwritten: the later of two is told what the other wrote, and loses nothing", async () => {
    const seen = await facts();
    await changeAxisFacts(engineer(), {
      ...{ axisId: await axisId(), seen },
      wanted: { ...seen, powerCableLength: 14 },
    });
    const late = await changeAxisFacts(engineer(), {
      ...{ axisId: await axisId(), seen },
      wanted: { ...seen, powerCableLength: 20 },
    });
    expect(late).toMatchObject({
      error: { code: "conflict", reason: expect.stringContaining("Length of the power cable: 14") },
    });
    expect((await facts()).powerCableLength).toBe(14);
  });

  it("of another site does not exist, and no day ahead is taken", async () => {
    const seen = await facts();
    const id = await axisId();
    expect(await changeAxisFacts(foreign(), { axisId: id, seen, wanted: seen })).toMatchObject(missing);
    const ahead = { ...seen, powerCableReadOn: "2026-12-01" };
    expect(await changeAxisFacts(engineer(), { axisId: id, seen, wanted: ahead })).toMatchObject({
      error: { code: "impossible", fields: { powerCableReadOn: expect.any(String) } },
    });
  });

  it("is refused at its field when it cannot be", async () => {
    const seen = await facts();
    const problemsOf = (wrong: Partial<AxisFacts>) => {
      const read = schema.safeParse({ axisId: world.north, seen, wanted: { ...seen, ...wrong } });
      return read.success ? [] : read.error.issues.map(({ path }) => path.join("."));
    };
    expect(problemsOf({ powerCableLength: -1 })).toEqual(["wanted.powerCableLength"]);
    expect(problemsOf({ softLow: 9, softHigh: 2, travelUnit: "mm", travelEvidence: "measured" })).toEqual([
      "wanted.softHigh",
    ]);
    expect(problemsOf({ travel: 350 })).toEqual(["wanted.travelUnit", "wanted.travelEvidence"]);
    expect(problemsOf({ travel: 0, travelUnit: "mm", travelEvidence: "measured" })).toEqual([]);
  });
});

describe("what stands on plates", () => {
  it("of a controller: hardware, most axes and the line it leads, one controller a line", async () => {
    const { id } = await database().controller.findFirstOrThrow({ where: { designation: "NOR-01-K1" } });
    const seen: ControllerPlate = {
      hardware: null,
      axisLimit: null,
      leadsLineId: null,
      readOn: null,
      evidence: "assumed",
    };
    const wanted: ControllerPlate = {
      ...{ hardware: "C2", axisLimit: 16, leadsLineId: world.lines["NOR-01"] ?? "" },
      ...{ readOn: "2026-11-01", evidence: "measured" },
    };
    expect(await changeControllerPlate(engineer(), { controllerId: id, seen, wanted })).toMatchObject({
      ok: true,
    });
    expect((await machine()).controller).toMatchObject({
      ...{ hardware: "C2", axisLimit: 16, leadsLine: { code: "NOR-01" }, readOn: "2026-11-01" },
    });
    expect(await changeControllerPlate(engineer(), { controllerId: id, seen, wanted })).toMatchObject(
      conflict,
    );
    expect(
      await changeControllerPlate(foreign(), { controllerId: id, seen: wanted, wanted: seen }),
    ).toMatchObject(missing);
    const elsewhere = { ...wanted, leadsLineId: world.lines["NOR-02"] ?? "" };
    expect(
      await changeControllerPlate(engineer(), { controllerId: id, seen: wanted, wanted: elsewhere }),
    ).toMatchObject(missing);
    const second = await database().controller.create({
      data: { siteId: world.north, designation: "NOR-01-K2", model: "Slate 5" },
    });
    const { lineId } = await database().machine.create({
      data: { lineId: world.lines["NOR-01"] ?? "", code: "M2", name: "Second", controllerId: second.id },
    });
    const taken = await changeControllerPlate(engineer(), {
      ...{ controllerId: second.id, seen, wanted: { ...seen, leadsLineId: lineId } },
    });
    expect(taken).toMatchObject({ error: { reason: expect.stringContaining("NOR-01-K1 leads NOR-01") } });
  });

  it("of a part hold for every site, so only who imports for all of them writes them", async () => {
    const { id: partId } = await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } });
    const seen = { powerKw: null, profileFamily: null };
    const wanted = { powerKw: 1.5, profileFamily: 16 };
    expect(await changePartPlate(engineer(), { partId, seen, wanted })).toMatchObject(missing);
    const group = personWith("engineer", null);
    expect(
      await changePartPlate(group, { partId, seen, wanted: { ...wanted, profileFamily: 7 } }),
    ).toMatchObject({
      error: { fields: { profileFamily: expect.any(String) } },
    });
    expect(await changePartPlate(group, { partId, seen, wanted })).toEqual({ ok: true, value: null });
    expect(await changePartPlate(group, { partId, seen, wanted })).toMatchObject(conflict);
    expect(await changePartPlate(group, { partId, seen: wanted, wanted: seen })).toMatchObject({ ok: true });
  });

  it("of a network are its site's", async () => {
    const { id: networkId } = await database().network.create({
      data: { siteId: world.north, name: "R1", kind: "fibre_ring" },
    });
    const change = { networkId, seen: { profileFamily: null }, wanted: { profileFamily: 16 } };
    expect(await changeNetworkPlate(foreign(), change)).toMatchObject(missing);
    expect(await changeNetworkPlate(engineer(), change)).toMatchObject({ ok: true });
    expect(await changeNetworkPlate(engineer(), change)).toMatchObject(conflict);
  });
});

describe("a removed copy or number", () => {
  it("is put back as it was, once, and only at the own site", async () => {
    const copy = saved(
      await addBackup(engineer(), {
        ...{ machineId, kind: "program", takenOn: "2026-05-04", keptAt: "shelf 3" },
        ...{ verifiedOn: "2026-05-06", sourceAvailable: false },
      }),
    );
    const called = saved(
      await addContact(engineer(), {
        ...{ machineId, wholeSite: false, role: "Shift lead", phone: "+48 22 555", hours: "day", note: null },
      }),
    );
    const entries = async () => readCardEntries(viewer(), await machine());
    const before = await entries();
    await removeBackup(engineer(), copy);
    await removeContact(engineer(), called);
    expect(await entries()).toEqual({ backups: [], contacts: [] });
    expect(await putBackBackup(foreign(), copy)).toMatchObject(missing);
    expect(await putBackContact(foreign(), called)).toMatchObject(missing);
    expect(await putBackBackup(engineer(), copy)).toEqual({ ok: true, value: copy });
    expect(await putBackContact(engineer(), called)).toEqual({ ok: true, value: called });
    expect(await entries()).toEqual(before);
    expect(await putBackBackup(engineer(), copy)).toMatchObject(missing);
  });
});
