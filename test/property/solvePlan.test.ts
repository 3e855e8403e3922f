import fc from "fast-check";
import { expect, test } from "vitest";
import { brokenBy, limitRows } from "@/lib/portfolio/planLimits";
import type { PlanProblem } from "@/lib/portfolio/planProblem";
import { chosenOf } from "@/lib/portfolio/planSlots";
import { type PlanEvaluator, planEvaluator } from "@/lib/portfolio/planWorth";
import { solvePlan } from "@/lib/portfolio/solvePlan";
import { anyPlan } from "@/test/support/anyPlan";
import { noClock, planOf } from "@/test/support/smallPlan";

/** The best of all plans, looked at one by one; null when none keeps within the limits. */
function bestOfAll(evaluator: PlanEvaluator, problem: PlanProblem): number | null {
  const { candidates } = evaluator;
  const limits = limitRows(problem, candidates);
  let best: number | null = null;
  for (let mask = 0; mask < 2 ** candidates.length; mask += 1) {
    const chosen = candidates.flatMap(({ index }) =>
      Math.floor(mask / 2 ** index) % 2 === 1 ? [index] : [],
    );
    if (brokenBy(limits, chosen).length > 0) continue;
    const value = evaluator.objective(chosen);
    if (best === null || value > best) best = value;
  }
  return best;
}

test("the plan is as good as the best of all plans and keeps every limit", async () => {
  const seen = { plans: 0, refused: 0, placed: 0 };
  await fc.assert(
    fc.asyncProperty(anyPlan, async (problem) => {
      const group = planOf(problem);
      const evaluator = planEvaluator(group);
      expect(evaluator.candidates.length).toBeLessThan(13);
      const best = bestOfAll(evaluator, problem);
      const found = await solvePlan(group, { timeLimitSeconds: 60, companions: false, gap: 0 }, noClock);
      if (best === null) {
        expect(found.kind).toBe("infeasible");
        seen.refused += 1;
        return;
      }
      if (found.kind !== "plan") throw new Error(`a plan exists, got ${found.kind}`);
      const chosen = chosenOf(evaluator.candidates, found.plan.choices);
      expect(brokenBy(limitRows(problem, evaluator.candidates), chosen)).toEqual([]);
      expect(evaluator.objective(chosen)).toBeCloseTo(best, 3);
      seen.plans += 1;
      seen.placed += chosen.length;
    }),
    { seed: 20261130, numRuns: 60 },
  );
  expect(Math.min(seen.plans, seen.refused)).toBeGreaterThan(8);
  expect(seen.placed).toBeGreaterThan(seen.plans);
}, 240_000);
