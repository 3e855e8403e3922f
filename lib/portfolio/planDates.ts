import { addDays } from "@/lib/kernel/isoDate";
import { after, fitting } from "@/lib/portfolio/planExchange";
import type { LimitRow } from "@/lib/portfolio/planLimits";
import type { ChoiceDates } from "@/lib/portfolio/planResult";
import { type Candidate, choiceOf } from "@/lib/portfolio/planSlots";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";

const DAYS_A_WEEK = 7;

/** The first later slot the same option would fit into, everything else as planned, and what waiting for it loses. */
function nextSlot(
  { candidates, objective }: PlanEvaluator,
  chosen: readonly number[],
  {
    candidate,
    fits,
  }: { readonly candidate: Candidate; readonly fits: ReturnType<ReturnType<typeof fitting>> },
): ChoiceDates["next"] {
  const move = (index: number) => ({ out: [candidate.index], in: [index] });
  const later = candidates
    .filter(({ option, slot }) => option === candidate.option && slot.startsOn > candidate.slot.startsOn)
    .sort((a, b) => (a.slot.startsOn < b.slot.startsOn ? -1 : 1))
    .find(({ index }) => fits(move(index)));
  if (!later) return null;
  const worthLost = objective(chosen) - objective(after(chosen, move(later.index)));
  return { slotId: later.slot.id, worthLost };
}

/**
 * Days that follow from each choice: order by = start less the lead time of the slowest part, purchase and test in it;
 * start by = start less the weeks of engineering and building. Work of a quarter may wait until the quarter's end.
 */
export function planDates(
  evaluator: PlanEvaluator,
  limits: readonly LimitRow[],
  chosen: readonly number[],
): ChoiceDates[] {
  const fits = fitting(limits, evaluator.candidates.length)(chosen);
  return chosen.map((index) => {
    const candidate = evaluator.candidates[index] as Candidate;
    const { option, slot } = candidate;
    const start = slot.window ? slot.startsOn : slot.endsOn;
    const before = (weeks: number) => addDays(start, -Math.ceil(weeks * DAYS_A_WEEK));
    return {
      ...{ choice: choiceOf(candidate), startsOn: slot.startsOn, endsOn: slot.endsOn },
      orderBy: option.orderWeeks === null ? null : before(option.orderWeeks),
      startBy: before(option.projectWeeks),
      next: nextSlot(evaluator, chosen, { candidate, fits }),
    };
  });
}
