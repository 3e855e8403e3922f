import type { LifecycleDates } from "@/lib/lifecycle/supplyStage";
import type { GroupInput, LineInput, PoolInput, StockInput } from "@/lib/risk/evaluation";

/** Two sites, three lines and three pools: an old drive, a new one and one nobody has read. */

export const noDates: LifecycleDates = {
  noticeOn: null,
  lastOrderOn: null,
  lastShipOn: null,
  repairUntilOn: null,
  orderByOn: null,
  checkedOn: "2026-10-01",
};

export const oldDates: LifecycleDates = {
  ...noDates,
  lastOrderOn: "2021-06-30",
  lastShipOn: "2022-06-30",
  repairUntilOn: "2025-12-31",
};

export const lot = (siteId: string, quantity: number | null): StockInput => ({
  siteId,
  state: "usable",
  quantity,
  lastPoweredOn: "2026-06-01",
});

export const pool = (id: string, more: Partial<PoolInput>): PoolInput => ({
  id,
  itemClass: "drive",
  familyId: id,
  dates: noDates,
  leadYears: 0.2,
  repair: null,
  stock: [],
  ...more,
});

export const line = (id: string, siteId: string, more: Partial<LineInput> = {}): LineInput => ({
  id,
  code: id,
  siteId,
  costPerHour: 2000,
  costEvidence: "documented",
  bufferHours: 1,
  unrecoveredShare: 1,
  ...more,
});

export const smallGroup: GroupInput = {
  asOf: "2026-11-30",
  lines: [
    line("VEL-03", "VEL", { costPerHour: 3400, bufferHours: 0.5 }),
    line("TAD-01", "TAD", { costPerHour: 1600 }),
    line("VEL-04", "VEL"),
  ],
  pools: [
    pool("oak", { dates: oldDates, stock: [lot("VEL", 2), lot("OST", 1)] }),
    pool("heron", { stock: [lot("VEL", 4)] }),
    pool("unidentified:drive", { familyId: null, dates: { ...noDates, checkedOn: null }, leadYears: null }),
  ],
  installed: [
    { lineId: "VEL-03", poolId: "oak", units: 48 },
    { lineId: "VEL-03", poolId: "heron", units: 6 },
    { lineId: "TAD-01", poolId: "oak", units: 42 },
    { lineId: "TAD-01", poolId: "unidentified:drive", units: 5 },
    { lineId: "VEL-04", poolId: "heron", units: 52 },
  ],
  experience: [
    { poolId: "oak", siteId: "VEL", removals: 12, failures: 8, unitYears: 240 },
    { poolId: "oak", siteId: "TAD", removals: 13, failures: 9, unitYears: 210 },
    { poolId: "heron", siteId: "VEL", removals: 5, failures: 4, unitYears: 280 },
  ],
  restorations: [
    {
      itemClass: "drive",
      spareAtHand: true,
      stops: 20,
      sumLog: 20 * Math.log(4),
      sumLogSquared: 20 * (Math.log(4) ** 2 + 0.5),
    },
  ],
};
