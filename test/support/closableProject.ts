import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readProjectClose } from "@/lib/data/closeOut";
import { closeThisProject } from "@/lib/data/closeProject";
import { stateForProject } from "@/lib/data/closeStatement";
import { fitProjectUnit } from "@/lib/data/fitChange";
import { addRemovedUnit } from "@/lib/data/releaseChange";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import { addRemoved, fitUnit } from "@/lib/schema/closing";
import { makeActor } from "./actors";
import { type FreshDatabase, freshDatabase } from "./database";
import { asOf, makeTwoSites, type TwoSites } from "./twoSites";

export const CODE = "SUD-01-R1";
const TUNED = "2026-10-20";
export const day = (text: string) => new Date(`${text}T00:00:00Z`);

let made: FreshDatabase;
let controllerId = "";
export let world: TwoSites;
export let engineer: Actor;
export let projectId = "";
export let places: { id: string; designation: string; machineId: string }[] = [];
export let oldPart = "";

/** Two sites in a fresh database, with an engineer of the southern one. */
export async function openWorld(name: string): Promise<void> {
  made = await freshDatabase(name);
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  engineer = await makeActor("engineer", world.south);
  oldPart = (await database().part.findFirstOrThrow({ where: { number: "BW-OK-020" } })).id;
  const lineId = world.lines["SUD-01"] ?? "";
  places = await database().position.findMany({
    where: { machine: { lineId } },
    orderBy: { designation: "asc" },
  });
  const machine = await database().machine.findFirstOrThrow({ where: { lineId } });
  controllerId = machine.controllerId ?? "";
}

export const closeWorld = () => made.close();

/** A project of the line with three axes that may be closed: one thing can be taken from it in each test. */
export async function makeClosable(): Promise<void> {
  await database().projectClosing.deleteMany();
  await database().project.deleteMany();
  await database().placement.deleteMany();
  await database().unit.deleteMany();
  await database().stockLot.deleteMany({ where: { bin: { startsWith: "P" } } });
  await database().position.updateMany({
    where: { id: { in: places.map(({ id }) => id) } },
    data: { partId: oldPart, evidence: "documented" },
  });
  await database().backup.deleteMany();
  await database().backup.create({
    data: { controllerId, kind: "program", takenOn: day("2026-10-21"), keptAt: "share" },
  });
  projectId = await makeProject();
  const results = ["usable", "needs_repair", "scrapped"] as const;
  for (const [i, { id }] of places.entries()) {
    const result = results[i] ?? "usable";
    await added({ positionId: id, serial: `OK${i}`, result, bin: result === "scrapped" ? "" : "P1" });
    await fitted({ positionId: id, serial: `HE${i}` });
  }
  for (const kind of ["register", "drawings", "levels"] as const) await stated(kind);
}

async function makeProject(): Promise<string> {
  const lineId = world.lines["SUD-01"] ?? "";
  const project = await database().project.create({
    data: {
      ...{ siteId: world.south, lineId, code: CODE, name: "Retrofit", currency: "PLN", budget: "1000.00" },
      status: "proving",
    },
  });
  const axes = await database().axis.findMany({ where: { machine: { lineId } } });
  for (const { id: axisId } of axes)
    await database().axisRecord.create({
      data: {
        ...{ projectId: project.id, axisId, acceptedOn: day("2026-11-01"), acceptedBy: "Engineer" },
        entries: {
          create: axisChecks.map(({ id: checkId }) => ({
            ...{ checkId, confirmed: true, asLeft: [1], by: "Technician", witness: "Engineer" },
            on: day(TUNED),
          })),
        },
      },
    });
  return project.id;
}

export const removedAs = (given: object = {}) =>
  addRemoved.parse({
    ...{
      projectId,
      positionId: "",
      plate: "bw ok 020",
      serial: "OK9",
      revision: "",
      removedOn: "2026-10-05",
    },
    ...{ result: "usable", testedBy: "Bench K", how: "two hours under load", testedOn: "2026-10-15" },
    ...{ bin: "P1", ...given },
  });

export async function added(given: object = {}) {
  const unit = await addRemovedUnit(engineer, removedAs(given));
  if (!unit.ok) throw new Error(unit.error.reason);
  return unit.value;
}

const fittedAs = (given: object = {}) =>
  fitUnit.parse({
    ...{ projectId, version: 0, plate: "TM-HE-020", revision: "A1", firmware: "2.4", added: false },
    ...{ fittedOn: "2026-10-06", ...given },
  });

async function fitted(given: object = {}) {
  const unit = await fitProjectUnit(engineer, fittedAs(given));
  if (!unit.ok) throw new Error(unit.error.reason);
  return unit.value;
}

export async function stated(kind: Parameters<typeof stateForProject>[1]["kind"], note = "") {
  const said = await stateForProject(engineer, { projectId, kind, statedBy: "Project lead", note });
  if (!said.ok) throw new Error(said.error.reason);
}

export async function file() {
  const found = await readProjectClose(engineer, CODE);
  if (!found) throw new Error("no project");
  return found;
}

export async function close(actor = engineer) {
  const { version, seen } = await file();
  return closeThisProject(actor, { projectId, version, seen });
}
