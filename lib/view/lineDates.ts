import type { IsoDate } from "@/lib/kernel/isoDate";
import type { LifecycleDates, SupplyStage } from "@/lib/lifecycle/supplyStage";

/** The day that matters next, or mattered last, for how a part can be had. */
export interface SupplyDate {
  readonly what: string;
  readonly on: IsoDate;
}

/** The date behind a supply stage; null when none is recorded. */
export function supplyDate(dates: LifecycleDates, stage: SupplyStage): SupplyDate | null {
  const { noticeOn, lastOrderOn, lastShipOn, repairUntilOn, orderByOn } = dates;
  const candidates: Record<SupplyStage, readonly [string, IsoDate | null][]> = {
    undated: [],
    open: [],
    notice: [
      ["last order", lastOrderOn],
      ["notice", noticeOn],
    ],
    "buy-window": [
      ["order by", orderByOn],
      ["last order", lastOrderOn],
    ],
    closing: [["last order", lastOrderOn]],
    "orders-shut": [
      ["last ship", lastShipOn],
      ["last order", lastOrderOn],
    ],
    "repair-fed": [["repair until", repairUntilOn]],
    "own-stock": [
      ["repair ended", repairUntilOn],
      ["last ship", lastShipOn],
      ["last order", lastOrderOn],
    ],
  };
  for (const [what, on] of candidates[stage]) if (on !== null) return { what, on };
  return null;
}
