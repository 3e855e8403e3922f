import type { RandomStream } from "@/lib/kernel/random";
import type { MotorFamily } from "@/seed/scenarios/showcase/motors";

const FEEDBACK: Readonly<Record<MotorFamily, { readonly feedback: string; readonly countsPerRev: number }>> =
  {
    WR: { feedback: "resolver", countsPerRev: 16_384 },
    WX: { feedback: "resolver", countsPerRev: 16_384 },
    FI: { feedback: "digital absolute, multi-turn", countsPerRev: 1_048_576 },
    RO: { feedback: "absolute, battery-backed", countsPerRev: 131_072 },
  };

const GEARS = [
  [1, 1],
  [3, 1],
  [5, 1],
  [7, 2],
  [10, 1],
  [25, 4],
] as const;

const TRAVELS = [
  { unitsPerLoadRev: 360, travelUnit: "deg" },
  { unitsPerLoadRev: 10, travelUnit: "mm" },
  { unitsPerLoadRev: 157.08, travelUnit: "mm" },
  { unitsPerLoadRev: 250, travelUnit: "mm" },
] as const;

/** Feedback and scaling of an axis as a survey records them. */
export function scalingOf(motor: MotorFamily, chance: RandomStream) {
  const [motorRevs, loadRevs] = chance.pick(GEARS);
  return { ...FEEDBACK[motor], motorRevs, loadRevs, ...chance.pick(TRAVELS) };
}
