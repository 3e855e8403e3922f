import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readPlan, readPlans } from "@/lib/data/plan";
import { readCandidates } from "@/lib/data/planCandidates";
import { decidePlan, deletePlan, movePlan } from "@/lib/data/planChange";
import { keepPlan } from "@/lib/data/planKeep";
import { startProject } from "@/lib/data/projectStart";
import { retrofitCost } from "@/lib/retrofit/costNorm";
import { planCut } from "@/lib/view/planCut";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
const everywhere = { admin: personWith("admin", null), viewer: personWith("viewer", null) };

beforeAll(async () => {
  made = await freshDatabase("plan");
  world = await makeTwoSites();
});

afterAll(() => made.close());

async function keep(actor: Actor, changes: object = {}): Promise<string> {
  const kept = await keepPlan(actor, await wish(actor, changes));
  if (!kept.ok) throw new Error(kept.error.reason);
  return kept.value.id;
}

async function wish(actor: Actor, changes: object = {}) {
  const { dataVersion } = await readCandidates(actor, asOf);
  const plain = { name: "Retrofits", year: 2027, budget: "100000", by: "loss" as const, fill: false };
  return { ...plain, pinnedIn: [], pinnedOut: [], costs: {}, asOf, dataVersion, ...changes };
}

async function fund(actor: Actor, planId: string) {
  const forward = await movePlan(actor, { planId, version: 1, to: "put_forward" });
  const funded = await decidePlan(actor, { planId, version: 2, to: "funded" });
  expect([forward.ok, funded.ok]).toEqual([true, true]);
}

describe("the lines a budget may reach", () => {
  it("carry an estimate of what is out of open supply, and none where all parts are open", async () => {
    const { lines } = await readCandidates(everywhere.viewer, asOf);
    const [first, , , open] = lines;
    expect(first?.scope).toMatchObject({
      machines: 1,
      drives: 3,
      motors: 0,
      controllers: 0,
      drivePrice: null,
    });
    expect(first?.estimate).toEqual(
      retrofitCost({ machines: 1, drives: 3, motors: 0, controllers: 0, hmis: 0, drivePrice: null }),
    );
    expect([open?.code, open?.estimate]).toEqual(["SUD-02", null]);
  });

  it("are those where the person may plan, with their places in the whole group", async () => {
    const found = await readCandidates(personWith("engineer", world.north), asOf);
    expect(found.lines.map(({ code, rankByLoss }) => [code, rankByLoss])).toEqual([
      ["NOR-01", 1],
      ["NOR-02", 3],
    ]);
    expect(found.groupLines).toBe(4);
    expect(JSON.stringify(found)).not.toMatch(/SUD/);
  });
});

describe("a plan", () => {
  it("keeps the cut as it is made from the stored data, not as the page tells it", async () => {
    const id = await keep(everywhere.admin, { costs: { "NOR-01": "90000" } });
    const plan = await readPlan(everywhere.viewer, id);
    expect(plan?.rows.map(({ code, rank, funded }) => [code, rank, funded])).toEqual([
      ["NOR-01", 1, true],
      ["SUD-01", 2, false],
      ["NOR-02", 3, false],
    ]);
    const { lines } = await readCandidates(everywhere.admin, asOf);
    const cut = planCut(lines, {
      ...{ budget: 100000, by: "loss", fill: false, pinnedIn: [], pinnedOut: [] },
      costs: { "NOR-01": 90000 },
    });
    expect(plan?.totals?.spent).toBe(90000);
    expect(plan?.totals?.fundedLoss).toBeCloseTo(cut.fundedLoss ?? Number.NaN, 1);
    expect(await database().auditEntry.count({ where: { deed: "plan:keep", entityId: id } })).toBe(1);
  });

  it("is refused on data that moved on, with an unknown line, and with pins above the budget", async () => {
    const old = await wish(everywhere.admin);
    const before = await database().plan.count();
    const refused = async (changes: object) => keepPlan(everywhere.admin, { ...old, ...changes });
    expect(await refused({ dataVersion: old.dataVersion - 1 })).toMatchObject({
      error: { code: "conflict" },
    });
    expect(await refused({ pinnedIn: ["XXX-99"] })).toMatchObject({ error: { code: "missing" } });
    expect(await refused({ budget: "1", pinnedIn: ["NOR-01"] })).toMatchObject({
      error: { code: "impossible" },
    });
    expect(await database().plan.count()).toBe(before);
  });

  it("cannot name a line of a site where the person may not plan", async () => {
    const engineer = personWith("engineer", world.north);
    const asked = await wish(engineer, { pinnedIn: ["SUD-01"] });
    expect(await keepPlan(engineer, asked)).toMatchObject({ ok: false, error: { code: "missing" } });
  });

  it("shows somebody of one site its own lines and no sums of others", async () => {
    const id = await keep(everywhere.admin);
    const seen = await readPlan(personWith("viewer", world.north), id);
    expect(seen?.rows.map(({ code }) => code)).toEqual(["NOR-01", "NOR-02"]);
    expect(seen?.totals).toBeNull();
    expect(JSON.stringify(seen)).not.toMatch(/SUD|100000/);
  });

  it("is not there for somebody without a line in it, just as one that does not exist", async () => {
    const id = await keep(personWith("engineer", world.north));
    const south = personWith("viewer", world.south);
    expect(await readPlan(south, id)).toBeNull();
    expect(await readPlan(south, randomUUID())).toBeNull();
    expect((await readPlans(south)).some((plan) => plan.id === id)).toBe(false);
  });

  it("is put forward, funded and taken back, each by who may", async () => {
    const planId = await keep(everywhere.admin);
    const [engineer, approver] = [personWith("engineer", null), personWith("approver", null)];
    expect(await decidePlan(approver, { planId, version: 1, to: "funded" })).toMatchObject({
      error: { code: "impossible" },
    });
    expect((await movePlan(engineer, { planId, version: 1, to: "put_forward" })).ok).toBe(true);
    expect(await decidePlan(engineer, { planId, version: 2, to: "funded" })).toMatchObject({
      error: { code: "missing" },
    });
    expect((await decidePlan(approver, { planId, version: 2, to: "funded" })).ok).toBe(true);
    expect((await decidePlan(approver, { planId, version: 3, to: "put_forward" })).ok).toBe(true);
    expect((await readPlan(engineer, planId))?.status).toBe("put_forward");
  });

  it("is changed by one of two who saw the same, and the other hears of it", async () => {
    const planId = await keep(everywhere.admin);
    const step = () => movePlan(everywhere.admin, { planId, version: 1, to: "put_forward" });
    const answers = await Promise.all([step(), step()]);
    expect(answers.filter(({ ok }) => ok)).toHaveLength(1);
    expect(answers.find(({ ok }) => !ok)).toMatchObject({ error: { code: "conflict" } });
  });

  it("of more sites than their own nobody changes or throws away", async () => {
    const planId = await keep(everywhere.admin);
    const engineer = personWith("engineer", world.north);
    for (const id of [planId, randomUUID()]) {
      expect(await movePlan(engineer, { planId: id, version: 1, to: "put_forward" })).toMatchObject({
        error: { code: "missing" },
      });
      expect(await deletePlan(engineer, { planId: id, version: 1 })).toMatchObject({
        error: { code: "missing" },
      });
    }
    expect((await readPlan(everywhere.admin, planId))?.status).toBe("draft");
  });

  it("is thrown away as a draft and not later", async () => {
    const planId = await keep(everywhere.admin);
    await movePlan(everywhere.admin, { planId, version: 1, to: "put_forward" });
    expect(await deletePlan(everywhere.admin, { planId, version: 2 })).toMatchObject({
      error: { code: "impossible" },
    });
    await movePlan(everywhere.admin, { planId, version: 2, to: "draft" });
    expect((await deletePlan(everywhere.admin, { planId, version: 3 })).ok).toBe(true);
    expect(await readPlan(everywhere.admin, planId)).toBeNull();
    expect(await database().planLine.count({ where: { planId } })).toBe(0);
  });
});

describe("the start of a project", () => {
  async function fundedLine(code: string): Promise<{ planId: string; planLineId: string }> {
    // Money for one line only.
    const costs = { "NOR-01": "90000", "NOR-02": "90000", "SUD-01": "90000" };
    const planId = await keep(everywhere.admin, { pinnedIn: [code], costs });
    await fund(everywhere.admin, planId);
    const plan = await readPlan(everywhere.admin, planId);
    const planLineId = plan?.rows.find((row) => row.code === code)?.id ?? "";
    return { planId, planLineId };
  }

  it("gives the cost in the site's money at the budget rate and milestones that sum to the whole", async () => {
    const { planId, planLineId } = await fundedLine("SUD-01");
    const started = await startProject(personWith("engineer", world.south), { planLineId });
    expect(started).toMatchObject({ ok: true, value: { code: "SUD-01-R1" } });
    const project = await database().project.findUniqueOrThrow({
      where: { code: "SUD-01-R1" },
      include: { milestones: true, planLine: true, budgetItems: true, tasks: true, gates: true },
    });
    expect([project.budgetRate?.toFixed(), project.budgetRatedOn?.toISOString().slice(0, 10)]).toEqual([
      "4",
      "2026-01-01",
    ]);
    // Nothing is known of a successor on this line, so there is no scope to split the budget by.
    expect(project.budgetItems).toEqual([]);
    expect(project.currency).toBe("PLN");
    expect(project.budget.toFixed(2)).toBe(project.planLine?.cost.mul(4).toFixed(2));
    expect(project.milestones.reduce((sum, { weight }) => sum + weight.toNumber(), 0)).toBe(100);
    expect(project.milestones.filter(({ axisStep }) => axisStep !== null)).toHaveLength(7);
    expect(project.tasks.filter(({ inWindow }) => inWindow)).toHaveLength(5);
    expect(project.tasks.every(({ plannedStart }) => plannedStart === null)).toBe(true);
    expect(project.gates.map(({ decision, taskId }) => [decision, taskId !== null])).toEqual([
      ["open", true],
      ["open", true],
    ]);
    expect(await startProject(everywhere.admin, { planLineId })).toMatchObject({
      error: { code: "conflict" },
    });
    expect(await decidePlan(everywhere.admin, { planId, version: 3, to: "put_forward" })).toMatchObject({
      error: { code: "impossible" },
    });
  });

  it("is refused at a site where the person may not, just as for a line that is not there", async () => {
    const { planLineId } = await fundedLine("SUD-01");
    const engineer = personWith("engineer", world.north);
    const foreign = await startProject(engineer, { planLineId });
    expect(foreign).toEqual(await startProject(engineer, { planLineId: randomUUID() }));
    expect(foreign.ok).toBe(false);
  });

  it("is refused for a line below the funding line, and before the plan is funded", async () => {
    const { planId } = await fundedLine("NOR-01");
    const below = (await readPlan(everywhere.admin, planId))?.rows.find((row) => !row.funded);
    expect(await startProject(everywhere.admin, { planLineId: below?.id ?? "" })).toMatchObject({
      error: { code: "impossible" },
    });
    const draft = await readPlan(everywhere.admin, await keep(everywhere.admin));
    expect(await startProject(everywhere.admin, { planLineId: draft?.rows[0]?.id ?? "" })).toMatchObject({
      error: { code: "impossible" },
    });
  });
});
