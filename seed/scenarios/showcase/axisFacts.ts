import { addDays } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { type AxisFactsRow, UNSURVEYED } from "@/seed/panelTables";
import type { PlannedAxis } from "@/seed/scenarios/showcase/axes";
import { D0 } from "@/seed/scenarios/showcase/moment";
import type { MotorFamily } from "@/seed/scenarios/showcase/motors";
import type { SiteCode } from "@/seed/scenarios/showcase/sites";
import type { AxisRow } from "@/seed/siteTables";

/** Share of the axes of a site whose cables, travel and homing somebody wrote down. */
const SURVEYED: Readonly<Record<SiteCode, number>> = {
  VEL: 0.75,
  OST: 0.5,
  KAR: 0.6,
  PIN: 0.55,
  TAD: 0.15,
  THO: 0.95,
};

const POWER = ["4G1.5 shielded", "4G2.5 shielded", "4G4 shielded", "4G6 shielded"] as const;
const FEEDBACK: Readonly<Record<MotorFamily, string>> = {
  WR: "3x2x0.25 shielded",
  WX: "3x2x0.25 shielded",
  FI: "2x2x0.34 shielded",
  RO: "5x2x0.25 shielded",
};

/** A resolver does not know where it is after switching on; the others keep or read their position. */
function homingOf(motor: MotorFamily, chance: RandomStream) {
  if (motor === "FI" || motor === "RO") return "absolute_encoder" as const;
  return chance.pick(["to_switch", "to_switch_then_marker", "to_marker", "to_end_stop"] as const);
}

const hundredths = (value: number) => Math.round(value * 100) / 100;

interface Graded {
  readonly evidence: "measured" | "documented";
  readonly on: string | null;
}

function cables(motor: MotorFamily, { evidence, on }: Graded, chance: RandomStream) {
  const length = chance.integer(8, 90) / 2;
  const inChain = chance.next() < 0.2 ? null : chance.next() < 0.45;
  return {
    powerCable: chance.pick(POWER),
    ...{ powerCableLength: length, powerCableInChain: inChain },
    ...{ powerCableEvidence: evidence, powerCableReadOn: on },
    feedbackCable: FEEDBACK[motor],
    ...{ feedbackCableLength: length, feedbackCableInChain: inChain },
    ...{ feedbackCableEvidence: evidence, feedbackCableReadOn: on },
  };
}

/** A turning axis that goes round and round has no ends on record; half of them do. */
function travelOf(axis: AxisRow, { evidence, on }: Graded, chance: RandomStream) {
  const turns = axis.travelUnit === "deg";
  const travel = turns ? chance.pick([90, 180, 270, 350]) : chance.integer(6, 48) * 50;
  if (turns && chance.next() < 0.5) return null;
  const beyond = turns ? 5 : 10;
  return {
    ...{ travel, hardLow: -beyond, hardHigh: travel + beyond, softLow: 0, softHigh: travel },
    ...{ travelEvidence: evidence, travelReadOn: on },
  };
}

/** Cables, travel and homing by axis id, as the surveys of the sites have them; the same from one seed. */
export function planAxisFacts(
  seed: number,
  axes: readonly PlannedAxis[],
  {
    rows,
    motorOf,
  }: { readonly rows: readonly AxisRow[]; readonly motorOf: ReadonlyMap<PlannedAxis, MotorFamily> },
): Map<string, AxisFactsRow> {
  const chance = randomStream(seed, "axis facts");
  const byId = new Map(rows.map((row) => [row.id, row]));
  return new Map(
    axes.flatMap((axis) => {
      const row = byId.get(axis.id);
      if (!row || chance.next() >= SURVEYED[axis.machine.line.site as SiteCode]) return [];
      return row.travelUnit === null ? [] : [[axis.id, surveyed(row, motorOf.get(axis) ?? "FI", chance)]];
    }),
  );
}

function surveyed(row: AxisRow, motor: MotorFamily, chance: RandomStream): AxisFactsRow {
  const measured = chance.next() < 0.6;
  const graded: Graded = measured
    ? { evidence: "measured", on: addDays(D0, -chance.integer(30, 700)) }
    : { evidence: "documented", on: null };
  const homing = homingOf(motor, chance);
  return {
    ...UNSURVEYED,
    ...cables(motor, graded, chance),
    ...travelOf(row, graded, chance),
    homing,
    homeOffset: homing === "absolute_encoder" ? null : hundredths(chance.between(-20, 20)),
    ...{ homingEvidence: graded.evidence, homingReadOn: graded.on },
  };
}
