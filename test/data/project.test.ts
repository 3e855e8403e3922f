import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readProject, readProjects } from "@/lib/data/project";
import { changeProject, removeProject, setMilestone } from "@/lib/data/projectChange";
import { addCost, removeCost } from "@/lib/data/projectCost";
import { projectFigures } from "@/lib/view/project";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let projectId = "";
const day = (text: string) => new Date(`${text}T00:00:00Z`);

beforeAll(async () => {
  made = await freshDatabase("project");
  world = await makeTwoSites();
  const lineId = world.lines["SUD-01"] ?? "";
  const project = await database().project.create({
    data: {
      ...{ siteId: world.south, lineId, code: "SUD-01-R1", name: "Retrofit", currency: "PLN" },
      budget: "4900000.00",
      milestones: {
        create: [
          { sequence: 1, name: "Surveyed", weight: 55, dueOn: day("2026-03-01"), doneOn: day("2026-03-05") },
          { sequence: 2, name: "Delivered", weight: 15, dueOn: day("2026-10-30") },
          { sequence: 3, name: "Accepted", weight: 30, dueOn: day("2027-02-26") },
        ],
      },
    },
  });
  projectId = project.id;
  await addCost(engineer(), entry({ kind: "actual", amount: "3600000.00", reference: "L-1" }));
});

afterAll(() => made.close());

const engineer = () => personWith("engineer", world.south);
const entry = (given: object) => ({
  ...{ projectId, kind: "committed" as const, amount: "610000.00", spentOn: "2026-11-06" },
  ...{ text: "Motors", reference: "PO-1", currency: null, costClass: null, orderReference: null },
  ...given,
});

async function file() {
  const project = await readProject(engineer(), "SUD-01-R1");
  if (!project) throw new Error("no project");
  return project;
}

describe("a project", () => {
  it("is not found at another site, just as one that is not there", async () => {
    const north = personWith("viewer", world.north);
    expect(await readProject(north, "SUD-01-R1")).toBeNull();
    expect(await readProject(north, "XXX-99-R1")).toBeNull();
    expect(await readProjects(north)).toEqual([]);
  });

  // The worked example: EV = 2.695 M, CPI = 0.75, SPI = 0.79, trend 6.5 M (GAO-09-3SP formulas, from memory).
  it("earns and plans by weighted milestones on the day", async () => {
    const figures = projectFigures(await file(), asOf);
    expect([figures.planned, figures.earned]).toEqual([0.7, 0.55]);
    expect(figures.control?.cpi).toBeCloseTo(2.695 / 3.6, 9);
    expect(figures.control?.spi).toBeCloseTo(0.55 / 0.7, 9);
    expect(figures.control?.eac.trend).toBeCloseTo(4.9e6 / (2.695 / 3.6), 2);
    expect(figures.overdue).toHaveLength(1);
    const earlier = projectFigures(await file(), "2026-03-02");
    expect([earlier.earned, earlier.actual]).toEqual([0, "0.00"]);
  });

  it("leaves the store as plain values with amounts as decimal text", async () => {
    const project = await file();
    expect(JSON.parse(JSON.stringify(project))).toEqual(project);
    expect(project.budget).toBe("4900000.00");
  });

  it("is changed once from one version, and back", async () => {
    const { version } = await file();
    const wanted = { status: "in_work", forecast: "6200000.00", cause: "Motors unmatched" } as const;
    const asked = { projectId, version, ...wanted, startsOn: "2025-11-17", endsOn: null };
    expect((await changeProject(engineer(), asked)).ok).toBe(true);
    expect(await changeProject(engineer(), asked)).toMatchObject({ error: { code: "conflict" } });
    expect(await file()).toMatchObject({ ...wanted, startsOn: "2025-11-17", version: version + 1 });
  });

  it("moves the figures when it is parked or taken up again, and by nothing else of it", async () => {
    const change = async (wanted: { status: "in_work" | "parked"; forecast: string }) => {
      const { version } = await file();
      const asked = { projectId, version, ...wanted, cause: "", startsOn: null, endsOn: null };
      const before = await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
      expect((await changeProject(engineer(), asked)).ok).toBe(true);
      const after = await database().dataVersion.findUniqueOrThrow({ where: { id: 1 } });
      return Number(after.version - before.version);
    };
    expect(await change({ status: "in_work", forecast: "6300000.00" })).toBe(0);
    expect(await change({ status: "parked", forecast: "6300000.00" })).toBe(1);
    expect(await change({ status: "parked", forecast: "6200000.00" })).toBe(0);
    expect(await change({ status: "in_work", forecast: "6200000.00" })).toBe(1);
  });

  it("is taken away only while nothing is booked or done", async () => {
    const { version } = await file();
    expect(await removeProject(engineer(), { projectId, version })).toMatchObject({
      error: { code: "impossible" },
    });
    const lineId = world.lines["SUD-02"] ?? "";
    const fresh = await database().project.create({
      data: { siteId: world.south, lineId, code: "SUD-02-R1", name: "New", currency: "PLN", budget: 1000 },
    });
    expect((await removeProject(engineer(), { projectId: fresh.id, version: 1 })).ok).toBe(true);
    expect(await readProject(engineer(), "SUD-02-R1")).toBeNull();
  });
});

describe("the ledger of a project", () => {
  it("takes an entry, once a number, and gives it back with its words in the audit", async () => {
    const before = projectFigures(await file(), asOf).committed;
    const added = await addCost(engineer(), entry({}));
    expect(projectFigures(await file(), asOf).committed).toBe("610000.00");
    expect(await addCost(engineer(), entry({ amount: "1.00" }))).toMatchObject({
      error: { code: "conflict", fields: { reference: expect.stringContaining("PO-1") } },
    });
    const costId = added.ok ? added.value.id : "";
    expect((await removeCost(engineer(), { projectId, costId })).ok).toBe(true);
    expect(projectFigures(await file(), asOf).committed).toBe(before);
    const kept = await database().auditEntry.findFirst({
      where: { entityId: costId },
      orderBy: { at: "desc" },
    });
    expect(kept?.before).toMatchObject({ amount: "610000.00", reference: "PO-1" });
  });

  it("is closed to other sites and to those who may only read or plan", async () => {
    const others = [
      personWith("engineer", world.north),
      personWith("viewer", world.south),
      personWith("approver", null),
    ];
    const costId = (await file()).costs[0]?.id ?? "";
    for (const actor of others) {
      const foreign = await addCost(actor, entry({ reference: "PO-9" }));
      expect(foreign).toEqual(await addCost(actor, entry({ projectId: randomUUID(), reference: "PO-9" })));
      expect(foreign.ok).toBe(false);
      expect((await removeCost(actor, { projectId, costId })).ok).toBe(false);
    }
    expect((await file()).costs.map(({ reference }) => reference)).toEqual(["L-1"]);
  });
});

describe("a milestone", () => {
  it("is set done from the days the person saw, and back", async () => {
    const two = (await file()).milestones[1];
    if (!two) throw new Error("no milestone");
    const seen = { dueOn: two.dueOn, doneOn: null };
    const wanted = { dueOn: two.dueOn, doneOn: "2026-11-20" };
    const ids = { projectId, milestoneId: two.id };
    expect((await setMilestone(engineer(), { ...ids, seen, wanted })).ok).toBe(true);
    expect(projectFigures(await file(), asOf).earned).toBeCloseTo(0.7, 9);
    expect(await setMilestone(engineer(), { ...ids, seen, wanted })).toMatchObject({
      error: { code: "conflict" },
    });
    expect((await setMilestone(engineer(), { ...ids, seen: wanted, wanted: seen })).ok).toBe(true);
    expect(projectFigures(await file(), asOf).earned).toBeCloseTo(0.55, 9);
  });

  it("is not changed from another site", async () => {
    const {
      id: milestoneId,
      dueOn,
      doneOn,
    } = (await file()).milestones[0] ?? { id: "", dueOn: null, doneOn: null };
    const seen = { dueOn, doneOn };
    const asked = { projectId, milestoneId, seen, wanted: { dueOn, doneOn: null } };
    expect(await setMilestone(personWith("engineer", world.north), asked)).toMatchObject({
      error: { code: "missing" },
    });
    expect((await file()).milestones[0]?.doneOn).toBe("2026-03-05");
  });
});
