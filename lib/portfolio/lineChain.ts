import { weeksTooEarly } from "@/lib/portfolio/planLimits";
import type { PlanOption } from "@/lib/portfolio/planProblem";
import type { Candidate } from "@/lib/portfolio/planSlots";
import type { PlanEvaluator } from "@/lib/portfolio/planWorth";

/**
 * The candidates that treat a line in full as soon as can be: one way of each step, each in the first place that is in
 * time, long enough, and after the step before.
 *
 * Prefers the way with fewest steps, the dearer among equals.
 *
 * @returns Their indices in order of time; null when the line has no way that can be finished within the plan.
 */
export function lineChain({ candidates, problem }: PlanEvaluator, lineId: string): readonly number[] | null {
  const own = candidates.filter(({ line }) => line.lineId === lineId);
  const options = new Map(own.map(({ option }) => [option.id, option]));
  const ends = [...options.values()].filter(
    ({ kind, commitsTo }) => (kind === "full" || kind === "partial") && commitsTo.length === 0,
  );
  const chains = ends.map((end) => stepsTo(end, options));
  const placed = chains.flatMap((steps) => {
    const chain = place(steps, own, problem);
    return chain === null ? [] : [chain];
  });
  const cost = (chain: readonly Candidate[]) =>
    chain.reduce((sum, { option }) => sum + option.cost.typical, 0);
  const [best] = placed.sort((a, b) => a.length - b.length || cost(b) - cost(a));
  return best ? best.map(({ index }) => index) : null;
}

/** The ways that lead to one, first to last; of several it may wait for, the first. */
function stepsTo(end: PlanOption, options: ReadonlyMap<string, PlanOption>): PlanOption[] {
  const steps = [end];
  for (let at: PlanOption | undefined = end; at; ) {
    const before: PlanOption | undefined = at.after.flatMap((id) => options.get(id) ?? [])[0];
    if (!before || steps.includes(before)) break;
    steps.unshift(before);
    at = before;
  }
  return steps;
}

function place(
  steps: readonly PlanOption[],
  own: readonly Candidate[],
  { asOf, windowFill }: PlanEvaluator["problem"],
): Candidate[] | null {
  const chain: Candidate[] = [];
  let from = "";
  for (const step of steps) {
    const next = own
      .filter(({ option, slot }) => option.id === step.id && slot.startsOn > from)
      .filter((one) => weeksTooEarly(one, asOf) === 0)
      .filter(
        ({ slot: { window } }) =>
          window === null || (window.usableHours ?? 0) * windowFill >= step.windowHours,
      )
      .sort((a, b) => (a.slot.startsOn < b.slot.startsOn ? -1 : 1))[0];
    if (!next) return null;
    chain.push(next);
    from = next.slot.endsOn;
  }
  return chain;
}
