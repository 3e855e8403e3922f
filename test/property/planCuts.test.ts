import fc from "fast-check";
import { expect, test } from "vitest";
import {
  firstSlopes,
  type LinearPlan,
  linearPlan,
  openCandidates,
  slopesAt,
  UNIT,
} from "@/lib/portfolio/linearPlan";
import type { SumRow } from "@/lib/portfolio/mixedModel";
import { sharedNeeds } from "@/lib/portfolio/orderCuts";
import { brokenBy, limitRows } from "@/lib/portfolio/planLimits";
import { planEvaluator } from "@/lib/portfolio/planWorth";
import { relax } from "@/lib/portfolio/relaxedModel";
import { prepare } from "@/lib/portfolio/searchPlan";
import { shortageCuts } from "@/lib/portfolio/shortageCuts";
import { anyPlan } from "@/test/support/anyPlan";
import { planOf } from "@/test/support/smallPlan";

const parts = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 13, maxLength: 13 });

type Chosen = readonly number[];

/** How far the rows are from being kept by a whole plan at worst; nothing is below zero but rounding. */
function worst(plan: LinearPlan, rows: readonly SumRow[], plans: readonly Chosen[]): number {
  let least = 0;
  for (const chosen of plans) {
    const whole = plan.valuesOf(chosen);
    for (const { takes, least: needed } of rows) {
      const sum = takes.reduce((all, [column, weight]) => all + weight * (whole[column] as number), 0);
      least = Math.min(least, (sum - needed) / Math.max(1, Math.abs(needed)));
    }
  }
  return least;
}

/** Bounds of the model in parts, without the rows and with them, and the most a whole plan has. */
async function boundsOf(plan: LinearPlan, plans: readonly Chosen[]) {
  const loose = await relax(plan.model, { cuts: () => [], timeLimitSeconds: 60, late: () => false });
  const tight = await relax(plan.model, {
    ...{ cuts: (met) => shortageCuts(plan.losses, met), timeLimitSeconds: 60, late: () => false },
  });
  const best = Math.max(...plans.map((chosen) => plan.worthOf(chosen) / UNIT));
  return { loose: loose.bound, tight: tight.bound, best };
}

test("the added rows cut off parts of candidates and no whole plan, at first slopes and at those of a plan", async () => {
  const seen = { cuts: 0, tighter: 0 };
  await fc.assert(
    fc.asyncProperty(anyPlan, parts, async (problem, taken) => {
      const evaluator = planEvaluator(planOf(problem));
      const limits = limitRows(problem, evaluator.candidates);
      const shared = sharedNeeds(limits, evaluator.candidates);
      const masks = Array.from({ length: 2 ** evaluator.candidates.length }, (_, mask) =>
        evaluator.candidates.flatMap(({ index }) => (Math.floor(mask / 2 ** index) % 2 === 1 ? [index] : [])),
      );
      const plans = masks.filter((chosen) => brokenBy(limits, chosen).length === 0);
      expect(masks.filter((chosen) => brokenBy(shared, chosen).length === 0)).toEqual(plans);

      const terms = { ...prepare(evaluator), limits, open: openCandidates(evaluator, limits) };
      const first = linearPlan(terms, firstSlopes);
      const later = linearPlan(terms, slopesAt(terms, first, plans.at(-1) ?? []));
      for (const plan of [first, later]) {
        const cuts = shortageCuts(
          plan.losses,
          plan.model.columns.map((_, i) => taken[i] ?? 0),
        );
        seen.cuts += cuts.length;
        expect(worst(plan, cuts, plans)).toBeGreaterThan(-1e-9);
        const { loose, tight, best } = await boundsOf(plan, plans);
        expect(tight).toBeGreaterThanOrEqual(best - 1e-6 * Math.max(1, Math.abs(best)));
        seen.tighter += tight < loose - 1e-3 ? 1 : 0;
      }
    }),
    { seed: 4271, numRuns: 25 },
  );
  expect(seen.cuts).toBeGreaterThan(100);
  expect(seen.tighter).toBeGreaterThan(1);
}, 240_000);
