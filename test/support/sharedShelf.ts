import type { Actor } from "@/lib/access/actor";
import type { Role } from "@/lib/access/policy";
import { database } from "@/lib/data/client";

/** The day of the small group. */
export const asOf = "2026-11-30";

/** The ids of a small group: two sites, a line each, one drive they share and its successor. */
export interface SharedShelf {
  readonly north: string;
  readonly south: string;
  readonly familyId: string;
  readonly partId: string;
  readonly successorId: string;
  readonly northLot: string;
  readonly southLot: string;
}

export const day = (text: string) => new Date(`${text}T00:00:00Z`);

/** The stored person of the small group, with one role. */
export const personWith = (role: Role, siteId: string | null): Actor => ({
  userId: "person",
  name: "Person",
  email: "person@halvenor.example",
  grants: [{ role, siteId }],
});

/** Fills the empty database with two sites that share one drive. */
export async function fillSharedShelf(): Promise<SharedShelf> {
  await database().user.create({
    data: { id: "person", name: "Person", email: "person@halvenor.example", emailVerified: true },
  });
  await database().currencyRate.create({
    data: { currency: "EUR", perEuro: 1, validFrom: day("2026-01-01") },
  });
  const parts = await addParts();
  const north = await addSite("NOR", parts.partId, 8);
  const south = await addSite("SUD", parts.partId, 2);
  await database().partAlias.createMany({
    data: [
      { partId: parts.partId, alias: "Axis drive 20" },
      { partId: parts.partId, alias: "100045871", siteId: north },
      { partId: parts.partId, alias: "77-1234", siteId: south },
    ],
  });
  const northLot = await addLot(north, parts.partId, { bin: "R1-N", quantity: 1 });
  const southLot = await addLot(south, parts.partId, { bin: "R9-S", quantity: 7 });
  return { ...parts, north, south, northLot, southLot };
}

async function addParts() {
  const maker = "Tarnholt Motion";
  const family = await database().family.create({ data: { maker, name: "Heron R", itemClass: "drive" } });
  const drive = { maker, description: "Servo drive", itemClass: "drive" as const };
  const part = await database().part.create({
    data: {
      ...{ ...drive, number: "TM-HR-020", familyId: family.id, price: "2250.00", priceCurrency: "EUR" },
      pricedOn: day("2026-03-01"),
    },
  });
  const next = await database().part.create({ data: { ...drive, number: "TM-HE-020" } });
  await database().successor.create({
    data: { partId: part.id, successorId: next.id, condition: "Controller firmware 24 or newer" },
  });
  await database().lifecycleFact.createMany({
    data: [
      {
        ...{ familyId: family.id, noticeOn: day("2026-10-30"), lastOrderOn: day("2027-04-30") },
        ...{ source: "Notice of the maker", checkedOn: day("2026-11-25"), recordedOn: day("2026-11-25") },
      },
      {
        ...{ familyId: family.id, source: "Catalogue of the maker" },
        ...{ checkedOn: day("2026-01-10"), recordedOn: day("2026-01-10") },
      },
    ],
  });
  return { familyId: family.id, partId: part.id, successorId: next.id };
}

async function addSite(code: string, partId: string, axes: number): Promise<string> {
  const site = await database().site.create({
    data: { code, name: `Works ${code}`, country: "DE", timeZone: "Europe/Berlin", currency: "EUR" },
  });
  const line = await database().line.create({
    data: { siteId: site.id, code: `${code}-01`, name: `Carton ${code}`, costPerHour: 1000, bufferHours: 1 },
  });
  const controller = await database().controller.create({
    data: { siteId: site.id, designation: `${code}-K1`, model: "Slate 5", firmware: 22 },
  });
  const machine = await database().machine.create({
    data: { lineId: line.id, code: "M04", name: "Former", controllerId: controller.id },
  });
  for (let n = 1; n <= axes; n += 1) await addAxis({ machineId: machine.id, partId, site: code, n });
  return site.id;
}

async function addAxis({
  machineId,
  partId,
  site,
  n,
}: {
  machineId: string;
  partId: string;
  site: string;
  n: number;
}) {
  const axis = await database().axis.create({
    data: { machineId, code: `X${n}`, name: `Feed ${n}`, inServiceYear: 2012 },
  });
  const position = await database().position.create({
    data: { machineId, axisId: axis.id, itemClass: "drive", designation: `-U${10 + n}`, partId },
  });
  const unit = await database().unit.create({
    data: { partId, serial: `${site}-88${n}`, revision: "B1" },
  });
  await database().placement.create({ data: { unitId: unit.id, positionId: position.id } });
}

async function addLot(siteId: string, partId: string, lot: { bin: string; quantity: number }) {
  const { id } = await database().stockLot.create({
    data: { siteId, partId, state: "usable", revision: "B1", lastPoweredOn: day("2026-06-01"), ...lot },
  });
  return id;
}
