import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Actor } from "@/lib/access/actor";
import { database } from "@/lib/data/client";
import { readCutovers } from "@/lib/data/cutover";
import { addProjectCutover, changeProjectCutover, dropProjectCutover } from "@/lib/data/cutoverChange";
import { addCutoverStep, clockCutoverStep, dropCutoverStep } from "@/lib/data/cutoverStepChange";
import { readProjectPoints } from "@/lib/data/projectPoints";
import {
  addOpenPoint,
  changeOpenPoint,
  dropOpenPoint,
  settleOpenPoint,
} from "@/lib/data/projectPointsChange";
import { addProjectRisk, changeProjectRisk, dropProjectRisk } from "@/lib/data/projectRiskChange";
import { USUAL_CUTOVER } from "@/lib/projects/usualCutover";
import { addCutover, addStep, clockStep } from "@/lib/schema/cutover";
import { addPoint, addRisk } from "@/lib/schema/projectPoints";
import { cutoverStanding, lastEntry } from "@/lib/view/cutover";
import { openExposure, pointCounts } from "@/lib/view/projectPoints";
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
  made = await freshDatabase("project-work");
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

const points = async () => (await readProjectPoints(engineer, CODE))?.points ?? [];
const risks = async () => (await readProjectPoints(engineer, CODE))?.risks ?? [];

describe("open points", () => {
  const point = (given: object = {}) =>
    addPoint.parse({
      projectId,
      what: "Guard",
      owner: "Safety",
      dueOn: "2026-11-29",
      blocks: true,
      ...given,
    });

  it("are late from the day after they were due, done by name, open again, and gone with an undo", async () => {
    const first = sure(await addOpenPoint(engineer, point()));
    sure(await addOpenPoint(engineer, point({ what: "Paint", dueOn: "2026-11-30", blocks: false })));
    expect(pointCounts(await points(), asOf)).toEqual({ open: 2, late: 1, blocking: 1, done: 0 });
    const done = sure(await settleOpenPoint(engineer, { ...first, done: true }));
    expect((await points())[0]).toMatchObject({ doneOn: asOf, doneBy: engineer.name });
    expect(pointCounts(await points(), asOf)).toEqual({ open: 1, late: 0, blocking: 0, done: 1 });
    const again = sure(await settleOpenPoint(engineer, { ...done, done: false }));
    expect(await dropOpenPoint(engineer, first)).toMatchObject(conflict);
    sure(await dropOpenPoint(engineer, again));
    expect((await points()).map(({ what }) => what)).toEqual(["Paint"]);
  });

  it("keep the first of two changes, and are nobody's at another site", async () => {
    const [paint] = await points();
    const mark = { pointId: paint?.id ?? "", version: paint?.version ?? 0 };
    const { projectId: _, ...said } = point({ what: "Paint the door" });
    sure(await changeOpenPoint(engineer, { ...mark, ...said }));
    expect(await changeOpenPoint(engineer, { ...mark, ...said, what: "Other" })).toMatchObject(conflict);
    expect(await dropOpenPoint(stranger, { ...mark, version: 2 })).toMatchObject(missing);
    expect(await addOpenPoint(stranger, point())).toMatchObject(missing);
    expect(await readProjectPoints(stranger, CODE)).toBeNull();
    expect((await points()).map(({ what }) => what)).toEqual(["Paint the door"]);
  });
});

describe("risks of the project", () => {
  const risk = (given: object = {}) =>
    addRisk.parse({
      ...{ projectId, what: "Late motors", chanceLow: "25", chanceHigh: "45", effectLow: "380000" },
      ...{ effectHigh: "900000,00", action: "", owner: "", state: "open", ...given },
    });

  it("are kept as ranges and come to a span; what is not estimated is said", async () => {
    const first = sure(await addProjectRisk(engineer, risk()));
    const none = { chanceLow: "", chanceHigh: "", effectLow: "", effectHigh: "" };
    sure(await addProjectRisk(engineer, risk({ what: "Heat", ...none })));
    expect(openExposure(await risks())).toEqual({ low: 95_000, high: 405_000, notEstimated: 1 });
    const { projectId: _, ...said } = risk({ state: "over" });
    const changed = sure(await changeProjectRisk(engineer, { ...first, ...said }));
    expect(await changeProjectRisk(engineer, { ...first, ...said })).toMatchObject(conflict);
    expect(openExposure(await risks())).toEqual({ low: 0, high: 0, notEstimated: 1 });
    expect(await dropProjectRisk(stranger, changed)).toMatchObject(missing);
    sure(await dropProjectRisk(engineer, changed));
    expect(await risks()).toHaveLength(1);
  });

  it.each([
    [{ chanceHigh: "" }, "chanceHigh"],
    [{ chanceLow: "50" }, "chanceHigh"],
    [{ chanceHigh: "101" }, "chanceHigh"],
    [{ effectLow: "900000.01" }, "effectHigh"],
  ])("are refused as %o", (given, field) => {
    const read = addRisk.safeParse({
      ...{ projectId, what: "x", chanceLow: "25", chanceHigh: "45", effectLow: "1", effectHigh: "900000" },
      ...{ action: "", owner: "", state: "open", ...given },
    });
    expect(read.success ? [] : read.error.issues.map(({ path }) => path.join("."))).toContain(field);
  });
});

describe("a cutover", () => {
  const cutover = (given: object = {}) =>
    addCutover.parse({
      ...{ projectId, usual: true, name: "March", startsAt: "2027-03-27T06:00" },
      ...{ productionAt: "2027-03-29T06:00", restoreHours: "12", marginHours: "4,5" },
      ...{ restoreTestedOn: "2026-11-20", restoreTestedBy: "Controls", ...given },
    });
  const plans = async () => (await readCutovers(engineer, CODE))?.cutovers ?? [];

  it("begins with the usual steps, by the clock of the site over the night it changes", async () => {
    const { cutoverId } = sure(await addProjectCutover(engineer, cutover()));
    const [plan] = await plans();
    if (!plan) throw new Error("no plan");
    expect(plan.steps).toHaveLength(USUAL_CUTOVER.length);
    // Warsaw goes from +01:00 to +02:00 on 28 March 2027: 06:00 is 05:00 UTC before and 04:00 UTC after.
    expect([plan.startsAt, plan.productionAt]).toEqual([
      "2027-03-27T05:00:00.000Z",
      "2027-03-29T04:00:00.000Z",
    ]);
    const { fallBack } = cutoverStanding(plan, null);
    expect(fallBack).toEqual({ kind: "tested", at: "2027-03-28T11:30:00.000Z" });
    expect(await addProjectCutover(engineer, cutover())).toMatchObject(conflict);
    const { projectId: _, usual: __, ...said } = cutover({ restoreTestedOn: "", restoreTestedBy: "" });
    sure(await changeProjectCutover(engineer, { cutoverId, version: 1, ...said }));
    expect(await changeProjectCutover(engineer, { cutoverId, version: 1, ...said })).toMatchObject(conflict);
    expect(cutoverStanding((await plans())[0] ?? plan, null).point).toBe("none");
  });

  it("keeps when steps began and ended, says when it is past the point, and is then kept itself", async () => {
    const [plan] = await plans();
    const [step] = plan?.steps ?? [];
    if (!plan || !step) throw new Error("no step");
    const { projectId: _, usual: __, ...said } = cutover();
    sure(await changeProjectCutover(engineer, { cutoverId: plan.id, version: plan.version, ...said }));
    const times = clockStep.parse({
      ...{ stepId: step.id, version: 1, startedAt: "2027-03-27T07:00", endedAt: "2027-03-28T14:00" },
    });
    sure(await clockCutoverStep(engineer, times));
    expect(await clockCutoverStep(engineer, times)).toMatchObject(conflict);
    const [now] = await plans();
    if (!now) throw new Error("no plan");
    expect(lastEntry(now.steps)).toBe("2027-03-28T12:00:00.000Z");
    expect(cutoverStanding(now, lastEntry(now.steps))).toMatchObject({ point: "past", done: 1 });
    expect(await dropCutoverStep(engineer, { stepId: step.id, version: 2 })).toMatchObject({
      error: { code: "impossible" },
    });
    expect(await dropProjectCutover(engineer, { cutoverId: plan.id, version: 3 })).toMatchObject({
      error: { code: "impossible" },
    });
    const none = { ...times, version: 2, startedAt: null, endedAt: null };
    sure(await clockCutoverStep(engineer, none));
    sure(await dropCutoverStep(engineer, { stepId: step.id, version: 3 }));
  });

  it("is nobody's at another site", async () => {
    const [plan] = await plans();
    const cutoverId = plan?.id ?? "";
    const step = addStep.parse({
      ...{ cutoverId, title: "x", afterHours: "0", hours: "1", who: "", phone: "", needs: "", caution: "" },
    });
    expect(await addCutoverStep(stranger, step)).toMatchObject(missing);
    expect(await addProjectCutover(stranger, cutover({ name: "Other" }))).toMatchObject(missing);
    expect(await readCutovers(stranger, CODE)).toBeNull();
    sure(await dropProjectCutover(engineer, { cutoverId, version: plan?.version ?? 0 }));
    expect(await plans()).toEqual([]);
  });
});
