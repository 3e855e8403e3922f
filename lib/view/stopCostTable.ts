import { type StopCost, stopCost } from "@/lib/risk/stopCost";
import type { LineDossier } from "@/lib/view/lineDossier";

/** A stop of a length people talk about, and what it costs, EUR. */
export interface StopCostRow extends StopCost {
  readonly hours: number;
}

/** From a reset to three days; the product's own choice. */
const STOP_HOURS = [1, 4, 8, 24, 72] as const;

/** What stops of some lengths cost on the line; null without a cost per hour. */
export function stopCostTable({
  cost,
  stored,
  unrecoveredShare,
}: Pick<LineDossier, "cost" | "stored" | "unrecoveredShare">): StopCostRow[] | null {
  if (cost.perHour === null) return null;
  const terms = {
    costPerHour: cost.perHour,
    bufferHours: Number(stored.bufferHours ?? 0),
    unrecoveredShare,
    fixed: cost.fixed ?? 0,
    steps: cost.steps,
  };
  return STOP_HOURS.map((hours) => ({ hours, ...stopCost(hours, terms) }));
}
