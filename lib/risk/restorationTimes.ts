import {
  type Lognormal,
  lognormalMean,
  lognormalWithMean,
  shrinkLognormal,
} from "@/lib/reliability/lognormal";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput, ItemClass, PoolInput, PoolResult } from "@/lib/risk/evaluation";
import { ladderHours, openSteps } from "@/lib/risk/sourceLadder";

/** Times to restore a failed unit of a pool. */
export interface RestorationTimes {
  readonly withSpare: Lognormal;
  readonly withoutSpare: Lognormal;
  readonly hoursWithSpare: number;
  readonly hoursWithoutSpare: number;
}

const ORDERABLE = new Set(["open", "notice", "buy-window", "closing"]);

function logSums(input: GroupInput, itemClass: ItemClass, spareAtHand: boolean) {
  const sums = { stops: 0, sumLog: 0, sumLogSquared: 0 };
  for (const seen of input.restorations) {
    if (seen.itemClass !== itemClass || seen.spareAtHand !== spareAtHand) continue;
    sums.stops += seen.stops;
    sums.sumLog += seen.sumLog;
    sums.sumLogSquared += seen.sumLogSquared;
  }
  return sums;
}

/**
 * Hours to restore with a spare and without, by class and by what supply is left.
 *
 * Both start from the class: a stated median with a spare, the source ladder's mean without; recorded stops of the
 * class pull them. Unknown supply counts as none.
 */
export function restorationTimes(
  input: GroupInput,
  assumptions: Assumptions,
): (pool: PoolInput, result: Pick<PoolResult, "stage">) => RestorationTimes {
  const memo = new Map<string, RestorationTimes>();
  return (pool, { stage }) => {
    const orders = ORDERABLE.has(stage);
    const repair = pool.repair !== null && stage !== "own-stock" && stage !== "undated";
    const key = `${pool.itemClass}/${orders}/${repair}`;
    const known = memo.get(key);
    if (known) return known;
    const { withSpare, withoutSpare, ladder } = assumptions.classes[pool.itemClass];
    const mean = ladderHours(openSteps(ladder, { orders, repair }));
    const prior = { ...lognormalWithMean(mean, withoutSpare.sigma), weight: withoutSpare.weight };
    const near = shrinkLognormal(withSpare, logSums(input, pool.itemClass, true));
    const far = shrinkLognormal(prior, logSums(input, pool.itemClass, false));
    const times = {
      withSpare: near,
      withoutSpare: far,
      hoursWithSpare: lognormalMean(near),
      hoursWithoutSpare: lognormalMean(far),
    };
    memo.set(key, times);
    return times;
  };
}
