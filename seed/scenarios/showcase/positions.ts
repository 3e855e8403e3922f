import { driveDesignation, motorDesignation } from "@/lib/intake/intents/designations";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import type { ItemClass } from "@/lib/risk/evaluation";
import type { PlannedAxis } from "@/seed/scenarios/showcase/axes";
import type { PlannedController } from "@/seed/scenarios/showcase/controllers";
import { planSizes } from "@/seed/scenarios/showcase/driveSizes";
import type { PlannedMachine } from "@/seed/scenarios/showcase/layout";
import { type MotorFamily, planMotors } from "@/seed/scenarios/showcase/motors";
import { planOtherItems } from "@/seed/scenarios/showcase/otherItems";
import { partId, partSpec } from "@/seed/scenarios/showcase/parts";
import { seedId } from "@/seed/seedId";
import type { PositionRow } from "@/seed/tables";

/** A place with what belongs there; `partKey` null is not identified. */
export interface PlannedPosition {
  readonly row: PositionRow;
  readonly machine: PlannedMachine;
  readonly axis: PlannedAxis | null;
  readonly partKey: string | null;
  readonly year: number;
}

export interface PositionSketch {
  readonly machine: PlannedMachine;
  readonly axis?: PlannedAxis;
  readonly designation: string;
  readonly itemClass: ItemClass;
  readonly partKey: string | null;
}

function place(sketch: PositionSketch): PlannedPosition {
  const { machine, designation, itemClass, partKey } = sketch;
  const axis = sketch.axis ?? null;
  const weak = machine.line.site === "TAD";
  return {
    machine,
    axis,
    partKey,
    year: axis?.year ?? machine.year,
    row: {
      id: seedId("Position", `${machine.line.code}/${machine.code}/${designation}`),
      machineId: machine.id,
      axisId: axis?.id ?? null,
      panelId: null,
      itemClass,
      designation,
      partId: partKey === null ? null : partId(partKey),
      evidence: partKey === null ? "assumed" : weak ? "inferred" : "documented",
    },
  };
}

/** The unmatched Wren is one size; the others are as large as their drive. */
function motorPart(family: MotorFamily, size: string): string {
  return family === "WX" ? "WR-150" : `${family}-${size}`;
}

export interface PlannedPositions {
  readonly positions: readonly PlannedPosition[];
  readonly motorOf: ReadonlyMap<PlannedAxis, MotorFamily>;
}

export interface Plant {
  readonly machines: readonly PlannedMachine[];
  readonly controllers: readonly PlannedController[];
  readonly axes: readonly PlannedAxis[];
}

/** Every place of the group: a drive and a motor at each axis, and the machines' other items. */
export function planPositions(seed: number, plant: Plant): PlannedPositions {
  const chance: RandomStream = randomStream(seed, "position");
  const sizeOf = planSizes(plant.axes, chance);
  const motorOf = planMotors(plant.axes, sizeOf, chance);
  const atAxes = plant.axes.flatMap((axis): PositionSketch[] => {
    const size = sizeOf.get(axis) ?? "020";
    const { machine, code, family } = axis;
    const motor = motorPart(motorOf.get(axis) ?? "FI", size);
    return [
      {
        machine,
        axis,
        designation: driveDesignation(code),
        itemClass: "drive",
        partKey: family === "UN" ? null : `${family}-${size}`,
      },
      {
        machine,
        axis,
        designation: motorDesignation(code),
        itemClass: "motor",
        partKey: partSpec(motor).key,
      },
    ];
  });
  const sketches = [...atAxes, ...planOtherItems(plant, chance)];
  return { positions: sketches.map(place), motorOf };
}
