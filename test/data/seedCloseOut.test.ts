import { expect, test } from "vitest";
import { expectCutover, fallBackPoint } from "@/lib/projects/cutover";
import { company, D0 } from "@/test/data/seedLookup";

const project = company.Project.find(({ code }) => code === "KAR-02-R1");

test("of twenty Heron R removed by KAR-02 twelve are tested and usable, and eight lie untested", () => {
  const removed = company.RemovedUnit;
  expect(removed.every(({ projectId }) => projectId === project?.id)).toBe(true);
  expect(removed).toHaveLength(20);
  const heron = company.Family.find(({ name }) => name === "Heron R");
  const parts = new Set(company.Part.filter(({ familyId }) => familyId === heron?.id).map(({ id }) => id));
  expect(removed.every(({ partId }) => parts.has(partId))).toBe(true);
  expect(removed.filter(({ result, bin }) => result === "usable" && bin !== "")).toHaveLength(12);
  expect(removed.filter(({ result, bin }) => result === null && bin === "")).toHaveLength(8);
  expect(new Set(removed.map(({ serial }) => serial)).size).toBe(20);
});

test("what was removed is no unit of the installed base and lies on no shelf yet", () => {
  const serials = new Set(company.RemovedUnit.map(({ serial }) => serial));
  expect(company.Unit.filter(({ serial }) => serials.has(serial))).toEqual([]);
  const bins = new Set(company.RemovedUnit.map(({ bin }) => bin));
  expect(company.StockLot.filter(({ bin }) => bins.has(bin))).toEqual([]);
});

test("the 22 new drives stand where they were fitted, with the serial that was written down", () => {
  expect(company.FittedUnit).toHaveLength(22);
  expect(company.FittedUnit.filter(({ added }) => added)).toHaveLength(2);
  const standing = new Map(
    company.Placement.filter(({ untilOn }) => untilOn === null).map((one) => [one.positionId, one.unitId]),
  );
  const units = new Map(company.Unit.map((unit) => [unit.id, unit]));
  for (const { positionId, partId, serial } of company.FittedUnit)
    expect(units.get(standing.get(positionId) ?? "")).toMatchObject({ partId, serial });
});

test("July's cutover ended eleven hours late, an hour before its fall-back point", () => {
  const [july] = company.Cutover.filter(({ startsAt }) => startsAt < D0);
  const steps = company.CutoverStep.filter(({ cutoverId }) => cutoverId === july?.id);
  if (!july) throw new Error("no cutover in July");
  const { steps: expected, spareHours } = expectCutover(july, steps, null);
  expect(expected.every(({ state }) => state === "done")).toBe(true);
  expect(expected.at(-1)?.lateHours).toBe(11);
  // 20 and 6 hours were kept for the way back.
  expect(spareHours).toBe(27);
  expect(fallBackPoint(july)).toEqual({ kind: "tested", at: "2026-07-19T02:00:00.000Z" });
});

test("the second half lies ahead and nobody tried its way back", () => {
  const [ahead] = company.Cutover.filter(({ startsAt }) => startsAt > D0);
  if (!ahead) throw new Error("no cutover ahead");
  expect(fallBackPoint(ahead).kind).toBe("untested");
  expect(
    company.CutoverStep.filter(({ cutoverId }) => cutoverId === ahead.id).every(
      ({ startedAt }) => startedAt === null,
    ),
  ).toBe(true);
});
