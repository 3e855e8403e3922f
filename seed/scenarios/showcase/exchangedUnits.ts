import { addDays, type IsoDate } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import type { FittedUnitRow, RemovedUnitRow } from "@/seed/closeTables";
import { partId, partSpec } from "@/seed/scenarios/showcase/parts";
import type { PlannedPosition } from "@/seed/scenarios/showcase/positions";
import { projectId } from "@/seed/scenarios/showcase/projects";
import type { UnitTables } from "@/seed/scenarios/showcase/units";
import { seedId } from "@/seed/seedId";

const PROJECT = "KAR-02-R1";
const LINE = "KAR-02";
/** The first old drive came out, and the last so many days later. */
const FIRST_OUT: IsoDate = "2026-07-13";
const LAST_DAYS = 2;

/** Of the 22 axes cut over in July two are new on their machines, so 20 old drives came out. */
const OLD_DRIVES = 20;
/** Of each five, as many are tested; the others lie in a box, 8 in all. */
const TESTED_OF_FIVE = 3;

/** Above every serial number that stands somewhere. */
const FIRST_SERIAL = 9_500_000;

interface Exchange {
  readonly removed: RemovedUnitRow[];
  readonly fitted: FittedUnitRow[];
}

/**
 * The drives the running retrofit exchanged in July.
 *
 * What came out is held by the project and on no shelf until it is closed: the pieces on the books stay those that were
 * counted. What went in stands in the installed base already.
 */
export function exchangedUnits(
  seed: number,
  positions: readonly PlannedPosition[],
  { units, placements }: UnitTables,
): Exchange {
  const chance = randomStream(seed, "exchanged units");
  const drives = positions.filter(
    ({ row, axis, machine }) =>
      row.itemClass === "drive" && axis?.family === "HE" && machine.line.code === LINE,
  );
  const standing = new Map(
    placements.flatMap(({ positionId, unitId, untilOn }) => (untilOn === null ? [[positionId, unitId]] : [])),
  );
  const unitOf = new Map(units.map((unit) => [unit.id, unit]));
  const found: Exchange = { removed: [], fitted: [] };
  for (const [place, position] of drives.entries()) {
    const { row, partKey } = position;
    const unit = unitOf.get(standing.get(row.id) ?? "");
    if (!unit || partKey === null) continue;
    const on = addDays(FIRST_OUT, Math.floor((place * LAST_DAYS) / drives.length));
    const isNew = place >= OLD_DRIVES;
    found.fitted.push({
      ...{ id: seedId("FittedUnit", `${PROJECT}/${row.id}`), projectId: projectId(PROJECT) },
      ...{ positionId: row.id, partId: unit.partId, serial: unit.serial, revision: unit.revision ?? "" },
      ...{ firmware: "3.11", added: isNew, fittedOn: addDays(on, 1) },
    });
    if (!isNew) found.removed.push(oldDrive(chance, { place, positionId: row.id, partKey, on }));
  }
  return found;
}

interface Out {
  readonly place: number;
  readonly positionId: string;
  /** Part that was put in. */
  readonly partKey: string;
  readonly on: IsoDate;
}

/** The drive of the same size on the ring that came out. */
function oldDrive(chance: RandomStream, { place, positionId, partKey, on }: Out): RemovedUnitRow {
  const key = partKey.replace("HE-", "HR-");
  const serial = `${partSpec(key).family.mark}${FIRST_SERIAL + 10 * place + chance.integer(0, 9)}`;
  const tested = place % 5 < TESTED_OF_FIVE;
  return {
    ...{ id: seedId("RemovedUnit", `${PROJECT}/${positionId}`), projectId: projectId(PROJECT) },
    ...{ positionId, partId: partId(key), serial, revision: chance.pick(["B1", "B2", "C1"]) },
    ...{ removedOn: on, result: tested ? "usable" : null },
    testedBy: tested ? "Electrical workshop" : "",
    how: tested ? "Two hours under load on the bench, fan and capacitors looked at" : "",
    testedOn: tested ? addDays(on, chance.integer(20, 60)) : null,
    bin: tested ? "R7-220" : "",
  };
}
