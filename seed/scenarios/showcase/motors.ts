import type { RandomStream } from "@/lib/kernel/random";
import type { PlannedAxis } from "@/seed/scenarios/showcase/axes";

/** Motor families; WX is the Wren of 6 kW, for which no matching motor is known. */
export type MotorFamily = "WR" | "WX" | "FI" | "RO";

const OLD_RING_WREN = 140;
const RING_ROBIN = 330;
const UNMATCHED = 70;
const UNMATCHED_KAR_02 = 11;

const isKar02Ring = (axis: PlannedAxis): boolean =>
  axis.machine.line.code === "KAR-02" && axis.family === "HR";

/** Motor family by drive family where it does not depend on age. */
const PLAIN: Readonly<Record<string, MotorFamily>> = {
  OK: "WR",
  BI: "WR",
  UN: "WR",
  HE: "FI",
  EL: "FI",
  LA: "FI",
};

/** The oldest ring axes carry Wren, the next ones Robin, the youngest Finch; KAR-02's ring axes all carry Wren. */
function ringMotors(axes: readonly PlannedAxis[]): Map<PlannedAxis, MotorFamily> {
  const ring = axes.filter((axis) => axis.family === "HR");
  const byAge = [...ring].sort((a, b) => Number(isKar02Ring(b)) - Number(isKar02Ring(a)) || a.year - b.year);
  return new Map(
    byAge.map((axis, i) => [
      axis,
      i < OLD_RING_WREN ? "WR" : i < OLD_RING_WREN + RING_ROBIN ? "RO" : ("FI" as const),
    ]),
  );
}

/**
 * The motor of every axis: 610 Wren, of which 70 have no match, 860 Finch, 330 Robin.
 *
 * @param sizeOf Size of an axis's drive; a Wren without a match is large, so it sits on a large drive.
 */
export function planMotors(
  axes: readonly PlannedAxis[],
  sizeOf: ReadonlyMap<PlannedAxis, string>,
  chance: RandomStream,
): Map<PlannedAxis, MotorFamily> {
  const ring = ringMotors(axes);
  const motors = new Map(axes.map((axis) => [axis, ring.get(axis) ?? PLAIN[axis.family] ?? "FI"]));
  const large = chance
    .shuffle(axes)
    .filter((axis) => motors.get(axis) === "WR" && ["040", "080"].includes(sizeOf.get(axis) ?? ""));
  const atKar02 = large.filter(isKar02Ring).slice(0, UNMATCHED_KAR_02);
  const elsewhere = large.filter((axis) => !isKar02Ring(axis)).slice(0, UNMATCHED - UNMATCHED_KAR_02);
  for (const axis of [...atKar02, ...elsewhere]) motors.set(axis, "WX");
  return motors;
}
