import type { Actor } from "@/lib/access/actor";
import type { Role } from "@/lib/access/policy";
import { database } from "@/lib/data/client";

/** Two sites with two lines each; all but the last line hold drives that are no longer made. */
export interface TwoSites {
  readonly north: string;
  readonly south: string;
  /** Line ids by code. */
  readonly lines: Readonly<Record<string, string>>;
}

export const asOf = "2026-11-30";
const day = (text: string) => new Date(`${text}T00:00:00Z`);

/** A person with one role, at one site or (null) at all; all of them share one stored user. */
export const personWith = (role: Role, siteId: string | null): Actor => ({
  userId: "person",
  name: "Person",
  email: "person@halvenor.example",
  grants: [{ role, siteId }],
});

export async function makeTwoSites(): Promise<TwoSites> {
  await database().user.create({
    data: { id: "person", name: "Person", email: "person@halvenor.example", emailVerified: true },
  });
  const [old, open] = [await addPart("BW-OK-020", true), await addPart("TM-HE-020", false)];
  const north = await addSite("NOR", "EUR", 1);
  const south = await addSite("SUD", "PLN", 4);
  const lines: Record<string, string> = {};
  const make = async (code: string, given: { siteId: string; costPerHour: number; partId: string }) => {
    lines[code] = await addLine(code, given);
  };
  await make("NOR-01", { siteId: north, costPerHour: 6000, partId: old });
  await make("NOR-02", { siteId: north, costPerHour: 1000, partId: old });
  await make("SUD-01", { siteId: south, costPerHour: 20000, partId: old });
  await make("SUD-02", { siteId: south, costPerHour: 200, partId: open });
  await database().stockLot.create({
    data: {
      siteId: south,
      partId: old,
      bin: "R1",
      state: "usable",
      quantity: 1,
      lastPoweredOn: day("2026-06-01"),
    },
  });
  await database().stockLot.create({
    data: { siteId: north, partId: old, bin: "R2", state: "usable", quantity: null },
  });
  return { north, south, lines };
}

async function addPart(number: string, isOld: boolean): Promise<string> {
  const part = await database().part.create({
    data: { maker: "Brindlewick", number, description: "Drive", itemClass: "drive" },
  });
  const ended = {
    noticeOn: day("2020-06-15"),
    lastOrderOn: day("2021-06-30"),
    lastShipOn: day("2022-06-30"),
  };
  await database().lifecycleFact.create({
    data: {
      ...{ partId: part.id, source: "bulletin", checkedOn: day("2026-09-01"), recordedOn: day("2026-09-01") },
      ...(isOld ? { ...ended, repairUntilOn: day("2027-02-28") } : {}),
    },
  });
  return part.id;
}

async function addSite(code: string, currency: string, perEuro: number): Promise<string> {
  await database().currencyRate.create({ data: { currency, perEuro, validFrom: day("2026-01-01") } });
  const site = await database().site.create({
    data: { code, name: `Works ${code}`, country: "PL", timeZone: "Europe/Warsaw", currency },
  });
  return site.id;
}

async function addLine(
  code: string,
  { siteId, costPerHour, partId }: { siteId: string; costPerHour: number; partId: string },
): Promise<string> {
  const line = await database().line.create({
    data: { siteId, code, name: `Line ${code}`, costPerHour, bufferHours: 1, shiftsPerWeek: 15 },
  });
  const controller = await database().controller.create({
    data: { siteId, designation: `${code}-K1`, model: "Slate 5", firmware: null },
  });
  const machine = await database().machine.create({
    data: { lineId: line.id, code: "M1", name: "Former", controllerId: controller.id },
  });
  for (const axis of ["X1", "X2", "X3"]) {
    const { id: axisId } = await database().axis.create({ data: { machineId: machine.id, code: axis } });
    await database().position.create({
      data: { machineId: machine.id, axisId, itemClass: "drive", designation: `-U${axis}`, partId },
    });
  }
  return line.id;
}
