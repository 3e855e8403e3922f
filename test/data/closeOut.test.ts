import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { database } from "@/lib/data/client";
import { readProjectClose } from "@/lib/data/closeOut";
import { closeThisProject, reopenThisProject } from "@/lib/data/closeProject";
import { stateForProject, withdrawFromProject } from "@/lib/data/closeStatement";
import { dropFittedUnit } from "@/lib/data/fitChange";
import { currentEvaluation } from "@/lib/data/group/currentEvaluation";
import { addRemovedUnit, dropRemovedUnit } from "@/lib/data/releaseChange";
import { closeOut } from "@/lib/projects/closeOut";
import type { PoolFigures } from "@/lib/risk/evaluation";
import { makeActor } from "../support/actors";
import {
  added,
  CODE,
  close,
  closeWorld,
  day,
  engineer,
  file,
  makeClosable,
  oldPart,
  openWorld,
  places,
  projectId,
  removedAs,
  stated,
  world,
} from "../support/closableProject";
import { asOf } from "../support/twoSites";

beforeAll(() => openWorld("close-out"));
afterAll(() => closeWorld());
beforeEach(makeClosable);

/** Closing is refused, its reason names the thing, nothing is booked, and the page says the same. */
async function expectRefused(topic: string, words: RegExp) {
  const lots = await database().stockLot.findMany({ orderBy: { id: "asc" } });
  const answer = await close();
  expect(answer).toMatchObject({ ok: false, error: { code: "impossible" } });
  expect(answer.ok ? "" : answer.error.reason).toMatch(words);
  const lacking = closeOut((await file()).facts).filter(({ missing }) => missing.length > 0);
  expect(lacking.map((item) => item.topic)).toEqual([topic]);
  expect(await database().stockLot.findMany({ orderBy: { id: "asc" } })).toEqual(lots);
  expect(await database().projectClosing.count()).toBe(0);
}

async function pool(): Promise<PoolFigures> {
  const { id } = await currentEvaluation(asOf);
  const row = await database().evaluatedPool.findFirstOrThrow({
    where: { evaluationId: id, partId: oldPart },
  });
  return row.result as unknown as PoolFigures;
}

describe("closing is refused", () => {
  it("while an axis is not accepted", async () => {
    await database().axisRecord.updateMany({ data: { acceptedOn: null, acceptedBy: null } });
    await expectRefused("axes", /M1 X1 is not accepted\. And 2 more\./);
  });

  it("while a safety check carries one name, though the axis was accepted", async () => {
    await database().axisEntry.updateMany({ where: { checkId: "safety" }, data: { witness: "Technician" } });
    await expectRefused("safety", /M1 X1: 1 safety check lacks two different names/);
  });

  it("while a unit that is to leave still stands in the line", async () => {
    const lineId = world.lines["SUD-01"] ?? "";
    const gone = { projectId, lineId, partId: oldPart, units: 1, leavesOn: day("2026-10-05") };
    await database().plannedRemoval.create({ data: gone });
    const [first, ...rest] = places;
    const fit = await database().fittedUnit.findFirstOrThrow({ where: { positionId: first?.id ?? "" } });
    await database().position.updateMany({
      where: { id: { in: rest.map(({ id }) => id) } },
      data: { partId: fit.partId },
    });
    expect(await standing()).toEqual(["0"]);
    await dropFittedUnit(engineer, { unitId: fit.id, version: 1 });
    expect(await standing()).toEqual(["1"]);
  });

  it("while a place has no new unit", async () => {
    const fit = await database().fittedUnit.findFirstOrThrow({ orderBy: { serial: "asc" } });
    await dropFittedUnit(engineer, { unitId: fit.id, version: 1 });
    await expectRefused("fitted", /-UX1: no new unit is recorded/);
  });

  it("while nothing says what became of an old unit", async () => {
    const unit = await database().removedUnit.findFirstOrThrow({ where: { serial: "OK2" } });
    await dropRemovedUnit(engineer, { unitId: unit.id, version: 1 });
    await expectRefused("accounted", /-UX3: nothing says what became of the old unit/);
  });

  it("while three removed units are untested", async () => {
    for (const serial of ["OK7", "OK8", "OK9"])
      await added({ serial, result: "", testedBy: "", how: "", testedOn: "", bin: "" });
    await expectRefused("removed", /BW-OK-020 OK7 is removed, untested\. And 2 more\./);
  });

  it("while a tested unit has no bin", async () => {
    await added({ bin: "" });
    await expectRefused("removed", /OK9 is tested, but no bin is named/);
  });

  it("while the newest copy is older than the tuning", async () => {
    await database().backup.updateMany({ data: { takenOn: day("2026-10-19") } });
    await expectRefused("backups", /the newest copy is of 2026-10-19, the tuning of 2026-10-20/);
    await database().backup.updateMany({ data: { takenOn: day("2026-10-21") } });
    const { axisId } = await database().axisRecord.findFirstOrThrow();
    const step = { projectId, axisId, step: "tuned" as const, doneBy: "Engineer", recordedBy: "Engineer" };
    await database().axisStep.create({ data: { ...step, doneOn: day("2026-10-22") } });
    await expectRefused("backups", /the newest copy is of 2026-10-21, the tuning of 2026-10-22/);
  });

  it.each([
    ["register", /Nobody confirmed that the register/],
    ["drawings", /Nobody confirmed that the drawings/],
    ["levels", /Nobody confirmed the minimum and maximum/],
  ] as const)("while nobody answers for: %s", async (kind, words) => {
    expect((await withdrawFromProject(engineer, { projectId, kind })).ok).toBe(true);
    await expectRefused(kind, words);
  });

  it("while a point that blocks is open, and not for one that does not", async () => {
    const point = { projectId, owner: "Lead", raisedOn: day(asOf) };
    await database().openPoint.create({ data: { ...point, what: "Paint the door", blocks: false } });
    await database().openPoint.create({ data: { ...point, what: "Guard distance", blocks: true } });
    await expectRefused("points", /Open and in the way of acceptance: Guard distance/);
  });

  it("while an order is neither invoiced nor explained", async () => {
    const order = { projectId, kind: "committed" as const, amount: "500.00", spentOn: day("2026-09-01") };
    await database().costEntry.create({ data: { ...order, text: "Motors", reference: "PO-1" } });
    const paid = { ...order, kind: "actual" as const, text: "Motors", orderReference: "PO-1" };
    await database().costEntry.create({ data: { ...paid, amount: "499.99", reference: "L-1" } });
    await expectRefused("money", /PO-1, Motors is ordered and not invoiced/);
    expect(
      await stateForProject(engineer, { projectId, kind: "commitments", statedBy: "Lead", note: "" }),
    ).toMatchObject({ error: { fields: { note: expect.any(String) } } });
    await stated("commitments", "Rounding; the supplier sends no invoice for it");
    expect((await close()).ok).toBe(true);
  });

  it("while a gate is not passed", async () => {
    await database().projectGate.create({ data: { projectId, sequence: 1, name: "Go or no-go" } });
    await expectRefused("gates", /“Go or no-go” is not passed/);
  });

  it("when a unit was written since the page was opened, and to people of another site", async () => {
    const { version, seen } = await file();
    await added({ serial: "OK8" });
    expect(await closeThisProject(engineer, { projectId, version, seen })).toMatchObject({
      error: { code: "conflict" },
    });
    const north = await makeActor("engineer", world.north);
    expect(await readProjectClose(north, CODE)).toBeNull();
    expect(await close(north)).toMatchObject({ error: { code: "missing" } });
    const unit = await database().removedUnit.findFirstOrThrow({ where: { serial: "OK8" } });
    expect(await dropRemovedUnit(north, { unitId: unit.id, version: 1 })).toMatchObject({
      error: { code: "missing" },
    });
    expect(
      await stateForProject(north, { projectId, kind: "levels", statedBy: "x", note: "" }),
    ).toMatchObject({
      error: { code: "missing" },
    });
  });

  it("when a new unit stands somewhere else in the installed base", async () => {
    const other = await database().position.findFirstOrThrow({
      where: { machine: { line: { code: "SUD-02" } } },
    });
    const fit = await database().fittedUnit.findFirstOrThrow({ where: { serial: "HE1" } });
    await database().unit.create({
      data: { partId: fit.partId, serial: "HE1", placements: { create: { positionId: other.id } } },
    });
    expect(await close()).toMatchObject({
      error: { code: "impossible", reason: expect.stringMatching(/Serial HE1 stands at M1 -UX1/) },
    });
    expect(await database().stockLot.count({ where: { bin: "P1" } })).toBe(0);
  });
});

const standing = async () => (await file()).facts.standing.map(({ units }) => String(units - 0));

describe("closing", () => {
  it("books parts, units and the check in one step, and is taken back whole", async () => {
    const before = await pool();
    const stands = await database().position.findMany({ orderBy: { id: "asc" } });
    const closed = await close();
    expect(closed).toEqual({ ok: true, value: { version: 2 } });
    const lots = await database().stockLot.findMany({ where: { bin: "P1" }, orderBy: { state: "asc" } });
    expect(lots.map(({ state, quantity }) => `${state} ${quantity}`)).toEqual(["usable 1", "on_hold 1"]);
    expect(lots[0]?.testedOn?.toISOString().slice(0, 10)).toBe("2026-10-15");
    const holds = await database().stockHold.findMany();
    expect(holds).toMatchObject([{ pieces: 1, reason: `Needs repair, removed by ${CODE}` }]);
    const units = await database().placement.findMany({
      include: { unit: true },
      orderBy: { unit: { serial: "asc" } },
    });
    expect(
      units.map(({ unit, untilOn }) => `${unit.serial} ${untilOn === null ? "stands" : "left"}`),
    ).toEqual([...["HE0 stands", "HE1 stands", "HE2 stands", "OK0 left", "OK1 left", "OK2 left"]]);
    const after = await pool();
    expect(after.installed).toBe(before.installed - 3);
    // Of a piece tested within the year 97 in 100 are expected to work; the one on hold counts for nothing.
    expect(after.usable - before.usable).toBeCloseTo(0.97, 10);
    const { closing, status, facts } = await file();
    expect(closing).toMatchObject({ closedOn: asOf, checkOn: "2027-11-30", pieces: 2, places: 3 });
    expect([status, facts.removed.length]).toEqual(["closed", 3]);

    expect(await addRemovedUnit(engineer, removedAs({ serial: "late" }))).toMatchObject({
      error: { code: "impossible" },
    });
    expect(await reopenThisProject(engineer, { projectId, version: 1 })).toMatchObject({
      error: { code: "conflict" },
    });
    expect(await reopenThisProject(engineer, { projectId, version: 2 })).toEqual({
      ok: true,
      value: { version: 3 },
    });
    expect(await database().stockLot.count({ where: { bin: "P1" } })).toBe(0);
    expect(await database().unit.count()).toBe(0);
    expect(await database().position.findMany({ orderBy: { id: "asc" } })).toEqual(stands);
    expect(await pool()).toEqual(before);
    expect((await file()).status).toBe("proving");
  });

  it("leaves a unit alone that was put in before, and ends the stay of one it takes out", async () => {
    const [first, second] = places;
    const [fit, other] = await database().fittedUnit.findMany({ orderBy: { serial: "asc" } });
    if (!first || !second || !fit || !other) throw new Error("no places");
    const standingUnit = await database().unit.create({ data: { partId: fit.partId, serial: "HE0" } });
    await database().placement.create({ data: { unitId: standingUnit.id, positionId: first.id } });
    const old = await database().unit.create({ data: { partId: oldPart, serial: "OK1" } });
    const stay = await database().placement.create({
      data: { unitId: old.id, positionId: second.id, fromOn: day("2010-01-01") },
    });
    expect((await close()).ok).toBe(true);
    expect((await file()).closing?.places).toBe(2);
    const ended = await database().placement.findUniqueOrThrow({ where: { id: stay.id } });
    expect(ended.untilOn?.toISOString().slice(0, 10)).toBe("2026-10-06");
    expect((await reopenThisProject(engineer, { projectId, version: 2 })).ok).toBe(true);
    expect((await database().placement.findUniqueOrThrow({ where: { id: stay.id } })).untilOn).toBeNull();
    expect(await database().unit.count()).toBe(2);
  });

  it("is not taken back once a piece was used, a month passed, or the benefit was checked", async () => {
    expect((await close()).ok).toBe(true);
    const lot = await database().stockLot.findFirstOrThrow({ where: { bin: "P1", state: "usable" } });
    await database().stockLot.update({ where: { id: lot.id }, data: { quantity: 0 } });
    expect(await reopenThisProject(engineer, { projectId, version: 2 })).toMatchObject({
      error: { code: "conflict", reason: expect.stringMatching(/Bin P1 .* was changed since/) },
    });
    await database().stockLot.update({ where: { id: lot.id }, data: { quantity: 1 } });
    await database().projectClosing.updateMany({ data: { closedOn: day("2026-10-30") } });
    expect(await reopenThisProject(engineer, { projectId, version: 2 })).toMatchObject({
      error: { code: "impossible", reason: expect.stringMatching(/more than 30 days ago/) },
    });
    await database().projectClosing.updateMany({ data: { closedOn: day("2026-10-31") } });
    expect((await reopenThisProject(engineer, { projectId, version: 2 })).ok).toBe(true);
  });

  it("is refused where a bin was never counted", async () => {
    const lot = { siteId: world.south, partId: oldPart, bin: "P1", state: "usable" as const, quantity: null };
    await database().stockLot.create({ data: lot });
    expect(await close()).toMatchObject({
      error: { reason: expect.stringMatching(/Nobody ever counted BW-OK-020 in bin P1/) },
    });
  });
});
