import { randomStream } from "@/lib/kernel/random";
import { type PanelRow, UNSURVEYED } from "@/seed/panelTables";
import {
  AXES,
  LARGE_SEED,
  LINES,
  MACHINES,
  numberedId,
  padded,
  SIZE,
  upTo,
} from "@/seed/scenarios/large/size";
import { SITES } from "@/seed/scenarios/showcase/sites";
import type { AxisRow, ControllerRow, LineRow, MachineRow, NetworkRow, SiteRow } from "@/seed/siteTables";

const MODELS = ["Slate 3", "Slate 5", "Slate 7"] as const;
const LEVEL = { "Slate 3": 16, "Slate 5": 23, "Slate 7": 29 } as const;

export const siteOfLine = (line: number): number => Math.floor(line / SIZE.linesPerSite);
export const lineOfMachine = (machine: number): number => Math.floor(machine / SIZE.machinesPerLine);
/** Lines get younger through a site, so that every site has all ages. */
const yearOfLine = (line: number): number => 1996 + (line % SIZE.linesPerSite);

const modelSite = (site: number) => SITES[site % SITES.length] ?? (SITES[0] as (typeof SITES)[number]);
const siteCode = (site: number): string => `S${padded(site + 1, 2)}`;
const lineCode = (line: number): string =>
  `${siteCode(siteOfLine(line))}-${padded((line % SIZE.linesPerSite) + 1, 2)}`;

export function largeSites(): SiteRow[] {
  return upTo(SIZE.sites).map((site) => {
    const { country, currency, timeZone } = modelSite(site);
    return {
      id: numberedId("Site", site),
      code: siteCode(site),
      name: `Works ${site + 1}`,
      country,
      timeZone,
      currency,
    };
  });
}

export function largeLines(): LineRow[] {
  const chance = randomStream(LARGE_SEED, "line");
  return upTo(LINES).map((line) => ({
    id: numberedId("Line", line),
    siteId: numberedId("Site", siteOfLine(line)),
    code: lineCode(line),
    name: `Line ${(line % SIZE.linesPerSite) + 1}`,
    shiftsPerWeek: chance.integer(10, 21),
    inServiceYear: yearOfLine(line),
    costPerHour: Math.round(chance.between(400, 3_800) * modelSite(siteOfLine(line)).rate),
    costFixed: null,
    costSteps: "[]",
    costMethod: null,
    costOwner: "Plant controller",
    costApprovedOn: "2026-03-02",
    costValidUntil: "2027-03-31",
    costEvidence: "documented",
    bufferHours: chance.integer(0, 8) / 2,
    note: null,
  }));
}

const modelOf = (line: number) =>
  MODELS[Math.min(2, Math.floor((line % SIZE.linesPerSite) / 9))] ?? "Slate 7";

export function* largeControllers(): Generator<ControllerRow> {
  const chance = randomStream(LARGE_SEED, "controller");
  for (let machine = 0; machine < MACHINES; machine += 1) {
    const line = lineOfMachine(machine);
    const model = modelOf(line);
    const firmware = chance.next() < 0.11 ? null : LEVEL[model] - chance.integer(0, 1);
    yield {
      id: numberedId("Controller", machine),
      siteId: numberedId("Site", siteOfLine(line)),
      designation: `${lineCode(line)}-K${(machine % SIZE.machinesPerLine) + 1}`,
      model,
      firmware,
      firmwareRaw: firmware === null ? null : String(firmware),
      memoryPercent: firmware === null ? null : chance.integer(30, 95),
      ...{ hardware: null, axisLimit: null },
      readOn: firmware === null ? null : "2026-06-01",
      evidence: firmware === null ? "assumed" : "measured",
      leadsLineId: null,
    };
  }
}

export function* largeMachines(): Generator<MachineRow> {
  for (let machine = 0; machine < MACHINES; machine += 1) {
    const line = lineOfMachine(machine);
    const number = (machine % SIZE.machinesPerLine) + 1;
    yield {
      id: numberedId("Machine", machine),
      lineId: numberedId("Line", line),
      code: `M${padded(number, 2)}`,
      name: `Machine ${number}`,
      inServiceYear: yearOfLine(line),
      controllerId: numberedId("Controller", machine),
    };
  }
}

/** One panel a machine. */
export function* largePanels(): Generator<PanelRow> {
  for (let machine = 0; machine < MACHINES; machine += 1)
    yield {
      id: numberedId("Panel", machine),
      machineId: numberedId("Machine", machine),
      designation: "+A1",
      name: null,
      location: null,
    };
}

/** One network a machine. */
export function* largeNetworks(): Generator<NetworkRow> {
  for (let machine = 0; machine < MACHINES; machine += 1) {
    const line = lineOfMachine(machine);
    yield {
      id: numberedId("Network", machine),
      siteId: numberedId("Site", siteOfLine(line)),
      name: `${lineCode(line)}-N${(machine % SIZE.machinesPerLine) + 1}`,
      kind: modelOf(line) === "Slate 7" ? "ethernet" : "fibre_ring",
      profileFamily: null,
    };
  }
}

export function* largeAxes(): Generator<AxisRow> {
  for (let axis = 0; axis < AXES; axis += 1) {
    const machine = Math.floor(axis / SIZE.axesPerMachine);
    const line = lineOfMachine(machine);
    const place = (axis % SIZE.axesPerMachine) + 1;
    yield {
      id: numberedId("Axis", axis),
      machineId: numberedId("Machine", machine),
      code: `A${padded(place, 2)}`,
      name: `Axis ${place}`,
      inServiceYear: yearOfLine(line),
      networkId: numberedId("Network", machine),
      nodeAddress: place,
      ringOrder: modelOf(line) === "Slate 7" ? null : place,
      feedback: "digital absolute, multi-turn",
      countsPerRev: 1_048_576,
      motorRevs: 5,
      loadRevs: 1,
      unitsPerLoadRev: 360,
      travelUnit: "deg",
      ...UNSURVEYED,
      ...{ powerCable: "4G2.5 shielded", powerCableLength: 12.5, powerCableInChain: false },
      ...{ powerCableEvidence: "documented", homing: "absolute_encoder", homingEvidence: "documented" },
      evidence: "documented",
    };
  }
}
