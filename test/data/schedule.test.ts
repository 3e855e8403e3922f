import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { addGateItem, decideGate, setGateItem } from "@/lib/data/gateChange";
import { readProjectCalendar } from "@/lib/data/projectCalendar";
import { createTasks } from "@/lib/data/projectTasks";
import { readSchedule } from "@/lib/data/schedule";
import { markTask, replan } from "@/lib/data/scheduleChange";
import { addTask, changeTask, removeTask } from "@/lib/data/taskChange";
import { templateTasks, usualTasks } from "@/lib/projects/usualTasks";
import { replan as planInput } from "@/lib/schema/schedule";
import { calendarView } from "@/lib/view/projectCalendar";
import { scheduleClashes, scheduleView } from "@/lib/view/schedule";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, personWith, type TwoSites } from "../support/twoSites";

let made: FreshDatabase;
let world: TwoSites;
let projectId = "";
const CODE = "SUD-01-R1";
const day = (text: string) => new Date(`${text}T00:00:00Z`);
const engineer = () => personWith("engineer", world.south);
const elsewhere = () => [personWith("engineer", world.north), personWith("viewer", world.south)];

beforeAll(async () => {
  made = await freshDatabase("schedule");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  const lineId = world.lines["SUD-01"] ?? "";
  const project = await database().project.create({
    data: {
      ...{ siteId: world.south, lineId, code: CODE, name: "Retrofit", currency: "PLN", budget: "100.00" },
      startsOn: day("2026-11-30"),
      milestones: {
        create: [
          { sequence: 1, name: "Surveyed", weight: 50, axisStep: "surveyed" },
          { sequence: 2, name: "Accepted", weight: 50 },
        ],
      },
    },
  });
  projectId = project.id;
  await database().$transaction((tx) => createTasks(tx, { projectId, tasks: usualTasks(templateTasks()) }));
  await database().shutdownWindow.create({
    data: { siteId: world.south, name: "Summer", startsOn: day("2027-07-05"), endsOn: day("2027-07-30") },
  });
});

afterAll(() => made.close());

async function file() {
  const found = await readSchedule(engineer(), CODE);
  if (!found) throw new Error("no schedule");
  return found;
}
async function taskOf(code: string) {
  const found = (await file()).tasks.find((task) => task.code === code);
  if (!found) throw new Error(`no task ${code}`);
  return found;
}
async function viewNow() {
  const view = scheduleView(await file(), {}, asOf);
  if (!view.ok) throw new Error("refused");
  return view.value;
}
const keep = (
  seen: number,
  reason: string,
  tasks: { id: string; days: number; notBefore: string | null }[] = [],
) => replan(engineer(), { projectId, seen, reason, tasks });

describe("the schedule of a project", () => {
  it("is not found at another site, just as one that is not there", async () => {
    const north = personWith("viewer", world.north);
    expect(await readSchedule(north, CODE)).toBeNull();
    expect(await readSchedule(north, "XXX-99-R1")).toBeNull();
    expect((await readProjectCalendar(north, asOf)).projects).toEqual([]);
  });

  it("leaves the store as plain values, and the first plan dates tasks, milestones and the end", async () => {
    expect(JSON.parse(JSON.stringify(await file()))).toEqual(await file());
    expect((await file()).milestones.map(({ dueOn }) => dueOn)).toEqual([null, null]);
    expect(await keep(0, "First plan")).toMatchObject({ ok: true, value: { number: 1 } });
    const kept = await file();
    const { finish } = await viewNow();
    expect(
      kept.tasks.every((task) => task.plannedStart !== null && task.baselineStart === task.plannedStart),
    ).toBe(true);
    expect(kept.endsOn).toBe(finish);
    expect(kept.milestones[0]?.dueOn).toBe((await taskOf("P1")).plannedFinish);
  });

  it("names the window tasks that lie in no shutdown, and where they would fit", async () => {
    const clashes = scheduleClashes(await file(), await viewNow());
    expect(clashes.find((text) => text.startsWith("W1 "))).toContain("It would fit from 5 Jul 2027");
  });

  it("another plan moves followers and the end, keeps the former one, and the baseline stays", async () => {
    const [before, w1] = [await file(), await taskOf("W1")];
    expect(planInput.safeParse({ projectId, seen: 1, reason: "  ", tasks: [] }).success).toBe(false);
    const wanted = [{ id: w1.id, days: w1.days + 1, notBefore: "2027-07-05" }];
    expect((await keep(1, "Production gives July only", wanted)).ok).toBe(true);
    const after = await file();
    expect(await taskOf("W1")).toMatchObject({
      plannedStart: "2027-07-05",
      days: w1.days + 1,
      baselineStart: w1.plannedStart,
    });
    expect((await taskOf("W2")).plannedStart ?? "").toMatch(/^2027-07/);
    expect((after.replans[0]?.after.at(-1)?.finish ?? "") > (before.endsOn ?? "")).toBe(true);
    const kept = after.replans[0];
    expect(kept).toMatchObject({ number: 2, reason: "Production gives July only", madeBy: "Person" });
    expect(kept?.before.find(({ code }) => code === "W1")?.start).toBe(w1.plannedStart);
    expect(scheduleClashes(after, await viewNow()).filter((text) => text.startsWith("W"))).toEqual([]);
  });

  it("a plan made on one that is no longer in force is refused with its reason, and changes nothing", async () => {
    const b1 = await taskOf("B1");
    const refused = await keep(1, "Too late", [{ id: b1.id, days: 99, notBefore: null }]);
    expect(refused).toMatchObject({ ok: false, error: { code: "conflict" } });
    expect(refused.ok ? "" : refused.error.reason).toContain("Production gives July only");
    expect((await taskOf("B1")).days).toBe(b1.days);
  });

  it("is closed to other sites and to those who may only read", async () => {
    const { id: taskId } = await taskOf("B1");
    const none = { startedOn: null, finishedOn: null };
    for (const other of elsewhere()) {
      expect(await replan(other, { projectId, seen: 2, reason: "x", tasks: [] })).toMatchObject({
        error: { code: "missing" },
      });
      expect(await markTask(other, { projectId, taskId, seen: none, wanted: none })).toMatchObject({
        error: { code: "missing" },
      });
    }
  });
});

describe("a task", () => {
  const none = { startedOn: null, finishedOn: null };
  const began = { startedOn: asOf, finishedOn: null };

  it("begins and ends on days that have been, once, and back", async () => {
    const { id: taskId } = await taskOf("P1");
    const mark = (
      seen: typeof began | typeof none,
      wanted: { startedOn: string | null; finishedOn: string | null },
    ) => markTask(engineer(), { projectId, taskId, seen, wanted });
    expect(await mark(none, { startedOn: "2026-12-01", finishedOn: null })).toMatchObject({
      error: { code: "invalid" },
    });
    expect(await mark(none, { startedOn: null, finishedOn: asOf })).toMatchObject({
      error: { code: "invalid" },
    });
    expect((await mark(none, began)).ok).toBe(true);
    expect(await mark(none, began)).toMatchObject({ error: { code: "conflict" } });
    expect((await mark(began, none)).ok).toBe(true);
    expect((await taskOf("P1")).startedOn).toBeNull();
  });

  it("is refused a circle by name, a code that is taken and a link to another project", async () => {
    const [p1, a4] = [await taskOf("P1"), await taskOf("A4")];
    const { id: taskId, version, code, name, inWindow, who, crews, engineers, milestoneId } = p1;
    const said = { code, name, inWindow, who, crews, engineers, milestoneId };
    const ids = { projectId, taskId, version };
    const circle = await changeTask(engineer(), { ...ids, ...said, after: [{ id: a4.id, lag: 0 }] });
    expect(circle).toMatchObject({ ok: false, error: { code: "invalid" } });
    expect(circle.ok ? "" : circle.error.reason).toMatch(/circle: .*P1.*A4|circle: .*A4.*P1/);
    expect(await changeTask(engineer(), { ...ids, ...said, code: "A4", after: [] })).toMatchObject({
      error: { fields: { code: expect.stringContaining("A4") } },
    });
    const lost = [{ id: "00000000-0000-8000-8000-000000000000", lag: 0 }];
    expect(await changeTask(engineer(), { ...ids, ...said, after: lost })).toMatchObject({ ok: false });
    expect((await taskOf("P1")).after).toEqual([]);
  });

  it("is added, waits for another, and is taken away while nothing hangs on it", async () => {
    const b2 = await taskOf("B2");
    const said = { inWindow: false, who: "", crews: null, engineers: null, milestoneId: null };
    const added = await addTask(engineer(), {
      ...{ projectId, days: 3, code: "X1", name: "Scaffold", ...said },
      after: [{ id: b2.id, lag: 2 }],
    });
    expect(added.ok).toBe(true);
    const x1 = await taskOf("X1");
    expect(x1.after).toEqual([{ id: b2.id, lag: 2 }]);
    expect(await removeTask(engineer(), { projectId, taskId: b2.id, version: b2.version })).toMatchObject({
      error: { reason: expect.stringContaining("X1") },
    });
    expect((await removeTask(engineer(), { projectId, taskId: x1.id, version: 1 })).ok).toBe(true);
    expect((await file()).tasks.some(({ code }) => code === "X1")).toBe(false);
  });
});

describe("a gate", () => {
  async function gateOf(name: string) {
    const found = (await file()).gates.find((gate) => gate.name === name);
    if (!found) throw new Error("no gate");
    return found;
  }
  const decide = (gate: { id: string; version: number }, decision: "open" | "passed" | "held", reason = "") =>
    decideGate(engineer(), { projectId, gateId: gate.id, version: gate.version, decision, reason });

  it("with open items cannot be passed, and its task cannot start; with all of them it can", async () => {
    const w1 = await taskOf("W1");
    const none = { startedOn: null, finishedOn: null };
    const start = () =>
      markTask(engineer(), {
        projectId,
        taskId: w1.id,
        seen: none,
        wanted: { startedOn: asOf, finishedOn: null },
      });
    const gate = await gateOf("Go or no-go");
    const refused = await decide(gate, "passed");
    expect(refused).toMatchObject({
      error: { code: "impossible", reason: expect.stringContaining("5 items are open") },
    });
    expect(await start()).toMatchObject({ error: { reason: expect.stringContaining("Go or no-go") } });
    for (const { id: itemId } of gate.items)
      expect((await setGateItem(engineer(), { projectId, itemId, seen: false, done: true })).ok).toBe(true);
    expect((await gateOf("Go or no-go")).items[0]).toMatchObject({ doneOn: asOf, doneBy: "Person" });
    expect((await decide(gate, "passed")).ok).toBe(true);
    expect(await decide(gate, "held", "Motor missing")).toMatchObject({ error: { code: "conflict" } });
    const itemId = gate.items[0]?.id ?? "";
    expect(await setGateItem(engineer(), { projectId, itemId, seen: true, done: false })).toMatchObject({
      error: { code: "impossible" },
    });
    expect(
      await addGateItem(engineer(), { projectId, gateId: gate.id, text: "More", who: "" }),
    ).toMatchObject({
      error: { code: "impossible" },
    });
    expect((await start()).ok).toBe(true);
    expect(await gateOf("Go or no-go")).toMatchObject({
      decision: "passed",
      decidedOn: asOf,
      decidedBy: "Person",
    });
  });

  it("is held with a reason, by name and day, and two who decide at once leave one decision", async () => {
    const gate = await gateOf("Readiness");
    expect((await decide(gate, "held", "Motors are late")).ok).toBe(true);
    expect(await gateOf("Readiness")).toMatchObject({
      decision: "held",
      reason: "Motors are late",
      decidedBy: "Person",
    });
    const held = await gateOf("Readiness");
    const both = await Promise.all([decide(held, "open"), decide(held, "open")]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
  });
});

describe("the calendar by site", () => {
  it("shows the shutdown, the work in it, and more crews asked for than there are", async () => {
    const region = await database().crewRegion.create({
      data: { name: "South", sites: { create: { siteId: world.south } } },
    });
    await database().planFigure.create({
      data: {
        ...{ kind: "crews", regionId: region.id, value: 1, source: "contract", owner: "group" },
        statedOn: day("2026-11-01"),
      },
    });
    const view = calendarView(await readProjectCalendar(engineer(), asOf), asOf);
    const site = view.sites.find(({ code }) => code === "SUD");
    expect(site?.windows.map(({ name }) => name)).toEqual(["Summer"]);
    expect(site?.rows.map(({ code }) => code)).toEqual([CODE]);
    expect(view.crewClashes[0]).toMatch(/SUD-01-R1 W\d.*need 2 crews of South together, 1 crew is stated/);
  });
});
