import type { IsoDate } from "@/lib/kernel/isoDate";
import type { RandomStream } from "@/lib/kernel/random";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import type { CheckEntry } from "@/lib/retrofit/judgeCheck";
import { recordedCountsPerUnit } from "@/lib/retrofit/scaling";
import type { AxisRow } from "@/seed/siteTables";

/** What the demonstration writes into one check of a record. */
export type SeededEntry = Pick<CheckEntry, "asFound" | "limit" | "asLeft" | "confirmed" | "notApplicable">;

/** An axis whose record is made up, with what its machine gave before. */
export interface MeasuredAxis {
  readonly row: AxisRow;
  /** The load would fall if nothing held it. */
  readonly vertical: boolean;
  /** Pieces per minute of the machine before the work. */
  readonly rate: number;
}

/** Digits after the point an instrument of the shop floor shows, by unit of travel. */
const DIGITS: Readonly<Record<string, number>> = { mm: 2, deg: 2 };
/** Widest spread allowed of ten homes, by unit of travel. */
const HOMING_LIMIT: Readonly<Record<string, number>> = { mm: 0.02, deg: 0.1 };
/** Longest drop allowed when the brake takes the load, in the unit of travel. */
const DROP_LIMIT = 0.5;
/** Share of the rated torque that must not be passed, %. */
const TORQUE_LIMIT = 80;
const TEN = 10;

const empty: SeededEntry = { asFound: null, limit: null, asLeft: [], confirmed: null, notApplicable: "" };
const passed: SeededEntry = { ...empty, confirmed: true };

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits));
}

/** Everything measured and confirmed on an axis that runs with its new drive, by check. */
export function fullEntries(axis: MeasuredAxis, chance: RandomStream): ReadonlyMap<string, SeededEntry> {
  const unit = axis.row.travelUnit ?? "mm";
  const digits = DIGITS[unit] ?? 2;
  const near = (value: number, spread: number) => rounded(value + chance.between(-spread, spread), digits);
  const longMove = unit === "deg" ? 360 : 500;
  const mark = near(chance.between(5, 40), 0);
  const homing = HOMING_LIMIT[unit] ?? 0.02;
  const following = rounded(chance.between(0.12, 0.9), 2);
  const stopping = rounded(chance.between(28, 120), 1);
  const perUnit = recordedCountsPerUnit(axis.row);
  const measured: Readonly<Record<string, SeededEntry>> = {
    "lost-cycles": { ...empty, asLeft: [0] },
    counts: {
      ...empty,
      asFound: axis.row.countsPerRev,
      asLeft: axis.row.countsPerRev === null ? [] : [axis.row.countsPerRev],
    },
    // Controllers take four digits after the point.
    scaling: { ...empty, asFound: perUnit, asLeft: perUnit === null ? [] : [rounded(perUnit, 4)] },
    travel: { ...empty, asFound: near(longMove, 0.05), asLeft: [near(longMove, 0.06)] },
    homing: {
      ...empty,
      asFound: mark,
      limit: homing,
      asLeft: Array.from({ length: TEN }, () => near(mark, homing * 0.4)),
    },
    holding: axis.vertical
      ? { ...empty, limit: DROP_LIMIT, asLeft: [rounded(chance.between(0.05, 0.35), 2)] }
      : { ...empty, notApplicable: "cannot fall: moves level or turns" },
    following: {
      ...empty,
      asFound: following,
      asLeft: [rounded(following * chance.between(0.55, 1.02), 2)],
    },
    torque: { ...empty, limit: TORQUE_LIMIT, asLeft: [chance.integer(34, 74)] },
    stopping: {
      ...empty,
      asFound: stopping,
      limit: Math.ceil(stopping * 1.1),
      asLeft: Array.from({ length: TEN }, () => rounded(stopping * chance.between(0.82, 0.98), 1)),
    },
    rate: { ...empty, asFound: axis.rate, asLeft: [rounded(axis.rate * chance.between(0.985, 1.01), 0)] },
  };
  return new Map(axisChecks.map(({ id }) => [id, measured[id] ?? passed]));
}

/** What is written down before the old drive leaves: values and limits, nothing of the new drive yet. */
export function beforeRemoval(
  entries: ReadonlyMap<string, SeededEntry>,
  only: readonly string[] = axisChecks.map(({ id }) => id),
): ReadonlyMap<string, SeededEntry> {
  const kept = [...entries].filter(
    ([id, { asFound, limit }]) => only.includes(id) && (asFound !== null || limit !== null),
  );
  return new Map(kept.map(([id, { asFound, limit }]) => [id, { ...empty, asFound, limit }]));
}

/** Days of the work on the axes cut over in July. */
export const WORK_DAYS = {
  power: "2026-07-21",
  motion: "2026-07-27",
  safety: "2026-07-29",
  proving: "2026-08-12",
} as const satisfies Record<string, IsoDate>;

/** Day a check was done, by what it belongs to. */
export function dayOf(checkId: string): IsoDate {
  if (["before-power", "identity"].includes(checkId)) return WORK_DAYS.power;
  if (["safety", "emergency-stop", "stopping", "holding"].includes(checkId)) return WORK_DAYS.safety;
  return ["backup", "rate", "lost-cycles"].includes(checkId) ? WORK_DAYS.proving : WORK_DAYS.motion;
}
