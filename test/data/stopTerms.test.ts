import { afterAll, beforeAll, expect, test } from "vitest";
import { database } from "@/lib/data/client";
import { loadGroupInput } from "@/lib/data/group/loadGroupInput";
import { type FreshDatabase, freshDatabase } from "@/test/support/database";
import { asOf, makeTwoSites, type TwoSites } from "@/test/support/twoSites";

let fresh: FreshDatabase;
let sites: TwoSites;
const day = (text: string) => new Date(`${text}T00:00:00Z`);

beforeAll(async () => {
  fresh = await freshDatabase("stopterms");
  sites = await makeTwoSites();
});
afterAll(() => fresh.close());

async function lineAt(code: string, on = asOf) {
  const { lines } = await loadGroupInput(database(), on);
  const line = lines.find((one) => one.code === code);
  if (!line) throw new Error(`no line ${code}`);
  return line;
}

test("fixed cost and steps come in euros at the budget rate, the shortest step first; none stated is none", async () => {
  await database().line.update({
    where: { code: "SUD-01" },
    data: {
      costFixed: 1000,
      costSteps: [
        { afterHours: 72, cost: 90000 },
        { afterHours: 48, cost: 40000.5 },
      ],
    },
  });
  expect(await lineAt("SUD-01")).toMatchObject({
    fixedCost: 250,
    costSteps: [
      { afterHours: 48, cost: 10000.125 },
      { afterHours: 72, cost: 22500 },
    ],
  });
  const plain = await lineAt("NOR-01");
  expect(plain).not.toHaveProperty("fixedCost");
  expect(plain).not.toHaveProperty("costSteps");
});

test("an approval that has run out leaves the cost known one step worse, from the day after on", async () => {
  await database().line.update({
    where: { code: "NOR-02" },
    data: {
      costEvidence: "documented",
      costOwner: "Plant controller",
      costApprovedOn: day("2026-01-01"),
      costValidUntil: day("2026-11-30"),
    },
  });
  expect((await lineAt("NOR-02", "2026-11-30")).costEvidence).toBe("documented");
  expect((await lineAt("NOR-02", "2026-12-01")).costEvidence).toBe("inferred");
});

interface Given {
  readonly code: string;
  readonly controllerId?: string;
  readonly networkId?: string;
}

/** A machine of the group on NOR-01 with one drive. */
async function addStandIn({ code, controllerId, networkId }: Given) {
  const lineId = sites.lines["NOR-01"] ?? "";
  const data = { lineId, code, name: `Former ${code}`, standbyGroup: "formers", standbyNeeded: 2 };
  const machine = await database().machine.create({
    data: { ...data, ...(controllerId ? { controllerId } : {}) },
  });
  const axis = await database().axis.create({
    data: { machineId: machine.id, code: "X1", ...(networkId ? { networkId } : {}) },
  });
  const part = await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } });
  await database().position.create({
    data: {
      ...{ machineId: machine.id, axisId: axis.id, partId: part.id },
      ...{ itemClass: "drive", designation: "-U1" },
    },
  });
}

test("machines with a mark come one by one, those on one network or controller with the rest of the line", async () => {
  await addStandIn({ code: "S1" });
  const before = await installedOn("NOR-01");
  expect(before).toEqual([
    { units: 3, standby: undefined },
    { units: 1, standby: { machineId: "S1", group: "formers", needed: 2 } },
  ]);
  const controller = await database().controller.findFirstOrThrow({ where: { designation: "NOR-01-K1" } });
  const network = await database().network.create({
    data: { siteId: sites.north, name: "ring 1", kind: "fibre_ring" },
  });
  await addStandIn({ code: "S2", networkId: network.id });
  await addStandIn({ code: "S3", networkId: network.id });
  await addStandIn({ code: "S4", controllerId: controller.id });
  await addStandIn({ code: "S5", controllerId: controller.id });
  expect(await installedOn("NOR-01")).toEqual([
    { units: 7, standby: undefined },
    { units: 1, standby: { machineId: "S1", group: "formers", needed: 2 } },
  ]);
});

async function installedOn(code: string) {
  const { installed } = await loadGroupInput(database(), asOf);
  return installed
    .filter(({ lineId }) => lineId === sites.lines[code])
    .map(({ units, standby }) => ({ units, standby }));
}
