import { addDays } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import type { PlannedMachine } from "@/seed/scenarios/showcase/layout";
import { type ControllerModel, LINES } from "@/seed/scenarios/showcase/lineTable";
import { nameMachine } from "@/seed/scenarios/showcase/machineNames";
import { D0 } from "@/seed/scenarios/showcase/moment";
import { lineId, siteId } from "@/seed/scenarios/showcase/sites";
import { seedId } from "@/seed/seedId";
import type { ControllerRow, MachineRow } from "@/seed/siteTables";

const SHARING_LINES = 36;
const UNKNOWN_SHARE = 0.11;
const UNKNOWN_SHARE_TAD = 0.3;
const ONE_LOWER_SHARE = 0.2;
/** Lines on which a machine one level below the line matters to the newest drives. */
const SURELY_LOWER = ["VEL-02", "PIN-01"];

/** A controller with the machines it runs; the first of them carries it. */
export interface PlannedController {
  readonly row: ControllerRow;
  readonly model: ControllerModel;
  readonly machines: readonly PlannedMachine[];
}

interface Bare {
  readonly designation: string;
  readonly machines: readonly PlannedMachine[];
  readonly leads: boolean;
}

function pickSharing(machines: readonly PlannedMachine[], chance: RandomStream): Set<PlannedMachine> {
  const lines = chance.shuffle(LINES).slice(0, SHARING_LINES);
  return new Set(
    lines.flatMap((line) => {
      const able = machines.filter(
        (m) => m.line === line && m.follows && m.own === (line.code === "KAR-02" ? "beside" : "lead"),
      );
      return able.length === 0 ? [] : [chance.pick(able)];
    }),
  );
}

function bareControllers(machines: readonly PlannedMachine[], sharing: ReadonlySet<PlannedMachine>): Bare[] {
  const bare: { designation: string; machines: PlannedMachine[]; leads: boolean }[] = [];
  for (const machine of machines) {
    const last = bare.at(-1);
    if (last && sharing.has(machine)) {
      last.machines.push(machine);
      continue;
    }
    const number = bare.filter((one) => one.machines[0]?.line === machine.line).length + 1;
    bare.push({ designation: `${machine.line.code}-K${number}`, machines: [machine], leads: number === 1 });
  }
  return bare;
}

const lineOf = (one: Bare) => (one.machines[0] as PlannedMachine).line;
const modelOf = (one: Bare) => (one.machines[0] as PlannedMachine).controller;
const isBeside = (one: Bare) => one.machines[0]?.own === "beside";

function pickUnknown(bare: readonly Bare[], chance: RandomStream): Set<Bare> {
  const open = chance.shuffle(bare.filter((one) => !one.leads && !SURELY_LOWER.includes(lineOf(one).code)));
  const atTad = (one: Bare) => lineOf(one).site === "TAD";
  const tadCount = Math.round(bare.filter(atTad).length * UNKNOWN_SHARE_TAD);
  const rest = Math.round(bare.length * UNKNOWN_SHARE) - tadCount;
  return new Set([
    ...open.filter(atTad).slice(0, tadCount),
    ...open.filter((one) => !atTad(one)).slice(0, rest),
  ]);
}

/** Drives on Ethernet need a Slate 7 at 27 or a Slate 5 at 24; where they run, the level is not below. */
function canBeLower(one: Bare): boolean {
  const { firmware } = lineOf(one);
  if (modelOf(one) === "Slate 7") return firmware > 27;
  const onEthernet = one.machines.some(({ axes }) =>
    axes.some((family) => family === "HE" || family === "EL"),
  );
  return !onEthernet || firmware > 24;
}

function pickLower(bare: readonly Bare[], unknown: ReadonlySet<Bare>, chance: RandomStream): Set<Bare> {
  const open = chance.shuffle(
    bare.filter((one) => !one.leads && !isBeside(one) && !unknown.has(one) && canBeLower(one)),
  );
  const sure = SURELY_LOWER.flatMap((code) => open.filter((one) => lineOf(one).code === code).slice(0, 1));
  const others = open.filter((one) => !sure.includes(one));
  return new Set([...sure, ...others].slice(0, Math.round(bare.length * ONE_LOWER_SHARE)));
}

/** Firmware and memory of a controller that stands beside the line's leading kind. */
const BESIDE = {
  "Slate 3": { firmware: 18, memory: 70 },
  "Slate 5": { firmware: 22, memory: 74 },
  "Slate 7": { firmware: 29, memory: 40 },
};

/** What was read off a controller; nothing of it is known where nobody read it. */
function readingOf(one: Bare, lower: boolean, chance: RandomStream) {
  const plain = isBeside(one) ? BESIDE[modelOf(one)] : lineOf(one);
  const firmware = plain.firmware - (lower ? 1 : 0);
  return {
    firmware,
    firmwareRaw: String(firmware),
    memoryPercent: plain.memory - (one.leads ? 0 : chance.integer(0, 6)),
    readOn: addDays(D0, -chance.integer(20, 600)),
    evidence: "measured" as const,
  };
}

const UNREAD = {
  firmware: null,
  firmwareRaw: null,
  memoryPercent: null,
  readOn: null,
  evidence: "assumed" as const,
};

/** Sites that wrote down how many axes their controllers can drive. */
const LIMITS_KNOWN = ["VEL", "THO"];
const AXES_AT_MOST: Readonly<Record<ControllerModel, number>> = {
  "Slate 3": 16,
  "Slate 5": 32,
  "Slate 7": 64,
};

/** What stands on the plate; nobody looked at that of a controller that was not read either. */
function plateOf(one: Bare, unread: boolean, chance: RandomStream) {
  const model = modelOf(one);
  const hardware = chance.pick(
    model === "Slate 3" ? ["A3", "B1"] : model === "Slate 5" ? ["B2", "C1", "C2"] : ["A1", "B1"],
  );
  // Of hardware C on a Slate 5 drives twice the axes.
  const most = model === "Slate 5" && hardware < "C" ? 16 : AXES_AT_MOST[model];
  const known = LIMITS_KNOWN.includes(lineOf(one).site);
  return { hardware: unread ? null : hardware, axisLimit: unread || !known ? null : most };
}

/** 214 controllers for 250 machines; a machine that shares runs on its neighbour's. */
export function planControllers(seed: number, machines: readonly PlannedMachine[]): PlannedController[] {
  const chance = randomStream(seed, "controller");
  const bare = bareControllers(machines, pickSharing(machines, chance));
  const plates = randomStream(seed, "controller plate");
  const unknown = pickUnknown(bare, chance);
  const lower = pickLower(bare, unknown, chance);
  return bare.map((one) => {
    const { site } = lineOf(one);
    const model = modelOf(one);
    return {
      model,
      machines: one.machines,
      row: {
        id: seedId("Controller", `${site}/${one.designation}`),
        siteId: siteId(site),
        designation: one.designation,
        model,
        ...(unknown.has(one) ? UNREAD : readingOf(one, lower.has(one), chance)),
        ...plateOf(one, unknown.has(one), plates),
        leadsLineId: one.leads ? lineId(lineOf(one).code) : null,
      },
    };
  });
}

export function machineRows(controllers: readonly PlannedController[]): MachineRow[] {
  return controllers.flatMap(({ row, machines }) =>
    machines.map((machine) => ({
      id: machine.id,
      lineId: lineId(machine.line.code),
      code: machine.code,
      name: nameMachine(machine.line.name, machine.code),
      inServiceYear: machine.year,
      controllerId: row.id,
    })),
  );
}
