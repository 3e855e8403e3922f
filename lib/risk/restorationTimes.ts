import {
  type Lognormal,
  type LognormalPrior,
  lognormalMean,
  lognormalWithMean,
  type SeenTimes,
  shrinkLognormal,
} from "@/lib/reliability/lognormal";
import type { Assumptions } from "@/lib/risk/assumptions";
import type { GroupInput, ItemClass, PoolInput, PoolResult, RestorationInput } from "@/lib/risk/evaluation";
import { ladderHours, openSteps } from "@/lib/risk/sourceLadder";

/** Times to restore a failed unit of a pool. */
export interface RestorationTimes {
  readonly withSpare: Lognormal;
  readonly withoutSpare: Lognormal;
  readonly hoursWithSpare: number;
  readonly hoursWithoutSpare: number;
}

const ORDERABLE = new Set(["open", "notice", "buy-window", "closing"]);

/** Stops of a class with or without a spare; the sum of hours is known when it is for each of them. */
function seenTimes(input: GroupInput, itemClass: ItemClass, spareAtHand: boolean): SeenTimes {
  const rows = input.restorations.filter(
    (seen) => seen.itemClass === itemClass && seen.spareAtHand === spareAtHand,
  );
  const sum = (value: (row: RestorationInput) => number) => rows.reduce((all, row) => all + value(row), 0);
  return {
    stops: sum(({ stops }) => stops),
    sumLog: sum(({ sumLog }) => sumLog),
    sumLogSquared: sum(({ sumLogSquared }) => sumLogSquared),
    sumHours: rows.every(({ sumHours }) => sumHours !== undefined)
      ? sum(({ sumHours }) => sumHours ?? 0)
      : undefined,
  };
}

/** A pool as far as its stops go: its class, whether somebody repairs it, and what supply is left. */
export type Restored = Pick<PoolInput, "itemClass" | "repair"> & Pick<PoolResult, "stage">;

const openSupply = ({ repair, stage }: Restored) => ({
  orders: ORDERABLE.has(stage),
  repair: repair !== null && stage !== "own-stock" && stage !== "undated",
});

/** What is believed of the hours before any recorded stop: a stated median with a spare, the source ladder without. */
export function restorationBelief(
  pool: Restored,
  assumptions: Assumptions,
): { readonly withSpare: LognormalPrior; readonly withoutSpare: LognormalPrior } {
  const { withSpare, withoutSpare, ladder } = assumptions.classes[pool.itemClass];
  const mean = ladderHours(openSteps(ladder, openSupply(pool)));
  const far = { ...lognormalWithMean(mean, withoutSpare.sigma), weight: withoutSpare.weight };
  return { withSpare, withoutSpare: far };
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
    const { orders, repair } = openSupply({ ...pool, stage });
    const key = `${pool.itemClass}/${orders}/${repair}`;
    const known = memo.get(key);
    if (known) return known;
    const belief = restorationBelief({ ...pool, stage }, assumptions);
    const near = shrinkLognormal(belief.withSpare, seenTimes(input, pool.itemClass, true));
    const far = shrinkLognormal(belief.withoutSpare, seenTimes(input, pool.itemClass, false));
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
