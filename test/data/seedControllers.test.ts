import { expect, test } from "vitest";
import {
  codeOfSite,
  company,
  controller,
  countBy,
  familyOfPart,
  lineOfMachine,
  machine,
} from "@/test/data/seedLookup";

test("250 machines run on 214 controllers; 24 of them nobody has read, 30 % of San Tadeo's", () => {
  expect(new Set(company.Machine.map(({ controllerId }) => controllerId)).size).toBe(214);
  const unread = company.Controller.filter(({ firmware }) => firmware === null);
  expect(unread).toHaveLength(24);
  const tad = (rows: typeof company.Controller) =>
    rows.filter(({ siteId }) => codeOfSite.get(siteId) === "TAD").length;
  expect(tad(unread) / tad(company.Controller)).toBeCloseTo(0.3, 1);
});

const driveFamily = new Map(
  company.Position.filter(({ itemClass }) => itemClass === "drive").map(({ axisId, partId }) => [
    axisId,
    familyOfPart(partId),
  ]),
);

const leads = new Map(
  company.Controller.filter(({ designation }) => designation.endsWith("-K1")).map((row) => [
    row.designation.slice(0, 6),
    row,
  ]),
);

test("10 lines are led by a Slate 3, 15 by a Slate 5, 15 by a Slate 7", () => {
  expect(countBy([...leads.values()], ({ model }) => model)).toEqual({
    "Slate 3": 10,
    "Slate 5": 15,
    "Slate 7": 15,
  });
});

test("VEL-03 is led by a Slate 3 at 16 with 93 % of its memory used", () => {
  expect(leads.get("VEL-03")).toMatchObject({ model: "Slate 3", firmware: 16, memoryPercent: 93 });
});

test("raising the Slate 5 below 24 is blocked by memory at PIN-01 alone and a matter of caution at five lines", () => {
  const below = [...leads].filter(([, { model, firmware }]) => model === "Slate 5" && (firmware ?? 99) < 24);
  const raised = below.map(([line, { memoryPercent }]) => ({ line, memory: (memoryPercent ?? 0) * 1.15 }));
  expect(raised).toHaveLength(9);
  expect(raised.filter(({ memory }) => memory > 95).map(({ line }) => line)).toEqual(["PIN-01"]);
  const caution = raised.filter(({ memory }) => memory >= 85 && memory <= 95).map(({ line }) => line);
  expect(caution.sort()).toEqual(["KAR-01", "OST-02", "TAD-02", "TAD-04", "VEL-02"]);
});

test("at VEL-02 and PIN-01 a machine's controller is at 20, below what the newest Heron R needs", () => {
  for (const line of ["VEL-02", "PIN-01"]) {
    const own = company.Controller.filter(({ designation }) => designation.startsWith(line));
    expect(own.some(({ model, firmware }) => model === "Slate 5" && firmware === 20)).toBe(true);
  }
});

test("drives on Ethernet run on a Slate 7 or a Slate 5 that is not below 24", () => {
  const ethernet = company.Position.filter(({ partId }) =>
    ["Heron E", "Elm"].includes(familyOfPart(partId) ?? ""),
  );
  const unable = ethernet
    .map(({ machineId }) => controller.get(machine.get(machineId)?.controllerId ?? ""))
    .filter(
      (one) =>
        one?.model === "Slate 3" ||
        (one?.model === "Slate 7" && (one.firmware ?? 27) < 27) ||
        (one?.model === "Slate 5" && (one.firmware ?? 24) < 24),
    );
  expect(ethernet).toHaveLength(670);
  expect(unable).toEqual([]);
});

test("ring drives never run on a Slate 7; KAR-02's twenty run on the old Slate 5 beside it", () => {
  const ring = company.Position.filter(({ partId }) =>
    ["Heron R", "Oak"].includes(familyOfPart(partId) ?? ""),
  );
  const models = countBy(
    ring,
    ({ machineId }) => controller.get(machine.get(machineId)?.controllerId ?? "")?.model,
  );
  expect(models["Slate 7"]).toBeUndefined();
  const kar = ring.filter(({ machineId }) => lineOfMachine(machineId) === "KAR-02");
  expect(
    countBy(kar, ({ machineId }) => controller.get(machine.get(machineId)?.controllerId ?? "")?.model),
  ).toEqual({
    "Slate 5": 20,
  });
});

test("78 rings hold the 870 ring axes, 4 to 16 each, of one maker; in 3 the recorded order is wrong", () => {
  const rings = company.Network.filter(({ kind }) => kind === "fibre_ring").map(({ id }) =>
    company.Axis.filter(({ networkId }) => networkId === id),
  );
  expect(rings).toHaveLength(78);
  expect(rings.flat()).toHaveLength(870);
  const makers = rings.map((ring) => new Set(ring.map(({ id }) => driveFamily.get(id))).size);
  expect(makers.filter((count) => count !== 1)).toEqual([]);
  expect(rings.filter(({ length }) => length < 4 || length > 16)).toEqual([]);
  expect(
    rings.filter((ring) => ring.some(({ ringOrder, nodeAddress }) => ringOrder !== nodeAddress)),
  ).toHaveLength(3);
});
