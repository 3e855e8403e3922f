import { yearsBetween } from "@/lib/kernel/isoDate";
import { weightAt } from "@/lib/portfolio/lineAhead";
import type { Phase, PlanProblem } from "@/lib/portfolio/planProblem";
import type { Candidate } from "@/lib/portfolio/planSlots";

const NOW: readonly Phase[] = [{ quartersBefore: 0, share: 1 }];

/** A quantity by quarter of the plan; what falls before the first counts as the first. */
export function byQuarter(
  { slot }: Candidate,
  quantity: number,
  phases: readonly Phase[] = NOW,
): { readonly quarter: number; readonly part: number }[] {
  return phases.map(({ quartersBefore, share }) => ({
    quarter: Math.max(0, slot.quarter - quartersBefore),
    part: quantity * share,
  }));
}

/** What a candidate costs, EUR of its quarters and EUR of the as-of day; a quarter is paid at its start. */
export function spentOn(candidate: Candidate, { quarters, asOf, discountRate }: PlanProblem) {
  const { typical, phases } = candidate.option.cost;
  let [spent, spentDiscounted] = [0, 0];
  for (const { quarter, part } of byQuarter(candidate, typical, phases)) {
    const years = Math.max(0, yearsBetween(asOf, quarters[quarter]?.startsOn ?? asOf));
    spent += part;
    spentDiscounted += part * weightAt(years, discountRate);
  }
  return { spent, spentDiscounted };
}
