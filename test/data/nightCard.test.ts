import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { addBackup, addContact, removeBackup, removeContact } from "@/lib/data/cardChange";
import { database } from "@/lib/data/client";
import { readNightCard } from "@/lib/data/nightCard";
import { likelyAssumptions } from "@/lib/risk/assumptions";
import type { AddBackup, AddContact } from "@/lib/schema/cardEntry";
import { binWords, fitLots, unfitPieces } from "@/lib/view/nightCard";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let machineId: string;
let southMachineId: string;

beforeAll(async () => {
  made = await freshDatabase("nightCard");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  const machineOf = async (code: string) =>
    (await database().machine.findFirstOrThrow({ where: { line: { code } } })).id;
  machineId = await machineOf("NOR-01");
  southMachineId = await machineOf("SUD-01");
  await makeShelves();
});

afterAll(() => made.close());

beforeEach(async () => {
  await database().backup.deleteMany();
  await database().contact.deleteMany();
  await database().$executeRaw`TRUNCATE "AuditEntry"`;
});

async function makeShelves(): Promise<void> {
  const [old, next] = await Promise.all(
    ["BW-OK-020", "TM-HE-020"].map((number) => database().part.findFirstOrThrow({ where: { number } })),
  );
  const lot = { lastPoweredOn: new Date("2026-06-01T00:00:00Z") };
  await database().stockLot.createMany({
    data: [
      { ...lot, siteId: world.north, partId: old?.id ?? "", bin: "A-01", state: "usable", quantity: 2 },
      { ...lot, siteId: world.north, partId: old?.id ?? "", bin: "A-02", state: "on_hold", quantity: 3 },
      { ...lot, siteId: world.south, partId: next?.id ?? "", bin: "S-09", state: "usable", quantity: 4 },
    ],
  });
  await database().successor.create({
    data: { partId: old?.id ?? "", successorId: next?.id ?? "", condition: "Only with firmware 24." },
  });
}

const group = () => personWith("viewer", null);
const viewerAt = (site: "north" | "south") => personWith("viewer", world[site]);
const engineer = () => personWith("engineer", world.north);

async function cardFor(actor = group(), id = machineId) {
  const card = await readNightCard(actor, { id, asOf });
  if (card === null) throw new Error("no card");
  return card;
}

const copy = (given: Partial<AddBackup> = {}): AddBackup => ({
  ...{ machineId, kind: "program", takenOn: "2026-03-01", keptAt: "Archive, shelf 2" },
  ...{ verifiedOn: null, sourceAvailable: false, ...given },
});
const number = (given: Partial<AddContact> = {}): AddContact => ({
  ...{ machineId, wholeSite: true, role: "Electrician on call", phone: "+44 1632 960001" },
  ...{ hours: "day and night", note: null, ...given },
});

describe("the night card", () => {
  it("names the bins here and elsewhere, what may not be fitted, and what may stand in", async () => {
    const [part] = (await cardFor()).parts;
    expect(part?.number).toBe("BW-OK-020");
    expect(
      fitLots(part?.stock ?? { lots: [], unnamed: null }).map(({ siteCode, bin }) => [siteCode, bin]),
    ).toEqual([
      ["NOR", "A-01"],
      ["NOR", "R2"],
      ["SUD", "R1"],
    ]);
    expect(unfitPieces(part?.stock.lots ?? [])).toBe(3);
    expect(part?.stock.unnamed).toBeNull();
    expect(part?.alternates).toMatchObject([
      { number: "TM-HE-020", condition: "Only with firmware 24.", stock: { lots: [{ bin: "S-09" }] } },
    ]);
  });

  it("says of a bin nobody counted that it is not counted", async () => {
    const [part] = (await cardFor()).parts;
    const lot = part?.stock.lots.find(({ bin }) => bin === "R2");
    expect(lot && binWords(lot)).toMatch(/^bin R2: not counted/);
  });

  it("takes the way from another site from the assumptions in use", async () => {
    expect((await cardFor()).transferHours).toBe(likelyAssumptions.transferHours);
  });

  it("names no other site to a reader of one, only what is usable there in all", async () => {
    const card = await cardFor(viewerAt("north"));
    expect(JSON.stringify(card)).not.toMatch(/SUD|S-09|"R1"/);
    const [part] = card.parts;
    const { works } = (await cardFor()).parts[0]?.stock.lots.find(({ bin }) => bin === "R1") ?? { works: 0 };
    expect(part?.stock.unnamed).toBeCloseTo(works, 12);
    expect(works).toBeGreaterThan(0);
    expect(part?.alternates[0]?.stock).toMatchObject({ lots: [], unnamed: expect.closeTo(4 * works, 12) });
  });

  it("of another site's machine is not there", async () => {
    expect(await readNightCard(viewerAt("south"), { id: machineId, asOf })).toBeNull();
  });

  it("leaves the store as plain values", async () => {
    const card = await cardFor();
    expect(JSON.parse(JSON.stringify(card))).toEqual(card);
  });
});

describe("copies and numbers", () => {
  it("are written by an engineer of the site, audited, and leave every figure valid", async () => {
    const version = () => database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
    const was = await version();
    expect(await addBackup(engineer(), copy())).toMatchObject({ ok: true });
    expect(await addContact(engineer(), number())).toMatchObject({ ok: true });
    const card = await cardFor();
    expect(card.backups).toMatchObject([{ kind: "program", takenOn: "2026-03-01", sourceAvailable: false }]);
    expect(card.contacts).toMatchObject([{ role: "Electrician on call" }]);
    const deeds = await database().auditEntry.findMany({ orderBy: { deed: "asc" } });
    expect(deeds.map(({ deed, siteId }) => [deed, siteId])).toEqual([
      ["backup:add", world.north],
      ["contact:add", world.north],
    ]);
    expect(await version()).toEqual(was);
  });

  it("of the line come before those of the whole site; another line's are not there", async () => {
    await addContact(engineer(), number());
    await addContact(engineer(), number({ wholeSite: false, role: "Shift lead" }));
    expect((await cardFor()).contacts.map(({ role }) => role)).toEqual(["Shift lead", "Electrician on call"]);
    const other = await database().machine.findFirstOrThrow({ where: { line: { code: "NOR-02" } } });
    expect((await cardFor(group(), other.id)).contacts.map(({ role }) => role)).toEqual([
      "Electrician on call",
    ]);
    expect((await cardFor(group(), southMachineId)).contacts).toEqual([]);
  });

  it("are as known on the day: a later copy is not there, a later try has not happened", async () => {
    await addBackup(engineer(), copy({ verifiedOn: "2026-10-01" }));
    const on = async (day: string) =>
      (await readNightCard(group(), { id: machineId, asOf: day }))?.backups.map(
        ({ verifiedOn }) => verifiedOn,
      );
    expect(await on("2026-02-28")).toEqual([]);
    expect(await on("2026-09-30")).toEqual([null]);
    expect(await on("2026-10-01")).toEqual(["2026-10-01"]);
  });

  it("are refused to a viewer, at another site, and for a day ahead", async () => {
    const missing = { ok: false, error: { code: "missing" } };
    for (const actor of [viewerAt("north"), personWith("engineer", world.south)]) {
      expect(await addBackup(actor, copy())).toMatchObject(missing);
      expect(await addContact(actor, number())).toMatchObject(missing);
    }
    expect(await addBackup(engineer(), copy({ takenOn: "2026-12-01" }))).toMatchObject({
      error: { code: "impossible" },
    });
    expect(await database().backup.count()).toBe(0);
    expect(await database().contact.count()).toBe(0);
    expect(await database().auditEntry.count()).toBe(0);
  });

  it("are removed at the own site only, and the audit keeps what they said", async () => {
    const [kept, called] = [await addBackup(engineer(), copy()), await addContact(engineer(), number())];
    if (!kept.ok || !called.ok) throw new Error("not added");
    const foreign = personWith("engineer", world.south);
    const missing = { ok: false, error: { code: "missing" } };
    expect(await removeBackup(foreign, kept.value)).toMatchObject(missing);
    expect(await removeContact(foreign, called.value)).toMatchObject(missing);
    expect(await removeBackup(engineer(), kept.value)).toEqual({ ok: true, value: null });
    expect(await removeContact(engineer(), called.value)).toEqual({ ok: true, value: null });
    expect(await removeContact(engineer(), called.value)).toMatchObject(missing);
    expect(await database().auditEntry.findFirst({ where: { deed: "backup:remove" } })).toMatchObject({
      before: { keptAt: "Archive, shelf 2", takenOn: "2026-03-01" },
    });
  });
});
