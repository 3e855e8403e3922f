import { randomStream } from "@/lib/kernel/random";
import type { ItemClass } from "@/lib/risk/evaluation";
import { classOf } from "@/seed/scenarios/large/largeParts";
import { lineOfMachine, siteOfLine } from "@/seed/scenarios/large/largePlant";
import {
  LARGE_SEED,
  numberedId,
  PLACES_PER_MACHINE,
  POSITIONS,
  padded,
  SIZE,
  upTo,
} from "@/seed/scenarios/large/size";
import type { EventKind, EventRow, PlacementRow, PositionRow, UnitRow } from "@/seed/tables";

const AXIS_PLACES = SIZE.axesPerMachine * 2;
const OTHERS: readonly ItemClass[] = ["controller", "hmi", "power_supply", "power_supply", "io"];

const PARTS_OF = new Map<ItemClass, number[]>();
for (const part of upTo(SIZE.parts)) {
  const itemClass = classOf(part);
  PARTS_OF.set(itemClass, [...(PARTS_OF.get(itemClass) ?? []), part]);
}

interface Place {
  readonly machine: number;
  readonly axis: number | null;
  readonly itemClass: ItemClass;
  readonly designation: string;
  readonly part: number;
}

/** What stands at the n-th place: drive and motor of each axis first, then the machine's other items. */
function placeAt(n: number): Place {
  const machine = Math.floor(n / PLACES_PER_MACHINE);
  const within = n % PLACES_PER_MACHINE;
  const onAxis = within < AXIS_PLACES;
  const axisPlace = Math.floor(within / 2);
  const other = within - AXIS_PLACES;
  const itemClass = onAxis ? (within % 2 === 0 ? "drive" : "motor") : (OTHERS[other] ?? "io");
  const code = `A${padded(axisPlace + 1, 2)}`;
  const parts = PARTS_OF.get(itemClass) ?? [0];
  // A line draws on a few neighbouring parts, and lines of all sites share them.
  const part = parts[(lineOfMachine(machine) * 13 + (within % 4)) % parts.length] ?? 0;
  return {
    machine,
    axis: onAxis ? machine * SIZE.axesPerMachine + axisPlace : null,
    itemClass,
    designation: onAxis ? `${code}-${itemClass === "drive" ? "T1" : "M1"}` : `X${other + 1}`,
    part,
  };
}

export function* largePositions(): Generator<PositionRow> {
  for (let n = 0; n < POSITIONS; n += 1) {
    const { machine, axis, itemClass, designation, part } = placeAt(n);
    yield {
      id: numberedId("Position", n),
      machineId: numberedId("Machine", machine),
      axisId: axis === null ? null : numberedId("Axis", axis),
      panelId: itemClass === "motor" || itemClass === "hmi" ? null : numberedId("Panel", machine),
      itemClass,
      designation,
      partId: numberedId("Part", part),
      evidence: "documented",
    };
  }
}

export function* largeUnits(): Generator<UnitRow> {
  for (let n = 0; n < POSITIONS; n += 1)
    yield {
      id: numberedId("Unit", n),
      partId: numberedId("Part", placeAt(n).part),
      serial: `X${padded(n, 7)}`,
      revision: "A1",
      madeYear: null,
    };
}

export function* largePlacements(): Generator<PlacementRow> {
  for (let n = 0; n < POSITIONS; n += 1)
    yield {
      id: numberedId("Placement", n),
      unitId: numberedId("Unit", n),
      positionId: numberedId("Position", n),
      fromOn: null,
      untilOn: null,
    };
}

const KINDS: readonly EventKind[] = ["failure", "failure", "failure", "no_fault_found", "removal"];
const DAYS = 20 * 365;
const LAST_DAY_MS = Date.UTC(2026, 10, 30);
const MS_PER_MINUTE = 60_000;

/** Twenty years of work orders, spread over all places alike. */
export function* largeEvents(): Generator<EventRow> {
  const chance = randomStream(LARGE_SEED, "event");
  for (let n = 0; n < SIZE.events; n += 1) {
    const at = chance.integer(0, POSITIONS - 1);
    const { machine, itemClass, part } = placeAt(at);
    const line = lineOfMachine(machine);
    const atHand = chance.next() < 0.9;
    const hours = Math.round((atHand ? 3.5 : 60) * Math.exp(0.6 * chance.normal()) * 100) / 100;
    yield {
      id: numberedId("Event", n),
      siteId: numberedId("Site", siteOfLine(line)),
      lineId: numberedId("Line", line),
      machineId: numberedId("Machine", machine),
      positionId: numberedId("Position", at),
      partId: chance.next() < 0.65 ? numberedId("Part", part) : null,
      itemClass,
      kind: chance.pick(KINDS),
      happenedAt: new Date(LAST_DAY_MS - chance.integer(0, DAYS * 1440) * MS_PER_MINUTE).toISOString(),
      downtimeHours: hours,
      logisticHours: Math.floor(hours * 20) / 100,
      spareAtHand: atHand,
      source: "work order",
      reference: `WO-${padded(n, 7)}`,
      text: null,
      commonCause: null,
      setAside: null,
    };
  }
}
