import type { IsoDate } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { axisChecks } from "@/lib/retrofit/axisChecks";
import type { AxisEntryRow, AxisRecordRow } from "@/seed/projectTables";
import type { PlannedAxis } from "@/seed/scenarios/showcase/axes";
import {
  beforeRemoval,
  dayOf,
  fullEntries,
  type MeasuredAxis,
  type SeededEntry,
} from "@/seed/scenarios/showcase/axisEntries";
import { nameAxis } from "@/seed/scenarios/showcase/machineNames";
import { projectId } from "@/seed/scenarios/showcase/projects";
import { seedId } from "@/seed/seedId";
import type { AxisRow } from "@/seed/siteTables";

const PROJECT = "KAR-02-R1";
const LINE = "KAR-02";

/**
 * What is left open on some of the axes already cut over, by their place among them; the others are accepted.
 *
 * The refused one stops later than the old drive did, so its guards stand too close.
 */
const OPEN: Readonly<Record<number, (entries: Map<string, SeededEntry>) => void>> = {
  4: (entries) =>
    change(entries, "stopping", ({ asFound, asLeft }) => ({ asLeft: tooLong(asFound, asLeft) })),
  9: (entries) => entries.delete("backup"),
  13: (entries) => {
    change(entries, "homing", ({ asLeft }) => ({ asLeft: asLeft.slice(0, 6) }));
    entries.delete("rate");
  },
  18: (entries) => entries.delete("emergency-stop"),
};
/** Axis of the above whose safety check carries one name only, and the one that only waits to be accepted. */
const ONE_NAME = 16;
const WAITING = 20;

/** The ring axes surveyed so far for the second half: all values of some, the first ones of others. */
const SURVEYED_WHOLE = 6;
const SURVEYED_IN_PART = 4;
const FIRST_VALUES = ["counts", "scaling", "travel"];
const SURVEYED_ON: IsoDate = "2026-11-18";

const TECHNICIANS = ["Technician K1", "Technician K2"] as const;
const ENGINEER = "Engineer K";

function change(
  entries: Map<string, SeededEntry>,
  id: string,
  by: (entry: SeededEntry) => Partial<SeededEntry>,
): void {
  const entry = entries.get(id);
  if (entry) entries.set(id, { ...entry, ...by(entry) });
}

/** The last of the stops three in a hundred longer than before. */
const tooLong = (asFound: number | null, asLeft: readonly number[]): readonly number[] => [
  ...asLeft.slice(0, -1),
  Number(((asFound ?? 0) * 1.03).toFixed(1)),
];

const INSTRUMENTS: Readonly<Record<string, string>> = {
  "lost-cycles": "counters of the controller",
  travel: "laser distance meter K-07",
  homing: "dial gauge K-12",
  holding: "dial gauge K-12",
  following: "trace of the drive",
  torque: "trace of the drive",
  stopping: "laser distance meter K-07",
  rate: "counter of the line",
};

interface Made {
  readonly record: AxisRecordRow;
  readonly entries: readonly AxisEntryRow[];
}

interface Signed {
  readonly technician: string;
  readonly on: (checkId: string) => IsoDate;
  readonly witnessed: (checkId: string) => boolean;
}

function recordOf(
  axisId: string,
  entries: ReadonlyMap<string, SeededEntry>,
  { acceptedOn, signed }: { acceptedOn: IsoDate | null; signed: Signed },
): Made {
  const recordId = seedId("AxisRecord", `${PROJECT}/${axisId}`);
  const rows = axisChecks.flatMap(({ id: checkId, twoNames, unit }): AxisEntryRow[] => {
    const entry = entries.get(checkId);
    if (!entry) return [];
    return [
      {
        id: seedId("AxisEntry", `${PROJECT}/${axisId}/${checkId}`),
        recordId,
        checkId,
        ...entry,
        asLeft: `{${entry.asLeft.join(",")}}`,
        instrument: unit === null || entry.notApplicable !== "" ? "" : (INSTRUMENTS[checkId] ?? ""),
        by: signed.technician,
        witness: twoNames && signed.witnessed(checkId) ? ENGINEER : "",
        on: signed.on(checkId),
      },
    ];
  });
  const acceptedBy = acceptedOn === null ? null : "Group engineer";
  return {
    record: { id: recordId, projectId: projectId(PROJECT), axisId, acceptedOn, acceptedBy },
    entries: rows,
  };
}

function cutOver(axis: MeasuredAxis, place: number, chance: RandomStream): Made {
  const entries = new Map(fullEntries(axis, chance));
  OPEN[place]?.(entries);
  const isOpen = place in OPEN || place === ONE_NAME || place === WAITING;
  return recordOf(axis.row.id, entries, {
    acceptedOn: isOpen ? null : place < 11 ? "2026-08-21" : "2026-09-11",
    signed: {
      technician: TECHNICIANS[place % TECHNICIANS.length] ?? TECHNICIANS[0],
      on: dayOf,
      witnessed: (checkId) => place !== ONE_NAME || checkId !== "safety",
    },
  });
}

function surveyed(axis: MeasuredAxis, place: number, chance: RandomStream): Made {
  const all = fullEntries(axis, chance);
  const entries = place < SURVEYED_WHOLE ? beforeRemoval(all) : beforeRemoval(all, FIRST_VALUES);
  return recordOf(axis.row.id, entries, {
    acceptedOn: null,
    signed: { technician: TECHNICIANS[0], on: () => SURVEYED_ON, witnessed: () => false },
  });
}

/** The records of the running retrofit's axes: those cut over in July, and what is surveyed of those still on the ring. */
export function axisRecordTables(
  seed: number,
  axes: readonly PlannedAxis[],
  rows: readonly AxisRow[],
): { readonly AxisRecord: AxisRecordRow[]; readonly AxisEntry: AxisEntryRow[] } {
  const chance = randomStream(seed, "axis acceptance");
  const rowOf = new Map(rows.map((row) => [row.id, row]));
  const ofFamily = (family: PlannedAxis["family"]): MeasuredAxis[] =>
    axes.flatMap((axis) => {
      const row = rowOf.get(axis.id);
      if (!row || axis.machine.line.code !== LINE || axis.family !== family) return [];
      const vertical = /lift/i.test(nameAxis(axis.index));
      return [{ row, vertical, rate: 180 + 4 * Number(axis.machine.code.slice(1)) }];
    });
  const records = [
    ...ofFamily("HE").map((axis, place) => cutOver(axis, place, chance)),
    ...ofFamily("HR")
      .slice(0, SURVEYED_WHOLE + SURVEYED_IN_PART)
      .map((axis, place) => surveyed(axis, place, chance)),
  ];
  return {
    AxisRecord: records.map(({ record }) => record),
    AxisEntry: records.flatMap(({ entries }) => entries),
  };
}
