import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { readBenefit } from "@/lib/data/benefit";
import { checkThisBenefit, reopenThisBenefit } from "@/lib/data/benefitChange";
import { database } from "@/lib/data/client";
import { reopenThisProject } from "@/lib/data/closeProject";
import { readDatesAhead } from "@/lib/data/datesAhead";
import { changeProject, removeProject } from "@/lib/data/projectChange";
import { datesAhead } from "@/lib/view/datesAhead";
import { makeActor } from "../support/actors";
import { type FreshDatabase, freshDatabase } from "../support/database";
import { asOf, makeTwoSites, type TwoSites } from "../support/twoSites";

const CODE = "SUD-01-R1";
const day = (text: string) => new Date(`${text}T00:00:00Z`);
const missing = { error: { code: "missing" } };
const conflict = { error: { code: "conflict" } };

let made: FreshDatabase;
let world: TwoSites;
let engineer: Actor;
let stranger: Actor;
let projectId = "";

beforeAll(async () => {
  made = await freshDatabase("benefit");
  world = await makeTwoSites();
  await database().setting.create({ data: { key: "asOf", value: asOf } });
  engineer = await makeActor("engineer", world.south);
  stranger = await makeActor("engineer", world.north);
  const lineId = world.lines["SUD-01"] ?? "";
  const project = await database().project.create({
    data: {
      ...{ siteId: world.south, lineId, code: CODE, name: "Retrofit", currency: "PLN", budget: "400000.00" },
      ...{ status: "in_work", startsOn: day("2025-06-01") },
    },
  });
  projectId = project.id;
});

afterAll(() => made.close());

/** What a change that must go through gave. */
function sure<T>(answer: { ok: true; value: T } | { ok: false; error: { reason: string } }): T {
  if (!answer.ok) throw new Error(answer.error.reason);
  return answer.value;
}

describe("the benefit of a project", () => {
  const steps = {
    ...{ shelf: { lots: [], holds: [] }, base: { ended: [], placed: [], unitsMade: [], places: [] } },
    statusBefore: "proving",
  };
  const closed = (closedOn: string, checkOn: string) =>
    database().projectClosing.create({
      data: { projectId, closedBy: "Lead", closedOn: day(closedOn), checkOn: day(checkOn), steps },
    });
  const read = async (on = asOf) => (await readBenefit(engineer, { code: CODE, asOf: on })) ?? null;
  const happened = (at: string, given: object = {}) =>
    database().event.create({
      data: {
        ...{
          siteId: world.south,
          lineId: world.lines["SUD-01"] ?? "",
          kind: "failure",
          source: "work order",
        },
        ...{ happenedAt: new Date(`${at}T12:00:00Z`), reference: at, itemClass: "drive", ...given },
      },
    });

  it("is nothing before closing, too early within the year, and is then in the dates ahead", async () => {
    expect((await read())?.figures).toBeNull();
    await closed("2026-11-01", "2027-11-01");
    expect((await read())?.figures).toMatchObject({
      whole: false,
      after: { from: "2026-11-01", until: asOf },
    });
    expect(await checkThisBenefit(engineer, { projectId, conclusion: "Good" })).toMatchObject({
      error: { code: "impossible", reason: expect.stringMatching(/too early/) },
    });
    const ahead = datesAhead(await readDatesAhead(engineer, asOf));
    expect(ahead.find(({ kind }) => kind === "benefit-check")).toMatchObject({
      ...{ on: "2027-11-01", of: CODE, href: `/projects/${CODE}/benefit`, overdue: false },
    });
    await database().projectClosing.deleteMany();
  });

  it("compares the year before the work with the year after, the work itself in neither", async () => {
    await closed("2025-11-01", "2026-11-01");
    await happened("2024-06-02", { downtimeHours: 5 });
    await happened("2025-05-31", { downtimeHours: 3, commonCause: "heat" });
    await happened("2025-05-30", { downtimeHours: 1, commonCause: "heat" });
    await happened("2025-06-01", { downtimeHours: 100 });
    await happened("2025-10-31", { downtimeHours: 100 });
    await happened("2025-11-02", { itemClass: "motor" });
    await happened("2026-11-01", { downtimeHours: 100 });
    await happened("2026-01-05", { downtimeHours: 100, setAside: "ends before it starts" });
    const figures = (await read())?.figures;
    // Three places for a year; 20000 an hour after one hour of buffer, 4 PLN for a EUR.
    expect(figures?.before).toMatchObject({ events: 3, removals: 2, downtimeHours: 9, stopMoney: 30_000 });
    expect(figures?.after).toMatchObject({ events: 1, removals: 0, withoutHours: 1, stopMoney: 0 });
    expect(figures?.before.unitYears).toBeCloseTo((3 * 365) / 365.25, 10);
    expect(figures?.request).toEqual({ cost: null, stopLoss: null, budget: 100_000, paid: null });
    expect(await readBenefit(stranger, { code: CODE, asOf })).toBeNull();
  });

  it("is checked once with the figures of the day, which then stand, and taken back", async () => {
    expect(await checkThisBenefit(stranger, { projectId, conclusion: "Good" })).toMatchObject(missing);
    sure(await checkThisBenefit(engineer, { projectId, conclusion: "Fewer stops" }));
    expect(await checkThisBenefit(engineer, { projectId, conclusion: "Again" })).toMatchObject(conflict);
    await happened("2026-03-01", { downtimeHours: 7 });
    const kept = await read();
    expect(kept?.closing).toMatchObject({ checkedOn: asOf, conclusion: "Fewer stops" });
    expect(kept?.figures?.after.events).toBe(1);
    const { version } = await database().project.findUniqueOrThrow({ where: { id: projectId } });
    expect(await reopenThisProject(engineer, { projectId, version })).toMatchObject({
      error: { code: "impossible", reason: expect.stringMatching(/benefit was checked/) },
    });
    sure(await reopenThisBenefit(engineer, { projectId }));
    expect((await read())?.figures?.after.events).toBe(2);
  });

  it("keeps a project that took a unit out, though nothing is paid and no milestone done", async () => {
    const partId = (await database().part.findFirstOrThrow()).id;
    const unit = await database().removedUnit.create({
      data: { projectId, partId, removedOn: day("2025-06-02") },
    });
    const { version } = await database().project.findUniqueOrThrow({ where: { id: projectId } });
    expect(await removeProject(engineer, { projectId, version })).toMatchObject({
      error: { code: "impossible" },
    });
    await database().removedUnit.delete({ where: { id: unit.id } });
  });

  it("closes no project by choosing a state", async () => {
    const { version } = await database().project.findUniqueOrThrow({ where: { id: projectId } });
    const wanted = { projectId, version, forecast: null, cause: null, startsOn: null, endsOn: null };
    expect(await changeProject(engineer, { ...wanted, status: "closed" })).toMatchObject({
      error: { code: "impossible", reason: expect.stringMatching(/under Close-out/) },
    });
  });
});
