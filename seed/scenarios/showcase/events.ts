import { addDays, daysBetween } from "@/lib/kernel/isoDate";
import { type RandomStream, randomStream } from "@/lib/kernel/random";
import { describeEvent } from "@/seed/scenarios/showcase/eventTexts";
import { D0, EVENTS_SINCE } from "@/seed/scenarios/showcase/moment";
import type { PlannedPosition } from "@/seed/scenarios/showcase/positions";
import { exposureOf, removalRates } from "@/seed/scenarios/showcase/removalRates";
import { lineId, SITES, type SiteCode, siteId, siteSpec } from "@/seed/scenarios/showcase/sites";
import { drawStop } from "@/seed/scenarios/showcase/stops";
import { seedId } from "@/seed/seedId";
import type { EventKind, EventRow } from "@/seed/tables";
import { zonedInstant } from "@/seed/zonedInstant";

/** One removal before it is written into a register. */
export interface Removal {
  readonly position: PlannedPosition;
  /** Reading of the site's clock. */
  readonly at: string;
  readonly commonCause: string | null;
}

const NO_FAULT_SHARE = { drive: 0.3, other: 0.12 };
const UNSAID_SHARE = 0.12;
const WITHOUT_PART_NUMBER = 0.35;
const IN_BOTH_REGISTERS = 0.08;
const IMPOSSIBLE_TIMES = 0.03;

const BURST = {
  line: "PIN-03",
  drives: 4,
  from: "2026-08-11",
  cause: "Cabinet cooling failure PIN-03, August 2026",
};

const two = (value: number): string => String(value).padStart(2, "0");

/** A reading outside the night hours in which clocks are put forward or back. */
const clockReading = (day: string, chance: RandomStream): string =>
  `${day}T${two(chance.integer(5, 22))}:${two(chance.integer(0, 59))}`;

function drawRemovals(positions: readonly PlannedPosition[], chance: RandomStream): Removal[] {
  const rates = removalRates(positions);
  return positions.flatMap((position, i) => {
    const years = exposureOf(position);
    const days = Math.min(Math.floor(years * 365.25), daysBetween(EVENTS_SINCE, D0));
    const count = chance.poisson((rates[i] ?? 0) * years);
    return Array.from({ length: count }, () => {
      const day = addDays(D0, -chance.integer(0, Math.max(0, days - 1)));
      return { position, at: clockReading(day, chance), commonCause: null };
    });
  });
}

/** Four Oak drives of one line in one week: a cooling failure, not four failures of their own. */
function drawBurst(positions: readonly PlannedPosition[], chance: RandomStream): Removal[] {
  const oaks = positions.filter(
    ({ machine, partKey }) => machine.line.code === BURST.line && partKey?.startsWith("OK-"),
  );
  return chance
    .shuffle(oaks)
    .slice(0, BURST.drives)
    .map((position, i) => ({
      position,
      at: clockReading(addDays(BURST.from, i), chance),
      commonCause: BURST.cause,
    }));
}

function drawKind({ position, commonCause }: Removal, chance: RandomStream): EventKind {
  const draw = chance.next();
  if (commonCause !== null) return "failure";
  const noFault = position.row.itemClass === "drive" ? NO_FAULT_SHARE.drive : NO_FAULT_SHARE.other;
  if (draw < noFault) return "no_fault_found";
  return draw < noFault + UNSAID_SHARE ? "removal" : "failure";
}

function workOrder(removal: Removal, reference: string, chance: RandomStream): EventRow {
  const { position, at, commonCause } = removal;
  const { line } = position.machine;
  const kind = drawKind(removal, chance);
  const stop = drawStop(position, chance);
  const named = chance.next() >= WITHOUT_PART_NUMBER;
  const impossible = chance.next() < IMPOSSIBLE_TIMES && commonCause === null;
  const { itemClass, designation } = position.row;
  return {
    id: seedId("Event", `${line.site}/work order/${reference}`),
    siteId: siteId(line.site),
    lineId: lineId(line.code),
    machineId: position.machine.id,
    positionId: position.row.id,
    partId: named ? position.row.partId : null,
    itemClass,
    kind,
    happenedAt: zonedInstant(at, siteSpec(line.site).timeZone),
    downtimeHours: impossible ? null : stop.downtimeHours,
    logisticHours: impossible ? null : stop.logisticHours,
    spareAtHand: stop.spareAtHand,
    source: "work order",
    reference,
    text: describeEvent({ site: line.site, itemClass, kind, designation }, chance),
    commonCause,
    setAside: impossible ? "The stop ends before it starts" : null,
  };
}

/** The same stop as the line's stop log wrote it: it knows the machine, not the place, and counts once. */
function stopLogTwin(order: EventRow, number: number): EventRow {
  const reference = `SL-${number}`;
  return {
    ...order,
    id: seedId("Event", `${order.siteId}/stop log/${reference}`),
    positionId: null,
    partId: null,
    source: "stop log",
    reference,
    text: null,
    spareAtHand: null,
    logisticHours: null,
    setAside: `Same stop as work order ${order.reference}`,
  };
}

function siteEvents(site: SiteCode, removals: readonly Removal[], chance: RandomStream): EventRow[] {
  const own = removals
    .filter(({ position }) => position.machine.line.site === site)
    .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  let number = 400_000 + chance.integer(0, 9_999);
  return own.flatMap((removal) => {
    number += chance.integer(20, 400);
    const order = workOrder(removal, `WO-${number}`, chance);
    const twin = chance.next() < IN_BOTH_REGISTERS && order.commonCause === null;
    return twin ? [order, stopLogTwin(order, number)] : [order];
  });
}

/** Sixty months of removals, Poisson at every place, in the registers of the sites. */
export function eventRows(seed: number, positions: readonly PlannedPosition[]): EventRow[] {
  const chance = randomStream(seed, "event");
  const removals = [...drawRemovals(positions, chance), ...drawBurst(positions, chance)];
  const words = randomStream(seed, "event record");
  return SITES.flatMap(({ code }) => siteEvents(code, removals, words));
}
