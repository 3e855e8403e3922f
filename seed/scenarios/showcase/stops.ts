import type { RandomStream } from "@/lib/kernel/random";
import type { PlannedPosition } from "@/seed/scenarios/showcase/positions";
import type { SiteCode } from "@/seed/scenarios/showcase/sites";

export interface Stop {
  readonly downtimeHours: number;
  readonly logisticHours: number;
  readonly spareAtHand: boolean | null;
}

const MEDIAN_WITH_SPARE = 3.5;
const SPREAD_WITH_SPARE = 0.55;
const MEDIAN_WITHOUT_SPARE = 60;
const SPREAD_WITHOUT_SPARE = 0.7;
/** Work orders that do not say whether a spare was there. */
const SILENT_SHARE = 0.08;

/** How often a usable Oak was on site when one failed; other parts had one mostly. */
const OAK_AT_HAND: Readonly<Record<SiteCode, number>> = {
  VEL: 0.7,
  OST: 0.9,
  KAR: 0.45,
  PIN: 0.6,
  TAD: 0.2,
  THO: 0.9,
};
const BIRCH_AT_HAND = 0.75;
const OTHER_AT_HAND = 0.94;
const OTHER_AT_HAND_TAD = 0.82;

function chanceAtHand({ partKey, machine }: PlannedPosition): number {
  const family = partKey?.slice(0, 2);
  const { site } = machine.line;
  if (family === "OK") return OAK_AT_HAND[site];
  if (family === "BI" || partKey === null) return BIRCH_AT_HAND;
  return site === "TAD" ? OTHER_AT_HAND_TAD : OTHER_AT_HAND;
}

const round2 = (hours: number): number => Math.max(0.1, Math.round(hours * 100) / 100);

/** Hours of a stop, split into waiting for an item and the rest; log-normal around the stated medians. */
export function drawStop(position: PlannedPosition, chance: RandomStream): Stop {
  const atHand = chance.next() < chanceAtHand(position);
  const work = round2(MEDIAN_WITH_SPARE * Math.exp(SPREAD_WITH_SPARE * chance.normal()));
  const long = round2(MEDIAN_WITHOUT_SPARE * Math.exp(SPREAD_WITHOUT_SPARE * chance.normal()));
  const share = chance.between(0.05, 0.3);
  const silent = chance.next() < SILENT_SHARE;
  const downtimeHours = atHand ? work : Math.max(long, work);
  const waiting = atHand ? downtimeHours * share : downtimeHours - work;
  return {
    downtimeHours,
    logisticHours: Math.round(waiting * 100) / 100,
    spareAtHand: silent ? null : atHand,
  };
}
