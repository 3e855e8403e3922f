import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compareDevice } from "@/lib/intake/sightings/compareDevice";
import { compareSources } from "@/lib/intake/sightings/compareSources";
import { nodeNumber, type RegisterItem, type SeenDevice } from "@/lib/intake/sightings/device";
import { DeviceMatcher } from "@/lib/intake/sightings/matchDevices";
import { disagreement, ghostMachines, sightRow } from "@/lib/view/sighting";

const item = (given: Partial<RegisterItem> = {}): RegisterItem => ({
  ...{ kind: "place", id: "p1", lineCode: "L1", machineCode: "M1", machineId: "m1", axisCode: "A1" },
  ...{ designation: "A1-T1", network: "R1", node: 1, controller: "K1", maker: "Maker", number: "TM-HR-020" },
  ...{ aliases: [], revision: "B1", serial: "S-1", firmware: null },
  ...given,
});

const device = (given: Partial<SeenDevice> = {}): SeenDevice => ({
  ...{
    id: "d1",
    source: "list",
    line: "",
    machine: "",
    network: "R1",
    controller: "",
    slot: "",
    address: "1",
  },
  ...{ name: "", maker: "", number: "TM-HR-020", revision: "B1", firmware: "", serial: "S-1", status: "" },
  ...{ firstOn: "2026-10-01", lastOn: "2026-11-01" },
  ...given,
});

const controller = (given: Partial<RegisterItem> = {}) =>
  item({
    ...{ kind: "controller", id: "k1", designation: "K1", network: null, node: null, number: "Slate 5" },
    ...{ serial: null, revision: null, machineCode: null, axisCode: null },
    ...given,
  });

describe("the node an address names", () => {
  it.each([
    ["7", 7],
    ["007", 7],
    ["Node 7", 7],
    ["0x1F", 31],
    ["10.0.3.7", null],
    ["00:1d:9c:c7", null],
    ["drive", null],
  ])("reads %s as %s", (text, node) => expect(nodeNumber(text)).toBe(node));
});

describe("what a device is taken for", () => {
  const items = [
    item(),
    item({ id: "p2", node: 2, designation: "A2-T1", axisCode: "A2", serial: "S-2" }),
    controller(),
  ];
  const match = (given: Partial<SeenDevice>) => new DeviceMatcher(items).match(device(given));

  it("goes by the address, then the name, then the serial number", () => {
    expect(match({ address: "2", serial: "" })).toMatchObject({ item: { id: "p2" }, by: "address" });
    expect(match({ network: "", controller: "k1", address: "02", serial: "" })).toMatchObject({
      item: { id: "p2" },
    });
    expect(match({ network: "", address: "10.0.0.4", name: "K1", serial: "" })).toMatchObject({
      item: { id: "k1" },
    });
    expect(match({ network: "", address: "10.0.0.4", name: "l1-m1-a2", serial: "" })).toMatchObject({
      ...{ item: { id: "p2" }, by: "name" },
    });
    expect(match({ network: "R9", address: "9", serial: "s2" })).toMatchObject({
      item: { id: "p2" },
      by: "serial",
    });
    expect(match({ network: "R9", address: "9", serial: "" })).toBeNull();
  });

  it("says where the register has its serial number, when that is another place", () => {
    expect(match({ serial: "S-2" })).toMatchObject({ item: { id: "p1" }, elsewhere: { id: "p2" } });
  });

  it("takes a name two places share for neither", () => {
    const twins = [
      item({ network: null }),
      item({ id: "p2", network: null, axisCode: "A2", designation: "A2-T1", serial: "S-2" }),
    ];
    expect(new DeviceMatcher(twins).match(device({ network: "", controller: "K1", serial: "" }))).toBeNull();
  });
});

describe("where both do not say the same", () => {
  const apart = (given: Partial<SeenDevice>, of: Partial<RegisterItem> = {}) =>
    compareDevice(item(of), device(given)).map(({ field, verdict }) => `${field} ${verdict}`);

  it("takes spellings of one number for the same, and a look-alike for another", () => {
    expect(apart({ number: "tmhr020" })).toEqual([]);
    expect(apart({ number: "TM-HR-O20" })).toEqual(["number differs"]);
    expect(compareDevice(item(), device({ number: "TM-HR-O20" }))[0]?.lookAlike).toBe(true);
    expect(apart({ number: "100045871", revision: "" }, { aliases: ["100045871"] })).toEqual([]);
  });

  it("tells a gap filled from a difference", () => {
    expect(apart({ revision: "C2" })).toEqual(["revision differs"]);
    expect(apart({}, { serial: null, revision: null })).toEqual(["revision adds", "serial adds"]);
    expect(apart({ serial: "S-9" })).toEqual(["serial differs"]);
    expect(apart({ number: "", revision: "", serial: "" })).toEqual([]);
  });

  it("keeps 20.011 and 20.11 apart, and takes 20 on record for what 20.011 fills", () => {
    const levels = (register: string | null, firmware: string) =>
      compareDevice(controller({ firmware: register }), device({ number: "", serial: "", firmware })).map(
        ({ verdict }) => verdict,
      );
    expect(levels("20.011", "v20.011")).toEqual([]);
    expect(levels("20.011", "20.11")).toEqual(["differs"]);
    expect(levels("20", "20.011")).toEqual(["adds"]);
    expect(levels(null, "20.011")).toEqual(["adds"]);
    expect(levels("20", "latest")).toEqual([]);
  });
});

describe("lists held against the register", () => {
  const items = [1, 2, 3].map((node) =>
    item({ id: `p${node}`, node, axisCode: `A${node}`, designation: `A${node}-T1`, serial: `S-${node}` }),
  );
  const seen = (node: number, given: Partial<SeenDevice> = {}) =>
    device({ id: `d${node}`, address: String(node), serial: `S-${node}`, ...given });

  it("finds what is missing only where the latest list looked, and since when", () => {
    const other = item({ id: "p9", machineId: "m9", network: "R9", serial: "S-9" });
    const old = [seen(3, { firstOn: "2026-01-01", lastOn: "2026-05-01" })];
    const {
      findings,
      notLookedAt,
      seen: days,
    } = compareSources([...items, other], [seen(1), seen(2), ...old]);
    expect(findings.map(({ kind, item: of, lastSeenOn }) => [kind, of?.id, lastSeenOn])).toEqual([
      ["unseen", "p3", "2026-05-01"],
      ["agrees", "p1", null],
      ["agrees", "p2", null],
    ]);
    expect(notLookedAt).toBe(1);
    expect(days.get("p3")?.get("list")).toBe("2026-05-01");
  });

  it("gives one disagreement one mark, and another one when what was seen changes", () => {
    const markOf = (serial: string) => compareSources(items, [seen(1, { serial })]).findings[0]?.mark;
    expect(markOf("S-77")).toBe(markOf("S-77"));
    expect(markOf("S-77")).not.toBe(markOf("S-78"));
  });

  it("proposes a machine none of whose places was seen, and no other", () => {
    const two = [...items, item({ id: "p4", node: 4, machineId: "m2", machineCode: "M2", serial: "S-4" })];
    const { findings } = compareSources(two, [seen(1)]);
    expect(ghostMachines(findings)).toEqual([
      { machineId: "m2", label: "L1 / M2", places: 1, lastSeenOn: null },
    ]);
  });

  it("says in words what a person decides on", () => {
    const { findings } = compareSources(items, [seen(1, { serial: "S-9" }), seen(8, { serial: "X" })]);
    expect(
      findings.map((one) => sightRow(one, null)).map(({ place, said, answers }) => [place, said, answers]),
    ).toEqual([
      ["L1 / M1 / A1-T1", ["serial number: register S-1, seen S-9"], ["taken", "kept"]],
      ["", ["TM-HR-020 B1", "serial X"], ["kept"]],
      ["L1 / M1 / A2-T1", ["No list ever saw it"], ["kept", "retired"]],
      ["L1 / M1 / A3-T1", ["No list ever saw it"], ["kept", "retired"]],
    ]);
    expect(disagreement(findings)).toEqual({ apart: 4, of: 4 });
  });

  it("accounts for every current device once, and for no place twice, whatever was seen", () => {
    const anyDevice = fc
      .record({
        node: fc.integer({ min: 0, max: 6 }),
        serial: fc.constantFrom("", "S-1", "S-2", "X"),
        day: fc.integer({ min: 1, max: 3 }),
      })
      .map(({ node, serial, day }) =>
        seen(node, { serial, lastOn: `2026-11-0${day}`, firstOn: "2026-10-01" }),
      );
    fc.assert(
      fc.property(fc.array(anyDevice, { maxLength: 12 }), (devices) => {
        const { findings } = compareSources(items, devices);
        const latest = devices
          .map(({ lastOn }) => lastOn)
          .sort()
          .at(-1);
        const current = devices.filter(({ lastOn }) => lastOn === latest);
        expect(findings.filter(({ device: of }) => of !== null)).toHaveLength(current.length);
        const missing = findings.filter(({ kind }) => kind === "unseen").map(({ item: of }) => of?.id);
        const met = findings.flatMap(({ kind, item: of }) => (kind === "unseen" || !of ? [] : [of.id]));
        expect(new Set(missing).size).toBe(missing.length);
        expect(missing.some((id) => id !== undefined && met.includes(id))).toBe(false);
        if (devices.length > 0) expect(new Set([...missing, ...met])).toEqual(new Set(["p1", "p2", "p3"]));
      }),
    );
  });
});
