import { after, fitting } from "@/lib/portfolio/planExchange";
import type { LimitRow } from "@/lib/portfolio/planLimits";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";

/** Limits with one more: no more money in all than so much. */
export function withinMoney(
  { candidates }: PlanEvaluator,
  limits: readonly LimitRow[],
  most: number,
): LimitRow[] {
  const takes = new Map(candidates.map(({ index, option }) => [index, option.cost.typical]));
  const [first] = candidates;
  const limit = { kind: "budget", year: Number(first?.slot.startsOn.slice(0, 4)), siteId: null } as const;
  return [...limits, { limit, unit: "EUR", most, takes }];
}

/**
 * The plain way to plan, to hold a plan against: down the ranking by the first year's stop loss, each line's dearest
 * option in its first slot that still fits, passing over lines that do not fit.
 *
 * It keeps the same limits as the plan but for pins and duties, which it does not know.
 *
 * @returns The candidates it takes, ascending.
 */
export function rankAndCut({ candidates, staged }: PlanEvaluator, limits: readonly LimitRow[]): number[] {
  const known = limits.filter(({ most }) => most >= 0);
  const fits = fitting(known, candidates.length);
  const ranked = [...staged.result.lines]
    .filter(({ stopLoss }) => stopLoss !== null)
    .sort((a, b) => (b.stopLoss?.mean ?? 0) - (a.stopLoss?.mean ?? 0));
  let chosen: number[] = [];
  for (const { lineId } of ranked) {
    const allows = fits(chosen);
    const [first] = candidates
      .filter(({ line }) => line.lineId === lineId)
      .sort(
        (a, b) =>
          b.option.cost.typical - a.option.cost.typical || (a.slot.startsOn < b.slot.startsOn ? -1 : 1),
      )
      .filter(({ index }) => allows({ out: [], in: [index] }));
    if (first) chosen = after(chosen, { out: [], in: [first.index] });
  }
  return chosen;
}
