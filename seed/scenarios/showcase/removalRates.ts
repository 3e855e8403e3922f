import { yearsBetween } from "@/lib/kernel/isoDate";
import { FAMILIES, UNKNOWN_DRIVE_RATE } from "@/seed/scenarios/showcase/families";
import { D0, EVENTS_SINCE } from "@/seed/scenarios/showcase/moment";
import type { PlannedPosition } from "@/seed/scenarios/showcase/positions";
import { siteSpec } from "@/seed/scenarios/showcase/sites";

/** Growth of the rate a year from the eleventh year of service on: common practice, no source. */
const AGEING = 0.06;
const YEARS_WITHOUT_AGEING = 10;
const MID_YEAR = 2024;

const RATES = new Map(FAMILIES.map(({ key, rate }) => [key, rate]));

/** Kinds of places whose mean rate is stated: a family of drives, a class of anything else. */
export function kindOf({ partKey, row }: PlannedPosition): string {
  return row.itemClass === "drive" ? (partKey?.slice(0, 2) ?? "UN") : row.itemClass;
}

function statedRate({ partKey }: PlannedPosition): number {
  return partKey === null ? UNKNOWN_DRIVE_RATE : (RATES.get(partKey.slice(0, 2)) ?? 0);
}

function leaning(position: PlannedPosition): number {
  const age = Math.max(0, MID_YEAR - position.year - YEARS_WITHOUT_AGEING);
  return siteSpec(position.machine.line.site).factor * (1 + AGEING * age);
}

/** Years of the sixty months a place has been in service. */
export function exposureOf({ year }: PlannedPosition): number {
  const since = `${year}-01-01` > EVENTS_SINCE ? `${year}-01-01` : EVENTS_SINCE;
  return yearsBetween(since, D0);
}

/** Removals a year at each place: older and hotter ones more, with the stated rate as the mean of their kind. */
export function removalRates(positions: readonly PlannedPosition[]): number[] {
  const sums = new Map<string, { places: number; leaning: number }>();
  for (const position of positions) {
    const kind = kindOf(position);
    const before = sums.get(kind) ?? { places: 0, leaning: 0 };
    sums.set(kind, { places: before.places + 1, leaning: before.leaning + leaning(position) });
  }
  return positions.map((position) => {
    const sum = sums.get(kindOf(position)) ?? { places: 1, leaning: 1 };
    return (statedRate(position) * leaning(position) * sum.places) / sum.leaning;
  });
}
