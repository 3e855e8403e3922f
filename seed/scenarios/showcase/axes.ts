import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { UNSURVEYED } from "@/seed/panelTables";
import type { PlannedMachine } from "@/seed/scenarios/showcase/layout";
import type { DriveFamily } from "@/seed/scenarios/showcase/lineTable";
import { nameAxis } from "@/seed/scenarios/showcase/machineNames";
import { D0 } from "@/seed/scenarios/showcase/moment";
import type { MotorFamily } from "@/seed/scenarios/showcase/motors";
import { planNetworks, type Seat } from "@/seed/scenarios/showcase/networks";
import { scalingOf } from "@/seed/scenarios/showcase/scaling";
import { seedId } from "@/seed/seedId";
import type { AxisRow, NetworkRow } from "@/seed/siteTables";

export interface PlannedAxis {
  readonly id: string;
  readonly machine: PlannedMachine;
  readonly code: string;
  readonly index: number;
  readonly family: DriveFamily;
  readonly year: number;
}

const LATEST_YEAR = Number(D0.slice(0, 4));

/** The axes of every machine in order; each is about as old as its machine. */
export function planAxes(seed: number, machines: readonly PlannedMachine[]): PlannedAxis[] {
  const chance = randomStream(seed, "axis");
  return machines.flatMap((machine) =>
    machine.axes.map((family, index) => {
      const code = `A${String(index + 1).padStart(2, "0")}`;
      return {
        id: seedId("Axis", `${machine.line.code}/${machine.code}/${code}`),
        machine,
        code,
        index,
        family,
        year: Math.min(
          LATEST_YEAR,
          machine.year + (machine.year === LATEST_YEAR ? 0 : chance.integer(-1, 1)),
        ),
      };
    }),
  );
}

/** San Tadeo's drives that nobody identified have no record of their scaling either. */
const isUndocumented = (axis: PlannedAxis): boolean =>
  axis.family === "UN" && axis.machine.line.site === "TAD";

function record(axis: PlannedAxis, motor: MotorFamily, chance: RandomStream) {
  const scaling = scalingOf(motor, chance);
  if (isUndocumented(axis))
    return {
      name: null,
      feedback: null,
      countsPerRev: null,
      motorRevs: null,
      loadRevs: null,
      unitsPerLoadRev: null,
      travelUnit: null,
      evidence: "assumed" as const,
    };
  const weak = axis.machine.line.site === "TAD";
  return {
    name: nameAxis(axis.index),
    ...scaling,
    evidence: weak ? ("inferred" as const) : ("documented" as const),
  };
}

export interface AxisTables {
  readonly axes: AxisRow[];
  readonly networks: NetworkRow[];
}

/** Rows of axes and of the networks they sit on. */
export function axisTables(
  seed: number,
  axes: readonly PlannedAxis[],
  motorOf: ReadonlyMap<PlannedAxis, MotorFamily>,
): AxisTables {
  const chance = randomStream(seed, "axis record");
  const { networks, seats } = planNetworks(axes);
  const none: Seat = { networkId: null, nodeAddress: null, ringOrder: null };
  return {
    networks,
    axes: axes.map((axis) => ({
      id: axis.id,
      machineId: axis.machine.id,
      code: axis.code,
      inServiceYear: axis.year,
      ...(seats.get(axis) ?? none),
      ...record(axis, motorOf.get(axis) ?? "FI", chance),
      ...UNSURVEYED,
    })),
  };
}
