import { addDays, daysBetween } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { EVENTS_SINCE } from "@/seed/scenarios/showcase/moment";
import { partId, partSpec } from "@/seed/scenarios/showcase/parts";
import type { PlannedPosition } from "@/seed/scenarios/showcase/positions";
import { seedId } from "@/seed/seedId";
import type { EventRow, PlacementRow, UnitRow } from "@/seed/tables";

export interface UnitTables {
  readonly units: UnitRow[];
  readonly placements: PlacementRow[];
}

/** Share of the axes whose drive was changed and recorded with both serial numbers. */
const SWAPPED_SHARE = 0.06;
/** Of them, those changed on a work order of the last sixty months. */
const SWAPPED_ON_RECORD = 0.55;

const REVISIONS: Readonly<Record<string, readonly string[]>> = {
  HR: ["B1", "B1", "B2", "C1", "C2"],
  OK: ["A1", "A2", "A2", "B1"],
  HE: ["A1", "A2"],
  EL: ["A1", "B1"],
  BI: ["C1", "C2"],
  LA: ["A1"],
  LR: ["A2", "B1", "C1"],
};

/** Gives units serial numbers that never repeat within a part. */
class UnitMaker {
  readonly #chance: RandomStream;
  readonly #next = new Map<string, number>();

  constructor(chance: RandomStream) {
    this.#chance = chance;
  }

  make(partKey: string, madeYear: number): UnitRow {
    const { family } = partSpec(partKey);
    const before = this.#next.get(partKey) ?? 1_000_000 + 10_000 * this.#chance.integer(1, 800);
    const number = before + this.#chance.integer(1, 9);
    this.#next.set(partKey, number);
    const serial = `${family.mark}${number}`;
    const revisions = REVISIONS[family.key];
    return {
      id: seedId("Unit", `${partKey}/${serial}`),
      partId: partId(partKey),
      serial,
      revision: revisions ? this.#chance.pick(revisions) : null,
      madeYear,
    };
  }
}

/** The day the drive of each swapped axis was changed, by position id. */
function pickSwaps(
  positions: readonly PlannedPosition[],
  events: readonly EventRow[],
  chance: RandomStream,
): Map<string, string> {
  const drives = positions.filter(({ row }) => row.itemClass === "drive");
  const total = Math.round(drives.length * SWAPPED_SHARE);
  const counted = events.filter((event) => event.setAside === null && event.positionId !== null);
  const lastChange = new Map(
    counted.map(({ positionId, happenedAt }) => [positionId ?? "", happenedAt.slice(0, 10)]),
  );
  const known = chance.shuffle(drives.filter(({ partKey }) => partKey !== null));
  const onRecord = known
    .filter(({ row }) => lastChange.has(row.id))
    .slice(0, Math.round(total * SWAPPED_ON_RECORD));
  const before = known.filter(({ row, year }) => !lastChange.has(row.id) && year < 2012);
  return new Map([
    ...onRecord.map(({ row }) => [row.id, lastChange.get(row.id) ?? ""] as const),
    ...before.slice(0, total - onRecord.length).map(({ row, year }) => {
      const first = `${year + 2}-01-01`;
      return [row.id, addDays(first, chance.integer(0, daysBetween(first, EVENTS_SINCE)))] as const;
    }),
  ]);
}

const placement = (
  unit: UnitRow,
  { row }: PlannedPosition,
  span: Pick<PlacementRow, "fromOn" | "untilOn">,
) => ({
  id: seedId("Placement", `${row.id}/${unit.id}`),
  unitId: unit.id,
  positionId: row.id,
  ...span,
});

/** What sits in each place, and what sat there before where a change was recorded. */
export function unitTables(
  seed: number,
  positions: readonly PlannedPosition[],
  events: readonly EventRow[],
): UnitTables {
  const chance = randomStream(seed, "unit");
  const maker = new UnitMaker(chance);
  const swaps = pickSwaps(positions, events, chance);
  const tables: UnitTables = { units: [], placements: [] };
  for (const position of positions) {
    const { partKey, year, row } = position;
    if (partKey === null) continue;
    const day = swaps.get(row.id) ?? null;
    if (day !== null) {
      const earlier = maker.make(partKey, year);
      tables.units.push(earlier);
      tables.placements.push(placement(earlier, position, { fromOn: null, untilOn: day }));
    }
    const unit = maker.make(partKey, day === null ? year : Number(day.slice(0, 4)));
    tables.units.push(unit);
    tables.placements.push(placement(unit, position, { fromOn: day, untilOn: null }));
  }
  return tables;
}
