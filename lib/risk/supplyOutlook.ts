import { type IsoDate, yearsBetween } from "@/lib/kernel/isoDate";
import type { SupplyStage } from "@/lib/lifecycle/supplyStage";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { LeavingInput, PoolInput } from "@/lib/risk/evaluation";
import type { InstalledSpan, PoolSupply } from "@/lib/spares/exposure";

/** One way the supply of a pool may really stand, and how likely it is. */
export interface SupplyCase {
  readonly chance: number;
  readonly supply: PoolSupply;
}

interface OutlookInput {
  readonly pool: PoolInput;
  readonly stage: SupplyStage;
  readonly units: number;
  /** Of these units, those that leave, each from its day on. */
  readonly leaving: readonly LeavingInput[];
  readonly asOf: IsoDate;
}

/** What stays in service for good, and what leaves until its day. */
function declining({ units, leaving, asOf }: OutlookInput): InstalledSpan[] {
  const stay = leaving.reduce((left, gone) => left - gone.units, units);
  return [
    { from: 0, to: null, units: Math.max(0, stay) },
    ...leaving.map((gone) => ({ from: 0, to: yearsBetween(asOf, gone.on), units: gone.units })),
  ];
}

/** Repair without an end date ends with the last shipment when that is known: nothing beyond it is promised. */
function repairOf({ pool, asOf }: OutlookInput): PoolSupply["repair"] {
  if (!pool.repair) return null;
  const until = pool.dates.repairUntilOn ?? pool.dates.lastShipOn;
  return {
    turnaround: pool.repair.turnaroundYears,
    yield: pool.repair.yield,
    untilAt: until === null ? null : yearsBetween(asOf, until),
  };
}

/**
 * How a pool will be replenished. A part without dated supply may or may not be orderable: both cases, by their chance.
 */
export function supplyOutlook(input: OutlookInput, assumptions: Assumptions): readonly SupplyCase[] {
  const { pool, stage, asOf } = input;
  const { lastOrderOn, lastShipOn } = pool.dates;
  const supply = {
    installed: declining(input),
    leadTime: pool.leadYears ?? assumptions.classes[pool.itemClass].leadYears,
    repair: repairOf(input),
  };
  const lastOrder = lastOrderOn ?? (stage === "open" || stage === "notice" ? null : lastShipOn);
  if (lastOrder !== null)
    return [{ chance: 1, supply: { ...supply, lastOrderAt: yearsBetween(asOf, lastOrder) } }];
  const orderable = stage === "undated" ? assumptions.undatedOrderable : 1;
  return [
    { chance: orderable, supply: { ...supply, lastOrderAt: null } },
    { chance: 1 - orderable, supply: { ...supply, lastOrderAt: -1 } },
  ].filter(({ chance }) => chance > 0);
}
