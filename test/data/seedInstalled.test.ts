import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { showcase } from "@/seed/scenarios/showcase/showcase";
import { codeOfSite, company, countBy, familyOfPart, lineOfMachine, part } from "@/test/data/seedLookup";

const hashOf = (rows: unknown) => createHash("sha256").update(JSON.stringify(rows)).digest("hex");

test("the same number gives the same rows in every table, another number does not", () => {
  expect(hashOf(showcase())).toBe(hashOf(company));
  expect(hashOf(showcase(1))).not.toBe(hashOf(company));
});

test("another number moves the draws and keeps the told sums", () => {
  const other = showcase(4);
  expect(other.Machine).toHaveLength(250);
  expect(other.Axis).toHaveLength(1800);
  expect(other.Controller).toHaveLength(214);
  expect(other.Network.filter(({ kind }) => kind === "fibre_ring")).toHaveLength(78);
});

test("every id occurs once", () => {
  for (const rows of Object.values(company)) {
    const ids = rows.flatMap((row) => ("id" in row ? [row.id] : []));
    expect(new Set(ids).size).toBe(ids.length);
  }
});

test("6 sites have 9, 8, 6, 8, 5 and 4 lines", () => {
  const lines = countBy(company.Line, ({ siteId }) => codeOfSite.get(siteId));
  expect(lines).toEqual({ VEL: 9, OST: 8, KAR: 6, PIN: 8, TAD: 5, THO: 4 });
});

test("250 machines and 1,800 axes stand at the sites as told", () => {
  const site = (machineId: string) => lineOfMachine(machineId).slice(0, 3);
  expect(countBy(company.Machine, ({ id }) => site(id))).toEqual({
    VEL: 58,
    OST: 50,
    KAR: 36,
    PIN: 52,
    TAD: 30,
    THO: 24,
  });
  expect(countBy(company.Axis, ({ machineId }) => site(machineId))).toEqual({
    VEL: 430,
    OST: 365,
    KAR: 250,
    PIN: 385,
    TAD: 205,
    THO: 165,
  });
});

test("a machine has 3 to 16 axes", () => {
  const counts = Object.values(countBy(company.Axis, ({ machineId }) => machineId));
  expect(counts).toHaveLength(250);
  expect(Math.min(...counts)).toBeGreaterThanOrEqual(3);
  expect(Math.max(...counts)).toBeLessThanOrEqual(16);
});

test("the drive families have 560, 310, 430, 240, 120, 100 and 40 axes", () => {
  const drives = company.Position.filter(({ itemClass }) => itemClass === "drive");
  expect(countBy(drives, ({ partId }) => familyOfPart(partId))).toEqual({
    "Heron R": 560,
    Oak: 310,
    "Heron E": 430,
    Elm: 240,
    Birch: 120,
    Larch: 100,
    unknown: 40,
  });
});

test("Heron R comes in sizes of 25, 40, 25 and 10 %", () => {
  const numbers = countBy(company.Position, ({ partId }) => part.get(partId ?? "")?.number);
  expect([numbers["TM-HR-010"], numbers["TM-HR-020"], numbers["TM-HR-040"], numbers["TM-HR-080"]]).toEqual([
    140, 224, 140, 56,
  ]);
});

test("610 Wren, of them 70 without a match and 11 of those at KAR-02, 860 Finch, 330 Robin", () => {
  const motors = company.Position.filter(({ itemClass }) => itemClass === "motor");
  expect(countBy(motors, ({ partId }) => familyOfPart(partId))).toEqual({
    Wren: 610,
    Finch: 860,
    Robin: 330,
  });
  const unmatched = motors.filter(({ partId }) => part.get(partId ?? "")?.number === "DV-WR-150");
  expect(unmatched).toHaveLength(70);
  expect(unmatched.filter((one) => lineOfMachine(one.machineId) === "KAR-02")).toHaveLength(11);
});

test("the other items are as many as told", () => {
  const others = company.Position.filter(({ axisId }) => axisId === null);
  const counts = countBy(others, ({ partId }) => familyOfPart(partId));
  expect(counts).toMatchObject({
    Pebble: 62,
    "Pebble N": 148,
    "Lumen 8": 96,
    "Lumen 12": 118,
    "Brook 24": 410,
    Glim: 132,
    "Link R": 118,
  });
});

test("15 axes at San Tadeo are undocumented", () => {
  const bare = company.Axis.filter(
    ({ countsPerRev, feedback }) => countsPerRev === null && feedback === null,
  );
  expect(bare).toHaveLength(15);
  expect(new Set(bare.map(({ machineId }) => lineOfMachine(machineId).slice(0, 3)))).toEqual(
    new Set(["TAD"]),
  );
});

test("108 drives, 6 % of the axes, were changed with both serial numbers on record", () => {
  const changed = company.Placement.filter(({ untilOn }) => untilOn !== null);
  expect(changed).toHaveLength(108);
  for (const { positionId, untilOn } of changed) {
    const here = company.Placement.filter((one) => one.positionId === positionId);
    expect(here.map(({ fromOn }) => fromOn)).toEqual([null, untilOn]);
  }
});

test("nobody answers for the cost per hour of San Tadeo's lines, and roles answer for the others", () => {
  for (const { siteId, costOwner, costEvidence } of company.Line) {
    const site = codeOfSite.get(siteId);
    expect([costOwner, costEvidence]).toEqual(
      site === "TAD" ? [null, "assumed"] : [`Plant controller ${site}`, "documented"],
    );
  }
});
