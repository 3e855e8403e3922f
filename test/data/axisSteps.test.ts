import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { acceptAxis, setAxisEntry } from "@/lib/data/axisRecordChange";
import { readAxisSteps } from "@/lib/data/axisSteps";
import { markAxes, setRound, unmarkAxes } from "@/lib/data/axisStepsChange";
import { database } from "@/lib/data/client";
import { readProject } from "@/lib/data/project";
import { removeProject } from "@/lib/data/projectChange";
import { progress } from "@/lib/projects/progress";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import { axisEntry } from "@/lib/schema/axisRecord";
import type { AxisStepKind } from "@/lib/schema/axisStep";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let projectId = "";
const CODE = "SUD-01-R1";
const technician = () => personWith("technician", world.south);
const engineer = () => personWith("engineer", world.south);

beforeAll(async () => {
  made = await freshDatabase("axisSteps");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  const lineId = world.lines["SUD-01"] ?? "";
  const project = await database().project.create({
    data: {
      ...{ siteId: world.south, lineId, code: CODE, name: "Retrofit", currency: "PLN", budget: "100.00" },
      milestones: {
        create: [
          { sequence: 1, name: "Surveyed", weight: 60, axisStep: "surveyed" },
          { sequence: 2, name: "Accepted", weight: 40, axisStep: "accepted", axisRound: 2 },
        ],
      },
    },
  });
  projectId = project.id;
});

afterAll(() => made.close());

async function axes() {
  const found = await readAxisSteps(technician(), CODE);
  if (!found) throw new Error("no project");
  return found.axes;
}
const idOf = async (place: number) => (await axes())[place]?.id ?? "";
async function earned() {
  const project = await readProject(technician(), CODE);
  return project && progress(project, asOf).earned;
}
const mark = (axisIds: string[], step: AxisStepKind, on = "2026-11-20") =>
  markAxes(technician(), { projectId, axisIds, step, on, by: "Technician A" });

describe("steps of axes", () => {
  it("are closed to other sites and to those who only read, and to axes of another line", async () => {
    const id = await idOf(0);
    const given = { projectId, axisIds: [id], step: "surveyed" as const, on: "2026-11-20", by: "A" };
    expect(await readAxisSteps(personWith("viewer", world.north), CODE)).toBeNull();
    for (const other of [personWith("engineer", world.north), personWith("viewer", world.south)])
      expect(await markAxes(other, given)).toMatchObject({ error: { code: "missing" } });
    const foreign = await database().axis.findFirstOrThrow({
      where: { machine: { line: { code: "NOR-01" } } },
    });
    expect(await markAxes(technician(), { ...given, axisIds: [foreign.id] })).toMatchObject({
      error: { code: "missing" },
    });
  });

  it("raise the earned share by weight × axes done / axes, and back", async () => {
    expect(await earned()).toBe(0);
    expect((await mark([await idOf(0)], "surveyed")).ok).toBe(true);
    expect(await earned()).toBeCloseTo(0.6 / 3, 12);
    const all = (await axes()).map(({ id }) => id);
    const marked = await mark(all, "surveyed");
    expect(marked).toMatchObject({ ok: true, value: { left: [{ reason: "is marked already" }] } });
    expect(await earned()).toBeCloseTo(0.6, 12);
    const { version } = await database().project.findUniqueOrThrow({ where: { id: projectId } });
    expect(await removeProject(engineer(), { projectId, version })).toMatchObject({
      error: { code: "impossible" },
    });
    const back = await unmarkAxes(technician(), {
      projectId,
      axisIds: marked.ok ? [...marked.value.axisIds] : [],
      step: "surveyed",
    });
    expect(back).toMatchObject({
      ok: true,
      value: { former: [{ on: "2026-11-20", by: "Technician A" }, {}] },
    });
    expect(await earned()).toBeCloseTo(0.2, 12);
    expect((await mark(all, "surveyed")).ok).toBe(true);
  });

  it("are refused out of order, of a day to come, and while a later one stands", async () => {
    const id = await idOf(0);
    expect(await mark([id], "wired")).toMatchObject({
      error: { reason: expect.stringContaining("is not engineered yet") },
    });
    expect(await mark([id], "engineered", "2026-12-01")).toMatchObject({
      error: { fields: { on: expect.anything() } },
    });
    expect((await mark([id], "engineered")).ok).toBe(true);
    expect(await unmarkAxes(technician(), { projectId, axisIds: [id], step: "surveyed" })).toMatchObject({
      error: { reason: expect.stringContaining("is engineered already") },
    });
  });

  it("count by round, and an axis that stays as it is counts nowhere", async () => {
    const [first, second, third] = (await axes()).map(({ id }) => id) as [string, string, string];
    expect((await setRound(engineer(), { projectId, axisIds: [second], round: 2 })).ok).toBe(true);
    expect((await setRound(engineer(), { projectId, axisIds: [third], round: 0 })).ok).toBe(true);
    expect((await axes()).map(({ round }) => round)).toEqual([1, 2, 0]);
    const project = await readProject(technician(), CODE);
    expect(project?.milestones.map((one) => one.axes?.total)).toEqual([2, 1]);
    expect(await setRound(technician(), { projectId, axisIds: [first], round: 2 })).toMatchObject({
      error: { code: "missing" },
    });
  });
});

describe("an axis with a record", () => {
  const READINGS: Readonly<Record<string, object>> = {
    counts: { asFound: "4096", asLeft: "4096" },
    scaling: { asFound: "1000", asLeft: "1000" },
    travel: { asFound: "100", asLeft: "100" },
    homing: { asFound: "0", limit: "0.02", asLeft: "0 0 0 0 0 0 0 0 0 0" },
    holding: { limit: "1", asLeft: "0.2" },
    stopping: { asFound: "95", limit: "120", asLeft: "94 94 94 94 94 94 94 94 94 94" },
    "lost-cycles": { asLeft: "0" },
    following: { asFound: "0.2", asLeft: "0.2" },
    torque: { limit: "80", asLeft: "60" },
    rate: { asFound: "200", asLeft: "205" },
  };
  const blank = {
    asFound: "",
    limit: "",
    asLeft: "",
    confirmed: "yes",
    notApplicable: "",
    instrument: "gauge",
  };
  const names = { by: "Technician A", witness: "Engineer B", on: "2026-11-28" };

  interface Given {
    readonly version?: number;
    readonly witness?: string;
  }
  async function write(axisId: string, checkId: string, { version = 0, ...given }: Given = {}) {
    const { unit } = axisChecks.find(({ id }) => id === checkId) ?? { unit: null };
    const confirmed = unit === null ? {} : { confirmed: "" };
    const entry = axisEntry.parse({ ...blank, ...confirmed, ...names, ...READINGS[checkId], ...given });
    return setAxisEntry(engineer(), { projectId, axisId, checkId, version, entry });
  }
  const stepsOf = async (id: string) => (await axes()).find((axis) => axis.id === id)?.steps ?? {};

  it("is validated and accepted when the record says so, and not by hand", async () => {
    const id = await idOf(1);
    for (const step of ["engineered", "wired", "powered", "tuned"] as const)
      expect((await mark([id], step)).ok).toBe(true);
    for (const { id: checkId } of axisChecks) expect((await write(id, checkId)).ok).toBe(true);
    expect((await stepsOf(id)).validated).toEqual({ on: "2026-11-28", by: "Technician A and Engineer B" });
    expect((await stepsOf(id)).accepted).toBeUndefined();
    expect(await mark([id], "accepted", "2026-11-29")).toMatchObject({
      error: { reason: expect.stringContaining("has a record") },
    });
    expect((await acceptAxis(engineer(), { projectId, axisId: id, accepted: true })).ok).toBe(true);
    expect((await stepsOf(id)).accepted).toEqual({ on: asOf, by: "Person" });
    expect(await earned()).toBe(1);
  });

  it("is neither any more once the record says otherwise", async () => {
    const id = await idOf(1);
    expect(await unmarkAxes(technician(), { projectId, axisIds: [id], step: "accepted" })).toMatchObject({
      error: { reason: expect.stringContaining("has a record") },
    });
    expect((await acceptAxis(engineer(), { projectId, axisId: id, accepted: false })).ok).toBe(true);
    expect((await stepsOf(id)).accepted).toBeUndefined();
    expect((await write(id, "safety", { witness: "", version: 1 })).ok).toBe(true);
    expect((await stepsOf(id)).validated).toBeUndefined();
    expect(await earned()).toBe(0.6);
  });
});
