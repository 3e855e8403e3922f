import type { LineResult } from "@/lib/risk/evaluation";
import type { LineDossier } from "@/lib/view/lineDossier";
import type { LineCost } from "@/lib/view/lineRanking";

/** What a stop costs on a line where nobody says so, or where it is not shown. */
export const UNKNOWN_COST: LineCost = {
  ...{ perHour: null, fixed: null, steps: [], owner: null, approvedOn: null, validUntil: null },
  evidence: "assumed",
};

const NO_LOSS = { baseLoss: null, shortageLoss: null, unknownLoss: null };
const NO_STOP_COST = { ...NO_LOSS, costWithSpare: null, costWithoutSpare: null };

/** A line as evaluated, as it leaves for somebody to whom amounts are not shown: as if its stops had no known cost. */
export function resultWithoutAmounts(result: LineResult): LineResult {
  const pools = result.pools.map((pool) => ({ ...pool, ...NO_STOP_COST }));
  return { ...result, ...NO_LOSS, pools, stopLoss: null, horizonLoss: null };
}

/** A dossier, the same way: no money, no place by money and no order by it; stops, spares, dates and the score stay. */
export function dossierWithoutAmounts(line: LineDossier): LineDossier {
  return {
    ...line,
    showsAmounts: false,
    cost: UNKNOWN_COST,
    stored: {
      ...line.stored,
      ...{ costPerHour: null, costFixed: null, costSteps: [], costMethod: null, costOwner: null },
      ...{ costApprovedOn: null, costValidUntil: null },
      costEvidence: "assumed",
    },
    ...{ rankByLoss: null, place: null },
    result: resultWithoutAmounts(line.result),
    drivers: line.drivers
      .map((driver) => ({ ...driver, ...NO_STOP_COST }))
      .sort((a, b) => b.share - a.share || (a.poolId < b.poolId ? -1 : 1)),
  };
}
